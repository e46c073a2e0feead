import { act } from 'preact/test-utils';
import { describe, expect, test } from 'vitest';
import type { DeskView } from '../../../server/protocol/views.ts';
import { button, draw, press, root, text } from './draw.tsx';
import { GUITAR, PLAYING, STILL } from './fixtures.ts';
import { EIGHTHS, rhythmView, spread } from './rhythm-fixtures.ts';

const ASK = 'a-accents';
/** Two and four heavy; one and three. */
const RIGHT = [1, 1, 2, 1, 1, 1, 2, 1];
const ROTATED = [2, 1, 1, 1, 2, 1, 1, 1];

const closed = (change: Partial<DeskView> = {}): DeskView => {
  const counts = [
    { key: '11211121', answer: RIGHT, count: 2 },
    { key: '21112111', answer: ROTATED, count: 2 },
  ];
  const view = rhythmView('accents', 'closed', {
    spread: spread('accents', counts, { meanGrid: [1.5, 1, 1.5, 1, 1.5, 1, 1.5, 1] }),
    truth: { answer: RIGHT, key: '11211121' },
    topWrong: {
      key: '21112111',
      answer: ROTATED,
      count: 2,
      error: 'starts-the-bar-elsewhere',
      manyTheSame: false,
      playable: false,
      suspectSpeaker: false,
    },
    ...change,
  });
  const students = view.students.map((student, index) => (index === 1 ? { ...student, answer: ROTATED } : student));
  return { ...view, students };
};

/** The desk while a grid sounds. */
const sounding = (groove: string): Partial<DeskView> => ({
  sound: { ...PLAYING, change: { kind: 'echo', groove } },
});

describe('the grids of a closed question about accents', () => {
  test('the answers are read as a teacher counts them', () => {
    draw(closed());
    expect(text()).toContain('right: heavy on 2 and 4');
    expect(text()).toContain('Two marked heavy on 1 and 3.');
    expect(text()).toContain('The right shape, begun at another place of the bar.');
  });

  test('the class’s, the right one and each student’s can be played', () => {
    const { made } = draw(closed());
    press('the class’s grid', 'the right one', 'each one’s grid', 'play this grid: Jory');
    const play = { type: 'PlayEcho', ask: ASK };
    expect(made).toEqual([
      { ...play, of: { grid: 'class' } },
      { ...play, of: { grid: 'right' } },
      { ...play, of: { grid: 'student', student: 's2' } },
    ]);
    expect(root.querySelectorAll('.echo .answer-list li')).toHaveLength(1);
    expect(root.querySelector('.echo .answer-list')?.textContent).toContain('heavy on 1 and 3');
  });

  test('what was pressed comes with the next bar, then sounds; a press on it goes back to the loop', () => {
    const { desk, made } = draw(closed());
    const now = () => root.querySelector('.echo-now')?.textContent;
    press('the right one');
    expect(now()).toBe('next bar: the right one');
    const view = desk.view as { value: DeskView };
    void act(() => void (view.value = closed(sounding('one'))));
    expect(now()).toBe('now: the right one');
    expect(button('the right one').getAttribute('aria-pressed')).toBe('true');
    press('the class’s grid');
    expect(now()).toBe('now: the right one · next bar: the class’s grid');
    void act(() => void (view.value = closed(sounding('two'))));
    expect(now()).toBe('now: the class’s grid');
    // Another desk asked for this one.
    void act(() => void (view.value = closed(sounding('three'))));
    expect(now()).toBe('now: a grid');
    press('back to full');
    expect(made.at(-1)).toEqual({ change: { kind: 'full' } });
    void act(() => void (view.value = closed()));
    expect(now()).toBe('');
  });

  test('not before the vamp plays or a host sounds, nor on the teacher’s own guitar, nor of another kind', () => {
    draw(closed({ sound: STILL }));
    expect(button('the right one').disabled).toBe(true);
    expect(root.querySelector('.echo')?.textContent).toContain('Once the vamp plays.');
    draw(closed({ soundHeld: false }));
    expect(root.querySelector('.echo')?.textContent).toContain('No host screen has its sound on.');
    draw(closed({ ...GUITAR, vamp: { ...EIGHTHS, source: 'guitar' } }));
    expect(root.querySelector('.echo')).toBeNull();
    draw(rhythmView('count', 'closed', { spread: spread('count', []), truth: { answer: 2, key: '2' } }));
    expect(root.querySelector('.echo')).toBeNull();
    draw(closed({ spread: spread('accents', [], { meanGrid: null }) }));
    expect(text()).not.toContain('the class’s grid');
  });
});
