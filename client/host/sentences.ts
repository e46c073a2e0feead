import { hostWords, rightWords } from '../../server/protocol/words/en.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { listed } from '../../server/protocol/words/counting.ts';
import { policySentence } from '../../server/protocol/words/policy-sentences.ts';
import { keysSentence } from '../../server/protocol/words/right-sentences.ts';
import type { RoomSettings } from '../../server/protocol/messages.ts';
import type {
  HostView,
  WireAsking,
  WireKeysReveal,
  WireSettler,
  WireSpread,
  WireTruth,
  WireVisitedKey,
} from '../../server/protocol/views.ts';
import { readSymbol, qualitySuffix, type Quality } from '../../shared-theory/chords.ts';
import { differentChords } from '../../shared-theory/different-chords.ts';
import { isModal, parentKey, parseKeyName } from '../../shared-theory/keys.ts';
import { printNumeral } from '../../shared-theory/printer.ts';
import { printChord, printKey, printNote } from '../shared/names.ts';
import { withAdditions } from '../../shared-theory/questions/numeral/additions.ts';
import type { AskedSeventh } from '../../shared-theory/questions/question.ts';
import { keyName } from '../shared/drawings/circle-layout.ts';
import { isSung, settlerName } from '../shared/settler-name.ts';
import { numeralsText } from '../shared/right-readings.ts';
import { rightSentence } from '../shared/right-sentence.ts';
import { seventhSymbols } from '../shared/seventh-symbol.ts';

/**
 * The right answer as a sentence. A chord's letter is in it only where its root has been shown, and numerals have their sevenths
 * only where no seventh is still to be asked.
 */
export function revealSentence(
  { current, vamp, keysReveal, steps }: Pick<HostView, 'current' | 'vamp' | 'keysReveal' | 'steps'>,
  truth: WireTruth,
): string {
  if (!current) return '';
  const right = rightWords;
  switch (current.kind) {
    case 'root': {
      const chord = vamp?.slots[current.target]?.chord;
      const note = truth.name ?? (chord ? readSymbol(chord).root : null);
      return note ? fill(right.root, { note: printNote(note).text }) : '';
    }
    case 'bass':
      return truth.name ? fill(right.bass, { note: printNote(truth.name).text }) : '';
    case 'quality': {
      const { letter } = current.asking;
      // What was asked and no more: the chord may have a seventh or a bass that has not been asked yet.
      if (letter) return chordSentence(letter + qualitySuffix(truth.answer as Quality));
      break;
    }
    case 'seventh': {
      const symbols = seventhSymbols(current.asking.letter);
      if (symbols) return chordSentence(symbols[truth.answer as AskedSeventh]);
      break;
    }
    case 'settler': {
      const settler = vamp?.settlers[current.target];
      if (settler) return settlerSentence(settler, current.asking, truth.answer as readonly string[]);
      break;
    }
    case 'keys':
      return keysReveal ? keysReadings(current.asking, keysReveal) : '';
  }
  const seventhsLeft = steps.some(({ kind, status }) => kind === 'seventh' && status !== 'shown');
  const slots = seventhsLeft ? [] : (vamp?.slots ?? []);
  const chords = differentChords(slots.map(({ chord }) => readSymbol(chord)));
  const said = (numerals: readonly string[]): string => numeralsText(withAdditions(numerals, chords));
  return rightSentence(current.kind, truth, said, current.asking.grid);
}

/** What a settler left of the keys that owned the loop, and, where those have been shown, what it threw out. */
function settlerSentence(
  settler: WireSettler,
  { options: [, ...owners] = [] }: WireAsking,
  left: readonly string[],
): string {
  const words = hostWords.reveal.settler;
  const named = (ids: readonly string[]): string => listed(ids.map((id) => printKey(keyName(id)).text));
  const said = fill(isSung(settler) ? words.sung : words.chord, { name: settlerName(settler) });
  const out = owners.filter((id) => !left.includes(id));
  const sentence =
    out.length === 0
      ? words[left.length === 0 ? 'leavesNone' : 'leaves']
      : words[left.length === 0 ? 'throwsOutAll' : 'throwsOut'];
  return fill(sentence, { settler: said, out: named(out), keys: named(left) });
}

/** Under the policy that was asked, whichever the class has chosen since. */
function keysReadings({ options = [] }: WireAsking, { rows, chords }: WireKeysReveal): string {
  const policy = (options[0] ?? 'majors') as RoomSettings['policy'];
  const owners = policy === 'modes' ? headsOf(rows).length : rows.length;
  return keysSentence(
    policy,
    owners,
    chords.map((chord) => printChord(chord).text),
  );
}

const chordSentence = (symbol: string): string => fill(rightWords.chord, { chord: printChord(symbol).text });

/**
 * The keys that stand for their families, which stand or fall together: a major for its relative minor too, the first home of a
 * parent scale for the others. A minor key whose seventh is raised stands for itself.
 */
function headsOf(rows: WireKeysReveal['rows']): readonly string[] {
  const heads = new Map<string, string>();
  for (const { id, key } of rows) {
    const family = id.endsWith('m') ? `${(Number.parseInt(id, 10) + 3) % 12}M` : id;
    if (!heads.has(family)) heads.set(family, key);
  }
  return [...heads.values()];
}

/** A family as it is said where a note leaves it: by its key, `G`; by its parent scale, `G` of A dorian. */
function familySaid(head: string): string {
  const key = parseKeyName(head);
  return isModal(key.mode) ? printNote(parentKey(key).tonic).text : keySaid(head);
}

/** A key's name as it is said in a class: `G`, `E minor`. */
export function keySaid(name: string): string {
  const { letter, sign, suffix } = printKey(name);
  return name.endsWith('major') ? letter + sign : letter + sign + suffix;
}

const NAMES = {
  note: (name: string) => printNote(name).text,
  chord: (symbol: string) => printChord(symbol).text,
  key: (name: string) => printKey(name).text,
  numeral: (numeral: string) => printNumeral(numeral).text,
};

/** Where no key owns all: the likeliest that does but for its visitors, with where they come from. */
function visitedSaid({ key, numerals, visitors }: WireVisitedKey): string {
  return policySentence({ change: 'home-key-with-visitor', key, numerals, visitors }, NAMES);
}

/** So many keys may share the sentence, the middle one by two notes together; more would need too many notes to be said. */
const MOST_TOGETHER = 3;

/**
 * The notes that decide and the key that each leaves, sharpest first: `One note decides: C♯ says D, C says G.` The middle one of
 * three is left by no single note, but by two together: `F with B says C`. Of four and more only the outer ones are named. Where
 * no key owns all, the likeliest with its visitors.
 */
export function deciderSentence({ rows, deciders, visited }: WireKeysReveal): string {
  const { settled, decides, decide, decidesScale, decideScale, says, together, noneShared } = hostWords.reveal;
  if (rows.length === 0) return visited === undefined ? noneShared : visitedSaid(visited);
  const heads = headsOf(rows);
  const notesFor = (key: string): readonly string[] => {
    const leaving = deciders.filter(({ leaves }) => leaves.includes(key));
    const alone = leaving.filter(({ leaves }) => leaves.filter((left) => heads.includes(left)).length === 1);
    const together = heads.length > MOST_TOGETHER ? [] : leaving;
    return (alone.length > 0 ? alone.slice(0, 1) : together).map(({ note }) => printNote(note).text);
  };
  const said = heads.toReversed().flatMap((key) => {
    const [first, ...others] = notesFor(key);
    if (first === undefined) return [];
    const note = others.reduce((before, next) => fill(together, { note: before, other: next }), first);
    return fill(says, { note, key: familySaid(key) });
  });
  if (said.length === 0) return settled;
  const scales = rows.some(({ key }) => isModal(parseKeyName(key).mode));
  const [one, several] = scales ? [decidesScale, decideScale] : [decides, decide];
  return fill(heads.length === 2 ? one : several, { says: said.join(', ') });
}

type Legend = keyof typeof hostWords.spread.legends;

/** What stands for a hand in the spread of a kind; a bead in all others. */
const LEGENDS: Readonly<Record<string, Legend>> = {
  quality: 'strokes',
  strokes: 'strokes',
  numeral: 'strokes',
  order: 'strokes',
  'bar-count': 'strokes',
  threes: 'strokes',
  'half-time': 'strokes',
  swing: 'strokes',
  drive: 'strokes',
  pendulum: 'strokes',
  'change-place': 'strokes',
  tempo: 'taps',
  steadiness: 'taps',
  'drop-out': 'curve',
  together: 'room',
  accents: 'mean',
  'stroke-grid': 'signs',
  roles: 'signs',
  opened: 'slots',
};

/** What one bead or stroke means, and how many hands there are; or where two signs of a slot are right, why. */
export function legend(spread: WireSpread, truth: WireTruth | null = null): string {
  const words = hostWords.spread;
  // Taps are not counted by what they say.
  const marked = spread.taps?.of ?? spread.counts.reduce((sum, { count }) => sum + count, 0);
  if (marked + spread.notSure === 0) return words.noHands;
  if (spread.kind === 'keys' || spread.kind === 'settler') {
    const none = spread.counts.find(({ key }) => key === 'none')?.count ?? 0;
    return fill(words.legendKeys, { marked: marked - none, none, notSure: spread.notSure });
  }
  const usual = LEGENDS[spread.kind] ?? 'beads';
  const stands = usual === 'curve' && (spread.taps?.curve ?? []).length === 0 ? 'noCurve' : usual;
  if ((truth?.also ?? []).length > 0) {
    if (stands === 'signs') return words.barsDiffer;
    if (stands === 'mean') return words.weightsBetween;
  }
  return fill(words.legends[stands], { marked, notSure: spread.notSure });
}
