import type { Signal } from '@preact/signals';
import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import type { Leaf } from '../../../client/desk/desk-state.ts';
import { emptyDraft } from '../../../client/desk/groove-draft.ts';
import { GROOVES, grooveById, grooveLine } from '../../../shared-theory/grooves.ts';
import { button, draw, press, root, text } from './draw.tsx';
import { deskView } from './fixtures.ts';

const OWN = grooveLine({ ...grooveById('campfire-strum'), id: 'our-strum', name: 'Our strum' });
const BASE = deskView();
const VIEW = deskView('direction-1', 'ready', {
  settings: { ...BASE.settings, grooves: [OWN] },
  grooves: [...GROOVES, grooveById('campfire-strum')].map(({ id, name, meter, tempo }, index) =>
    index < GROOVES.length ? { id, name, meter, tempo } : { id: 'our-strum', name: 'Our strum', meter, tempo },
  ),
});

/** The button of a groove in the list. */
function listed(name: string): HTMLButtonElement {
  const found = Array.from(root.querySelectorAll<HTMLButtonElement>('.groove-line')).find(
    (each) => each.querySelector('strong')?.textContent === name,
  );
  if (!found) throw new Error(`no groove ${name}`);
  return found;
}
const look = (name: string): void => void act(() => listed(name).click());
const cells = (lane: string): readonly (string | null)[] =>
  Array.from(root.querySelectorAll(`[aria-label="The pattern"] [data-lane=${lane}]`), (cell) =>
    cell.getAttribute('aria-label'),
  );
function line(): HTMLTextAreaElement {
  const found = root.querySelector<HTMLTextAreaElement>('[name=groove-line]');
  if (!found) throw new Error('no line of text');
  return found;
}
function type(field: HTMLTextAreaElement | HTMLInputElement, value: string): void {
  void act(() => {
    field.value = value;
    field.dispatchEvent(new Event('input', { bubbles: true }));
  });
}
const key = (name: string, pressed: string): void =>
  void act(
    () =>
      void button(name).dispatchEvent(new KeyboardEvent('keydown', { key: pressed, bubbles: true, cancelable: true })),
  );

test('the class’s own grooves and the whole catalogue are listed with meter and tempo', () => {
  draw(VIEW, { leaf: 'grooves' });
  expect(root.querySelectorAll('.groove-line')).toHaveLength(GROOVES.length + 1);
  expect(root.querySelector('.groove-line strong')?.textContent).toBe('Our strum');
  for (const { name, meter } of GROOVES) expect(listed(name).textContent).toContain(meter);
});

test('a groove is drawn on the beat grid and said stroke by stroke', () => {
  draw(VIEW, { leaf: 'grooves' });
  look('Train beat');
  const [pattern] = root.querySelectorAll('.groove-grid');
  expect(pattern?.getAttribute('aria-label')).toMatch(/^1: down, bass, .+; 1 and: down, high strings, choked, heavy;/);
  expect(
    Array.from(pattern?.querySelectorAll('.groove-row') ?? [], (row) => row.querySelectorAll('.groove-count').length),
  ).toEqual([4, 4, 4, 4]);
  expect(listed('Train beat').getAttribute('aria-expanded')).toBe('true');
});

test('where no third could ring, the first bar of each chord is shown and why', () => {
  draw(VIEW, { leaf: 'grooves' });
  look('Driving eighths');
  expect(text()).toContain('each chord opens with one full stroke');
  expect(root.querySelectorAll('.groove-grid')).toHaveLength(2);
  look('Relaxed alternate');
  expect(root.querySelectorAll('.groove-grid')).toHaveLength(1);
});

test('a groove is taken for the next vamp, where the form then has it', () => {
  const { desk, made } = draw(VIEW, { leaf: 'grooves' });
  look('Our strum');
  press('take it for the next vamp');
  expect(made).toEqual([{ show: 'start' }, { turnTo: 'round' }]);
  expect(desk.groove.value).toBe('our-strum');
});

test('the class’s own are erased in two presses, the catalogue’s never', () => {
  const { made } = draw(VIEW, { leaf: 'grooves' });
  look('Waltz');
  expect(text()).not.toContain('erase');
  look('Our strum');
  press('erase');
  expect(made).toEqual([]);
  press('press again to erase it');
  expect(made).toEqual([{ type: 'EraseGroove', groove: 'our-strum' }]);
});

test('a groove is drawn press by press and saved under an id of its own', async () => {
  const { desk, made } = draw(VIEW, { leaf: 'grooves' });
  press('draw our own');
  expect(text()).toContain('Nothing sounds yet: press an accent.');
  expect(button('save with the class').disabled).toBe(true);
  expect(cells('acc')[3]).toBe('accent, 2 and: silent');
  press('accent, 1: silent', 'accent, 1: light', 'accent, 2 and: silent', 'touch, 2 and: open');
  expect(cells('strk').slice(0, 4)).toEqual([
    'stroke, 1: down',
    'stroke, 1 and: silent up',
    'stroke, 2: silent down',
    'stroke, 2 and: up',
  ]);
  const expected = 'our-groove, Our groove | E8 | 4/4 | 60-120 | r=1 / strk DuduUudu'.slice(0, 40);
  expect(line().value.startsWith(expected)).toBe(true);
  press('save with the class');
  await act(() => Promise.resolve());
  expect(made).toEqual([{ type: 'SaveGroove', text: expect.stringContaining('tch o..r....') }]);
  expect(desk.drawing.value).toBeNull();
  expect(text()).toContain('Saved. It can be chosen for the next vamp.');
});

test('a copy of the catalogue’s gets another name and id, one of the class’s own is changed in its place', () => {
  const { desk } = draw(VIEW, { leaf: 'grooves' });
  look('Waltz');
  press('copy and change it');
  expect(line().value).toMatch(/^waltz-ours, Waltz, ours \| W6/);
  press('back to the list');
  expect(desk.drawing.value).toBeNull();
  look('Our strum');
  press('change it');
  expect(line().value).toBe(OWN);
  expect(text()).toContain('Saving replaces “Our strum” as it stands.');
  press('accent, 1: heavy', 'back to the list');
  expect(desk.drawing.value).not.toBeNull();
  press('press again: what was drawn goes');
  expect(desk.drawing.value).toBeNull();
});

test('a pasted line fills the grid; a faulty one is named with lane and slot, ringed, and cannot be saved', () => {
  draw(VIEW, { leaf: 'grooves' });
  press('draw our own');
  const { opening: _, ...plain } = grooveById('driving-eighths');
  const pasted = grooveLine({ ...plain, id: 'ours', name: 'Ours' });
  type(line(), pasted);
  expect(cells('tch')[0]).toBe('touch, 1: palm mute');
  expect(root.querySelector<HTMLInputElement>('[name=groove-name]')?.value).toBe('Ours');
  expect(button('save with the class').disabled).toBe(false);
  type(line(), pasted.replace('zone LL', 'zone LQ'));
  expect(text()).toContain('lane zone, slot 2');
  expect(text()).toContain('It is ringed in the grid: strings, 1 and.');
  expect(cells('zone')[1]).toBe('strings, 1 and: low strings. Here is the fault.');
  expect(root.querySelectorAll('.groove-cell .ring')).toHaveLength(1);
  expect(line().getAttribute('aria-invalid')).toBe('true');
  expect(button('save with the class').disabled).toBe(true);
  press('accent, 2 and: light');
  expect(line().getAttribute('aria-invalid')).toBe('false');
});

test('a pasted line of the catalogue gets an id of its own', () => {
  const { desk } = draw(VIEW, { leaf: 'grooves' });
  press('draw our own');
  type(line(), grooveLine(grooveById('waltz')));
  expect(desk.drawing.value?.id).toBeNull();
  void act(() => void line().dispatchEvent(new FocusEvent('blur')));
  expect(line().value).toMatch(/^waltz-2, Waltz/);
});

test('on a keyboard one Tab comes to the grid, arrows go through it, and signs are typed', () => {
  draw(VIEW, { leaf: 'grooves' });
  press('draw our own');
  const stops = () => root.querySelectorAll('.groove-grid [tabindex="0"]');
  expect(stops()).toHaveLength(1);
  void act(() => button('accent, 1: silent').focus());
  key('accent, 1: silent', '3');
  expect(cells('acc')[0]).toBe('accent, 1: heavy');
  key('accent, 1: heavy', 'ArrowDown');
  expect(document.activeElement?.getAttribute('aria-label')).toBe('stroke, 1: down');
  key('stroke, 1: down', 'T');
  expect(cells('strk')[0]).toBe('stroke, 1: thumb');
  key('stroke, 1: thumb', 'ArrowRight');
  expect(document.activeElement?.getAttribute('aria-label')).toBe('stroke, 1 and: silent up');
  key('stroke, 1 and: silent up', 'ArrowDown');
  key('strings, 1 and: no string', 'ArrowDown');
  key('touch, 1 and: no touch', 'ArrowDown');
  expect(document.activeElement?.getAttribute('aria-label')).toBe('accent, 3 and: silent');
  expect(stops()).toHaveLength(1);
  expect(button('strings, 1 and: no string').getAttribute('aria-disabled')).toBe('true');
});

test('another meter, a tempo out of range and a missing name are said before anything is sent', () => {
  draw(VIEW, { leaf: 'grooves' });
  press('draw our own', 'accent, 1: silent');
  const field = (name: string) => {
    const found = root.querySelector<HTMLInputElement>(`[name=${name}]`);
    if (!found) throw new Error(`no field ${name}`);
    return found;
  };
  type(field('fastest'), '900');
  expect(text()).toContain('Slowest and fastest are from 30 to 300 a minute');
  type(field('fastest'), '90');
  type(field('groove-name'), ' ');
  expect(text()).toContain('Give the groove a name first.');
  type(field('groove-name'), 'Ours');
  void act(() => {
    const grid = root.querySelector<HTMLSelectElement>('[name=grid]');
    if (!grid) throw new Error('no choice of grids');
    grid.value = 'C6';
    grid.dispatchEvent(new Event('change', { bubbles: true }));
  });
  expect(cells('acc')).toHaveLength(6);
  expect(root.querySelector('[name=swingFrom]')).toBeNull();
  expect(button('save with the class').disabled).toBe(false);
});

test('what is under the pencil stays there while another leaf is looked at', () => {
  const { desk } = draw(VIEW, { leaf: 'grooves' });
  press('draw our own');
  const leaf = desk.leaf as Signal<Leaf>;
  for (const to of ['roll', 'grooves'] as const) {
    void act(() => {
      leaf.value = to;
    });
  }
  expect(desk.drawing.value).toEqual(emptyDraft('Our groove'));
  expect(text()).toContain('Draw a groove');
});
