import { render } from 'preact';
import { useState } from 'preact/hooks';
import { act } from 'preact/test-utils';
import { afterEach, expect, test, vi } from 'vitest';
import { loadPad } from '../../../client/student/pads/pads.ts';
import type { WireTruth } from '../../../server/protocol/views.ts';

type Says = { readonly droppedOut?: boolean; readonly closed?: boolean; readonly truth?: WireTruth };

/** The pad on a page that holds what is chosen, as a question does; taps come at times of their own. */
async function open(kind: string, first: unknown = null) {
  const pad = await loadPad(kind);
  if (!pad) throw new Error(`no pad for ${kind}`);
  const place = document.body.appendChild(document.createElement('div'));
  const written: unknown[] = [];
  let held: unknown = first;
  function Held({ droppedOut = false, closed = false, truth }: Says) {
    const [chosen, choose] = useState(held);
    held = chosen;
    return pad ? (
      <pad.Pad
        asking={{ kind, target: 0 }}
        chosen={chosen}
        closed={closed}
        dashed={false}
        truth={truth}
        leftHanded={false}
        droppedOut={droppedOut}
        onChoose={choose}
        onWrite={(answer) => void written.push(answer)}
      />
    ) : null;
  }
  const draw = (says: Says = {}) => act(() => render(<Held {...says} />, place));
  await draw();
  const button = (label: string): HTMLButtonElement => {
    const found = place.querySelector<HTMLButtonElement>(`button[aria-label="${label}"]`);
    if (!found) throw new Error(`no button ${label}`);
    return found;
  };
  /** Sends an event at a time of the page's clock; true where the page kept the browser from its own ways. */
  const send = async (event: Event, at: number): Promise<boolean> => {
    Object.defineProperty(event, 'timeStamp', { value: at });
    await act(() => void button('tap here').dispatchEvent(event));
    return event.defaultPrevented;
  };
  const pointer = (more: PointerEventInit = {}) =>
    new PointerEvent('pointerdown', { bubbles: true, cancelable: true, button: 0, ...more });
  const from = performance.now() + 1;
  const clock = vi.spyOn(performance, 'now');
  /** Taps so many times, `step` ms apart, from so long after the opening. */
  const tapOn = async (count: number, after = 0, step = 600): Promise<void> => {
    for (let index = 0; index < count; index += 1) {
      const at = from + after + index * step;
      clock.mockReturnValue(at + 3);
      expect(await send(pointer({ pointerType: 'touch' }), at)).toBe(true);
    }
  };
  const heads = () => place.querySelectorAll('path.line-ink').length;
  const says = () => place.querySelector('[role=status]')?.textContent ?? '';
  return { place, draw, button, send, pointer, tapOn, from, clock, heads, says, written, chosen: () => held };
}

afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
  render(null, document.body);
  document.body.replaceChildren();
});

const taps = (count: number, step = 600) => Array.from({ length: count }, (_, index) => index * step);

test('a head for each tap, and an answer from the eighth on', async () => {
  const pad = await open('tempo');
  expect([pad.heads(), pad.place.querySelectorAll('circle').length]).toEqual([0, 8]);
  await pad.tapOn(7);
  expect([pad.heads(), pad.place.querySelectorAll('circle').length, pad.chosen()]).toEqual([7, 1, null]);
  const before = pad.says();
  await pad.tapOn(1, 4200);
  expect([pad.heads(), pad.chosen()]).toEqual([8, taps(8)]);
  // Told once, at eight.
  expect(pad.says()).not.toBe(before);
  const eight = pad.says();
  await pad.tapOn(3, 4800);
  expect([pad.says(), pad.heads(), pad.chosen()]).toEqual([eight, 11, taps(11)]);
});

test('touch, pen, mouse and keys tap alike; what is no tap does nothing', async () => {
  const pad = await open('tempo');
  const { send, pointer, from } = pad;
  const key = (name: string, repeat = false) =>
    new KeyboardEvent('keydown', { key: name, repeat, bubbles: true, cancelable: true });
  pad.clock.mockReturnValue(from + 9000);
  const events = ['touch', 'pen', 'mouse'].map((pointerType) => pointer({ pointerType }));
  for (const [index, event] of [...events, key(' '), key('Enter'), pointer({ isPrimary: false })].entries()) {
    expect(await send(event, from + index * 500)).toBe(true);
    expect(pad.heads()).toBe(index + 1);
  }
  // A held key, another key, the other button of a mouse, a click that somebody made up.
  expect(await send(key(' ', true), from + 3000)).toBe(true);
  await send(key('a'), from + 3100);
  await send(pointer({ pointerType: 'mouse', button: 2 }), from + 3200);
  await send(new MouseEvent('click', { bubbles: true, cancelable: true }), from + 3300);
  expect(pad.heads()).toBe(6);
  // Two more make eight, and each has its own time.
  await send(pointer(), from + 3000);
  await send(pointer(), from + 3500);
  expect(pad.chosen()).toEqual(taps(8, 500));
});

test('nothing is left to the browser: no scroll, no zoom, no menu', async () => {
  const pad = await open('tempo');
  expect(await pad.send(new Event('touchstart', { bubbles: true, cancelable: true }), pad.from)).toBe(true);
  expect(await pad.send(new Event('contextmenu', { bubbles: true, cancelable: true }), pad.from)).toBe(true);
  expect(pad.button('tap here').style.touchAction).toBe('none');
  expect(pad.heads()).toBe(0);
});

test('the page may hear late of a tap: it counts when it fell', async () => {
  const pad = await open('steadiness');
  for (let index = 0; index < 8; index += 1) {
    const at = pad.from + index * 500;
    // Busy pages hear of it after up to half a second.
    pad.clock.mockReturnValue(at + ((index * 137) % 500));
    await pad.send(pad.pointer(), at);
  }
  expect(pad.chosen()).toEqual(taps(8, 500));
});

test('again clears what was tapped; a pause begins anew and says so, and leaves what was chosen', async () => {
  const pad = await open('tempo');
  await pad.tapOn(9);
  await pad.tapOn(1, 20_000);
  expect(pad.says()).toContain('from one again');
  expect([pad.heads(), pad.chosen()]).toEqual([1, taps(9)]);
  await act(() => pad.button('again').click());
  expect([pad.heads(), pad.chosen()]).toEqual([0, null]);
  expect(pad.button('again').disabled).toBe(true);
});

test('closed, a tap is none', async () => {
  const pad = await open('tempo');
  await pad.tapOn(8);
  await pad.draw({ closed: true });
  expect(pad.button('tap here').disabled).toBe(true);
  expect(() => pad.button('again')).toThrow('no button again');
});

test('drop-out: words keep the hand going; nothing to write until the groove is back', async () => {
  const pad = await open('drop-out');
  await pad.tapOn(10);
  expect([pad.chosen(), pad.says()]).toEqual([null, 'Go on. It falls silent soon.']);
  await pad.draw({ droppedOut: true });
  expect(pad.says()).toBe('Keep on. It comes back.');
  await pad.tapOn(4, 6000);
  expect(pad.chosen()).toBeNull();
  await pad.draw();
  expect(pad.chosen()).toEqual({ taps: taps(14), silentFrom: 10 });
  await pad.tapOn(2, 8400);
  expect([pad.chosen(), pad.says()]).toEqual([{ taps: taps(16), silentFrom: 10 }, 'It is back. Write it, or go on.']);
});

test('together: what was tapped last is written at eight and every three seconds, while one taps', async () => {
  const pad = await open('together');
  await pad.tapOn(7);
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
  await pad.tapOn(1, 4200);
  expect(pad.written).toEqual([taps(8)]);
  await pad.tapOn(12, 4800);
  expect(pad.written).toHaveLength(1);
  await vi.advanceTimersByTimeAsync(3000);
  expect(pad.written).toEqual([taps(8), taps(16)]);
  // Nobody taps: nothing more is written.
  await vi.advanceTimersByTimeAsync(30_000);
  expect(pad.written).toHaveLength(2);
  await pad.tapOn(1, 12_000);
  await vi.advanceTimersByTimeAsync(3000);
  expect(pad.written).toHaveLength(3);
  await pad.tapOn(1, 12_600);
  await pad.draw({ closed: true });
  await vi.advanceTimersByTimeAsync(30_000);
  expect([pad.written.length, pad.chosen()]).toEqual([3, null]);
});

test('shown: the beats that sounded as ringing pieces of string, the own taps over them', async () => {
  const pad = await open('tempo', taps(12, 625));
  await pad.draw({ closed: true, truth: { answer: taps(16), key: '100' } });
  expect(pad.place.querySelectorAll('.lens-body')).toHaveLength(8);
  // 625 ms against 600: the eighth interval ends a third of a beat after the eighth beat.
  expect(pad.heads()).toBe(9);
});

test('what is in after a reload is on the pad', async () => {
  const pad = await open('tempo', taps(12));
  expect(pad.heads()).toBe(12);
});
