import { describe, expect, test } from 'vitest';
import { grooveById } from '../../../shared-theory/grooves.ts';
import { KINDS, RHYTHM_KINDS, TAPPED_KINDS } from '../../../shared-theory/questions/question.ts';
import type { Kind } from '../../../shared-theory/questions/question.ts';
import { questionId } from '../../../shared-theory/questions/round-questions.ts';
import type { AskHow, Command, SoundChange, Tone } from '../../../server/protocol/messages.ts';
import type { NewEvent } from '../../../server/rooms/events.ts';
import { cameHome } from '../../../server/rooms/evolve-sound.ts';
import { hidesWhatIsAsked } from '../../../server/rooms/decisions/asking.ts';
import { hostView } from '../../../server/rooms/view.ts';
import {
  asked,
  closed,
  DESK,
  fold,
  given,
  HOST,
  joined,
  LIVE,
  moment,
  opened,
  peopleIn,
  played,
  started,
  student,
} from '../../support/given.ts';

const begun = { type: 'VampStarted', round: 'r1', tempo: 100 } as const;
const base: NewEvent[] = [opened, started(played('Em D'))];
const sounding: NewEvent[] = [...base, begun];
const held = { soundHolder: 'page-1' };
const change = (change: SoundChange): Command => ({ type: 'RequestChange', id: 'c', round: 'r1', change });
const tells = (change: SoundChange, bar = 4): Command => ({ type: 'ChangeTook', id: 'c', round: 'r1', change, bar });
const took = (change: SoundChange, bar = 4): NewEvent => ({ type: 'ChangeTook', round: 'r1', change, bar });
const open = (question: string, how: AskHow = 'phones'): Command => {
  return { type: 'OpenQuestion', id: 'c', round: 'r1', question, how };
};
const ordered = (...changes: SoundChange[]) =>
  changes.map((change) => ({ kind: 'order', order: { order: 'change', round: 'r1', change } }));
const written: SoundChange = { kind: 'feel', feel: 'written' };
const driving: SoundChange = { kind: 'feel', feel: 'driving' };
const still: NewEvent = { type: 'SettingsChanged', settings: { soundFollows: false } };
const soundOf = (...events: NewEvent[]) => hostView(fold(events), peopleIn([]), LIVE, 'page-1').sound;

describe('R92 tones', () => {
  const tone = (tone: Tone): Command => ({ type: 'RequestTone', id: 'c', tone });

  test.each<Tone>([{ kind: 'reference' }, { kind: 'string', string: 6 }, { kind: 'bass-check' }])(
    '%j is ordered of the page that holds the sound, before any round too, and nothing is written',
    (wanted) => {
      const sounds = { ok: true, events: [], effects: [{ kind: 'order', order: { order: 'tone', tone: wanted } }] };
      for (const sender of [DESK, HOST]) {
        expect(given(opened).when(sender, tone(wanted), held).decision).toEqual(sounds);
        expect(given(...base).when(sender, tone(wanted), held).decision).toEqual(sounds);
      }
      given(opened).when(student('s1'), tone(wanted), held).refused('not-teacher');
    },
  );

  test('not beside a vamp, and not where no page holds the sound', () => {
    const reference = tone({ kind: 'reference' });
    given(...sounding)
      .when(DESK, reference, held)
      .refused('vamp-plays');
    given(...base)
      .when(DESK, reference)
      .refused('no-host-sound');
    const stopped: NewEvent = { type: 'VampStopped', round: 'r1' };
    expect(given(...sounding, stopped).when(DESK, reference, held).decision.ok).toBe(true);
  });
});

describe('R93 what goes on beside what sounds of the loop', () => {
  test('a vamp begins as it is written, climbing nowhere, with the band of the class', () => {
    const start = { playing: true, round: 'r1', change: { kind: 'full' }, tempo: 100, climb: null, feel: 'written' };
    expect(soundOf(...sounding)).toEqual({ ...start, band: { kit: false, bass: false } });
    const band: NewEvent = { type: 'SettingsChanged', settings: { band: { kit: true, bass: true } } };
    expect(soundOf(...base, band, begun)).toEqual({ ...start, band: { kit: true, bass: true } });
    // The class's choice is for the next vamp; and each begins anew.
    expect(soundOf(...sounding, band).band).toEqual({ kit: false, bass: false });
    const all = [took(driving), took({ kind: 'climb', to: 120 }), took({ kind: 'band', kit: true, bass: false })];
    expect(soundOf(...sounding, ...all)).toEqual({
      ...start,
      climb: 120,
      feel: 'driving',
      band: { kit: true, bass: false },
    });
    expect(soundOf(...sounding, ...all, { ...begun, tempo: 96 })).toEqual({
      ...start,
      tempo: 96,
      band: { kit: false, bass: false },
    });
    expect(soundOf(...sounding, ...all, { type: 'VampStopped', round: 'r1' })).toMatchObject({
      playing: false,
      climb: null,
      feel: 'written',
      band: { kit: false, bass: false },
    });
  });

  test.each<SoundChange>([
    { kind: 'climb', to: 112 },
    driving,
    { kind: 'band', kit: true, bass: false },
    { kind: 'tempo', tempo: 96 },
  ])('%j leaves what sounds of the loop, and is told once', (one) => {
    const hold = took({ kind: 'hold', slot: 1 });
    expect(soundOf(...sounding, hold, took(one)).change).toEqual({ kind: 'hold', slot: 1 });
    given(...sounding)
      .when(HOST, tells(one), held)
      .gives({ ok: true, events: [took(one)] });
    given(...sounding, took(one))
      .when(HOST, tells(one, 9), held)
      .gives({ ok: true, events: [] });
    expect(given(...sounding).when(DESK, change(one), held).decision).toEqual({
      ok: true,
      events: [],
      effects: ordered(one),
    });
  });

  test('a climb ends at its mark, and where the page says that it climbs no higher', () => {
    const climbing = [...sounding, took({ kind: 'climb', to: 112 })];
    const step = (tempo: number) => took({ kind: 'tempo', tempo });
    expect(soundOf(...climbing, step(104))).toMatchObject({ tempo: 104, climb: 112 });
    expect(soundOf(...climbing, step(104), step(112))).toMatchObject({ tempo: 112, climb: null });
    // A slower groove was swapped in.
    expect(soundOf(...climbing, step(92))).toMatchObject({ tempo: 92, climb: 112 });
    // Another tempo was asked for, or to stay at this one.
    const ends: SoundChange = { kind: 'climb', to: 104 };
    given(...climbing, step(104))
      .when(HOST, tells(ends), held)
      .gives({ ok: true, events: [took(ends)] });
    expect(soundOf(...climbing, step(104), took(ends))).toMatchObject({ tempo: 104, climb: null });
    given(...climbing, step(104), took(ends))
      .when(HOST, tells(ends), held)
      .gives({ ok: true, events: [] });
    // At another tempo no answer is blamed on it: each step is one.
    expect(fold(climbing).rounds[0]?.tempoChanged).toBe(false);
    expect(fold([...climbing, step(104)]).rounds[0]?.tempoChanged).toBe(true);
  });

  test('a climb goes up, to a tempo that the groove bears in its feel', () => {
    const climb = (to: number, ...events: NewEvent[]) =>
      given(...sounding, ...events).when(DESK, change({ kind: 'climb', to }), held);
    const [high, driven] = [grooveById('relaxed-alternate').tempo[1], grooveById('driving-eighths').tempo[1]];
    climb(100).refused('climb-not-up', { found: 100, tempo: 100, high });
    climb(90).refused('climb-not-up', { found: 90, tempo: 100, high });
    climb(high + 1).refused('tempo-out-of-range', { found: high + 1, low: 30, high });
    climb(29).refused('tempo-out-of-range', { found: 29, low: 30, high });
    climb(Number.NaN).refused('climb-not-up', { found: Number.NaN, tempo: 100, high });
    expect(climb(high).decision.ok).toBe(true);
    climb(110, took({ kind: 'tempo', tempo: 110 })).refused('climb-not-up', { found: 110, tempo: 110, high });
    // The driving groove goes faster.
    expect(climb(driven, took(driving)).decision.ok).toBe(true);
    given(...sounding, took(driving))
      .when(DESK, change({ kind: 'tempo', tempo: driven + 1 }), held)
      .refused('tempo-out-of-range', { found: driven + 1, low: 30, high: driven });
  });

  test('who waits for silence goes on waiting; another sound ends the wait', () => {
    const waiting = given(...sounding, { type: 'MemoryAwaited', round: 'r1', question: 'quality-1' });
    for (const one of [driving, { kind: 'climb', to: 120 }, { kind: 'band', kit: true, bass: true }] as const) {
      expect(waiting.when(DESK, change(one), held).decision).toMatchObject({ events: [] });
    }
    expect(waiting.when(DESK, change({ kind: 'drop-out' }), held).decision).toMatchObject({
      events: [{ type: 'MemoryDropped' }],
    });
  });

  test('R75 band and feel let the loop come home; what breaks it off does not', () => {
    const home = (...changes: SoundChange[]) => {
      const [record] = fold([...sounding, ...changes.map((each) => took(each))]).rounds;
      return record === undefined ? null : cameHome(record, moment(60_000));
    };
    expect(home({ kind: 'band', kit: true, bass: true }, driving, { kind: 'climb', to: 120 })).toBe(true);
    expect(home({ kind: 'drop-out' })).toBeNull();
    expect(home({ kind: 'kit-only' }, { kind: 'full' })).toBeNull();
  });

  test('after it has dropped out the loop is back: both are told', () => {
    const out: SoundChange = { kind: 'drop-out' };
    expect(soundOf(...sounding, took(out)).change).toEqual(out);
    given(...sounding, took(out))
      .when(HOST, tells({ kind: 'full' }, 6), held)
      .gives({ ok: true, events: [took({ kind: 'full' }, 6)] });
    expect(soundOf(...sounding, took(out), took({ kind: 'full' }, 6)).change).toEqual({ kind: 'full' });
  });
});

/** Reason for refusing each sound while each kind is asked; where nothing stands it is played. */
const HIDDEN: readonly (readonly [SoundChange, (kind: string) => string | null])[] = [
  [{ kind: 'full' }, () => null],
  [{ kind: 'again' }, () => null],
  [{ kind: 'soft' }, () => null],
  // It would be heavier on what is asked to be heavy.
  [{ kind: 'bass-forward' }, (kind) => (kind === 'accents' ? 'groove-asked' : null)],
  [{ kind: 'drop-out' }, () => null],
  [{ kind: 'silence' }, (kind) => (isTapped(kind) ? 'groove-asked' : null)],
  // Kit and bass keep the beat.
  [{ kind: 'kit-only' }, (kind) => (isTapped(kind) ? null : isOfGroove(kind) ? 'groove-asked' : 'chord-asked')],
  [
    { kind: 'muted' },
    (kind) => {
      if (['roles', 'opened', 'change-place'].includes(kind)) return 'groove-asked';
      return isOfGroove(kind) ? null : 'chord-asked';
    },
  ],
  [{ kind: 'bass-alone' }, (kind) => (isOfGroove(kind) && !isTapped(kind) ? 'groove-asked' : null)],
  [{ kind: 'echo', groove: 'x' }, (kind) => (isOfGroove(kind) ? 'groove-asked' : 'chord-asked')],
  ...(['root-alone', 'chord-alone', 'root-then-chord'] as const).map(
    (mode) =>
      [
        { kind: mode, slot: 0 },
        (kind: string) => (isOfGroove(kind) ? 'groove-asked' : isOfLoop(kind) ? 'loop-asked' : null),
      ] as const,
  ),
  [
    { kind: 'hold', slot: 0 },
    (kind) => (kind === 'change-place' ? 'groove-asked' : isOfLoop(kind) ? 'loop-asked' : null),
  ],
  [
    { kind: 'pair', slot: 1 },
    (kind) => (kind === 'change-place' ? 'groove-asked' : isOfLoop(kind) ? 'loop-asked' : null),
  ],
  [{ kind: 'settler', index: 0 }, (kind) => (isOfLoop(kind) ? 'loop-asked' : null)],
  [{ kind: 'tempo', tempo: 90 }, (kind) => (isTapped(kind) ? 'groove-asked' : null)],
  [{ kind: 'climb', to: 110 }, (kind) => (isTapped(kind) ? 'groove-asked' : null)],
  [{ kind: 'band', kit: true, bass: true }, () => null],
  [written, () => null],
  [driving, (kind) => (isOfGroove(kind) && !isTapped(kind) ? 'groove-asked' : null)],
];
const isTapped = (kind: string) => TAPPED_KINDS.has(kind as Kind);
const isOfGroove = (kind: string) => RHYTHM_KINDS.has(kind as Kind);
const isOfLoop = (kind: string) => kind === 'count' || kind === 'order';

describe('R59 what is asked can be heard', () => {
  const round = played('Em D', 1, 'relaxed-alternate', { counted: true });

  test.each(HIDDEN)('while each kind is asked %j is refused or not', (sound, reason) => {
    for (const kind of KINDS) {
      const id = questionId(kind, kind === 'direction' || kind === 'distance' ? 1 : 0);
      const state = fold([opened, started({ ...round, questions: [{ id, kind, target: 0 }] }), begun, asked('a1', id)]);
      expect([kind, hidesWhatIsAsked(sound, state)]).toEqual([kind, reason(kind)]);
    }
  });

  test('a sound that would mislead is refused, and brought back where it sounds already or takes only now', () => {
    const counting = [opened, started(round), begun];
    const alone: SoundChange = { kind: 'chord-alone', slot: 1 };
    for (const [question, sound, reason] of [
      ['count-0', alone, 'loop-asked'],
      ['quality-0', { kind: 'kit-only' }, 'chord-asked'],
      ['strokes-0', { kind: 'kit-only' }, 'groove-asked'],
      ['strokes-0', { kind: 'root-then-chord', slot: 0 }, 'groove-asked'],
    ] as const) {
      given(...counting, asked('a1', question))
        .when(DESK, change(sound), held)
        .refused(reason);
      const full = { effects: ordered({ kind: 'full' }) };
      expect(given(...counting, still, took(sound)).when(DESK, open(question), held).decision).toMatchObject(full);
      expect(given(...counting, still, asked('a1', question)).when(HOST, tells(sound), held).decision).toMatchObject(
        full,
      );
    }
    for (const [question, sound] of [
      ['root-0', { kind: 'root-then-chord', slot: 0 }],
      ['direction-1', { kind: 'bass-forward' }],
      ['count-0', { kind: 'drop-out' }],
    ] as const) {
      expect(given(...counting, asked('a1', question)).when(DESK, change(sound), held).decision).toMatchObject({
        effects: ordered(sound),
      });
    }
  });

  test('R67 a slot of the round', () => {
    for (const kind of ['chord-alone', 'root-then-chord'] as const) {
      given(...sounding)
        .when(DESK, change({ kind, slot: 2 }), held)
        .refused('message-not-readable', { what: 'slot 2 of 2' });
      expect(given(...sounding).when(DESK, change({ kind, slot: 1 }), held).decision).toMatchObject({
        effects: ordered({ kind, slot: 1 }),
      });
    }
  });
});

describe('R94 strokes are asked as they were written', () => {
  const swapped = [...sounding, took(driving)];
  const strokesDone: NewEvent[] = [asked('a0', 'strokes-0'), closed('a0')];

  test('opening them brings the written feel first', () => {
    expect(given(...swapped).when(DESK, open('strokes-0'), held).decision).toMatchObject({ effects: ordered(written) });
    const elsewhere = [...swapped, took({ kind: 'hold', slot: 1 })];
    expect(given(...elsewhere).when(DESK, open('strokes-0', 'aloud'), held).decision).toMatchObject({
      effects: ordered(written, { kind: 'full' }),
    });
    expect(given(...sounding).when(DESK, open('strokes-0'), held).decision).not.toHaveProperty('effects');
    // Every other question can be answered in any feel.
    expect(given(...swapped).when(DESK, open('direction-1'), held).decision).not.toHaveProperty('effects');
    const again = given(...sounding, asked('a1', 'strokes-0'), closed('a1'), took(driving));
    expect(again.when(DESK, { type: 'AnswerAgain', id: 'c', ask: 'a1' }, held).decision).toMatchObject({
      effects: ordered(written),
    });
  });

  test('while they are asked the feel stays; a swap that takes only now is taken back', () => {
    const asking = given(...sounding, asked('a1', 'strokes-0'));
    asking.when(DESK, change(driving), held).refused('groove-asked');
    expect(asking.when(DESK, change(written), held).decision).toMatchObject({ effects: ordered(written) });
    expect(asking.when(HOST, tells(driving), held).decision).toMatchObject({
      events: [took(driving)],
      effects: ordered(written),
    });
    const after = given(...sounding, asked('a1', 'strokes-0'), closed('a1'));
    expect(after.when(DESK, change(driving), held).decision.ok).toBe(true);
  });

  test('so it does while only some are asked about them', () => {
    const depth: NewEvent = { type: 'DepthSet', student: 's1', depth: 'floor' };
    // Who comes later was not asked with the others.
    const some: NewEvent[] = [opened, started(played('Em D')), ...strokesDone, joined('s1', 1), depth, begun];
    const qualities = [asked('a1', 'quality-0'), closed('a1'), asked('a2', 'quality-1'), closed('a2')];
    const before = [...some, ...qualities, asked('a3', 'direction-1'), closed('a3')];
    const instead = (question: string | null): NewEvent => {
      return { type: 'AskedInstead', student: 's1', ask: 'a5', question };
    };
    expect(given(...before).when(DESK, open('keys-0'), held).decision).toMatchObject({
      events: [asked('a5', 'keys-0'), instead('strokes-0')],
    });
    given(...before, asked('a5', 'keys-0'), instead('strokes-0'))
      .when(DESK, change(driving), held)
      .refused('groove-asked');
    // In another feel nobody is asked about them in the place of something else.
    expect(given(...before, took(driving)).when(DESK, open('keys-0'), held).decision).toMatchObject({
      events: [asked('a5', 'keys-0'), instead(null)],
    });
  });

  test('from memory only what was written is asked', () => {
    given(...swapped)
      .when(DESK, open('strokes-0', 'memory'), held)
      .refused('groove-swapped');
    expect(given(...swapped, took(written)).when(DESK, open('strokes-0', 'memory'), held).decision.ok).toBe(true);
    expect(given(...swapped).when(DESK, open('direction-1', 'memory'), held).decision.ok).toBe(true);
  });

  test('a swap that takes between the press and the silence calls off strokes from memory, and nothing else', () => {
    const awaits = (question: string): NewEvent => ({ type: 'MemoryAwaited', round: 'r1', question });
    expect(given(...sounding, awaits('strokes-0')).when(HOST, tells(driving), held).decision).toMatchObject({
      events: [took(driving), { type: 'MemoryDropped', round: 'r1' }],
    });
    for (const [question, change] of [
      ['direction-1', driving],
      ['strokes-0', { kind: 'silence' }],
    ] as const)
      given(...sounding, awaits(question))
        .when(HOST, tells(change), held)
        .gives({ ok: true, events: [took(change)] });
  });

  test('nor are they asked from memory in the place of something else, once the feel was swapped', () => {
    const depth: NewEvent = { type: 'DepthSet', student: 's1', depth: 'floor' };
    // Who comes later was not asked with the others.
    const some: NewEvent[] = [opened, started(played('Em D')), ...strokesDone, joined('s1', 1), depth, begun];
    const done = ['quality-0', 'quality-1', 'direction-1'].flatMap((question, index): NewEvent[] => [
      asked(`a${index + 1}`, question),
      closed(`a${index + 1}`),
    ]);
    const silent: NewEvent[] = [{ type: 'MemoryAwaited', round: 'r1', question: 'keys-0' }, took({ kind: 'silence' })];
    const instead = (...before: NewEvent[]) => {
      const room = given(...some, ...done, ...before, ...silent);
      const { decision } = room.when(HOST, { type: 'SilenceKept', id: 'c', round: 'r1' }, held);
      return decision.ok
        ? decision.events.flatMap((event) => (event.type === 'AskedInstead' ? [event.question] : []))
        : null;
    };
    expect(instead()).toEqual(['strokes-0']);
    expect(instead(took(driving))).toEqual([null]);
  });
});
