import { countingWords, listed } from '../../server/protocol/words/counting.ts';
import { deskWords } from '../../server/protocol/words/en.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import type { DeskView, WireStep } from '../../server/protocol/views.ts';
import { chordSymbol, readSymbol } from '../../shared-theory/chords.ts';
import { differentChords } from '../../shared-theory/different-chords.ts';
import { HOME_IDS } from '../../shared-theory/questions/keys/ask.ts';
import { validHomes } from '../../shared-theory/questions/keys/right-keys.ts';
import { withAdditions } from '../../shared-theory/questions/numeral/additions.ts';
import { tappedTempo } from '../../shared-theory/taps/taps.ts';
import { answerText, truthText } from '../shared/answer-text.ts';
import { printChord } from '../shared/names.ts';
import { askingOf } from './step-names.ts';

const words = deskWords.round;

/**
 * The right answer in a few words, numerals with what more their chords have. Of the homes beside parent scales one is as right as
 * another: `G; home: any of these`.
 */
export function rightText(view: DeskView, step: WireStep, answer: unknown): string {
  const { vamp, settings } = view;
  const { kind } = step;
  if (kind === 'steadiness') return fill(words.right, { answer: truthText(kind, answer) });
  if (kind === 'tempo' || kind === 'drop-out') return fill(words.right, { answer: temposText(view, step, answer) });
  const slots = (vamp?.slots ?? []).map(({ chord }) => readSymbol(chord));
  if (kind === 'numeral' && Array.isArray(answer)) {
    const numerals = withAdditions(answer.map(String), differentChords(slots));
    return fill(words.right, { answer: answerText(kind, numerals) });
  }
  if (kind !== 'keys' || !Array.isArray(answer) || !answer.some((id) => HOME_IDS.includes(id)))
    return fill(words.right, { answer: answerText(kind, answer, askingOf(view, step).grid) });
  const keys = answerText(
    kind,
    answer.filter((id) => !HOME_IDS.includes(id)),
  );
  const different = differentChords(slots, { slashIsNew: settings.slashIsNew });
  const homes = validHomes(different).flatMap((id) => different[HOME_IDS.indexOf(id)] ?? []);
  const named = homes.map((chord) => printChord(chordSymbol(chord)).text);
  const home = homes.length === different.length ? words.anyHome : listed(named, countingWords.or);
  return fill(words.rightScales, { keys, home });
}

/** Exactly, with others that are as lawful: `84 a minute`, `84 or 168 a minute`. */
function temposText({ current, truth }: DeskView, step: WireStep, answer: unknown): string {
  const taps = typeof answer === 'object' && answer !== null && 'taps' in answer ? answer.taps : answer;
  const also = step.question === current?.question ? (truth?.also ?? []) : [];
  const tempos = [...(Array.isArray(taps) ? [String(tappedTempo(taps))] : []), ...also];
  return fill(deskWords.sound.tempo, { tempo: listed(tempos, countingWords.or) });
}
