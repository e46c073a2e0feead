import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { BothBars } from '../../shared/finding-marks.tsx';
import type { Desk } from '../desk-state.ts';

const words = deskWords.both;

type Props = {
  readonly desk: Desk;
  readonly view: DeskView;
  /** The sheet whose most chosen wrong answer is played. */
  readonly ask: string;
  readonly playable: boolean;
  /** What is played by turns, in words, where it is known. */
  readonly readings: { readonly wrong: string; readonly right: string } | null;
};

/** One press plays what was wrongly heard and what sounds by turns; another goes back. The teacher's own guitar is told what to play. */
export function PlayBoth({ desk, view, ask, playable, readings }: Props) {
  if (view.vamp?.source === 'guitar') return readings && <p class="both-guitar">{fill(words.guitar, readings)}</p>;
  const { sound } = view;
  const playing = sound.playing && sound.change.kind === 'both' && sound.change.ask === ask;
  const off = !playing && !playable;
  const note = off ? reason(view) : readings ? fill(words.readings, readings) : '';
  return (
    <button
      type="button"
      class="both"
      aria-pressed={playing}
      disabled={off}
      onClick={() => void (playing ? desk.change({ kind: 'full' }) : desk.wish({ type: 'PlayBoth', ask }))}
    >
      <svg class="both-bars" aria-hidden="true" width="132" height="48" viewBox="-2 0 264 96">
        <BothBars id={`both-${ask}`} width={260} wrong sounding={null} />
      </svg>
      <span>
        <strong>{playing ? words.stop : words.play}</strong>
        {note && <span class="both-note">{note}</span>}
      </span>
    </button>
  );
}

/** Why it cannot be played here and now. */
function reason({ soundHeld, sound, vamp }: DeskView): string {
  if (!soundHeld) return deskWords.sound.noSound;
  return sound.playing && sound.round === vamp?.round ? words.cannot : words.waits;
}
