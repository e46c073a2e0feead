import { describe, expect, test } from 'vitest';
import { grooveById, GROOVES, parseGroove } from '../../shared-theory/grooves.ts';
import { BEATS_PER_BAR } from '../../shared-theory/meters.ts';
import { contactsOf, perform, type SoundedNote } from '../../shared-theory/perform.ts';
import { fingerStep, strumSpread } from '../../shared-theory/strum-spread.ts';
import { truthOf } from '../../shared-theory/truth.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import { voice } from '../../shared-theory/voice.ts';

const vampOf = (text: string, groove: string, tempo: number) => {
  const id = groove.includes('|') ? parseGroove(groove) : grooveById(groove);
  return voice({
    slots: parseVamp(text, BEATS_PER_BAR[id.meter]),
    groove: id,
    tempo,
    seed: 1,
    alternatingBass: true,
  });
};

/** Strokes as text: time in seconds, the chord's slot, touch, and each string with what plucked it. */
const strokes = (notes: readonly SoundedNote[]) => {
  const seen: { time: number; text: string }[] = [];
  const by = { thumb: 't', finger: 'f' };
  for (const note of notes) {
    const last = seen.at(-1);
    const string = `${note.string}${note.by ? by[note.by] : ''}`;
    if (last && note.time - last.time < 0.06) last.text += string;
    else
      seen.push({
        time: note.time,
        text: `${note.time.toFixed(2)} ${note.chord} ${note.stroke} ${note.touch} ${string}`,
      });
  }
  return seen.map(({ text }) => text);
};

/** One bar of four strokes in 4/4 on the numbers, at 60 beats a minute. */
const beats = (strk: string, zone: string, tch: string, acc: string, chg = '....') => {
  const apart = (tokens: string, between: string) => Array.from(tokens).join(between) + between;
  const lanes = [apart(strk, '-'), apart(zone, '.'), apart(tch, '.'), apart(acc, '0'), apart(chg, '.')];
  const names = ['strk', 'zone', 'tch', 'acc', 'chg'];
  return ['four-beats, Four beats | E8 | 4/4 | 60 | r=1', ...names.map((name, at) => `${name} ${lanes[at]}`)].join(
    ' / ',
  );
};
const sounding = (groove: string, text = 'Em') => perform(vampOf(text, groove, 60)).notes;

describe('a pushed change', () => {
  test('the last up sounds the next chord and rings over; its first slot is silent, the very first is not', () => {
    const performance = perform(vampOf('Em D', 'pushed-change', 120), { loops: 2 });
    const first = ['down open 654321', 'down open 654321', 'up open 123', 'up open 123'];
    expect(strokes(performance.notes)).toEqual([
      `0.00 0 ${first[0]}`,
      `0.50 0 ${first[1]}`,
      `0.75 0 ${first[2]}`,
      `1.25 0 ${first[3]}`,
      // The D before its bar, all of it, and no stroke on its one.
      '1.75 1 up open 1234',
      '2.50 1 down open 4321',
      '2.75 1 up open 123',
      '3.25 1 up open 123',
      // The loop leads into itself.
      '3.75 0 up open 123456',
      `4.50 0 ${first[1]}`,
      `4.75 0 ${first[2]}`,
      `5.25 0 ${first[3]}`,
      '5.75 1 up open 1234',
      '6.50 1 down open 4321',
      '6.75 1 up open 123',
      '7.25 1 up open 123',
      '7.75 0 up open 123456',
    ]);
    expect(performance.bars.map(({ chord }) => chord)).toEqual([0, 1, 0, 1]);
    // The old chord stops where the new one begins, and the push rings over the bar line.
    for (const note of performance.notes.filter(({ chord, time }) => chord === 0 && time < 1.7))
      expect(note.time + note.duration).toBeLessThanOrEqual(1.75 + 1e-9);
    const pushed = performance.notes.filter(({ time, stroke }) => time > 1.7 && time < 2 && stroke === 'up');
    for (const note of pushed) expect(note.time + note.duration).toBeGreaterThan(2.49);
  });

  test('a chord of two bars is pushed on inside too', () => {
    const { notes } = perform(vampOf('| G | . | C |', 'pushed-change', 120));
    expect(strokes(notes).filter((text) => /^(1\.75|2\.00|2\.50|3\.75|4\.00|5\.75)/.test(text))).toEqual([
      '1.75 0 up open 123456',
      '2.50 0 down open 654321',
      '3.75 1 up open 12345',
      '5.75 0 up open 123456',
    ]);
  });

  test.each([
    ['Em D', ['up'], [40, 50], [64, 66]],
    ['G C', ['up'], [43, 48], [67, 64]],
    ['C Am F G', ['down', 'down', 'down'], [48, 45, 41, 43], [64, 64, 65, 67]],
    ['| A . E . |', ['down'], [45, 40], [64, 64]],
  ])('the truth of %s is that of its chords', (text, directions, bass, top) => {
    const vamp = vampOf(text, 'pushed-change', 100);
    for (const human of [false, true]) {
      for (const loops of [1, 3]) {
        const truth = truthOf(vamp, perform(vamp, { human, loops }));
        expect(truth).toMatchObject({ directions, bass, top, strokes: 'down-up' });
        const plain = vampOf(text, 'quarter-downs', 100);
        expect(truth.qualities).toEqual(truthOf(plain, perform(plain)).qualities);
      }
    }
  });

  test('a bar cut short leads on as a whole one does', () => {
    const slots = parseVamp('Em D', 4).map((slot) => ({ ...slot, beats: 3.5 }));
    const { notes } = perform(voice({ slots, groove: 'pushed-change', tempo: 120, seed: 1 }), { loops: 2 });
    // The first bar of eight slots pushes into the second, in the D that began just before; the loop ends before the next push.
    expect(strokes(notes).filter((text) => text.startsWith('1.75') || text.startsWith('3.50'))).toEqual([
      '1.75 1 down open 4321',
      '3.50 0 down open 654321',
    ]);
  });

  test('contacts tell where a push comes from the second time round', () => {
    const contacts = contactsOf(vampOf('Em D', 'pushed-change', 120));
    expect(contacts).toHaveLength(16);
    expect(contacts.flatMap(({ pushes, beats: at, chord }) => (pushes ? [[at, chord]] : []))).toEqual([
      [3.5, 1],
      [7.5, 0],
    ]);
    expect(contacts[0]).toMatchObject({ opens: true, cell: { stroke: 'down' }, again: { stroke: 'down-silent' } });
    expect(contacts[8]).toMatchObject({ beats: 4, opens: true, chord: 1, cell: { stroke: 'down-silent' } });
    const plain = contactsOf({ ...vampOf('Em D', 'quarter-downs', 100), grooveText: '' });
    expect(plain.map(({ beats: at, chord, opens }) => [at, chord, opens])).toEqual([
      [0, 0, true],
      [4, 1, true],
    ]);
  });
});

describe('without a pick', () => {
  test('bossa-like: the thumb takes turns on the bass, the fingers pluck and stop their own strings', () => {
    const { notes } = perform(vampOf('| C | . |', 'bossa-like', 120));
    expect(strokes(notes)).toEqual([
      '0.00 0 down open 5t1f2f3f',
      '0.75 0 up choke 1f2f3f',
      '1.00 0 down open 6t',
      '1.50 0 up choke 1f2f3f',
      '2.00 0 down open 5t',
      '2.50 0 up choke 1f2f3f',
      '3.00 0 down open 6t',
      '3.25 0 up choke 1f2f3f',
    ]);
    // What the thumb struck rings on beneath.
    const thumbs = notes.filter(({ by }) => by === 'thumb');
    expect(thumbs.map(({ duration }) => Number(duration.toFixed(3)))).toEqual([2, 2, 2, 1]);
    expect(notes.filter(({ by }) => by === 'finger').every(({ stroke }) => stroke === 'up')).toBe(true);
    expect(thumbs.every(({ stroke, bass }) => stroke === 'down' && bass === true)).toBe(true);
    const vamp = vampOf('| C | . |', 'bossa-like', 120);
    expect(truthOf(vamp, perform(vamp))).toMatchObject({ bass: [48], strokes: null, bassAlternates: true, top: [64] });
  });

  test('each chord opens with its pinch, in the second bar of the pattern too', () => {
    const { notes } = perform(vampOf('C F', 'bossa-like', 120));
    expect(strokes(notes).filter((text) => text.startsWith('2.00'))).toEqual(['2.00 1 down open 6t1f2f3f']);
  });

  // GuitarSet (Xi et al., 2018), excerpt 03_BN3-119-G_comp, as its annotations give it: three notes 7.8 ms, four 15.7 ms.
  test('fingers pluck three notes within about 8 ms and four within 16, at any tempo', () => {
    expect(2 * fingerStep(3)).toBeCloseTo(0.0078, 3);
    expect(3 * fingerStep(4)).toBeCloseTo(0.0157, 3);
    expect(fingerStep(1)).toBe(0);
    expect(fingerStep(2)).toBeLessThan(0.006);
    const plucked = sounding(beats('PFTF', 'MHAM', 'oooo', '3213'));
    expect(strokes(plucked)).toEqual([
      '0.00 0 down open 5t2f3f4f',
      '1.00 0 up open 1f2f3f',
      '2.00 0 down open 6t5t4t3t2t1t',
      '3.00 0 up open 2f3f4f5f',
    ]);
  });
});

describe('touches', () => {
  const ends = (notes: readonly SoundedNote[]) => notes.map((note) => Number((note.time + note.duration).toFixed(2)));

  test('open strings stop at a mute, those let ring at their own next stroke or the chord’s end', () => {
    const open = sounding(beats('DDDD', 'BHHB', 'opco', '3333')).filter(({ string }) => string === 6);
    expect(ends(open)).toEqual([1, 4]);
    const ring = sounding(beats('DDDD', 'BHHB', 'rpco', '3333')).filter(({ string }) => string === 6);
    expect(ends(ring)).toEqual([3, 4]);
    const dead = sounding(beats('DDDD', 'BAHH', 'rxpp', '3333')).filter(({ string }) => string === 6);
    expect(ends(dead)).toEqual([1, 1.06]);
    const changes = sounding(beats('DD--', 'BH..', 'rp..', '3300'), 'Em G').filter(({ touch }) => touch === 'ring');
    expect(ends(changes)).toEqual([4, 8]);
  });

  test('a half mute lasts longer than a palm, a dead stroke shortest', () => {
    const notes = sounding(beats('DDDD', 'AAAA', 'hpxc', '3333'));
    const lasts = [0, 1, 2, 3].map((beat) => notes.find(({ time }) => Math.floor(time + 0.001) === beat)?.duration);
    expect(lasts.map((seconds) => Number(seconds?.toFixed(2)))).toEqual([0.5, 0.18, 0.06, 0.12]);
  });
});

describe('what a stroke tells of its strings', () => {
  test('the lowest string of a stroke that plays the bass is marked, of others none', () => {
    const basses = (strk: string, zone: string, tch = 'oooo') =>
      sounding(beats(strk, zone, tch, '3333')).flatMap(({ bass, string, time }) =>
        bass ? [[Math.floor(time + 0.001), string]] : [],
      );
    expect(basses('DDDD', 'BLAb')).toEqual([
      [0, 6],
      [1, 6],
      [2, 6],
      [3, 5],
    ]);
    expect(basses('DDUU', 'AMHA')).toEqual([[0, 6]]);
    expect(basses('DUDD', 'ALAB', 'oxxp')).toEqual([
      [0, 6],
      [3, 6],
    ]);
    expect(basses('DUUU', 'ABLH')).toEqual([
      [0, 6],
      [1, 6],
      [2, 6],
    ]);
    for (const { id, tempo } of GROOVES) {
      const { notes } = perform(vampOf('Em', id, tempo[1]));
      expect([id, notes.find(({ bass }) => bass)?.midi]).toEqual([id, 40]);
    }
  });

  test('open strings of the shape that it leaves alone ring along, under no mute', () => {
    // Em is 0 2 2 0 0 0: open E2 40, G3 55, B3 59, E4 64.
    const notes = sounding(beats('DDDD', 'BHLB', 'orpc', '3333'));
    const free = [0, 1, 2, 3].map((beat) =>
      notes.filter(({ time }) => Math.floor(time + 0.001) === beat).map((note) => note.free),
    );
    expect(free).toEqual([[[55, 59, 64]], [[40], [40], [40]], [undefined, undefined, undefined], [undefined]]);
    expect(sounding(beats('D---', 'A...', 'o...', '3000')).every((note) => note.free === undefined)).toBe(true);
    expect(sounding(beats('D---', 'B...', 'o...', '3000'), 'F').every((note) => note.free === undefined)).toBe(true);
  });
});

describe('spread', () => {
  const milliseconds = (id: string, tempo: number) => Math.round(strumSpread(grooveById(id), tempo) * 10_000) / 10;

  // Common practice: 25 to 45 ms in a slow ballad, 12 to 22 relaxed, 6 to 12 driving; the faster the shorter.
  test.each([
    ['sixteenth-ballad', 25, 45],
    ['six-eight-ballad', 25, 45],
    ['relaxed-alternate', 12, 30],
    ['campfire-strum', 12, 22],
    ['waltz', 12, 22],
    ['three-three-two', 12, 22],
    ['seven-in-two-two-three', 12, 22],
    ['pushed-change', 12, 22],
    ['offbeat-skank', 12, 30],
    ['funk-sixteenths', 6, 12],
    ['gallop', 6, 12],
    ['train-beat', 6, 12],
    ['driving-eighths', 6, 12],
    ['mute-and-open', 6, 12],
    ['eighth-downs-backbeat', 6, 12],
    ['foot-and-closed-hat', 6, 12],
  ] as const)('%s stays within %d and %d ms', (id, least, most) => {
    const [low, high] = grooveById(id).tempo;
    expect(milliseconds(id, low)).toBeLessThanOrEqual(most);
    expect(milliseconds(id, high)).toBeGreaterThanOrEqual(least);
    expect(milliseconds(id, high)).toBeLessThan(milliseconds(id, low));
  });

  // Strings more than 60 ms apart are heard as one after the other (Sapp, Mazurka Project, experiments on the order of onsets).
  test('no stroke falls apart into single notes, nor into the next one', () => {
    for (const groove of GROOVES) {
      const [low, high] = groove.tempo;
      for (const tempo of [low, high]) {
        expect(strumSpread(groove, tempo)).toBeLessThanOrEqual(0.045);
        expect(strumSpread(groove, tempo)).toBeLessThan((0.2 * 60) / tempo);
      }
    }
  });
});

describe('compound and odd meters', () => {
  test('slow twelve-eight: four big beats of three, counted by the big beats', () => {
    const vamp = vampOf('G D', 'slow-twelve-eight', 60);
    const { notes, bars, seconds } = perform(vamp);
    expect(seconds).toBeCloseTo(8, 9);
    expect(bars.map(({ time }) => time)).toEqual([0, 4]);
    expect(strokes(notes).slice(0, 7)).toEqual([
      '0.00 0 down open 6',
      '0.33 0 down open 4321',
      '0.67 0 down open 4321',
      '1.00 0 down open 654321',
      '1.33 0 down open 4321',
      '1.67 0 down open 4321',
      '2.00 0 down open 6',
    ]);
    expect(truthOf(vamp, perform(vamp))).toMatchObject({ bass: [43, 50], directions: ['up'], strokes: 'all-downs' });
  });

  test('seven-eight: bars of three and a half quarters, groups begin with a down', () => {
    const vamp = vampOf('Am G', 'seven-in-two-two-three', 120);
    const { notes, bars, seconds } = perform(vamp, { loops: 2 });
    expect(seconds).toBeCloseTo(7, 9);
    expect(bars.map(({ time }) => time)).toEqual([0, 1.75, 3.5, 5.25]);
    expect(strokes(notes).slice(0, 8)).toEqual([
      '0.00 0 down open 54321',
      '0.25 0 up open 123',
      '0.50 0 down open 54321',
      '0.75 0 up open 123',
      '1.00 0 down open 54321',
      '1.25 0 down open 54321',
      '1.50 0 up open 123',
      '1.75 1 down open 654321',
    ]);
    expect(truthOf(vamp, perform(vamp))).toMatchObject({ bass: [45, 43], directions: ['down'], strokes: null });
  });

  test('a bar of seven eighths is typed with one chord or an eighth a token', () => {
    const typed = parseVamp('| Am . . . G . . | C |', BEATS_PER_BAR['7/8']);
    expect(typed.map(({ chord, beats: lasts }) => [chord.root, lasts])).toEqual([
      ['A', 2],
      ['G', 1.5],
      ['C', 3.5],
    ]);
    expect(() => parseVamp('| Am G |', 3.5)).toThrow();
    const vamp = voice({ slots: typed, groove: 'seven-in-two-two-three', tempo: 120, seed: 1 });
    expect(truthOf(vamp, perform(vamp))).toMatchObject({ bass: [45, 43, 48] });
  });
});
