import { expect, test } from 'vitest';
import { rightHands, shareRight } from '../../../client/desk/fallen.ts';
import { findingsOf, quietList } from '../../../client/desk/reports.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { button, draw, press, root, text } from './draw.tsx';
import { deskView, fallenView, GUITAR, PLAYING, reportOf, spreadOf, STILL } from './fixtures.ts';

const TOP: NonNullable<DeskView['topWrong']> = {
  key: 'up',
  answer: 'up',
  count: 6,
  error: 'follows-the-top-note',
  manyTheSame: true,
  suspectSpeaker: false,
  playable: true,
};
const COUNTS = { up: 6, down: 5, same: 1 };
const fallen = (change: Partial<DeskView> = {}) =>
  fallenView('direction-1', 'closed', COUNTS, 'down', { topWrong: TOP, ...change });

test('the spread, the right ones, and who said nothing', () => {
  draw(fallen());
  expect(root.querySelector('h1')?.textContent).toBe('Five of 14 heard it.');
  expect(root.querySelector('svg.spread')?.getAttribute('aria-label')).toBe('up: 6, down: 5, stays: 1');
  expect(text()).toContain('right: down · 2 not sure · one silent');
});

test('other right places and answers let stand count as right; no hand is no share', () => {
  const spread = spreadOf('root-0', { '6.0': 2, '5.7': 3, '5.2': 5 });
  const truth = { answer: { string: 6, fret: 0 }, key: '6.0', also: ['5.7', '6.12'] };
  const view = { spread, truth, letStand: [], students: [] };
  expect(rightHands(view)).toBe(5);
  expect(shareRight(view)).toBe(0.5);
  expect(shareRight({ ...view, letStand: ['5.2'] })).toBe(1);
  expect(shareRight({ ...view, spread: spreadOf('root-0', {}) })).toBeNull();
});

test('what was misheard most stands with what it shows, a sentence to say, a thing to play', () => {
  draw(fallen());
  expect(text()).toContain('Six heard up.');
  expect(text()).toContain('The top note is followed, not the bass.');
  expect(root.querySelector('.say')?.textContent).toMatch(/^“.+”$/);
  expect(text()).toContain('Many the same: teach it.');
});

test('one press plays both, another goes back to all of it', () => {
  const { made } = draw(fallen());
  const both = 'play bothup, then down';
  expect(button(both).getAttribute('aria-pressed')).toBe('false');
  press(both);
  expect(made).toEqual([{ type: 'PlayBoth', ask: 'a-direction-1' }]);

  const change = { kind: 'both', ask: 'a-direction-1', wrong: [], right: [] } as const;
  const playing = draw(fallen({ sound: { ...PLAYING, change } }));
  const back = 'back to fullup, then down';
  expect(button(back).getAttribute('aria-pressed')).toBe('true');
  press(back);
  expect(playing.made).toEqual([{ change: { kind: 'full' } }]);
});

test.each([
  ['nothing of its own to play', {}, 'Nothing of its own to play.'],
  ['nothing plays', { sound: STILL }, 'Once the vamp plays.'],
  ['no host screen', { soundHeld: false }, 'No host screen has its sound on.'],
] as const)('both cannot be played: %s', (_, change, sentence) => {
  draw(fallen({ topWrong: { ...TOP, playable: false }, ...change }));
  expect(button(`play both${sentence}`).disabled).toBe(true);
});

test('on the own guitar the two things to play are named', () => {
  draw(fallen({ ...GUITAR, topWrong: { ...TOP, playable: false } }));
  expect(text()).toContain('On your guitar, by turns: up, then down.');
  expect(root.querySelector('.both')).toBeNull();
});

test('a wrong answer can be let stand, and no more', () => {
  const { made } = draw(fallen());
  press('answers one by one');
  const rows = Array.from(root.querySelectorAll('.answer-list li'), (each) => each.textContent);
  expect(rows).toEqual(['up6 handsalso right', 'down5 handsright', 'staysone handalso right']);
  press('up: also right');
  const wish = { type: 'LetStand', round: 'r1', question: 'direction-1' };
  expect(made).toEqual([{ ...wish, answer: 'up', stands: true }]);

  const again = draw(fallen({ letStand: ['up'] }));
  expect(root.querySelector('h1')?.textContent).toBe('Eleven of 14 heard it.');
  press('answers one by one');
  expect(button('up: also right').getAttribute('aria-pressed')).toBe('true');
  press('up: also right');
  expect(again.made).toEqual([{ ...wish, answer: 'up', stands: false }]);
});

test('a question can be struck and counted again', () => {
  const { made } = draw(fallen());
  press('strike it');
  const view = fallen();
  const struck = (step: DeskView['steps'][number]) => (step.status === 'closed' ? { ...step, struck: true } : step);
  const again = draw({
    ...view,
    steps: view.steps.map(struck),
    current: view.current && { ...view.current, struck: true },
  });
  press('count it again');
  const wish = { type: 'StrikeQuestion', round: 'r1', question: 'direction-1' };
  expect([...made, ...again.made]).toEqual([
    { ...wish, struck: true },
    { ...wish, struck: false },
  ]);
});

test('few heard it: what plays it again comes before what was misheard', () => {
  draw(fallenView('direction-1', 'closed', { up: 9, down: 1 }, 'down', { topWrong: TOP }));
  const order = Array.from(root.querySelectorAll('.sound-controls, .top-wrong'), (each) => each.className);
  expect(order).toEqual(['sound-controls', 'top-wrong']);
  draw(fallen());
  const usual = Array.from(root.querySelectorAll('.sound-controls, .top-wrong'), (each) => each.className);
  expect(usual).toEqual(['top-wrong', 'sound-controls']);
});

const SLIP = { error: 'swaps-four-and-five', times: 3 };

test('the quiet list names the silent, those who cannot hear and the same slip again, by seat, four at most', () => {
  const { students } = deskView();
  const reports = [
    reportOf('s3', { errors: [SLIP] }),
    reportOf('s2', { silent: 2 }),
    reportOf('s4', { silent: 1, errors: [{ ...SLIP, times: 2 }] }),
  ];
  const noted = quietList({ students, reports }).map(({ name, notes }) => [name, notes.join(', ')]);
  expect(noted).toEqual([
    ['Oda', 'can’t hear: nearer the speaker'],
    ['Jory', 'silent 2 times'],
    ['Pim', 'the same slip 3 times'],
  ]);
  const all = students.map(({ student }) => reportOf(student, { silent: 3 }));
  expect(quietList({ students, reports: all })).toHaveLength(4);
});

test('the roll goes by seat and says of each what happened, most frequent slip and habits with what to say', () => {
  const reports = [
    reportOf('s5', { right: 8, points: 80 }),
    reportOf('s1', { silent: 2, errors: [SLIP], habits: [{ habit: 'leans-to-one-quality', times: 7, of: 8 }] }),
  ];
  const { students } = deskView();
  draw(deskView('direction-1', 'closed', { reports, students: students.toReversed() }), { leaf: 'roll' });
  const names = Array.from(root.querySelectorAll('.roll-name'), (each) => each.textContent);
  expect(names).toEqual(['Oda', 'Jory', 'Pim', 'Nele', 'Bram']);
  const [oda] = root.querySelectorAll('.roll > li');
  expect(oda?.textContent).toContain('5 right, 1 partly, 1 wrong, 1 not sure, 2 silent · 56 points');
  expect(oda?.textContent).toContain('3 times: Four and five change places.');
  expect(oda?.textContent).toContain('7 of 8: Nearly every chord gets the same quality.');
  expect(oda?.querySelectorAll('q')).toHaveLength(2);
});

test('one slip is a hint, three are firm', () => {
  const report = (times: number) => reportOf('s1', { errors: [{ ...SLIP, times }] });
  expect(findingsOf(report(1)).map(({ finding, firm }) => [finding, firm])).toEqual([
    ['once: Four and five change places.', false],
  ]);
  expect(findingsOf(report(3))[0]?.firm).toBe(true);
  expect(findingsOf(reportOf('s1'))).toEqual([]);
});

test('the roll says who is asleep or cannot hear, and each answer privately', () => {
  const { students } = deskView();
  const mark = { credit: 0, exact: false };
  const answered = students.map((each) => (each.seat === 2 ? { ...each, answer: 'up', mark } : each));
  draw(deskView('direction-1', 'closed', { students: answered }), { leaf: 'roll' });
  expect(text()).toContain('here · can’t hear: nearer the speaker · left-handed');
  expect(text()).toContain('here · up, wrong');
  expect(text()).toContain('asleep');
});

test.each<[Record<string, number>, string]>([
  [{ 0: 2, 2: 1 }, 'Five of 6 answered.'],
  [{}, 'No hand was in.'],
])('an opinion %j: how many answered, and nothing of who was right', (counts, said) => {
  const none = Object.keys(counts).length === 0;
  const view = fallenView('direction-1', 'closed', counts, '', { truth: null, topWrong: null });
  const kind = 'home';
  draw({
    ...view,
    steps: view.steps.map((step) => (step.question === 'direction-1' ? { ...step, kind } : step)),
    current: view.current && { ...view.current, kind, asking: { kind, target: 0 } },
    spread: view.spread && { ...view.spread, kind, asking: { kind, target: 0 }, ...(none ? { notSure: 0 } : {}) },
  });
  expect(root.querySelector('h1')?.textContent).toBe(said);
  expect(text()).not.toContain('heard it');
});

// common practice: Am G C D is A dorian, G ionian, C lydian or D mixolydian; nothing rests on a diminished chord.
test.each([
  ['Am G C D', '7M h0', 'right: G; home: any of these'],
  ['Am Bdim C', '0M h0', 'right: C; home: Am or C'],
])('scales of %s: every home that is right', (chords, answer, said) => {
  const slots = chords.split(' ').map((chord) => ({ chord, beats: 4, frets: [] }));
  const view = fallenView('keys-0', 'closed', { [answer]: 1 }, answer);
  draw({ ...view, vamp: view.vamp && { ...view.vamp, slots } });
  expect(text()).toContain(said);
});
