import { describe, expect, test } from 'vitest';
import { withBand } from '../../../shared-theory/band.ts';
import { chordNotes, readSymbol, SUFFIXES } from '../../../shared-theory/chords.ts';
import { grooveById, GROOVES, parseGroove } from '../../../shared-theory/grooves.ts';
import { DIVISIONS } from '../../../shared-theory/notation/note-values.ts';
import { layoutOf } from '../../../shared-theory/notation/sections.ts';
import { perform, type Performance } from '../../../shared-theory/perform.ts';
import { writeMusicXml } from '../../../shared-theory/sound/musicxml.ts';
import type { VoicedVamp } from '../../../shared-theory/vamps.ts';
import { readScore, textOf, type ReadNote } from './read-score.ts';
import { everyGroove, scoreOf, vampIn, vampOf, WORDS } from './scores.ts';

const banded = (vamp: VoicedVamp) => scoreOf(vamp, (played) => withBand(vamp, played, { kit: true, bass: true }));
const campfire = grooveById('campfire-strum');

/** Divisions of each note type without dots, by the element `type` of MusicXML 4.0. */
const LENGTHS: Readonly<Record<string, number>> = { whole: 4, half: 2, quarter: 1, eighth: 0.5, '16th': 0.25 };

describe('the rules of MusicXML 4.0', () => {
  // "duration" and "divisions": the notes of a bar add up to its length; "type" with its dots says the same length.
  test('in every groove the notes of each bar fill it, and each looks as long as it is', () => {
    for (const groove of GROOVES) {
      const { vamp, xml } = banded(vampIn(groove, 'Em D'));
      const { bars } = layoutOf(vamp);
      for (const part of readScore(xml)) {
        expect(part.length % bars.length).toBe(0);
        for (const [index, { length, notes }] of part.entries()) {
          const bar = bars[index % bars.length];
          expect([groove.id, length]).toEqual([groove.id, (bar?.to ?? 0) - (bar?.from ?? 0)]);
          for (const { duration, type, dots, xml: note } of notes) {
            if (note.includes('measure="yes"')) expect(duration).toBe(length);
            else expect(duration).toBe(DIVISIONS * (LENGTHS[type ?? ''] ?? 0) * (dots === 1 ? 1.5 : 1));
          }
        }
      }
    }
  });

  // "time": the bar's length is beats of the beat type.
  test('a bar that is cut short has a meter of its own', () => {
    const times = (vamp: VoicedVamp) =>
      readScore(scoreOf(vamp).xml)[0]?.map(({ xml }) => [textOf(xml, 'beats'), textOf(xml, 'beat-type')]);
    expect(times(vampIn(campfire, 'Em D C', 2))).toEqual([
      ['4', '4'],
      ['2', '4'],
    ]);
    expect(times(vampIn(campfire, 'Em', 2))).toEqual([['2', '4']]);
    expect(times(vampIn(grooveById('six-eight-ballad'), 'Em D C', 1))).toEqual([
      ['6', '8'],
      ['3', '8'],
    ]);
    expect(times(vampIn(grooveById('seven-in-two-two-three'), 'Em D'))).toEqual([
      ['7', '8'],
      [null, null],
    ]);
  });

  // "metronome", "sound": the beat that is counted, and quarters a minute.
  test('the tempo counts dotted quarters in six and twelve eighths', () => {
    const mark = (groove: string) => {
      const { xml, vamp } = scoreOf(vampIn(grooveById(groove), 'Em'));
      return [
        xml.includes('<beat-unit-dot/>'),
        Number(textOf(xml, 'per-minute')) / vamp.tempo,
        quarters(xml) / vamp.tempo,
      ];
    };
    const quarters = (xml: string) => Number(/<sound tempo="([^"]+)"/.exec(xml)?.[1]);
    expect(mark('campfire-strum')).toEqual([false, 1, 1]);
    expect(mark('six-eight-ballad')).toEqual([true, 1, 1.5]);
    expect(mark('slow-twelve-eight')).toEqual([true, 1, 1.5]);
    expect(mark('seven-in-two-two-three')).toEqual([false, 1, 1]);
  });

  // "swing": first and second are whole numbers.
  test('a swung groove is written straight under its swing', () => {
    const shuffle = grooveById('low-string-shuffle');
    const { xml } = scoreOf(vampIn(shuffle, 'Em'));
    const swing = /<swing>[^]*?<\/swing>/.exec(xml)?.[0] ?? '';
    expect([textOf(swing, 'first'), textOf(swing, 'second'), textOf(swing, 'swing-type')]).toEqual([
      '2',
      '1',
      'eighth',
    ]);
    expect(xml).toContain('<words>Swing 2:1</words>');
    expect(scoreOf(vampIn(grooveById('quarter-downs'), 'Em')).xml).not.toContain('swing');
  });

  // "repeat": forward at the left of the first bar, backward at the right of the last.
  test('the loop stands between repeat signs', () => {
    for (const [, { xml }] of everyGroove('Em D')) {
      expect(xml.match(/<repeat direction="forward"\/>/g)).toHaveLength(1);
      expect(xml.match(/<repeat direction="backward"\/>/g)).toHaveLength(1);
      expect(xml.indexOf('"forward"')).toBeLessThan(xml.indexOf('"backward"'));
    }
  });

  // "beam": what begins is continued and ends, on each level.
  test('beams begin and end', () => {
    for (const [, { xml }] of everyGroove('Em D')) {
      for (const { notes } of readScore(xml)[0] ?? [])
        for (const level of ['1', '2']) {
          let open = false;
          for (const { xml: note } of notes) {
            const state = new RegExp(`<beam number="${level}">([^<]+)<`).exec(note)?.[1];
            if (state === undefined || state.endsWith('hook')) continue;
            expect(open).toBe(state !== 'begin');
            open = state !== 'end';
          }
          expect(open).toBe(false);
        }
    }
    const { xml } = scoreOf(vampIn(grooveById('gallop'), 'E5'));
    expect(xml).toContain('<beam number="2">');
  });

  test('text is ASCII, and escaped', () => {
    const { xml } = scoreOf(vampIn(campfire, 'Gb'));
    expect(Array.from(xml).filter((sign) => sign !== '\n' && (sign < ' ' || sign > '~'))).toEqual([]);
    expect(xml).toContain('<work-title>A &lt;vamp&gt; &amp; &#8220;more&#8221;</work-title>');
  });

  test('a performance of too few loops is refused', () => {
    const vamp = vampIn(campfire, 'C');
    expect(() => writeMusicXml(vamp, perform(vamp, { loops: 2 }), WORDS)).toThrow(/needs 3 loops of its vamp, not 2/);
  });
});

describe('chords', () => {
  // Values of "kind-value"; an added ninth is a "degree".
  test.each([
    ['C', 'major'],
    ['Cm', 'minor'],
    ['C7', 'dominant'],
    ['Cmaj7', 'major-seventh'],
    ['Cm7', 'minor-seventh'],
    ['Cm(maj7)', 'major-minor'],
    ['C6', 'major-sixth'],
    ['Cm6', 'minor-sixth'],
    ['Cadd9', 'major'],
    ['C5', 'power'],
    ['Csus4', 'suspended-fourth'],
    ['Csus2', 'suspended-second'],
    ['Cdim', 'diminished'],
    ['Cm7b5', 'half-diminished'],
    ['Cdim7', 'diminished-seventh'],
    ['Caug', 'augmented'],
  ])('%s is %s', (symbol, kind) => {
    const { xml } = scoreOf(vampIn(campfire, symbol));
    expect(textOf(xml, 'kind')).toBe(kind);
    expect(/<kind text="([^"]+)"/.exec(xml)?.[1] ?? '').toBe(symbol.slice(1));
    expect(xml.includes('<degree-type>add</degree-type>')).toBe(symbol === 'Cadd9');
    if (symbol === 'Cadd9') expect(textOf(xml, 'degree-value')).toBe('9');
  });

  test('every suffix is among them', () => {
    expect(SUFFIXES).toHaveLength(16);
  });

  test('roots and basses as spelled, the shape once', () => {
    const { xml } = scoreOf(vampIn(campfire, 'Bb F#m D/F# Bb'));
    const roots = [...xml.matchAll(/<root-step>(.)<\/root-step>(?:\s*<root-alter>(-?\d)<)?/g)].map(
      ([, step, alter]) => [step, Number(alter ?? 0)],
    );
    expect(roots).toEqual([
      ['B', -1],
      ['F', 1],
      ['D', 0],
      ['B', -1],
    ]);
    expect(/<bass-step>(.)<\/bass-step>\s*<bass-alter>1</.exec(xml)?.[1]).toBe('F');
    expect(xml.match(/<frame>/g)).toHaveLength(3);
  });

  // "frame-note", "first-fret": strings count from the highest; the fret at the top where it is not the first.
  test('a shape as a fretboard', () => {
    const { vamp, xml } = scoreOf(vampIn(campfire, 'Bb'));
    const dots = [...xml.matchAll(/<string>(\d)<\/string>\s*<fret>(\d+)<\/fret>/g)].map(([, string, fret]) => [
      Number(string),
      Number(fret),
    ]);
    const frets = vamp.slots[0]?.frets ?? [];
    expect(dots).toEqual(frets.flatMap((fret, index) => (fret === null ? [] : [[6 - index, fret]])));
    const high = { ...vamp, slots: vamp.slots.map((slot) => ({ ...slot, frets: [6, 8, 8, 7, 6, 6] })) };
    expect(textOf(scoreOf(high).xml, 'first-fret')).toBe('6');
  });

  test('each note is spelled as its chord is', () => {
    for (const symbol of ['Gm', 'D', 'Gb', 'F#', 'Cm7b5', 'Ebm', 'B7', 'Abaug', 'Cdim7', 'D/F#']) {
      const names = new Set<string>(chordNotes(readSymbol(symbol)));
      const [part = []] = readScore(scoreOf(vampIn(campfire, symbol)).xml);
      for (const { name } of part.flatMap(({ notes }) => notes))
        if (name !== null) expect(names).toContain(name.slice(0, -1));
    }
  });

  // "accidental": a sign stands where neither signature nor bar have it already.
  test('signs stand where the reader needs them', () => {
    const signs = (symbols: string) => {
      const [part = []] = readScore(scoreOf(vampIn(campfire, symbols)).xml);
      return part.map(({ notes }) =>
        notes.flatMap(({ name, xml }) =>
          xml.includes('<accidental>') ? [`${name} ${textOf(xml, 'accidental')}`] : [],
        ),
      );
    };
    // Three keys own these: no signature, and one sharp a bar.
    expect(signs('Em D')).toEqual([[], ['F#4 sharp']]);
    // G major alone owns these: its sharp is in the signature.
    expect(signs('Em D C')).toEqual([[], [], []]);
    // G major has F sharp, D minor has none.
    expect(signs('D Dm')).toEqual([['F#4 sharp'], []]);
  });

  test('a signature only where one major key owns all', () => {
    const fifths = (symbols: string) => textOf(scoreOf(vampIn(campfire, symbols)).xml, 'fifths');
    expect(fifths('Em D C')).toBe('1');
    expect(fifths('Gm Bb Eb F7')).toBe('-2');
    expect(fifths('Em D')).toBe('0');
    expect(fifths('C Ebm')).toBe('0');
  });
});

describe('strokes', () => {
  const heads = (notes: readonly ReadNote[]) => notes.filter(({ chord, midi }) => !chord && midi !== null);
  const own = (lanes: string) => parseGroove(`own, Own | E8 | 4/4 | 60-120 | r=1 / ${lanes}`);
  const notesOf = (groove: ReturnType<typeof own>, symbol = 'Em') =>
    (readScore(scoreOf(vampOf(groove, [readSymbol(symbol)])).xml)[0] ?? []).flatMap(({ notes }) => notes);

  test('down, up and accent at the lowest head', () => {
    const signs = heads(notesOf(own('strk DUDUDUDU / zone AHAHAHAH / tch oooooooo / acc 31213121'))).map(({ xml }) => [
      xml.includes('<down-bow/>'),
      xml.includes('<up-bow/>'),
      xml.includes('<accent/>'),
    ]);
    expect(signs).toEqual(
      [3, 1, 2, 1, 3, 1, 2, 1].map((accent, slot) => [slot % 2 === 0, slot % 2 === 1, accent === 3]),
    );
  });

  test('dead strokes have a cross for a head, choked ones a dot, ringing ones a tie into nothing', () => {
    const notes = notesOf(own('strk DuDuDuDu / zone A.A.A.A. / tch o.x.c.r. / acc 30202020'));
    const with_ = (sign: string) =>
      new Set(notes.filter(({ xml }) => xml.includes(sign)).map(({ at }) => at / DIVISIONS));
    expect(with_('<notehead>x</notehead>')).toEqual(new Set([1]));
    expect(with_('<staccato/>')).toEqual(new Set([2]));
    expect(with_('<tied type="let-ring"/>')).toEqual(new Set([3]));
    expect(notes.filter(({ xml, at }) => at === DIVISIONS && !xml.includes('<notehead>x<'))).toEqual([]);
  });

  test('a run under the palm has its word and a dash up to its last stroke', () => {
    const { xml } = scoreOf(
      vampOf(own('strk DDDDDDDD / zone ALLLALAL / tch ophhopop / acc 31213121'), [readSymbol('Em')]),
    );
    const words = [...xml.matchAll(/<words>([^<]+)</g)].map(([, text]) => text);
    expect(words).toEqual(['P.M.', 'half P.M.', 'P.M.', 'P.M.']);
    expect(xml.match(/<dashes type="start"/g)).toHaveLength(1);
    expect(xml.match(/<dashes type="stop"/g)).toHaveLength(1);
    expect(xml.match(/<mute>palm<\/mute>/g)?.length).toBeGreaterThan(4);
  });

  test('thumb and fingers are named, and have no bow signs', () => {
    const notes = notesOf(own('strk P-F-T-F- / zone A.H.b.H. / tch o.o.o.o. / acc 20202020'), 'C');
    const plucked = (slot: number) =>
      notes
        .filter(({ at, midi }) => at === (slot * DIVISIONS) / 2 && midi !== null)
        .map(({ xml }) => textOf(xml, 'pluck'));
    expect(plucked(0)[0]).toBe('p');
    expect(plucked(2)).toEqual(['i', 'm', 'a']);
    expect(plucked(4)).toEqual(['p']);
    expect(notes.some(({ xml }) => /<(down|up)-bow/.test(xml))).toBe(false);
  });

  test('a pushed change: its symbol stands over the push, and the way in is written before the loop', () => {
    const { vamp, xml } = scoreOf(vampIn(grooveById('pushed-change'), 'Em D'));
    const [part = []] = readScore(xml);
    expect(part).toHaveLength(2 * layoutOf(vamp).bars.length);
    const [first, , third] = part;
    expect(heads(first?.notes ?? [])[0]?.at).toBe(0);
    // The loop begins with the chord that is sounding already.
    expect(heads(third?.notes ?? [])[0]?.at).toBeGreaterThan(third?.notes[0]?.at ?? Infinity);
    const before = (measure: string) => measure.split(/<harmony>/).map((piece) => piece.match(/<root-step>(.)/)?.[1]);
    expect(before(first?.xml ?? '').slice(1)).toEqual(['E', 'D']);
    expect(third?.xml.indexOf('direction="forward"')).toBeGreaterThan(0);
    // The push is tied over the bar line; what was struck on a beat before it is not.
    const [push, earlier] = [heads(first?.notes ?? []).at(-1), heads(first?.notes ?? []).at(-2)];
    expect([push, earlier].map((note) => note?.xml.includes('<tie type="start"/>'))).toEqual([true, false]);
    // So is the one from the way in into the loop; at the repeat sign it can but ring on.
    for (const bar of [part[1], third]) expect(bar?.notes[0]?.xml).toContain('<tie type="stop"/>');
    const end = heads(part.at(-1)?.notes ?? []).at(-1);
    expect([end?.xml.includes('<tie '), end?.xml.includes('let-ring')]).toEqual([false, true]);
  });

  test('what rings over a beat is tied to it, not followed by a rest: the campfire strum as people write it', () => {
    const { xml } = banded(vampIn(campfire, 'Em D'));
    const values = (part: number) => {
      const notes = readScore(xml)[part]?.[0]?.notes.filter(({ chord }) => !chord) ?? [];
      return notes.map(({ type, dots, xml: note }) => {
        const sign = note.includes('<rest') ? ' rest' : note.includes('<tie type="start"/>') ? ' tied' : '';
        return `${type ?? ''}${'.'.repeat(dots)}${sign}`;
      });
    };
    expect(values(0)).toEqual(['quarter', 'eighth', 'eighth tied', 'eighth', 'eighth', 'eighth', 'eighth']);
    expect(values(1)).toEqual(['half tied', 'eighth', 'quarter.']);
    // A stroke that is stopped is followed by a rest.
    const choked = readScore(scoreOf(vampIn(grooveById('quick-up-chop'), 'Em', 8)).xml)[0]?.[1]?.notes ?? [];
    expect(choked.some(({ xml: note }) => note.includes('<rest'))).toBe(true);
    expect(choked.some(({ xml: note }) => note.includes('<tie '))).toBe(false);
  });

  // "tie": what is tied goes on in the next note or chord, at the same pitches.
  test('every tie that begins ends at the next heads', () => {
    for (const [id, { xml }] of GROOVES.map((groove) => [groove.id, banded(vampIn(groove, 'Bb F#m'))] as const)) {
      for (const part of readScore(xml)) {
        let open: readonly string[] = [];
        const notes = part.flatMap((measure) => measure.notes);
        for (const at of new Set(notes.map((note) => note.at))) {
          const here = notes.filter((note) => note.at === at);
          const of = (type: string) =>
            here.filter((note) => note.xml.includes(`<tie type="${type}"/>`)).map(({ name }) => name ?? '');
          expect([id, of('stop')]).toEqual([id, open]);
          open = of('start');
        }
        expect(open).toEqual([]);
      }
    }
  });
});

describe('the band on paper', () => {
  /** Places of a performance's first and second loop on the grid, in divisions, with what begins there. */
  function placed<Sound extends { readonly time: number }>(
    { vamp, performance }: { readonly vamp: VoicedVamp; readonly performance: Performance },
    sounds: readonly Sound[],
    sections: number,
    what: (sound: Sound) => string | number,
  ) {
    const layout = layoutOf(vamp);
    const end = sections * (performance.seconds / performance.loops);
    return sounds
      .filter(({ time }) => time < end - 0.01)
      .map((sound): [number, string | number] => [layout.placeOf(sound.time), what(sound)])
      .toSorted((one, other) => one[0] - other[0] || (one[1] < other[1] ? -1 : 1));
  }

  test('kit and bass of every groove stand where they sound', () => {
    for (const groove of GROOVES) {
      const score = banded(vampIn(groove, 'Em D'));
      const [guitar = [], bass = [], kit = []] = readScore(score.xml);
      const sections = guitar.length / layoutOf(score.vamp).bars.length;
      const notes = (part: typeof bass) => part.flatMap((measure) => measure.notes);
      expect([groove.id, notes(bass).flatMap(({ at, midi }) => (midi === null ? [] : [[at, midi]]))]).toEqual([
        groove.id,
        placed(score, score.performance.bass ?? [], sections, ({ midi }) => midi),
      ]);
      expect([
        groove.id,
        notes(kit)
          .flatMap(({ at, instrument }): [number, string][] => (instrument === null ? [] : [[at, instrument.slice(3)]]))
          .toSorted((one, other) => one[0] - other[0] || (one[1] < other[1] ? -1 : 1)),
      ]).toEqual([groove.id, placed(score, score.performance.kit ?? [], sections, ({ piece }) => piece)]);
    }
  });

  test('the percussion key map stands beside its instruments, counted from 1', () => {
    const { xml } = banded(vampIn(campfire, 'C'));
    const keys = [...xml.matchAll(/<midi-instrument id="P3-([^"]+)">[^]*?<midi-unpitched>(\d+)</g)].map(
      ([, piece, key]) => [piece, Number(key)],
    );
    expect(keys).toEqual([
      ['kick', 37],
      ['snare', 39],
      ['closed-hat', 43],
      ['open-hat', 47],
    ]);
    expect(xml.match(/<midi-channel>10</g)).toHaveLength(4);
  });

  test('drums have no signature', () => {
    const parts = readScore(banded(vampIn(campfire, 'Em D C')).xml);
    expect(parts.map(([first]) => textOf(first?.xml ?? '', 'fifths'))).toEqual(['1', '1', '0']);
  });

  test('the leading part carries tempo and symbols, the others none', () => {
    const { xml } = banded(vampIn(campfire, 'C G'));
    const counts = readScore(xml).map(
      (part) => part.flatMap(({ xml: measure }) => measure.match(/<harmony>/g) ?? []).length,
    );
    expect(counts).toEqual([2, 0, 0]);
    expect(xml.match(/<metronome>/g)).toHaveLength(1);
  });
});
