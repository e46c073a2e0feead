import { expect, test } from 'vitest';
import { draw, root } from './draw.tsx';
import { deskView } from './fixtures.ts';

const link = (name: string) =>
  Array.from(root.querySelectorAll('a')).find((each) => each.textContent?.trim() === name) ?? null;

test('the crib leads to its sheet, in a tab of its own so that the lesson stays where it is', () => {
  draw(deskView(), { leaf: 'crib' });
  const sheet = link('print this sheet');
  expect(sheet?.getAttribute('href')).toBe('/desk/WAKUR/crib/1');
  expect([sheet?.target, sheet?.rel]).toEqual(['_blank', 'noopener']);
  expect(link('a sheet for other chords')?.getAttribute('href')).toBe('/desk/WAKUR/crib');
});

test('before the first round a sheet can be made for any chords', () => {
  draw(deskView('direction-1', 'ready', { crib: null, vamp: null }), { leaf: 'crib' });
  expect(root.textContent).toContain('The crib stands here once a round has begun.');
  expect(link('print this sheet')).toBeNull();
  expect(link('a sheet for other chords')?.getAttribute('href')).toBe('/desk/WAKUR/crib');
});
