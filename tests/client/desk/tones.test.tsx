import { act } from 'preact/test-utils';
import { expect, test } from 'vitest';
import type { DeskView } from '../../../server/protocol/views.ts';
import { button, draw, press, root, text } from './draw.tsx';
import { deskView, PLAYING, STILL } from './fixtures.ts';

const BASE = deskView();
/** A room before its first vamp, or between vamps. */
const quiet = (change: Partial<DeskView> = {}): DeskView =>
  deskView('direction-1', 'ready', { sound: STILL, ...change });
const settled = (): Promise<void> => act(() => Promise.resolve());
const tones = (): readonly HTMLButtonElement[] => Array.from(root.querySelectorAll('.tones button'));
const SMALL: DeskView['settings'] = { ...BASE.settings, smallSpeaker: true };

test('before the first vamp the A, the six strings and the bass check are at hand where a round begins', () => {
  const { made } = draw(quiet({ vamp: null, steps: [], settings: { ...BASE.settings, pitch: 442 } }));
  expect(tones().map((each) => each.textContent)).toEqual(['A, 442\u00a0Hz', 'E', 'A', 'D', 'G', 'B', 'E']);
  press('A, 442\u00a0Hz', 'string 6: E', 'string 5: A', 'string 1: E', 'bass check');
  expect(made).toEqual(
    [
      { kind: 'reference' },
      { kind: 'string', string: 6 },
      { kind: 'string', string: 5 },
      { kind: 'string', string: 1 },
      { kind: 'bass-check' },
    ].map((tone) => ({ type: 'RequestTone', tone })),
  );
});

test('later they stand with the room, in the naming of the class', () => {
  draw(quiet(), { form: 'start' });
  expect(tones()).toEqual([]);
  draw(quiet({ settings: { ...BASE.settings, naming: 'german' } }), { leaf: 'room' });
  expect(tones().map((each) => each.textContent)).toEqual(['A, 440\u00a0Hz', 'E', 'A', 'D', 'G', 'H', 'E']);
});

test.each([
  ['no host screen has its sound on', { soundHeld: false }, 'Open the host screen'],
  ['a vamp plays', { sound: PLAYING }, 'Stop the vamp first.'],
])('no tone while %s, and the reason stands there', (_, change, reason) => {
  draw(quiet(change), { leaf: 'room' });
  expect(tones().every(({ disabled }) => disabled)).toBe(true);
  expect(button('bass check').disabled).toBe(true);
  expect(text()).toContain(reason);
});

test('a speaker on which both sound alike is called small', async () => {
  const { made } = draw(quiet(), { leaf: 'room' });
  expect(text()).not.toContain('Do both sound alike?');
  press('bass check');
  await settled();
  expect(text()).toContain('Do both sound alike?');
  press('alike');
  await settled();
  expect(made.slice(1)).toEqual([{ type: 'ChangeSettings', settings: { smallSpeaker: true } }]);
  expect(text()).toContain('“Small speaker” is on now');
});

test('where they differ all is well, and a speaker called small is so no more', async () => {
  const { made } = draw(quiet(), { leaf: 'room' });
  press('bass check');
  await settled();
  press('different');
  await settled();
  expect(made).toHaveLength(1);
  expect(text()).toContain('All is well');
  const small = draw(quiet({ settings: SMALL }), { leaf: 'room' });
  press('bass check');
  await settled();
  press('different');
  await settled();
  expect(small.made.slice(1)).toEqual([{ type: 'ChangeSettings', settings: { smallSpeaker: false } }]);
});

/** The box or dot of a setting, by its words. */
function setting(label: string): HTMLInputElement {
  const found = Array.from(root.querySelectorAll('label')).find((each) => each.textContent === label);
  const input = found?.querySelector('input');
  if (!input) throw new Error(`no setting ${label}`);
  return input;
}
function choose(label: string): void {
  const input = setting(label);
  void act(() => {
    input.checked = input.type === 'radio' || !input.checked;
    input.dispatchEvent(new Event('change', { bubbles: true }));
  });
}

test('guitar, speaker and who plays along are settings of the room', () => {
  const { made } = draw(quiet({ settings: { ...SMALL, voice: 'nylon', band: { kit: true, bass: false } } }), {
    leaf: 'room',
  });
  expect(
    ['steel strings', 'nylon strings', 'small speaker', 'kit', 'bass'].map((each) => setting(each).checked),
  ).toEqual([false, true, true, true, false]);
  for (const label of ['clean electric', 'small speaker', 'bass', 'kit']) choose(label);
  expect(made).toEqual(
    [
      { voice: 'clean' },
      { smallSpeaker: false },
      { band: { kit: true, bass: true } },
      { band: { kit: false, bass: false } },
    ].map((settings) => ({ type: 'ChangeSettings', settings })),
  );
});

test('the pitch is a number from 415 to 466; any other is not sent, and the range is said', () => {
  const { made } = draw(quiet(), { leaf: 'room' });
  const pitch = root.querySelector<HTMLInputElement>('[name=pitch]');
  if (!pitch) throw new Error('no field for the pitch');
  expect([pitch.min, pitch.value, pitch.max]).toEqual(['415', '440', '466']);
  const set = (value: string) =>
    void act(() => {
      pitch.value = value;
      pitch.dispatchEvent(new Event('change', { bubbles: true }));
    });
  for (const wrong of ['414', '467', '']) {
    set(wrong);
    expect(root.querySelector('[role=alert]')?.textContent).toBe('The pitch is a number from 415 to 466.');
  }
  expect(made).toEqual([]);
  set('442.5');
  expect(made).toEqual([{ type: 'ChangeSettings', settings: { pitch: 442.5 } }]);
  expect(text()).toContain('415 to 466. As usual: 440.');
});
