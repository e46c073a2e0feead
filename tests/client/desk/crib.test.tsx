import { expect, test } from 'vitest';
import type { WireVisitedKey } from '../../../server/protocol/views.ts';
import { draw, root } from './draw.tsx';
import { deskView, EM_D } from './fixtures.ts';

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

test('the crib names the notes that are safe to solo on, as the class names notes', () => {
  const view = deskView();
  draw(view, { leaf: 'crib' });
  expect(root.textContent).toContain('safe to solo on');
  expect(root.querySelector('.crib')?.textContent).toContain('E F♯ G A B D');
  draw({ ...view, settings: { ...view.settings, naming: 'german' } }, { leaf: 'crib' });
  const crib = root.querySelector('.crib')?.textContent ?? '';
  expect(crib).toContain('E Fis G A H D');
  expect(crib).toContain('Cis leaves');
  const none = view.crib && { ...view.crib, safe: [] };
  draw({ ...view, crib: none }, { leaf: 'crib' });
  expect(root.textContent).toContain('no note by itself');
});

test('where no key owns all, the crib names the keys with their visitors', () => {
  const view = deskView();
  const visited: WireVisitedKey[] = [
    {
      key: 'A major',
      numerals: ['v', 'I', 'iv'],
      visitors: [
        { chord: 'Em', numeral: 'v', visit: 'borrowed' },
        { chord: 'Dm', numeral: 'iv', visit: 'borrowed' },
      ],
    },
    {
      key: 'C major',
      numerals: ['I', 'III7', 'vi'],
      visitors: [{ chord: 'E7', numeral: 'III7', visit: 'applied', of: 'V7/vi' }],
    },
  ];
  draw({ ...view, crib: view.crib && { ...view.crib, keys: [], visited } }, { leaf: 'crib' });
  const crib = root.querySelector('.crib')?.textContent ?? '';
  expect(crib).toContain('A major: v–I–iv; v and iv: borrowed from the parallel minor');
  expect(crib).toContain('C major: I–III7–vi; III7: V7 of vi');
  draw(view, { leaf: 'crib' });
  expect(root.querySelector('.crib')?.textContent).not.toContain('Keys with visitors');
});

test('under a capo the crib and the line of chords have what sounds, and under it the shapes, each labelled', () => {
  const view = deskView();
  const underCapo = { ...view, vamp: { ...EM_D, capo: 2 } };
  draw(underCapo, { leaf: 'crib' });
  const rows = [...root.querySelectorAll('.crib thead tr')].map((row) =>
    [...row.children].map((cell) => cell.querySelector('.chord')?.textContent ?? cell.textContent),
  );
  // Common practice: two frets down from E minor and D are D minor and C.
  expect(rows).toEqual([
    ['sounding', 'Em', 'D'],
    ['shape, capo 2', 'Dm', 'C'],
  ]);
  draw(underCapo);
  const line = root.querySelector('.chord-line');
  expect([...(line?.querySelectorAll('.chord-names') ?? [])].map((each) => each.textContent)).toEqual([
    'sounding',
    'shape, capo 2',
  ]);
  expect([...(line?.querySelectorAll('.chord') ?? [])].map((each) => each.textContent)).toEqual(['Em', 'D', 'Dm', 'C']);
  draw(view);
  expect(root.querySelector('.chord-line')?.textContent).not.toMatch(/capo|sounding/);
});
