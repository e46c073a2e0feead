import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  beatsPerSlot,
  emptyGroove,
  GrooveError,
  grooveLine,
  GROOVES,
  parseGroove,
  slotsPerBar,
} from '../../shared-theory/grooves.ts';
import { anyGroove } from '../support/any-groove.ts';

const GOOD = [
  'my-groove, My groove | E8 | 4/4 | 60-116 | r=1..1.5 | a note',
  'strk D u D U D u D U',
  'zone A . b H A . b A',
  'tch  o . p x c . o r',
  'acc  3 0 2 1 3 0 2 1',
  'chg  . . . . . . . >',
];
const changed = (line: number, text: string) => GOOD.with(line - 1, text).join('\n');

const faultOf = (text: string): unknown => {
  try {
    parseGroove(text);
  } catch (error) {
    return error;
  }
  return null;
};

describe('the grid language', () => {
  test('reads header and lanes', () => {
    const groove = parseGroove(GOOD.join('\n'));
    expect(groove).toMatchObject({ id: 'my-groove', name: 'My groove', grid: 'E8', tempo: [60, 116], swing: [1, 1.5] });
    expect(groove.slots[2]).toEqual({ stroke: 'down', zone: 'other-bass', touch: 'palm', accent: 2 });
    expect(groove.slots[7]).toEqual({ stroke: 'up', zone: 'all', touch: 'ring', accent: 1, pushes: true });
    expect(groove.opening).toBeUndefined();
    expect(parseGroove(groove.text)).toEqual(groove);
  });

  test('carriage returns, a single tempo, no note and lanes in any order are read', () => {
    const [header, ...rest] = changed(1, 'my-groove, My groove | E8 | 4/4 | 100 | r=1').split('\n');
    const groove = parseGroove([header, ...rest.toReversed()].join('\r\n'));
    expect(groove.tempo).toEqual([100, 100]);
  });

  test('tokens stand with or without spaces, lines one under the other or in one', () => {
    const groove = parseGroove(GOOD.join('\n'));
    const tight = GOOD.map((line, index) => (index === 0 ? line : line.replaceAll(/(?<=\s)(\S) /g, '$1')));
    for (const text of [tight.join('\n'), tight.join(' / '), GOOD.join(' / '), `  ${GOOD.join('  /  ')} \n`]) {
      expect({ ...parseGroove(text), text: '' }).toEqual({ ...groove, text: '' });
    }
  });

  test('reads strokes without a pick, half mutes and strings let ring', () => {
    const text =
      'fingers-2, Daumen & Finger 1/2 | C6 | 6/8 | 40-60 | r=1 / strk PFTF-F / zone AHBM.b / tch ohrc.x / acc 32123' +
      '1 ';
    expect(() => parseGroove(text)).toThrow(/lane acc, slot 5.*silent.*"3"; write "0"/);
    const { slots, name } = parseGroove(text.replace('32123', '32120'));
    expect(name).toBe('Daumen & Finger 1/2');
    expect(slots.map(({ stroke }) => stroke)).toEqual(['pinch', 'fingers', 'thumb', 'fingers', 'none', 'fingers']);
    expect(slots.map(({ touch }) => touch)).toEqual(['open', 'half', 'ring', 'choke', 'none', 'dead']);
  });

  test.each([
    ['S16', '4/4', 16, 16, 0.25],
    ['T12', '12/8', 12, 12, 1 / 3],
    ['C6', '6/8', 6, 6, 1 / 3],
    ['W6', '3/4', 6, 6, 0.5],
    ['E16', '4/4', 16, 8, 0.5],
    ['V7', '7/8', 7, 7, 0.5],
  ] as const)('grid %s in %s', (grid, meter, slots, perBar, beats) => {
    const lane = (name: string, token: string) => `${name} ${Array.from({ length: slots }, () => token).join(' ')}`;
    const header = `other-groove, Other | ${grid} | ${meter} | 60-70 | r=1`;
    const groove = parseGroove(
      [header, lane('strk', 'D'), lane('zone', 'A'), lane('tch', 'o'), lane('acc', '2')].join('\n'),
    );
    expect(groove.slots).toHaveLength(slots);
    expect(slotsPerBar(groove)).toBe(perBar);
    expect(beatsPerSlot(groove)).toBeCloseTo(beats, 12);
    const empty = emptyGroove(grid);
    expect(empty).toMatchObject({ grid, meter, swing: [1, 1], text: '' });
    expect(empty.slots).toHaveLength(slots);
    expect(() => parseGroove(grooveLine(empty))).toThrow(/lane strk: no stroke sounds/);
  });

  test('prints a groove in one line', () => {
    expect(grooveLine(parseGroove(GOOD.join('\n')))).toBe(
      'my-groove, My groove | E8 | 4/4 | 60-116 | r=1..1.5 / strk DuDUDuDU / zone A.bHA.bA / tch o.pxc.or / acc 30213021 / chg .......>',
    );
  });

  test('what it prints it reads back: the catalogue and any groove', () => {
    const returns = (groove: (typeof GROOVES)[number]) => {
      const line = grooveLine(groove);
      expect(line).not.toContain('\n');
      const read = parseGroove(line);
      expect({ ...read, text: '' }).toEqual({ ...groove, text: '' });
      expect(parseGroove(read.text)).toEqual(read);
      expect(grooveLine(read)).toBe(line);
    };
    for (const groove of GROOVES) returns(groove);
    fc.assert(fc.property(anyGroove, returns), { numRuns: 200 });
  });

  // Each fault with its line, its lane, its slot, and what is said: what was found and what would be right.
  test.each([
    ['an unknown stroke', 2, 'strk D u D X D u D U', 'strk', 4, /"X" is no strk.*D U P T F d u -/],
    ['an unknown zone', 3, 'zone A . b H Z . b A', 'zone', 5, /"Z" is no zone.*B b L M H A \./],
    ['an unknown touch', 4, 'tch  o . p x c . 1 r', 'tch', 7, /"1" is no tch.*o r c h p x \./],
    ['an unknown accent', 5, 'acc  4 0 2 1 3 0 2 1', 'acc', 1, /"4" is no acc.*0 1 2 3/],
    ['an unknown change', 6, 'chg  . . . . . . . <', 'chg', 8, /"<" is no chg.*\. >/],
    ['a lane too short', 3, 'zone A . b H A . b', 'zone', 8, /7 slots, not 8/],
    ['a lane too long', 5, 'acc 3 0 2 1 3 0 2 1 1', 'acc', 9, /9 slots, not 8/],
    ['changes too short', 6, 'chg . . . >', 'chg', 5, /4 slots, not 8/],
    [
      'a sound without zone',
      3,
      'zone A . . H A . b A',
      'zone',
      3,
      /stroke D sounds.*zone says "\."; write one of B b L/,
    ],
    ['a sound without touch', 4, 'tch . . p x c . o r', 'tch', 1, /stroke D sounds.*tch says "\."; write one of o r/],
    ['a sound without accent', 5, 'acc 3 0 2 1 3 0 2 0', 'acc', 8, /stroke U sounds.*acc says "0"; write 1, 2 or 3/],
    [
      'a silent slot with a zone',
      3,
      'zone A L b H A . b A',
      'zone',
      2,
      /stroke u is silent.*zone says "L"; write "\."/,
    ],
    ['a silent slot with touch', 4, 'tch o o p x c . o r', 'tch', 2, /stroke u is silent.*tch says "o"; write "\."/],
    ['a silent slot with an accent', 5, 'acc 3 2 2 1 3 0 2 1', 'acc', 2, /stroke u is silent.*acc says "2"; write "0"/],
    [
      'a pinch of one string',
      2,
      'strk D u P U D u D U',
      'zone',
      3,
      /pinch takes several strings, zone b has one; write A/,
    ],
    [
      'a push that sounds nothing',
      6,
      'chg . . . . . > . .',
      'chg',
      6,
      /stroke u is silent and pushes nothing; write "\."/,
    ],
    ['a push over part of the strings', 3, 'zone A . b H A . b H', 'zone', 8, /whole chord, not zone H; write A/],
    ['a push that stops', 4, 'tch  o . p x c . o c', 'tch', 8, /rings over the bar line, touch c stops; write o or r/],
    [
      'a stroke after a push',
      6,
      'chg  > . . . . . . .',
      'chg',
      3,
      /after a push nothing sounds.*last stroke of its bar/,
    ],
    ['an unknown lane', 3, 'zones A . b H A . b A', 'zones', null, /"zones" is no lane; use strk .*open-chg/],
    ['a lane twice', 3, 'strk D u D U D u D U', 'strk', null, /twice; keep one/],
    ['half a header', 1, 'my-groove, My groove | E8', null, null, /"my-groove.*E8" must be a header/],
    ['an id in capitals', 1, 'My-Groove, My | E8 | 4/4 | 60-116 | r=1', null, null, /"My-Groove, My" must be a kebab/],
    ['no name', 1, 'my-groove | E8 | 4/4 | 60-116 | r=1', null, null, /a comma and a name/],
    [
      'a name that would not stand in one line',
      1,
      'a, B / C | E8 | 4/4 | 60-116 | r=1',
      null,
      null,
      /"B \/ C".*no spaces/,
    ],
    ['an unknown grid', 1, 'my-groove, My | E9 | 4/4 | 60-116 | r=1', null, null, /"E9" is no grid.*E8 S16/],
    ['a meter that is not the grid’s', 1, 'my-groove, My | E8 | 3/4 | 60-116 | r=1', null, null, /in 4\/4, not "3\/4"/],
    ['a tempo range upside down', 1, 'my-groove, My | E8 | 4/4 | 116-60 | r=1', null, null, /"116-60".*low first/],
    ['a tempo out of reach', 1, 'my-groove, My | E8 | 4/4 | 10-60 | r=1', null, null, /"10-60".*30 and 300/],
    ['a swing below straight', 1, 'my-groove, My | E8 | 4/4 | 60-116 | r=0.5', null, null, /"r=0.5".*from 1/],
    [
      'a swing too wide for its tempo',
      1,
      'my-groove, My | E8 | 4/4 | 200-240 | r=2',
      null,
      null,
      /swing of 2.*100 ms.*1.50/,
    ],
    [
      'a straight grid that swings',
      1,
      'my-groove, My | T12 | 12/8 | 60-116 | r=1..2',
      null,
      null,
      /"r=1..2" swings.*"r=1"/,
    ],
    [
      'a swing without measure',
      1,
      `my-groove, My | E8 | 4/4 | 60 | r=1..1${'0'.repeat(30)}`,
      null,
      null,
      /from 1 to 9/,
    ],
    ['no swing sign', 1, 'my-groove, My | E8 | 4/4 | 60-116 | 1.5', null, null, /"1.5" must be a swing/],
  ] as const)('refuses %s, naming its place and what would be right', (_, line, text, lane, slot, sentence) => {
    const fault = faultOf(changed(line, text));
    expect(fault).toBeInstanceOf(GrooveError);
    const atLine = lane === 'zone' ? 3 : lane === 'tch' ? 4 : line;
    expect(fault).toMatchObject({ line: atLine, lane, slot, message: expect.stringMatching(sentence) });
    const where = slot === null ? '' : `, slot ${slot}`;
    expect(String(fault)).toContain(`Groove, line ${atLine}${where}: `);
    // A name with a slash between spaces is another part in one line.
    if (text.startsWith('a, B / C')) return;
    const oneLine = faultOf(changed(line, text).replaceAll('\n', ' / '));
    expect(oneLine).toMatchObject({ line: atLine, lane, slot, message: expect.stringMatching(sentence) });
    expect(String(oneLine)).toContain(`Groove, ${lane === null ? 'header' : `lane ${lane}`}${where}: `);
  });

  test.each(['/', '/ B', 'B /', 'B / C', '/ /'])(
    'refuses the name "%s": in one line it would end the header',
    (name) => {
      expect(() => parseGroove(changed(1, `a, ${name} | E8 | 4/4 | 60-116 | r=1`))).toThrow(
        /a slash in a name has no spaces/,
      );
    },
  );

  test.each(['B/C', '/B', 'B/', '//'])('the name "%s" comes back from one line', (name) => {
    const groove = parseGroove(changed(1, `a, ${name} | E8 | 4/4 | 60-116 | r=1`));
    expect(parseGroove(grooveLine(groove)).name).toBe(name);
  });

  test('refuses a missing lane, half an opening, and a groove in which nothing sounds', () => {
    expect(() => parseGroove(GOOD.slice(0, 4).join('\n'))).toThrow(/line 4: the lane acc is missing/);
    expect(() => parseGroove(GOOD.slice(0, 4).join(' / '))).toThrow(/lane acc: the lane acc is missing/);
    expect(() => parseGroove([...GOOD, 'open-strk D u D U D u D U'].join('\n'))).toThrow(/open-zone is missing/);
    expect(() => parseGroove([...GOOD, 'open-chg . . . . . . . .'].join('\n'))).toThrow(/open-strk is missing/);
    expect(() => parseGroove('')).toThrow(GrooveError);
    const silent = ['x, X | C6 | 6/8 | 50 | r=1', 'strk dududu', 'zone ......', 'tch ......', 'acc 000000'];
    expect(() => parseGroove(silent.join('\n'))).toThrow(/line 2: no stroke sounds; use D, U, P, T or F/);
  });

  test('an up may take the bass, as alternate picking does', () => {
    const [header, , ...rest] = GOOD;
    expect(parseGroove([header, 'strk D u U U D u D U', ...rest].join('\n')).slots[2]?.stroke).toBe('up');
  });
});
