import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  chordPitchClasses,
  chordSymbol,
  overRoot,
  parseChord,
  QUALITIES,
  qualityAdditions,
  soundsAs,
  triadOf,
  type Chord,
} from '../../shared-theory/chords.ts';
import { plausibleAnswers } from '../../shared-theory/crib/plausible.ts';
import { generate } from '../../shared-theory/generate.ts';
import { GROOVES, grooveById } from '../../shared-theory/grooves.ts';
import { candidateKeys } from '../../shared-theory/candidates.ts';
import { diatonicChart, keyOwns } from '../../shared-theory/degrees.ts';
import { chordIndices } from '../../shared-theory/different-chords.ts';
import { keyId, parseKeyName, relativeKey, usualKey } from '../../shared-theory/keys.ts';
import { LEVELS } from '../../shared-theory/levels.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { bassOf, shapesFor, STANDARD_TUNING } from '../../shared-theory/neck.ts';
import { perform } from '../../shared-theory/perform.ts';
import { pitchClass } from '../../shared-theory/pitch.ts';
import { playBoth, type BothReadings } from '../../shared-theory/play-both.ts';
import { KEY_IDS } from '../../shared-theory/questions/keys/ask.ts';
import { askableQuestions, judgeOf } from '../../shared-theory/questions/judges.ts';
import { ORDERS } from '../../shared-theory/questions/order/ask.ts';
import { neckPlaces } from '../../shared-theory/questions/root/ask.ts';
import { pitchClassAt } from '../../shared-theory/questions/root/places.ts';
import { ASKED_SEVENTHS } from '../../shared-theory/questions/seventh/ask.ts';
import { RHYTHM_KINDS } from '../../shared-theory/questions/question.ts';
import type { Answer, Kind, KeyId, NeckPlace, QuestionSettings } from '../../shared-theory/questions/question.ts';
import type { RoundQuestion } from '../../shared-theory/questions/round-questions.ts';
import { truthOf, type Direction, type Truth } from '../../shared-theory/truth.ts';
import type { VoicedSlot, VoicedVamp } from '../../shared-theory/vamps.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';

const SETTINGS: QuestionSettings = { policy: 'majors', qualities: QUALITIES };

type Case = { readonly vamp: VoicedVamp; readonly truth: Truth };

function caseOf(text: string, groove = 'quarter-downs', shapes?: readonly (readonly (number | null)[])[]): Case {
  const { meter, tempo } = grooveById(groove);
  const slots = parseVamp(text, BEATS_PER_BAR[meter]);
  const vamp = voice({ slots, groove, tempo: tempo[0], seed: 1, ...(shapes ? { shapes } : {}) });
  return { vamp, truth: truthOf(vamp, perform(vamp)) };
}

function both({ vamp, truth }: Case, kind: Kind, target: number, answer: Answer, settings = SETTINGS) {
  return playBoth(vamp, { kind, target }, answer, { truth, settings });
}

const known = new Map<string, Truth>();

/** Right answers to the loop of a reading, from what it sounds: throws where what sounds is not its chords. */
function heard(vamp: VoicedVamp, slots: readonly VoicedSlot[]): Truth {
  const reading = { ...vamp, slots };
  const name = JSON.stringify(reading);
  const truth = known.get(name) ?? truthOf(reading, perform(reading));
  known.set(name, truth);
  return truth;
}

const symbols = (slots: readonly VoicedSlot[]) => slots.map(({ chord }) => chordSymbol(chord)).join(' ');
const written = (readings: BothReadings | null) =>
  readings && `${symbols(readings.wrong)} | ${symbols(readings.right)}`;
const fretsOf = (slots: readonly VoicedSlot[]) => slots.map(({ frets }) => frets.map((fret) => fret ?? 'x').join(' '));

/** Asked about the groove: both readings keep one. */
type Grooved = Exclude<Kind, Harmonic>;
type Harmonic =
  | 'count'
  | 'order'
  | 'direction'
  | 'bass'
  | 'quality'
  | 'root'
  | 'seventh'
  | 'distance'
  | 'numeral'
  | 'one-or-several'
  | 'keys'
  | 'settler'
  | 'home';
const isGrooved = (kind: Kind): kind is Grooved => RHYTHM_KINDS.has(kind);

/** Every answer that a pad can send; sets of keys and rows of numerals would be too many: those that matter. */
function answersOf({ kind }: RoundQuestion, truth: Truth): readonly Answer[] {
  const owners = truth.keys.majors.map((name) => keyId(parseKeyName(name)));
  const singles = KEY_IDS.map((id): KeyId[] => [id]);
  const sets: readonly KeyId[][] = [
    [],
    ...singles,
    ...KEY_IDS.slice(0, 12).map((id, index) => [id, KEY_IDS[(index + 7) % 12] ?? id]),
    owners,
    ...owners.map((id) => owners.filter((other) => other !== id)),
    ...KEY_IDS.map((id) => [...owners, id]),
  ];
  const keySets = sets.map((set) => KEY_IDS.filter((id) => set.includes(id)));
  if (isGrooved(kind)) {
    return plausibleAnswers(kind, { truth, target: 0, settings: SETTINGS }).map(({ answer }) => answer);
  }
  switch (kind) {
    case 'count':
      return [1, 2, 3, 4, 5];
    case 'order':
      return ORDERS;
    case 'direction':
      return ['up', 'down', 'same'];
    case 'quality':
      return QUALITIES;
    case 'seventh':
      return ASKED_SEVENTHS;
    case 'bass':
      return neckPlaces().filter(({ string, fret }) => string === 6 && fret < 12);
    case 'root':
      return neckPlaces().filter(({ string, fret }) => string === 6 || fret % 5 === 0);
    case 'distance':
      return Array.from({ length: 25 }, (_, index) => index - 12);
    case 'keys':
    case 'settler':
      return keySets;
    case 'numeral': {
      const rows = ['I', 'ii', 'iii', 'IV', 'V', 'vi', 'viio', 'bVII', 'i'];
      const count = Math.min(4, truth.count);
      return rows.map((_, index) =>
        Array.from({ length: count }, (__, place) => rows[(index + 4 * place) % rows.length] ?? 'I'),
      );
    }
    case 'one-or-several':
      return ['one', 'several'];
    case 'home':
      return [0, 1, 2, 3];
  }
}

/** Whether an answer is right, or as right. */
function isRight({ kind, target }: RoundQuestion, answer: Answer, truth: Truth, settings: QuestionSettings): boolean {
  const judge = judgeOf(kind) as { readonly [K in Kind]: ReturnType<typeof judgeOf<K>> }[Kind];
  const asked = { truth, target, settings };
  const right = [judge.truth(asked), ...judge.also(asked)];
  return right.some((each) => each !== null && judge.heard(each as never) === judge.heard(answer as never));
}

const basses = (chord: Chord) => shapesFor(chord).map(bassOf);
const familiesOf = (ids: readonly KeyId[]) =>
  new Set(ids.map(usualKey).map((key) => keyId(key.mode === 'major' ? key : relativeKey(key))));
const ownersOf = (slots: readonly VoicedSlot[]) =>
  candidateKeys(
    slots.map(({ chord }) => chord),
    'majors',
  ).map(({ id }) => id);
const owns = (id: KeyId, chord: Chord) => keyOwns(usualKey(id), chord);

const MAJOR_SCALE = [0, 2, 4, 5, 7, 9, 11];
/** Whether the scale of a major key holds pitch classes: by sound alone, no place in the key asked. */
const holds = (id: KeyId, sounds: readonly number[]) =>
  sounds.every((sound) => MAJOR_SCALE.includes((sound - pitchClass(usualKey(id).tonic) + 12) % 12));

/** Triads of major keys by sound: their quality, and where their notes lie above the root. */
const TRIADS_OF_KEYS = [
  ['major', [0, 4, 7]],
  ['minor', [0, 3, 7]],
  ['diminished', [0, 3, 6]],
] as const;

/**
 * No chord that the loop has not leaves the named keys, nor belongs to a named key that is out and to none that stays; or the settler
 * is a note and no chord leaves what it leaves; or what is named stays in. By sound alone.
 */
function isSettlerUnplayable(target: number, answer: readonly KeyId[], { vamp, truth }: Case): boolean {
  const settler = truth.settlers[target];
  const left = familiesOf((settler?.keys.majors ?? []).map((name) => keyId(parseKeyName(name))));
  const named = familiesOf(answer);
  const same = (one: ReadonlySet<KeyId>, other: ReadonlySet<KeyId>) =>
    one.size === other.size && [...one].every((id) => other.has(id));
  if (same(named, left)) return true;
  const chords = vamp.slots.map(({ chord }) => chord);
  const owners = KEY_IDS.slice(0, 12).filter((id) => chords.every((chord) => holds(id, chordPitchClasses(chord))));
  const free = Array.from({ length: 12 }, (_, root) => root).flatMap((root) =>
    TRIADS_OF_KEYS.flatMap(([quality, semitones]) => {
      const inLoop = chords.some(
        (chord) => chord.quality === quality && chord.addition === undefined && pitchClass(chord.root) === root,
      );
      return inLoop ? [] : [semitones.map((above) => (root + above) % 12)];
    }),
  );
  const leaves = (keys: ReadonlySet<KeyId>) =>
    free.some((sounds) => same(new Set(owners.filter((id) => holds(id, sounds))), keys));
  const belongs = [...named].some(
    (id) =>
      !left.has(id) && free.some((sounds) => holds(id, sounds) && ![...left].some((stays) => holds(stays, sounds))),
  );
  const shown = settler?.chord !== null || leaves(left);
  return !(shown && (leaves(named) || belongs));
}

/** Wrong answers that nothing playable sounds as, and why: the only ones without readings. */
function isUnplayable({ kind, target }: RoundQuestion, answer: Answer, { vamp, truth }: Case): boolean {
  const [home, other] = [vamp.slots[0], vamp.slots[target]].map((slot) => slot && overRoot(slot.chord));
  const owners = familiesOf(truth.keys.majors.map((name) => keyId(parseKeyName(name))));
  if (isGrooved(kind)) return true;
  switch (kind) {
    case 'one-or-several': // it has no sound of its own
    case 'home': // it is no error
      return true;
    case 'bass': {
      // no hand plays the chord over that bass
      const chord = overRoot(vamp.slots[target]?.chord ?? parseChord('C'));
      const sound = pitchClassAt(answer as NeckPlace);
      const bass = usualKey(`${sound}M`).tonic;
      return shapesFor(sound === pitchClass(chord.root) ? chord : { ...chord, bass }).length === 0;
    }
    case 'seventh': {
      // a chord without a third has no such seventh
      const { quality } = vamp.slots[target]?.chord ?? parseChord('C');
      return answer !== 'none' && !qualityAdditions(quality).some((addition) => addition === answer);
    }
    case 'distance': {
      // so far below or above home no fret of the twelve lies
      if (!home || !other) return true;
      const root = usualKey(`${(pitchClass(home.root) + (answer as number) + 12) % 12}M`).tonic;
      const reached = basses({ ...other, root });
      return !basses(home).some((from) => reached.includes(from + (answer as number)));
    }
    case 'keys': {
      // the same keys by their relative minors: the sound is one
      const named = familiesOf(answer as readonly KeyId[]);
      return named.size === owners.size && [...named].every((id) => owners.has(id));
    }
    case 'settler':
      return isSettlerUnplayable(target, answer as readonly KeyId[], { vamp, truth });
    case 'numeral': {
      // no key that owns the loop has all the triads, or the numerals name what sounds from another home
      const chords = vamp.slots.map(({ chord }) => chord);
      const different = chords.filter((chord, index) => chords.findIndex((each) => soundsAs(each, chord)) === index);
      const readings = candidateKeys(different, 'relatives').filter((key) =>
        (answer as readonly string[]).every((numeral) => diatonicChart(key).some((each) => each.numeral === numeral)),
      );
      return (
        readings.length === 0 ||
        readings.some((key) => (answer as readonly string[]).every((numeral, index) => key.numerals[index] === numeral))
      );
    }
    case 'count':
    case 'order':
    case 'direction':
    case 'quality':
    case 'root':
      return false;
  }
}

/** What the wrong reading must sound as, and the right one too, by kind. */
function check(
  question: RoundQuestion,
  answer: Answer,
  { vamp, truth }: Case,
  { wrong, right }: BothReadings,
  settings: QuestionSettings,
): void {
  const { kind, target } = question;
  const slot = vamp.slots[target];
  const [said, sounds] = [heard(vamp, wrong), heard(vamp, right)];
  const asked = (reading: Truth, at: number) => ({ truth: reading, target: at, settings });
  if (isGrooved(kind)) return expect.unreachable('grooves have no readings');
  switch (kind) {
    case 'count':
      expect(judgeOf('count').truth(asked(said, 0))).toBe(answer);
      expect(symbols(right)).toBe(symbols(vamp.slots));
      expect(wrong[0]?.chord).toEqual(right[0]?.chord);
      break;
    case 'order':
      expect(judgeOf('order').truth(asked(said, 0))).toEqual(answer);
      expect(symbols(right)).toBe(symbols(vamp.slots));
      break;
    case 'bass':
      expect((said.bass[0] ?? 0) % 12).toBe(pitchClassAt(answer as NeckPlace));
      expect(said.roots).toEqual([truth.roots[target]]);
      expect(right.map(({ frets }) => frets)).toEqual([slot?.frets]);
      break;
    case 'seventh':
      expect(said.sevenths).toEqual([answer]);
      expect(sounds.sevenths).toEqual([truth.sevenths[target]]);
      expect([said.roots, said.bass]).toEqual([sounds.roots, sounds.bass]);
      break;
    case 'direction':
      expect(said.directions).toEqual([answer as Direction]);
      expect(sounds.directions).toEqual([truth.directions[target - 1]]);
      expect(right.map(({ frets }) => frets)).toEqual([vamp.slots[0]?.frets, slot?.frets]);
      expect(wrong[0]?.chord).toEqual(vamp.slots[0]?.chord);
      if (answer === 'same') {
        // The chord where it has a shape on home's bass, else home again.
        const [home, other] = [vamp.slots[0]?.chord, slot?.chord].map((chord) => chord ?? parseChord('C'));
        const stays = basses(home ?? parseChord('C')).some((midi) => basses(other ?? parseChord('C')).includes(midi));
        expect(wrong[1]?.chord).toEqual(stays ? other : home);
      } else expect(wrong[1]?.chord.quality).toBe(slot?.chord.quality);
      break;
    case 'quality':
      expect(said.qualities).toEqual([answer]);
      expect(sounds.qualities).toEqual([truth.qualities[target]]);
      expect(said.roots).toEqual(sounds.roots);
      expect(said.bass).toEqual(sounds.bass);
      // On its root, whatever bass it stood over.
      expect((sounds.bass[0] ?? 0) % 12).toBe(pitchClass(truth.roots[target] ?? 'C'));
      break;
    case 'root': {
      const place = answer as NeckPlace;
      const sound = (STANDARD_TUNING[place.string === 6 ? 0 : 1] + place.fret) % 12;
      expect(said.roots.map(pitchClass)).toEqual([sound]);
      expect(said.qualities).toEqual([truth.qualities[target]]);
      expect(right.map(({ frets }) => frets)).toEqual([slot?.frets]);
      const from = sounds.bass[0] ?? 0;
      const distances = basses(wrong[0]?.chord ?? parseChord('C')).map((midi) => Math.abs(midi - from));
      expect(Math.abs((said.bass[0] ?? 0) - from)).toBe(Math.min(...distances));
      break;
    }
    case 'distance':
      expect(judgeOf('distance').truth(asked(said, 1))).toBe(answer);
      expect((said.bass[1] ?? 0) - (said.bass[0] ?? 0)).toBe(answer);
      expect(said.qualities).toEqual([truth.qualities[0], truth.qualities[target]]);
      expect([
        judgeOf('distance').truth(asked(truth, target)),
        ...judgeOf('distance').also(asked(truth, target)),
      ]).toContain(judgeOf('distance').truth(asked(sounds, 1)));
      break;
    case 'numeral': {
      const loop = vamp.slots.map(({ chord }) => chord);
      const indices = chordIndices(loop);
      const numerals = answer as readonly string[];
      // In every bar the triad of its numeral in one key; a fifth different chord has no numeral, and stays.
      const inOne = candidateKeys(loop, 'relatives').some((key) => {
        const chart = diatonicChart(key);
        return wrong.every(({ chord }, bar) => {
          const numeral = numerals[indices[bar] ?? 0];
          if (numeral === undefined) return chord === right[bar]?.chord;
          return chart.some((each) => each.numeral === numeral && soundsAs(each.chord, triadOf(chord)));
        });
      });
      expect(inOne).toBe(true);
      expect(wrong).toHaveLength(loop.length);
      expect(symbols(right)).toBe(symbols(vamp.slots));
      break;
    }
    case 'keys': {
      const added = wrong.at(-1)?.chord ?? parseChord('C');
      const owners = truth.keys.majors.map((name) => keyId(parseKeyName(name)));
      const named = [...familiesOf(answer as readonly KeyId[])];
      const foreign = named.filter((id) => !owners.includes(id));
      if (named.length === 0) expect(ownersOf(wrong)).toEqual([]);
      else if (foreign.length > 0) {
        expect(owns(foreign[0] ?? '', added)).toBe(true);
        expect(owners.some((id) => owns(id, added))).toBe(false);
      } else expect(ownersOf(wrong).some((id) => named.includes(id))).toBe(true);
      const lastRight = right.at(-1)?.chord ?? parseChord('C');
      if (owners.length > 0) expect(owners.some((id) => owns(id, lastRight))).toBe(true);
      expect(foreign[0] !== undefined && owns(foreign[0], lastRight)).toBe(false);
      break;
    }
    case 'settler': {
      const left = truth.settlers[target]?.keys.majors.map((name) => keyId(parseKeyName(name))) ?? [];
      expect(new Set(ownersOf(right))).toEqual(new Set(left));
      const named = familiesOf(answer as readonly KeyId[]);
      const exact = new Set(ownersOf(wrong));
      const added = wrong.at(-1)?.chord ?? parseChord('C');
      const foreign = [...named].filter((id) => !left.includes(id));
      const leavesThem = exact.size === named.size && [...exact].every((id) => named.has(id));
      expect(leavesThem || foreign.some((id) => owns(id, added))).toBe(true);
      expect(symbols(wrong)).not.toBe(symbols(right));
      break;
    }
    case 'one-or-several':
    case 'home':
      expect.unreachable('these have no readings');
  }
}

function checkPlayable({ wrong, right }: BothReadings, vamp: VoicedVamp): void {
  const bar = BEATS_PER_BAR[vamp.meter];
  const bars = [...wrong, ...right].reduce((sum, { beats }) => sum + beats, 0) / bar;
  // eight bars, or about; longer loops have a bar a chord
  expect(bars).toBeLessThanOrEqual(Math.max(10, 2 * vamp.slots.length + 3));
  for (const slots of [wrong, right]) {
    expect((slots.reduce((sum, { beats }) => sum + beats, 0) / bar) % 1).toBeCloseTo(0, 9);
    for (const { chord, frets, beats } of slots) {
      expect(shapesFor(chord).map(String)).toContain(String(frets));
      expect(beats).toBeGreaterThan(0);
      expect(beats).toBeLessThanOrEqual(2 * bar);
    }
  }
  expect(symbols(wrong) + fretsOf(wrong).join()).not.toBe(symbols(right) + fretsOf(right).join());
}

/** How many settlers of either kind made readings. */
const settled = { chord: 0, note: 0 };

function checkAll(each: Case, settings = SETTINGS): number {
  let made = 0;
  for (const question of askableQuestions(each.truth, settings)) {
    for (const answer of answersOf(question, each.truth)) {
      const readings = both(each, question.kind, question.target, answer, settings);
      const about = `${question.id} ${JSON.stringify(answer)} of ${symbols(each.vamp.slots)}: ${written(readings)}`;
      const unplayable = isRight(question, answer, each.truth, settings) || isUnplayable(question, answer, each);
      expect(readings === null, about).toBe(unplayable);
      if (!readings) continue;
      made += 1;
      if (question.kind === 'settler')
        settled[each.truth.settlers[question.target]?.chord === null ? 'note' : 'chord'] += 1;
      checkPlayable(readings, each.vamp);
      check(question, answer, each, readings, settings);
    }
  }
  return made;
}

describe('what both sound like', () => {
  test.each<[string, Kind, number, Answer, string, string | null]>([
    ['the count: two heard as one', 'count', 0, 1, 'Em D', 'Em Em | Em D'],
    ['the count: the third taken for the one it shares most with', 'count', 0, 2, 'C G Am', 'C G C | C G Am'],
    ['the count: a chord that came back taken for a new one', 'count', 0, 4, 'Am F Am G', 'Am F C G | Am F Am G'],
    ['the count: one more behind', 'count', 0, 3, 'Em D', 'Em D Bm | Em D'],
    ['direction: the same two chords, the other way', 'direction', 1, 'down', 'E A', 'E A | E A'],
    ['direction: home again where it is said to stay', 'direction', 1, 'same', 'E A', 'E E | E A'],
    ['direction: an octave where it stays', 'direction', 1, 'up', 'E Em', 'E Em | E Em'],
    ['direction: an octave up the neck', 'direction', 1, 'up', 'C Cm', 'C Cm | C Cm'],
    ['direction of a later chord', 'direction', 2, 'up', 'A D E', 'A E | A E'],
    ['quality: one root, the answered third', 'quality', 0, 'major', 'Em D', 'E | Em'],
    ['quality: no third', 'quality', 1, 'power', 'Em D', 'D5 | D'],
    ['root: the fifth', 'root', 0, { string: 6, fret: 7 }, 'E A', 'B | E'],
    ['root: the fourth above', 'root', 1, { string: 5, fret: 5 }, 'E A', 'D | A'],
    ['distance: down to 5 heard as up to 4', 'distance', 1, 5, 'A E', 'A D | A E'],
    ['distance: up to 4 heard as down to 5', 'distance', 1, -5, 'A D', 'A E | A D'],
    ['distance: home again', 'distance', 1, 0, 'A D', 'A A | A D'],
    ['numerals in the key', 'numeral', 0, ['ii', 'V'], 'Em D', 'Am D | Em D'],
    ['keys: one that does not own both', 'keys', 0, ['0M'], 'Em D', 'Em D Dm | Em D A'],
    ['keys: stops at one', 'keys', 0, ['7M'], 'Em D', 'Em D C | Em D A'],
    ['keys: no owner', 'keys', 0, [], 'Em D', 'Em D E | Em D C Em D A'],
    ['settler: the other key stayed', 'settler', 1, ['2M'], 'Em D', 'Em D A | Em D C'],
    ['settler: both stayed', 'settler', 1, ['2M', '7M'], 'Em D', 'Em D G | Em D C'],
    ['settler: none stayed', 'settler', 1, [], 'Em D', 'Em D E | Em D C'],
    ['order: a return heard as new', 'order', 0, [0, 1, 2, 3], 'A D A E', 'A D E C#m | A D A E'],
    ['order: another start', 'order', 0, [0, 1, 2, 1], 'A D A E', 'A D E D | A D A E'],
    ['bass: the root over a slash', 'bass', 0, { string: 5, fret: 3 }, 'C/E F', 'C | C/E'],
    ['bass: another note of the chord', 'bass', 0, { string: 6, fret: 3 }, 'C F', 'C/G | C'],
    ['seventh: none', 'seventh', 0, 'none', 'A7 D', 'A | A7'],
    ['seventh: the other', 'seventh', 0, 'major-seventh', 'A7 D', 'Amaj7 | A7'],
    ['seventh: one too many', 'seventh', 1, 'seventh', 'A7 D', 'D7 | D'],
    ['seventh: no such chord', 'seventh', 0, 'seventh', 'E5 D', null],
    ['quality keeps the seventh', 'quality', 0, 'major', 'Am7 D', 'A7 | Am7'],
    ['quality without a seventh that it cannot have', 'quality', 0, 'power', 'A7 D', 'A5 | A'],
    ['quality of a slash chord on its root', 'quality', 0, 'minor', 'C/E F', 'Cm | C'],
    ['distance between the roots', 'distance', 1, 5, 'C G/B', 'C F | C G'],
    ['where it would stop is no error', 'home', 0, 1, 'Em D', null],
    ['strokes keep one groove', 'strokes', 0, 'down-up', 'Em D', null],
    ['one key or several has no sound of its own', 'one-or-several', 0, 'one', 'Em D', null],
    ['a right answer has nothing beside it', 'direction', 1, 'up', 'Em D', null],
    ['an answer of another kind is none', 'quality', 0, 'up', 'Em D', null],
    ['relative minors of the right keys sound the same', 'keys', 0, ['4m', '11m'], 'Em D', null],
  ])('%s', (_, kind, target, answer, text, readings) => {
    expect(written(both(caseOf(text), kind, target, answer))).toBe(readings);
  });

  test.each<[string, Kind, Answer, boolean, string | null]>([
    ['C C/E', 'count', 1, true, 'C C | C C/E'],
    ['C C/E', 'count', 1, false, null],
    ['C C/E C G', 'order', [0, 1, 0, 1], true, 'C C/E C C/E | C C/E C G'],
    ['C C/E C G', 'order', [0, 0, 0, 1], true, 'C C C C/E | C C/E C G'],
    ['C C/E C G', 'order', [0, 1, 0, 1], false, 'C G C G | C C/E C G'],
    // Right as well, so nothing beside it.
    ['C6 F Am7 F', 'order', [0, 1, 0, 1], false, null],
    ['C6 F Am7 F', 'count', 2, false, null],
  ])('%s: %s %j, another bass another chord: %s', (text, kind, answer, slashIsNew, readings) => {
    expect(written(both(caseOf(text), kind, 0, answer, { ...SETTINGS, slashIsNew }))).toBe(readings);
  });

  test('the same way to hold it, where the shape has one: E and Em differ in one string', () => {
    const readings = both(caseOf('Em D'), 'quality', 0, 'major');
    expect(readings && [fretsOf(readings.wrong), fretsOf(readings.right)]).toEqual([['0 2 2 1 0 0'], ['0 2 2 0 0 0']]);
  });

  test('open G has no minor beside it: both are barred, on the bass that sounded', () => {
    const readings = both(caseOf('G D'), 'quality', 0, 'minor');
    expect(readings && [fretsOf(readings.wrong), fretsOf(readings.right)]).toEqual([['3 5 5 3 3 3'], ['3 5 5 4 3 3']]);
  });

  test('another root is the same shape moved', () => {
    const barre = caseOf('F Bb', 'quarter-downs', [
      [1, 3, 3, 2, 1, 1],
      [6, 8, 8, 7, 6, 6],
    ]);
    const readings = both(barre, 'root', 1, { string: 6, fret: 1 });
    expect(readings && fretsOf(readings.wrong)).toEqual(['1 3 3 2 1 1']);
  });

  test('long loops have a bar a chord, so that a turn does not outlast memory', () => {
    const long = caseOf('| C | . | G | . | Am | . |');
    const bars = (slots: readonly VoicedSlot[]) => slots.map(({ beats }) => beats / 4);
    const readings = both(long, 'count', 0, 2);
    expect(readings && [bars(readings.wrong), bars(readings.right)]).toEqual([
      [1, 1, 1],
      [1, 1, 1],
    ]);
    const two = both(caseOf('| C | . | G | . |'), 'direction', 1, 'up');
    expect(two && bars(two.right)).toEqual([2, 2]);
  });
});

describe('each reading is what the answer says', () => {
  test.each(LEVELS.map(({ level }) => level))('vamps of level %d, every wrong answer', (level) => {
    let made = 0;
    for (let seed = 1; seed <= 5; seed += 1) {
      const { vamp, truth } = generate({ level, seed });
      made += checkAll({ vamp, truth });
    }
    expect(made).toBeGreaterThan(50);
  });

  test('both kinds of settlers among them', () => {
    expect(settled.chord).toBeGreaterThan(0);
    expect(settled.note).toBeGreaterThan(0);
  });

  test.each(
    ['C C/E', 'C C/E C G', 'C C/E F C/E', 'Am Am/G F C/E', 'C6 F Am7 F', 'C G/B Am Am/G'].flatMap((text) =>
      [true, false].map((slashIsNew): [string, boolean] => [text, slashIsNew]),
    ),
  )('%s, another bass another chord: %s, every wrong answer', (text, slashIsNew) => {
    expect(checkAll(caseOf(text), { ...SETTINGS, slashIsNew })).toBeGreaterThan(10);
  });

  const TRIADS = 'C Dm Em F G Am Bm D E A Bb Gm Cm F#m C#m Eb B F# Bdim Caug Dsus4 Asus2 G5'.split(' ');
  test('loops of one to six chords in every groove, every wrong answer', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...TRIADS), { minLength: 1, maxLength: 6 }),
        fc.constantFrom(...GROOVES.map(({ id }) => id)),
        (chords, groove) => {
          checkAll(caseOf(chords.join(' '), groove));
        },
      ),
      { numRuns: 40 },
    );
  });
});
