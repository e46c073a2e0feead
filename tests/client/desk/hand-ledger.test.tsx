import { expect, test } from 'vitest';
import { button, draw, press, root } from './draw.tsx';
import { deskView, reportOf } from './fixtures.ts';

const plain = deskView('count-0', 'ready', { reports: [reportOf('s1')] });
const view = { ...plain, settings: { ...plain.settings, beatLevel: 3 } };

test('one press ticks a hand for the class’s beat level, another takes it back', () => {
  const { made } = draw(view, { leaf: 'roll' });
  press('hand ledger');
  expect(root.querySelector('.hand-ledger h2')?.textContent).toBe('Played through, beat level 3');
  expect(root.querySelector('.hand-ledger .level-name')?.textContent).toBe('Heavy and light');
  const hands = Array.from(root.querySelectorAll<HTMLButtonElement>('.hand'));
  expect(hands.map((hand) => hand.getAttribute('aria-pressed'))).toEqual(['false', 'true', 'false', 'false', 'false']);
  hands[0]?.click();
  hands[1]?.click();
  expect(made).toEqual([
    { type: 'TickHand', student: 's1', beat: 3, played: true },
    { type: 'TickHand', student: 's2', beat: 3, played: false },
  ]);
});

test('what was heard stands beside it, and what was played at other levels', () => {
  draw(view, { leaf: 'roll' });
  press('hand ledger');
  const [oda, jory] = Array.from(root.querySelectorAll('.hand'), (hand) => hand.textContent);
  expect(oda).toBe('Odaheard 4 of 5, needs 5 of 6not yet');
  expect(jory).toBe('Jorynothing heard at this level yet · also level 1played through');
  press('back to the roll');
  expect(button('hand ledger').isConnected).toBe(true);
  expect(root.querySelector('.hand')).toBeNull();
});

test('an empty room has no ledger', () => {
  draw({ ...view, students: [] }, { leaf: 'roll' });
  expect(() => button('hand ledger')).toThrow('0 buttons');
});
