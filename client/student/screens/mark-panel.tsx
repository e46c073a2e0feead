import { errorKinds, markNotes } from '../../../server/protocol/words/errors.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { revealWords } from '../../../server/protocol/words/reveal.ts';
import type { StudentOwn, WireAsking, WireTruth } from '../../../server/protocol/views.ts';
import { isPartly } from '../../../shared-theory/questions/points.ts';
import { NOT_SURE } from '../../../shared-theory/questions/question.ts';
import { tappedTempo } from '../../../shared-theory/taps/taps.ts';
import { BrassRule } from '../../shared/marks.tsx';
import { shortOf } from '../answer-text.ts';
import { gridText } from '../../shared/answer-grid.ts';
import type { GridKind } from '../pads/grid-choices.ts';
import { isTapKind, tapsIn, throughSilence } from '../pads/tap-series.ts';
import { padOf } from '../pads/pads.ts';
import { wholeCounts } from '../whole-counts.tsx';

/** After the reveal: right, partly or not as words, what was written, and a sentence to go on with. */
export function MarkPanel(props: {
  readonly asking: WireAsking;
  readonly answer: unknown;
  readonly truth: WireTruth | undefined;
  readonly mark: StudentOwn['mark'] | null;
  /** The question counts for nobody. */
  readonly struck: boolean;
  /** It was asked aloud, as far as this phone knows. */
  readonly aloud: boolean;
}) {
  const { asking, answer, mark, struck, truth } = props;
  const note = mark?.note && !struck ? markNotes[mark.note] : undefined;
  // What counts for nobody is held against nobody.
  const known = mark?.error === undefined ? undefined : errorKinds[mark.error]?.say;
  // What a wrong bass note is may lie in a root that has not been shown: then only where to look is said.
  const low = asking.kind === 'bass' && mark && mark.credit < 1 ? revealWords.bassSay : undefined;
  const say = struck || answer === NOT_SURE ? undefined : (known ?? low);
  const wrote = answer !== null && answer !== NOT_SURE;
  const tapped = wrote && isTapKind(asking.kind);
  return (
    <div class="panel-shown">
      <BrassRule />
      <div class="mark-words">
        <p class="mark-title">{struck ? revealWords.struck : verdict(props)}</p>
        {tapped && <p class="panel-text">{tappedText(asking.kind, answer, truth?.answer)}</p>}
        {wrote && !tapped && !mark?.exact && saidText(asking, answer) !== '' && (
          <p class="panel-text">{wholeCounts(fill(revealWords.youWrote, { answer: saidText(asking, answer) }))}</p>
        )}
        {wrote && !struck && mark?.exact && isOtherThan(truth, answer) && asking.grid !== undefined && (
          <p class="panel-text">{asking.kind === 'accents' ? revealWords.eitherWeight : revealWords.eitherBar}</p>
        )}
        {note && <p class="panel-text">{note}</p>}
        {say && <p class="serif mark-say">{say}</p>}
      </div>
    </div>
  );
}

function verdict({ asking, answer, mark, aloud }: Parameters<typeof MarkPanel>[0]): string {
  if (answer === null || answer === undefined) return aloud ? revealWords.aloud : revealWords.absent;
  if (answer === NOT_SURE) return revealWords.unsure;
  if (asking.kind === 'home') return revealWords.opinion;
  if (asking.kind === 'together') return revealWords.together;
  // The mark comes a moment after the reveal; until then the page says nothing about it.
  if (!mark) return '';
  if (mark.note === 'follows-own-answer') return revealWords.follows;
  if (mark.exact || mark.credit === 1) return revealWords.right;
  return isPartly(mark.credit) ? revealWords.part : revealWords.wrong;
}

/** The hand's own tempo beside the one that sounded: `You tapped about 96; it was 100.` Of even taps none is the right one. */
function tappedText(kind: string, answer: unknown, right: unknown): string {
  const { youTapped, youTappedAlone, youTappedThrough } = revealWords;
  const [through, beats] = [throughSilence(answer), tapsIn(right)];
  const text = kind === 'steadiness' || beats.length < 2 ? youTappedAlone : through ? youTappedThrough : youTapped;
  return fill(text, { own: tappedTempo(through ?? tapsIn(answer)), right: tappedTempo(beats) });
}

/** Whether a right answer is drawn otherwise than what a student drew. */
const isOtherThan = (truth: WireTruth | undefined, answer: unknown): boolean =>
  truth !== undefined && JSON.stringify(truth.answer) !== JSON.stringify(answer);

/** An answer in words; empty where it is a grid that takes too many: it stands on the pad. */
function saidText(asking: WireAsking, answer: unknown): string {
  if (asking.grid !== undefined)
    return shortOf(gridText(asking.kind as GridKind, answer as readonly unknown[], asking.grid));
  return padOf(asking.kind)?.said?.(asking, answer) ?? '';
}
