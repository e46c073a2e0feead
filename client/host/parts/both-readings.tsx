import type { HostView } from '../../../server/protocol/views.ts';
import { hostWords } from '../../../server/protocol/words/en.ts';
import { BothBars } from '../../shared/finding-marks.tsx';
import type { LocalSound } from '../sound-view.ts';
import { useHeard } from './sweep.tsx';

const words = hostWords.round;
const WIDTH = 300;

/**
 * Two readings that are played by turns: two bars in repeat signs, the one that sounds underlined in brass. Which of them was
 * misheard stands there only once the answer is shown.
 */
export function BothReadings({ view, sound }: { readonly view: HostView; readonly sound: LocalSound }) {
  const { change, playing } = view.sound;
  const on = playing && change.kind === 'both';
  const heard = useHeard(on, sound.position, ignore);
  if (!on) return null;
  const shown = view.current?.ask === change.ask && view.current.status === 'shown';
  const side = heard?.phase === 'both' ? heard.side : null;
  return (
    <div class="both-readings">
      <svg
        role="img"
        aria-label={words.bothLabel}
        viewBox={`-4 -4 ${WIDTH + 8} 120`}
        width={`${(WIDTH + 8) / 16}rem`}
        height="7.5rem"
      >
        <BothBars
          id="both-readings"
          width={WIDTH}
          wrong={shown}
          sounding={side === null ? null : side === 'wrong' ? 'first' : 'second'}
        />
      </svg>
      <span class="label">{shown ? words.bothShown : words.both}</span>
    </div>
  );
}

function ignore(): void {
  // Only bar lines redraw this mark.
}
