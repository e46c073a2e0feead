import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, expect, test, vi } from 'vitest';
import { LateSpeakers, type LateSpeakersProps } from '../../../client/host/parts/late-speakers.tsx';

const root = document.createElement('div');
document.body.append(root);
afterEach(() => {
  void act(() => render(null, root));
});

function show(sound: Partial<LateSpeakersProps['sound']> = {}, playing = false) {
  const actions = { setDelay: vi.fn<(ms: number) => void>(), compare: vi.fn<(on: boolean) => void>() };
  const shown = { delayMs: 100, comparing: false, sinceClick: () => null, ...sound };
  void act(() => render(<LateSpeakers sound={shown} actions={actions} playing={playing} />, root));
  const button = (name: string): HTMLButtonElement => {
    const found = [...root.querySelectorAll('button')].find(
      (each) => each.getAttribute('aria-label') === name || each.textContent === name,
    );
    if (!found) throw new Error(`There is no button ${name}.`);
    return found;
  };
  return { actions, button, range: root.querySelector<HTMLInputElement>('input[type=range]') };
}

test('two buttons and a slider shift the mark by ten milliseconds, between none and half a second', () => {
  const { actions, button, range } = show();
  button('10 ms later').click();
  button('10 ms sooner').click();
  expect(actions.setDelay.mock.calls).toEqual([[110], [90]]);
  expect(range).toMatchObject({ min: '0', max: '500', step: '10', valueAsNumber: 100 });
  if (!range) throw new Error('there is a slider');
  range.value = '230';
  range.dispatchEvent(new Event('input', { bubbles: true }));
  expect(actions.setDelay).toHaveBeenLastCalledWith(230);
  expect(root.querySelector('output')?.textContent).toBe('100 ms');
});

test('at its ends one button rests', () => {
  expect(show({ delayMs: 0 }).button('10 ms sooner').disabled).toBe(true);
  expect(show({ delayMs: 500 }).button('10 ms later').disabled).toBe(true);
});

test('every control has a name that can be said, and the slider says its milliseconds', () => {
  const { range } = show();
  expect(range?.getAttribute('aria-label')).toBe('Delay of the speakers, in milliseconds');
  expect(range?.getAttribute('aria-valuetext')).toBe('100 ms');
  for (const button of root.querySelectorAll('button'))
    expect((button.getAttribute('aria-label') ?? button.textContent ?? '').length).toBeGreaterThan(3);
});

test('clicks are asked for and ended by one button, and not while a vamp plays', () => {
  const { actions, button } = show();
  button('hear and see clicks').click();
  expect(actions.compare).toHaveBeenLastCalledWith(true);
  const on = show({ comparing: true });
  on.button('end the clicks').click();
  expect(on.actions.compare).toHaveBeenLastCalledWith(false);
  show({}, true);
  expect(root.textContent).not.toContain('clicks');
  expect(root.textContent).toContain('until ear and beat mark agree');
});

test('the mark stands while a click is heard, and not after', async () => {
  let since: number | null = 0.02;
  show({ comparing: true, sinceClick: () => since });
  const mark = root.querySelector('.click-beat');
  expect(mark?.classList.contains('on')).toBe(true);
  since = 0.4;
  await vi.waitFor(() => expect(mark?.classList.contains('on')).toBe(false));
});

test('closing the panel ends the clicks', () => {
  const { actions } = show({ comparing: true });
  const panel = root.querySelector('details');
  if (!panel) throw new Error('there is a panel');
  panel.open = true;
  expect(actions.compare).not.toHaveBeenCalled();
  panel.open = false;
  expect(actions.compare.mock.calls).toEqual([[false]]);
});
