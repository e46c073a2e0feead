import { describe, expect, test } from 'vitest';
import { revealSentence } from '../../client/host/sentences.ts';
import { truthSentence } from '../../client/student/answer-text.ts';
import { peopleOf } from '../../server/rooms/people.ts';
import { hostView, studentCommon } from '../../server/rooms/view.ts';
import { asked, closed, fold, guitar, opened, SETTINGS, shown, started } from '../support/given.ts';

const LIVE = { v: 1, addresses: [], here: new Set<string>(), soundHolder: null, visitors: 0 };
const SIX = ['major', 'minor', 'power', 'suspended-fourth', 'diminished', 'augmented'];

/** What phone and host say once the first chord's quality is shown, its root before it or not. */
function said(chords: string, qualities: readonly string[], rootFirst: boolean) {
  const root = rootFirst ? [asked('a1', 'root-0'), closed('a1'), shown('a1')] : [];
  const ask = rootFirst ? 'a2' : 'a1';
  const round = guitar(chords, 1, null, { ...SETTINGS, qualities });
  const state = fold([opened, started(round), ...root, asked(ask, 'quality-0'), closed(ask), shown(ask)]);
  const { asking, truth } = studentCommon(state);
  const host = hostView(state, peopleOf([]), LIVE, 'page-1');
  if (!asking || !truth || !host.truth) throw new Error('the quality has not been shown');
  return { phone: truthSentence(asking, truth), host: revealSentence(host, host.truth) };
}

describe('phone and host say the same of a quality: what sounded', () => {
  test.each([
    ['Em D', ['major', 'minor'], 'It was minor.', 'It was Em.'],
    ['Bdim C', SIX, 'It was diminished.', 'It was B°.'],
    ['Caug F', SIX, 'It was augmented.', 'It was C+.'],
    ['Csus2 G', SIX, 'It was suspended: a second, no third.', 'It was Csus2.'],
    ['Csus4 G', SIX, 'It was suspended: a fourth, no third.', 'It was Csus4.'],
    ['Bb5 F', SIX, 'It was a power chord: no third.', 'It was B♭5.'],
  ])('%s', (chords, qualities, alone, withRoot) => {
    expect(said(chords, qualities, false)).toEqual({ phone: alone, host: alone });
    expect(said(chords, qualities, true)).toEqual({ phone: withRoot, host: withRoot });
  });
});

/** What phone and host say once one question is shown. */
function saidOf(chords: string, question: string) {
  const round = guitar(chords);
  const state = fold([opened, started(round), asked('a1', question), closed('a1'), shown('a1')]);
  const { asking, truth } = studentCommon(state);
  const host = hostView(state, peopleOf([]), LIVE, 'page-1');
  if (!asking || !truth || !host.truth) throw new Error(`${question} has not been shown`);
  return { phone: truthSentence(asking, truth), host: revealSentence(host, host.truth) };
}

test.each([
  ['Em D', 'count-0', 'Two different chords.'],
  // Open shapes: from the open sixth string up to the open fourth.
  ['Em D', 'distance-1', 'It lies at distance ♭7, up.'],
  ['Em D', 'numeral-0', 'The numerals: vi – V or ii – I.'],
  ['Em D', 'one-or-several-0', 'Several keys own them all.'],
])('phone and host say the same of %s, %s', (chords, question, sentence) => {
  expect(saidOf(chords, question)).toEqual({ phone: sentence, host: sentence });
});

test('phone and host say the same of a settler; the host by its name', () => {
  const { phone, host } = saidOf('Em D', 'settler-0');
  expect(phone).toMatch(/^That leaves [A-G][♭♯]? major\.$/);
  // The wall knows which chord it was.
  expect(host).toMatch(/^[A-G][♭♯]?m?[°+]? leaves [A-G][♭♯]? major\.$/);
  expect(host.replace(/^.* leaves/, 'That leaves')).toBe(phone);
});
