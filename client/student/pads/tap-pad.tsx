import { useEffect, useRef, useState } from 'preact/hooks';
import {
  dropOutSpoken,
  steadinessSpoken,
  tapWords,
  tempoSpoken,
  togetherSpoken,
} from '../../../server/protocol/words/asked/taps.ts';
import { LEAST_TAPS, type DropOutTaps, type Taps } from '../../../shared-theory/taps/taps.ts';
import { useBox } from '../../shared/box.ts';
import type { PadProps } from './pad.ts';
import {
  answerOf,
  isFull,
  NO_TAPS,
  tapsIn,
  tapTime,
  throughSilence,
  withSilence,
  withTap,
  type TapKind,
  type TapSeries,
} from './tap-series.ts';
import { edgeOf, TapHeads, TapsShown } from './tap-strings.tsx';

type TapAnswer = Taps | DropOutTaps;

export const spoken = {
  tempo: tempoSpoken,
  steadiness: steadinessSpoken,
  'drop-out': dropOutSpoken,
  together: togetherSpoken,
};
/** While one claps along, what was tapped is written this often, in milliseconds. */
const WRITES_EVERY_MS = 3000;

/**
 * Six strings to tap on. A tap counts when the finger comes down, by the event's own time: nothing that happens later, on this phone
 * or on the way, can move it.
 */
export function Pad(props: PadProps<TapAnswer>) {
  const { asking, chosen, closed, truth, droppedOut } = props;
  const kind = asking.kind as TapKind;
  const [ref, { width, height }] = useBox({ width: 360, height: 460 });
  const [series, show] = useState(NO_TAPS);
  const heard = useRef(false);
  // Taps may follow one another faster than the page is drawn.
  const now = useRef({ series, props });
  now.current.props = props;

  const keep = (next: TapSeries): void => {
    now.current.series = next;
    show(next);
  };
  const offer = (): void => {
    const answer = answerOf(kind, now.current.series, {
      heard: heard.current,
      droppedOut: now.current.props.droppedOut,
    });
    // Too few taps yet leave what is chosen as it is: one touch by mistake takes nothing away.
    if (answer && kind !== 'together') now.current.props.onChoose(answer);
  };

  useEffect(() => {
    if (droppedOut) {
      heard.current = true;
      keep(withSilence(now.current.series));
    } else if (heard.current) offer();
  }, [droppedOut]);

  const lively = kind === 'together' && !closed && series.count >= LEAST_TAPS;
  useEffect(() => {
    if (!lively) return undefined;
    let written = NO_TAPS;
    const write = (): void => {
      const { series, props } = now.current;
      const answer = series === written ? null : answerOf(kind, series, { heard: false, droppedOut: false });
      written = series;
      if (answer) props.onWrite(answer);
    };
    write();
    const timer = setInterval(write, WRITES_EVERY_MS);
    return () => clearInterval(timer);
  }, [lively]);

  const tap = (event: PointerEvent | KeyboardEvent): void => {
    const time = tapTime(event.timeStamp, performance.now(), performance.timeOrigin);
    keep(withTap(kind, now.current.series, time, droppedOut));
    offer();
  };
  const again = (): void => {
    keep(droppedOut ? withSilence(NO_TAPS) : NO_TAPS);
    if (kind !== 'together') props.onChoose(null);
  };
  const count = series.count || tapsIn(chosen).length;
  const right = tapsIn(truth?.answer);
  const place = { width, height, top: height * 0.1 };
  const edge = edgeOf(width);
  return (
    <>
      {!truth && !closed && (
        <div class="pages">
          <p role="status">{words(kind, count, series, { heard: heard.current, droppedOut })}</p>
          <button type="button" class="page-link" aria-label={tapWords.again} disabled={count === 0} onClick={again}>
            {tapWords.again}
          </button>
        </div>
      )}
      <div class="fill" ref={ref}>
        <svg class="under" width={width} height={height} aria-hidden="true">
          {right.length > 1 ? (
            <TapsShown {...place} taps={throughSilence(chosen) ?? tapsIn(chosen)} right={right} />
          ) : (
            <TapHeads {...place} count={count} />
          )}
        </svg>
        <button
          type="button"
          class="choice over"
          // A finger that drums neither scrolls nor zooms, and opens no menu.
          style={{ ...TARGET, left: `${-edge}px`, width: `${width + 2 * edge}px`, height: `${height}px` }}
          aria-label={tapWords.pad}
          disabled={closed}
          onPointerDown={(event) => {
            event.preventDefault();
            if (event.button === 0) tap(event);
          }}
          onKeyDown={(event) => {
            if (event.key !== ' ' && event.key !== 'Enter') return;
            event.preventDefault();
            if (!event.repeat) tap(event);
          }}
          onTouchStart={prevent}
          onContextMenu={prevent}
        />
      </div>
    </>
  );
}

const TARGET = { top: '0', touchAction: 'none', WebkitTouchCallout: 'none' };

/** Else the phone would zoom, select, scroll or open a menu. */
const prevent = (event: Event): void => event.preventDefault();

/** The line over the strings. Until eight it tells nothing of the taps. */
function words(
  kind: TapKind,
  count: number,
  series: TapSeries,
  { heard, droppedOut }: { readonly heard: boolean; readonly droppedOut: boolean },
): string {
  if (droppedOut) return tapWords.silent;
  if (count < LEAST_TAPS) return series.anew ? tapWords.anew : tapWords.first;
  if (kind === 'together') return tapWords.goesIn;
  if (isFull(series)) return tapWords.full;
  if (kind === 'drop-out') return heard ? tapWords.back : tapWords.goOn;
  return tapWords.enough;
}
