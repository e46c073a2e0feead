import { render } from 'preact';
import { act } from 'preact/test-utils';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { Host, type HostProps } from '../../../client/host/app.tsx';
import { frameOf } from '../../../client/host/frame.ts';
import { fitSeats } from '../../../client/host/parts/seats.tsx';
import {
  BREAKDOWN,
  EM_D,
  hostProps,
  KEYS_AM_E,
  KEYS_D_G,
  KEYS_SPREAD,
  NAMED_SEATS,
  REGISTER,
  ROOT_SPREAD,
  roundAt,
  SOUND_ON,
} from './fixtures.ts';
import { NO_PRESS } from './no-press.ts';
import type { Heard } from '../../../client/host/sound-view.ts';
import type { HostView } from '../../../server/protocol/views.ts';

const root = document.createElement('div');
document.body.append(root);

function show(props: HostProps): HTMLElement {
  void act(() => render(<Host {...props} />, root));
  return root;
}

afterEach(() => act(() => render(null, root)));

const text = (props: HostProps): string => show(props).textContent ?? '';
/** Brass that stands on an answer; the sound's own (meter, sweep, ringing bar) and the wordmark apart. */
const brassOnAnswers = (): number =>
  root.querySelectorAll('.spread .line-brass, .spread .lens-body, .spread .fill-brass, .drawing .fill-brass').length;

describe('register page', () => {
  test('address with its http, room code, and how many seats are taken', () => {
    const page = text(hostProps(REGISTER));
    expect(page).toContain('http://192.168.4.7:4600');
    expect(page).toContain('WAKUR');
    expect(page).toContain('24 seats taken.');
  });

  test('seats are numbers; names stand only where the class shows them', () => {
    expect(show(hostProps(REGISTER)).querySelectorAll('.seat')).toHaveLength(24);
    expect(root.textContent).not.toContain('Nele');
    expect(root.querySelectorAll('.seat.away')).toHaveLength(2);
    const settings = { ...REGISTER.settings, namesShown: true };
    expect(text(hostProps({ ...REGISTER, seats: NAMED_SEATS, settings }))).toContain('Łukasz');
  });

  test('a name is text, whatever is in it', () => {
    const seats = [{ seat: 1, name: '<img src=x onerror=alert(1)>', here: true }];
    const page = show(hostProps({ ...REGISTER, seats, settings: { ...REGISTER.settings, namesShown: true } }));
    expect(page.querySelector('img')).toBeNull();
    expect(page.textContent).toContain('<img src=x');
  });

  test('after a minute without seats it names network, firewall and the exact port', () => {
    const page = text(hostProps({ ...REGISTER, seats: [] }, { unreached: true }));
    expect(page).toContain('port 4600');
    expect(page).toContain('http://10.0.3.12:4600');
  });

  test.each([1, 24, 60, 100, 250])('%i seats fit, or the page says how many more there are', (count) => {
    for (const named of [true, false]) {
      const { cell, columns, drawn } = fitSeats(count, named, 1696, 242);
      const cells = drawn === count ? drawn : drawn + 1;
      expect(Math.ceil(cells / columns) * cell.height).toBeLessThanOrEqual(242);
      expect(drawn).toBeGreaterThan(0);
    }
  });
});

describe('sound', () => {
  const off = { ...SOUND_ON, state: 'off' as const };

  test('off: one press; on: a test note; elsewhere: take over', () => {
    expect(text(hostProps(REGISTER, { sound: off }))).toContain('Press for sound');
    expect(text(hostProps(REGISTER))).toContain('test note');
    const takeOver = vi.fn();
    show(hostProps({ ...REGISTER, soundHeld: true }, { sound: off, actions: { ...NO_PRESS, takeOver } }));
    const button = [...root.querySelectorAll('button')].find((each) => each.textContent === 'Take over');
    button?.click();
    expect(takeOver).toHaveBeenCalledOnce();
  });

  test.each([
    ['lost', 'The sound has stopped.'],
    ['failed', 'kept the sound back'],
    ['silent', 'Nothing leaves this page'],
  ] as const)('%s sound in a lesson is said at once, with the press that mends it', (state, sentence) => {
    show(hostProps(roundAt(1, 'open'), { sound: { ...SOUND_ON, state } }));
    const banner = root.querySelector('[role=alert]');
    expect(banner?.textContent).toContain(sentence);
    expect(banner?.querySelector('button')).not.toBeNull();
  });

  test('a second screen beside the one that sounds is not told off', () => {
    show(hostProps({ ...roundAt(1, 'open'), holdsSound: false }, { sound: off }));
    expect(root.querySelector('[role=alert]')).toBeNull();
  });

  test('the teacher’s guitar needs no sound of ours', () => {
    const page = text(hostProps({ ...roundAt(1, 'open'), vamp: { ...EM_D, source: 'guitar' } }, { sound: off }));
    expect(root.querySelector('[role=alert]')).toBeNull();
    expect(root.querySelector('.sweep')).toBeNull();
    expect(page).toContain('the teacher’s guitar');
  });

  test('the test note stays within reach on every screen of a round', () => {
    const spread = { ...roundAt(3, 'closed'), spread: ROOT_SPREAD };
    const keys = { ...roundAt(5, 'shown'), truth: { answer: ['2M', '7M'], key: '2M 7M' }, keysReveal: KEYS_D_G };
    for (const view of [roundAt(1, 'open'), roundAt(3, 'closed'), spread, keys]) {
      expect(text(hostProps(view))).toContain('test note');
    }
  });

  test('the caution covers all else and names the rules that come first', () => {
    const page = text(hostProps(REGISTER, { sound: { ...off, cautioning: true } }));
    expect(page).toContain('65 to 72 dB(A)');
    expect(page).toContain('come first');
  });
});

describe('round', () => {
  test('the question, its place in words, and how many hands are in', () => {
    const page = text(hostProps(roundAt(1, 'open')));
    expect(page).toContain('From home, where did the bass go?');
    expect(page).toContain('two of five');
    expect(page).toContain('17 of 24');
    expect(root.querySelector('[aria-current=step]')?.textContent).toBe('bass');
  });

  test('nothing of the chords is readable before it has been shown', () => {
    for (const status of ['open', 'closed'] as const) {
      const page = text(hostProps(roundAt(1, status)));
      expect(page).not.toMatch(/\bE ?m\b|minor|\bD\b/);
      expect(root.innerHTML).not.toContain('Em');
    }
  });

  test('the bar that sounds rings, and the sweep is moved by a transform alone', () => {
    const heard = { phase: 'vamp', bar: 2, beat: 1, slot: 1 } as const;
    show(hostProps(roundAt(1, 'open'), { sound: { ...SOUND_ON, position: () => heard } }));
    expect(root.querySelectorAll('.lens-body')).toHaveLength(6);
    expect(root.querySelector<SVGGElement>('.sweep')?.style.transform).toMatch(/^translateX\(\d/);
  });

  test('reduced motion: a mark steps under the beat, no plectrum travels', () => {
    const heard = { phase: 'vamp', bar: 0, beat: 1.7, slot: 0 } as const;
    const sound = { ...SOUND_ON, position: () => heard };
    show(hostProps(roundAt(1, 'open'), { sound, still: true }));
    const stepped = root.querySelector<SVGGElement>('.sweep')?.style.transform;
    expect(root.querySelector('.step-mark')).not.toBeNull();
    show(hostProps(roundAt(1, 'open'), { sound: { ...sound, position: () => ({ ...heard, beat: 1 }) }, still: true }));
    expect(root.querySelector<SVGGElement>('.sweep')?.style.transform).toBe(stepped);
  });

  test('the count-in is in words: figures could be read as distances', () => {
    const sound = { ...SOUND_ON, position: () => ({ phase: 'count-in', beat: 2, of: 3 }) as const };
    show(hostProps(roundAt(0, 'ready'), { sound }));
    expect([...root.querySelectorAll('.count')].map((each) => each.textContent)).toEqual(['one', 'two', 'three']);
    expect(root.querySelector('.count.now')?.textContent).toBe('three');
  });

  const SILENT_LOG = { ...roundAt(0, 'ready').sound, playing: false, round: null };

  test('the page that sounds counts from its own sound: “one” stands before the room has heard of it', () => {
    const sound = { ...SOUND_ON, position: () => ({ phase: 'count-in', beat: 0, of: 4 }) as const };
    show(hostProps({ ...roundAt(0, 'ready'), sound: SILENT_LOG }, { sound }));
    expect(root.querySelector('.count.now')?.textContent).toBe('one');
  });

  test.each([
    ['a log that is cut off', { sound: SILENT_LOG }],
    ['a room that has forgotten who holds the sound', { holdsSound: false, soundHeld: false }],
  ])('the sweep goes on with the page’s own sound through %s', (_, cut) => {
    const sound = { ...SOUND_ON, position: () => ({ phase: 'vamp', bar: 1, beat: 2, slot: 0 }) as const };
    show(hostProps({ ...roundAt(1, 'open'), ...cut }, { sound }));
    expect(root.querySelectorAll('.lens-body')).toHaveLength(6);
    expect(root.querySelector<SVGGElement>('.sweep')?.style.visibility).toBe('visible');
  });

  test('what the teacher changed is said while it sounds: by this page’s own sound, or by the log on a second screen', () => {
    const held = { ...roundAt(1, 'open').sound, change: { kind: 'hold', slot: 1 } } as const;
    const heard = { phase: 'vamp', bar: 1, beat: 2, slot: 1 } as const;
    const view = { ...roundAt(1, 'open'), sound: held };
    const says = (props: HostProps): boolean => text(props).includes('one chord held');
    expect(says(hostProps(view, { sound: { ...SOUND_ON, position: () => heard } }))).toBe(true);
    // It has just been stopped here; the log comes later.
    expect(says(hostProps(view))).toBe(false);
    const second = { ...view, holdsSound: false };
    expect(says(hostProps(second))).toBe(true);
    expect(says(hostProps({ ...second, sound: { ...held, playing: false } }))).toBe(false);
  });

  test('closed: the double bar', () => {
    show(hostProps(roundAt(1, 'closed')));
    expect(root.querySelector('.closed')).not.toBeNull();
    show(hostProps(roundAt(1, 'open')));
    expect(root.querySelector('.closed')).toBeNull();
  });
});

describe('the groove on the wall', () => {
  const asked = (kind: string, status: 'open' | 'closed' | 'shown'): HostView => {
    const view = roundAt(0, status);
    const steps = view.steps.map((step, index) => (index === 0 ? { ...step, kind } : step));
    const asking = { kind, target: 0, grid: 'E8' };
    return { ...view, steps, current: view.current && { ...view.current, kind, asking } };
  };
  const heard: Heard = { phase: 'vamp', bar: 1, beat: 2.5, slot: 0 };
  const playing = { ...SOUND_ON, position: () => heard };

  test('neither bars nor beats stand there while they are asked; the strings ring all the same', () => {
    for (const kind of ['tempo', 'bar-count', 'threes']) {
      const page = show(hostProps(asked(kind, 'open'), { sound: playing }));
      expect(page.querySelectorAll('.stave .fill-ink, .stave .line-ink, .stave .g3.line-ink, .sweep')).toHaveLength(0);
      expect(page.querySelectorAll('.stave .lens-body')).toHaveLength(6);
      expect(page.querySelector('.stave')?.getAttribute('aria-label')).not.toMatch(/bar in|bars in/);
    }
    const page = show(hostProps(asked('swing', 'open'), { sound: playing }));
    expect(page.querySelectorAll('.stave .fill-ink').length).toBeGreaterThan(8);
    expect(page.querySelector('.sweep')).not.toBeNull();
  });

  test('numbers that are asked are not counted on the wall either', () => {
    const counting: Heard = { phase: 'count-in', beat: 0, of: 1 };
    const page = show(hostProps(asked('bar-count', 'open'), { sound: { ...SOUND_ON, position: () => counting } }));
    expect(page.querySelector('.count-in')).toBeNull();
  });

  test('a drawn grid stands there while it sounds, under the sweep, and nobody’s name with it', () => {
    const groove =
      'echo-1, Echo | E8 | 4/4 | 60-160 | r=1 / strk DuDUdUDu / zone A.AA.AA. / tch x.xx.xx. / acc 30130130';
    const view = asked('accents', 'closed');
    const props = hostProps(
      { ...view, sound: { ...view.sound, change: { kind: 'echo', groove } } },
      { sound: playing },
    );
    const page = show(props);
    const grid = page.querySelector('.echo-grid');
    expect(grid?.getAttribute('aria-label')).toContain('heavy on');
    expect(page.querySelector('.stave')).toBeNull();
    expect(grid?.querySelector<SVGGElement>('.sweep')?.style.transform).toMatch(/^translate\([\d.]+px, [\d.]+px\)$/);
    expect(page.textContent).toContain('on muted strings');
    show(hostProps(view, { sound: playing }));
    expect(root.querySelector('.echo-grid')).toBeNull();
    // Once it is shown, what is right does not stand over what somebody drew.
    const truth = { answer: [2, 1, 2, 1, 2, 1, 2, 1], key: '21212121' };
    const shown = { ...asked('accents', 'shown'), truth };
    expect(text(hostProps(shown, { sound: playing }))).toContain('eavy on the numbers');
    const echoing = { ...shown, sound: { ...shown.sound, change: { kind: 'echo' as const, groove } } };
    const page2 = text(hostProps(echoing, { sound: playing }));
    expect(page2).toContain('Listen to this grid.');
    expect(page2).not.toContain('eavy on the numbers');
  });

  test('hands are to be shaken out, and pain means stop', () => {
    const page = text(hostProps(roundAt(1, 'shown'), { sound: { ...playing, shaking: true } }));
    expect(page).toContain('shake your hands out');
    expect(page).toContain('Pain means stop');
    expect(text(hostProps(roundAt(1, 'shown'), { sound: playing }))).not.toContain('Pain');
  });
});

describe('spread and reveal', () => {
  test('a spread is ink alone; the right answer turns brass with the reveal', () => {
    const closed = { ...roundAt(3, 'closed'), spread: ROOT_SPREAD };
    show(hostProps(closed));
    expect(brassOnAnswers()).toBe(0);
    const truth = { answer: { string: 6, fret: 0 }, key: '6.0', also: ['5.7', '6.12'], name: 'E' };
    expect(text(hostProps({ ...roundAt(3, 'shown'), spread: ROOT_SPREAD, truth }))).toContain('The root is E.');
    expect(brassOnAnswers()).toBeGreaterThan(0);
  });

  test('a reveal without a spread draws the answer and no hands', () => {
    show(hostProps({ ...roundAt(1, 'shown'), truth: { answer: 'down', key: 'down' } }));
    expect(root.querySelector('h1')?.textContent).toBe('The bass went down.');
    expect(root.querySelectorAll('.spread .fill-ink').length).toBeLessThanOrEqual(3);
  });

  test('keys: owners, both chart rows, numerals, the note that decides', () => {
    const truth = { answer: ['2M', '7M'], key: '2M 7M' };
    const page = text(hostProps({ ...roundAt(5, 'shown'), truth, keysReveal: KEYS_D_G, spread: KEYS_SPREAD }));
    expect(page).toContain('Two keys own D and G.');
    expect(page).toContain('C♯ says D');
    expect([...root.querySelectorAll('.numeral')].map((each) => each.textContent)).toEqual(
      'I ii iii IV V vi vii° V vi vii° I ii iii IV'.split(' '),
    );
    expect(root.querySelectorAll('.drawing .fill-brass')).toHaveLength(2);
  });

  test('keys under a capo: below what sounds each row has its shapes, and says so', () => {
    const truth = { answer: ['2M', '7M'], key: '2M 7M' };
    const shown = roundAt(5, 'shown');
    const reveal = { ...shown, truth, keysReveal: KEYS_D_G, spread: KEYS_SPREAD };
    expect(text(hostProps(reveal))).not.toContain('capo');
    const page = text(hostProps({ ...reveal, vamp: shown.vamp ? { ...shown.vamp, capo: 2 } : null }));
    expect(page.match(/shape, capo 2/g)).toHaveLength(2);
    // Common practice: two frets down from D Em F♯m G A Bm C♯° in D, and from D Em F♯° G Am Bm C in G.
    expect([...root.querySelectorAll('.drawing .shapes .chord')].map((each) => each.textContent)).toEqual(
      'C Dm Em F G Am B° C Dm E° F Gm Am B♭'.split(' '),
    );
  });

  test('no key owns all: said, and which keys each chord lives in', () => {
    const truth = { answer: [], key: 'none' };
    const page = text(hostProps({ ...roundAt(5, 'shown'), truth, keysReveal: KEYS_AM_E, spread: KEYS_SPREAD }));
    expect(page).toContain('No major key owns Am and E.');
    // Common practice: A minor is iii, vi and ii of F, C and G; E is V, I and IV of A, E and B.
    expect(page).toContain('F\u2003C\u2003G');
    expect(page).toContain('A\u2003E\u2003B');
    expect(root.querySelectorAll('.drawing .fill-brass')).toHaveLength(0);
  });
});

describe('how a question is asked and what sounds', () => {
  test('aloud: no hands are counted; from memory it says so', () => {
    const open = roundAt(1, 'open');
    const current = open.current;
    if (!current) throw new Error('no question is open');
    expect(text(hostProps({ ...open, current: { ...current, aloud: true } }))).toContain('Aloud, no phones.');
    expect(root.querySelector('.hands-in')).toBeNull();
    expect(text(hostProps({ ...open, current: { ...current, memory: true } }))).toContain('From memory.');
  });

  test('two readings are drawn as they sound, and which was misheard only once the answer is shown', () => {
    const slot = { chord: 'Em', beats: 4, frets: [0, 2, 2, 0, 0, 0] };
    const both = { kind: 'both', ask: 'a-direction-1', wrong: [slot], right: [slot] } as const;
    const closed = roundAt(1, 'closed');
    const sound = { ...closed.sound, change: both };
    show(hostProps({ ...closed, sound }));
    expect(root.querySelector('.both-readings')?.textContent).toBe('two readings by turns: which is it?');
    expect(root.querySelector('.both-readings rect[fill]')).toBeNull();
    const shown = { ...roundAt(1, 'shown'), sound, truth: { answer: 'up', key: 'up' } };
    show(hostProps(shown));
    expect(root.querySelector('.both-readings')?.textContent).toBe('what was heard instead, then what sounds');
    expect(root.querySelector('.both-readings rect[fill]')).not.toBeNull();
  });
});

describe('end of the lesson', () => {
  test('one line a question with its counts and what was heard instead, no names', () => {
    const settings = { ...REGISTER.settings, namesShown: true };
    show(hostProps({ ...REGISTER, settings, seats: NAMED_SEATS, status: 'lesson-ended', breakdown: BREAKDOWN }));
    expect(root.querySelectorAll('tbody tr:not(.round-name)')).toHaveLength(BREAKDOWN.length);
    const row = root.querySelectorAll('tbody tr:not(.round-name)')[3];
    expect(row?.textContent).toBe('First chord: where is its root? E110112B 7A 4');
    for (const { name } of NAMED_SEATS) if ((name ?? '').length > 3) expect(root.textContent).not.toContain(name);
  });

  test('first what the room mishears: three at most, with a sentence to say, interval and counts, no names; then the page of print', async () => {
    const found = ['hears-the-fifth', 'swaps-four-and-five', 'says-stays', 'hears-no-change'].map((error, index) => ({
      error,
      times: 9 - index,
      chances: 23,
      interval: [0.22, 0.59] as const,
      guessing: 0.1,
      kinds: ['root'],
      ask: null,
    }));
    const settings = { ...REGISTER.settings, namesShown: true };
    const ended = { ...REGISTER, settings, seats: NAMED_SEATS, status: 'lesson-ended', breakdown: BREAKDOWN } as const;
    show(hostProps({ ...ended, common: found }));
    expect(root.querySelector('h1')?.textContent).toBe('What this room mishears');
    const rows = [...root.querySelectorAll('tbody tr')];
    expect(rows).toHaveLength(3);
    expect(rows[0]?.textContent).toBe('The fifth is taken for the root.Which of the two could you stop on?9 of 23');
    for (const { name } of NAMED_SEATS) if ((name ?? '').length > 3) expect(root.textContent).not.toContain(name);
    await act(() => root.querySelector('button')?.click());
    expect(root.querySelectorAll('tbody tr:not(.round-name)')).toHaveLength(BREAKDOWN.length);
  });

  test('opinions have their counts and no mark; a lesson of nothing else is not empty', () => {
    const opinions = [
      {
        round: 2,
        question: 'home-0',
        kind: 'home',
        target: 0,
        counts: [
          { key: '0', answer: 0, count: 5 },
          { key: '2', answer: 2, count: 3 },
        ],
        notSure: 1,
      },
    ];
    show(hostProps({ ...REGISTER, status: 'lesson-ended', breakdown: BREAKDOWN, opinions }));
    const last = [...root.querySelectorAll('tbody')].at(-1);
    expect(last?.querySelector('.round-name')?.textContent).toBe('opinions: none is right or wrong');
    expect(last?.querySelector('tr:last-child')?.textContent).toBe(
      'Where would you stop? round twofirst chord 5third chord 3not sure 1',
    );
    show(hostProps({ ...REGISTER, status: 'lesson-ended', breakdown: [], opinions }));
    expect(root.querySelector('thead')).toBeNull();
    expect(root.textContent).toContain('Where would you stop?');
    expect(root.textContent).not.toContain('No question was shown today.');
  });

  test('a closed room says so', () => {
    expect(text(hostProps({ ...REGISTER, status: 'room-ended' }))).toContain('This room has closed.');
  });
});

test.each([
  [1920, 1080, 1920, 1080],
  [1366, 768, 1921, 1080],
  [1024, 768, 1600, 1200],
])('a window of %i × %i is a picture of %i × %i units', (wide, high, width, height) => {
  const frame = frameOf(wide, high);
  expect(Math.round(frame.width)).toBe(width);
  expect(Math.round(frame.height)).toBe(height);
});
