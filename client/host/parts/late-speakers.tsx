import { useLayoutEffect, useRef } from 'preact/hooks';
import { hostWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { DELAY_STEP_MS, MOST_DELAY_MS } from '../speaker-delay.ts';
import type { HostActions, LocalSound } from '../sound-view.ts';

const words = hostWords.delay;

/** The mark shows a click for so long, in seconds. */
const FLASH_SECONDS = 0.12;

export type LateSpeakersProps = {
  readonly sound: Pick<LocalSound, 'delayMs' | 'comparing' | 'sinceClick'>;
  readonly actions: Pick<HostActions, 'setDelay' | 'compare'>;
  /** A vamp sounds: its own mark is the one to look at. */
  readonly playing: boolean;
};

/** How late this room's speakers are: the marks of the beat are shifted until ear and eye agree. */
export function LateSpeakers({ sound, actions, playing }: LateSpeakersProps) {
  const { delayMs, comparing } = sound;
  const shift = (by: number) => () => actions.setDelay(delayMs + by);
  return (
    <details
      class="late-speakers"
      onToggle={(event) => {
        // Nobody looks any more: nothing is to be heard either.
        if (!event.currentTarget.open && comparing) actions.compare(false);
      }}
    >
      <summary>{words.open}</summary>
      <div class="late-panel" role="group" aria-label={words.heading}>
        {playing ? null : <p>{words.why}</p>}
        <div class="late-row">
          <button type="button" class="small-press" disabled={delayMs <= 0} onClick={shift(-DELAY_STEP_MS)}>
            {fill(words.sooner, { ms: DELAY_STEP_MS })}
          </button>
          <input
            class="late-range"
            type="range"
            min={0}
            max={MOST_DELAY_MS}
            step={DELAY_STEP_MS}
            value={delayMs}
            aria-label={words.label}
            aria-valuetext={fill(words.value, { ms: delayMs })}
            onInput={(event) => actions.setDelay(event.currentTarget.valueAsNumber)}
          />
          <button type="button" class="small-press" disabled={delayMs >= MOST_DELAY_MS} onClick={shift(DELAY_STEP_MS)}>
            {fill(words.later, { ms: DELAY_STEP_MS })}
          </button>
          <output class="late-value">{fill(words.value, { ms: delayMs })}</output>
        </div>
        {playing ? (
          <p class="label">{words.playing}</p>
        ) : (
          <div class="late-row">
            <button
              type="button"
              class="small-press"
              aria-pressed={comparing}
              onClick={() => actions.compare(!comparing)}
            >
              {comparing ? words.compareOff : words.compare}
            </button>
            {comparing ? <ClickMark sinceClick={sound.sinceClick} /> : null}
            <span class="label">{words.help}</span>
          </div>
        )}
      </div>
    </details>
  );
}

/** A mark that stands in brass while a click is heard. */
function ClickMark({ sinceClick }: Pick<LocalSound, 'sinceClick'>) {
  const mark = useRef<SVGCircleElement>(null);
  useLayoutEffect(() => {
    let request = 0;
    const tick = (): void => {
      const since = sinceClick();
      mark.current?.classList.toggle('on', since !== null && since < FLASH_SECONDS);
      request = requestAnimationFrame(tick);
    };
    tick();
    return () => cancelAnimationFrame(request);
  }, [sinceClick]);
  return (
    <svg class="click-mark" viewBox="0 0 40 40" width="2.5rem" height="2.5rem" aria-hidden="true">
      <circle class="line-string g2" cx="20" cy="20" r="16" />
      <circle class="fill-brass click-beat" ref={mark} cx="20" cy="20" r="13" />
    </svg>
  );
}
