import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { CALM_MS } from '../../../client/desk/calm.ts';
import { ClassTaps } from '../../../client/desk/screens/class-taps.tsx';
import { tapsLines } from '../../../client/desk/taps-text.ts';
import { draw, press, root, text } from './draw.tsx';
import { rhythmView, ROOM_TAPS, spread, tapsAt } from './rhythm-fixtures.ts';

afterEach(() => void vi.useRealTimers());

describe('the class while it taps', () => {
  test('its tempo stands large, and how it lies around it beneath', () => {
    draw(rhythmView('tempo', 'open', { classTaps: ROOM_TAPS }));
    expect(root.querySelector('.class-tempo')?.textContent).toBe('96 a minute');
    const lines = Array.from(root.querySelectorAll('.class-taps li'), (line) => line.textContent);
    expect(lines).toEqual([
      '14 of 17 can be read',
      'half of them between 92 and 101',
      'uneven by 6\u00a0%',
      'the room holds its tempo',
    ]);
  });

  test('of nobody who tapped no number stands, and of another question no taps', () => {
    const nobody = { ...ROOM_TAPS, read: 0, of: 0, tempo: null, between: null, tempi: [], unevenness: [], drift: null };
    draw(rhythmView('tempo', 'open', { classTaps: nobody }));
    expect(root.querySelector('.class-taps')?.textContent).toBe('the class so farnot tapped yet');
    draw(rhythmView('accents', 'open'));
    expect(root.querySelector('.class-taps')).toBeNull();
  });

  test.each([
    [3.4, 0.8, 'the room gets faster: 3.4 % in eight beats'],
    // Less than two standard errors from nought.
    [3.4, 1.8, 'the room holds its tempo'],
    // Told as nought, though it is more than two errors from it.
    [-0.04, 0.01, 'the room holds its tempo'],
  ])('a drift of %f ± %f: %s', (percent, error, line) => {
    expect(tapsLines({ ...ROOM_TAPS, drift: { percent, error } }).at(-1)).toBe(line);
  });

  test('together the room has a spread of its own, in milliseconds', () => {
    expect(tapsLines({ ...ROOM_TAPS, spread: 34.4, drift: null }).at(-1)).toBe(
      'two taps in three within 34 ms of each hand’s middle',
    );
  });

  test('the number changes twice a second at most, and ends on the last one', () => {
    vi.useFakeTimers();
    const page = document.createElement('div');
    const seen: string[] = [];
    const shown = (): string => page.querySelector('.class-tempo strong')?.textContent ?? '';
    const show = (tempo: number) => void act(() => render(<ClassTaps taps={{ ...ROOM_TAPS, tempo }} />, page));
    show(90);
    for (let at = 0; at < 4000; at += 50) {
      show(at < 2000 ? 91 + at / 50 : 140);
      void act(() => void vi.advanceTimersByTime(50));
      if (seen.at(-1) !== shown()) seen.push(shown());
    }
    // Two seconds of a new number every twentieth of a second.
    expect(seen.length).toBeGreaterThan(2);
    expect(seen.length).toBeLessThanOrEqual(1 + 2000 / CALM_MS + 1);
    expect(seen.at(-1)).toBe('140');
    void act(() => render(null, page));
  });
});

describe('once the taps are in', () => {
  const tapped = rhythmView('tempo', 'closed', {
    // What was tapped is told of the room as a whole: no answer is counted by itself.
    spread: spread('tempo', [], { taps: ROOM_TAPS, notSure: 2, of: 24 }),
    truth: { answer: tapsAt(96), key: '96', also: ['192'] },
    topWrong: {
      key: '192',
      answer: tapsAt(192),
      count: 2,
      error: 'taps-twice-as-fast',
      manyTheSame: true,
      playable: false,
      suspectSpeaker: false,
    },
  });

  const right = { credit: 1, exact: true };
  const closed = {
    ...tapped,
    students: tapped.students.map((student, index) => ({
      ...student,
      ...(index < 3 ? { mark: right } : { mark: { credit: 0.7, exact: false } }),
      // Asked something else: its mark is another question's.
      ...(index === 2 ? { instead: { kind: 'count', target: 0 } } : {}),
    })),
  };

  test('how many had it, what was tapped instead, what to say and to play; nothing to play beside it', () => {
    draw(closed);
    expect(root.querySelector('h1')?.textContent).toBe('Two of 19 had it.');
    expect(text()).toContain('right: 96 or 192 a minute');
    expect(text()).toContain('Two tapped about 192 a minute.');
    expect(text()).toContain('The taps go twice as fast as the numbers.');
    expect(text()).not.toContain('play both');
    expect(text()).not.toContain('answers one by one');
  });

  test.each([
    ['steadiness', 'Two did not tap evenly.'],
    ['drop-out', 'Two did not hold the tempo.'],
  ] as const)('%s: no tempo is wrong, but how it was kept', (kind, sentence) => {
    const { topWrong } = closed;
    draw(rhythmView(kind, 'closed', { spread: spread(kind, [], { taps: ROOM_TAPS, of: 24 }), topWrong }, [kind]));
    expect(root.querySelector('.top-wrong h2')?.textContent).toBe(sentence);
  });

  test('each hand by seat: its tempo, how uneven, how it drifts; unread and untapped in words', () => {
    const students = closed.students.map((student, index) => ({
      ...student,
      ...(index === 1 ? { taps: { tempo: 95.6, unevenness: 6.2, drift: 2.4 } } : {}),
      ...(index === 3 ? { taps: { tempo: 192.1, unevenness: 4, drift: -0.3 } } : {}),
      ...(index === 4 ? { taps: null } : {}),
    }));
    draw({ ...closed, students });
    press('hand by hand');
    const rows = Array.from(root.querySelectorAll('.taps-table tbody tr'), (row) =>
      Array.from(row.children, (cell) => cell.textContent),
    );
    expect(rows).toEqual([
      ['Oda', 'did not tap'],
      ['Jory', '96', '6\u00a0%', '+2\u00a0%'],
      ['Nele', '192', '4\u00a0%', '0\u00a0%'],
      ['Bram', 'could not be read'],
    ]);
    press('fewer hands');
    expect(root.querySelector('.taps-table')).toBeNull();
    draw({ ...closed, students }, { leaf: 'roll' });
    expect(text()).toContain('about 96 a minute, uneven 6\u00a0%, in eight beats +2\u00a0%');
  });

  test('of how even no tempo is right; taps together are only collected', () => {
    draw(rhythmView('steadiness', 'open', { truths: { 'steadiness-0': tapsAt(96) } }, ['tempo', 'steadiness']));
    expect(text()).toContain('right: even taps, at any tempo');
    draw(
      rhythmView('together', 'closed', { spread: spread('together', [], { taps: ROOM_TAPS, of: 24 }), truth: null }),
    );
    expect(root.querySelector('h1')?.textContent).toBe('17 of 24 answered.');
  });
});
