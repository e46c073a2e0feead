import { describe, expect, test } from 'vitest';
import { fretBox, fretsText, spokenShape } from '../../../server/crib/box.ts';

const numbers = (markup: string, part: string, name: string) =>
  Array.from(markup.matchAll(new RegExp(`class="${part}"[^>]* ${name}="([\\d.]+)"`, 'g')), ([, value]) =>
    Number(value),
  );
const C = [null, 3, 2, 0, 1, 0];

describe('a fret box', () => {
  test('has a dot for each finger, a ring for each open string, a cross for each that is silent', () => {
    const { markup } = fretBox(C, 'C', false);
    expect(numbers(markup, 'box-finger', 'cx')).toHaveLength(3);
    expect(numbers(markup, 'box-open', 'cx')).toHaveLength(2);
    expect(markup.match(/class="box-silent"/g)).toHaveLength(1);
    expect(markup).toContain('class="box-nut"');
  });

  test('stands mirrored for a left hand: the same frets, the strings the other way round', () => {
    const [right, left] = [fretBox(C, 'C', false).markup, fretBox(C, 'C', true).markup];
    const width = Number(/viewBox="0 0 ([\d.]+)/.exec(right)?.[1]);
    expect(numbers(left, 'box-finger', 'cx')).toEqual(numbers(right, 'box-finger', 'cx').map((x) => width - x));
    expect(numbers(left, 'box-finger', 'cy')).toEqual(numbers(right, 'box-finger', 'cy'));
  });

  test('up the neck names its lowest fret instead of a nut', () => {
    const { markup } = fretBox([null, 6, 8, 8, 8, 6], 'Eb', false);
    expect(markup).not.toContain('box-nut');
    expect(markup).toMatch(/class="box-number"[^>]*>\s*6\s*</);
  });

  test('lays one finger over the strings of a barre', () => {
    expect(fretBox([1, 3, 3, 2, 1, 1], 'F', false).markup.match(/box-barre/g)).toHaveLength(1);
    expect(fretBox([0, 2, 2, 0, 0, 0], 'Em', false).markup).not.toContain('box-barre');
  });

  test('is said string by string', () => {
    expect(spokenShape('C', C)).toBe('C: not played, 3, 2, open, 1, open');
  });
});

test('a shape as text', () => {
  expect(fretsText(C)).toBe('x32010');
  expect(fretsText([null, 10, 12, 12, 12, 10])).toBe('x-10-12-12-12-10');
});
