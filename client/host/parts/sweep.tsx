import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { Sweep } from '../../shared/music-marks.tsx';
import type { Heard } from '../sound-view.ts';
import { beatX, type StaveLayout } from '../stave-layout.ts';
import { STAVE } from './stave.tsx';

/** Above this tempo a mark that steps on every beat would be restless: it steps on every bar. */
const STEP_BY_BAR_ABOVE = 160;

/** Reads what is heard on every frame while `running`, and tells the bar when it changes, so that only bar lines redraw. */
export function useHeard(
  running: boolean,
  read: () => Heard | null,
  onFrame: (heard: Heard | null) => void,
): Heard | null {
  const [coarse, setCoarse] = useState<Heard | null>(null);
  const last = useRef('');
  useLayoutEffect(() => {
    if (!running) {
      last.current = '';
      setCoarse(null);
      onFrame(null);
      return;
    }
    let request = 0;
    const tick = (): void => {
      const heard = read();
      onFrame(heard);
      const step = heardStep(heard);
      if (step !== last.current) {
        last.current = step;
        setCoarse(heard);
      }
      request = requestAnimationFrame(tick);
    };
    tick();
    return () => cancelAnimationFrame(request);
  }, [running, read, onFrame]);
  return coarse;
}

function heardStep(heard: Heard | null): string {
  if (!heard) return '';
  switch (heard.phase) {
    case 'count-in':
      return `count ${heard.beat}`;
    case 'vamp':
      return `${heard.bar} ${heard.slot}${heard.silent ? ' silent' : ''}`;
    case 'settler':
      return `settler ${heard.index} ${heard.bar}`;
    case 'both':
      return `${heard.side} ${heard.bar} ${heard.slot}`;
  }
}

/** Where the plectrum stands for what is heard; null while no bar of the loop sounds. */
export function sweepX(layout: StaveLayout, heard: Heard | null): number | null {
  if (heard?.phase !== 'vamp' || heard.silent) return null;
  const bar = layout.bars[heard.bar];
  return bar ? beatX(bar, heard.beat) : null;
}

/** Where the step mark stands for what is heard, under reduced motion. */
export function stepX(layout: StaveLayout, heard: Heard | null, tempo: number | null): number | null {
  if (heard?.phase !== 'vamp' || heard.silent) return null;
  const bar = layout.bars[heard.bar];
  if (!bar) return null;
  return beatX(bar, (tempo ?? 0) > STEP_BY_BAR_ABOVE ? 0 : Math.floor(heard.beat));
}

/** Moves the sweep's element to `x`; hides it where nothing sounds. Only a transform changes. */
export function moveSweep(element: SVGElement | null, x: number | null): void {
  if (!element) return;
  element.style.visibility = x === null ? 'hidden' : 'visible';
  if (x !== null) element.style.transform = `translateX(${x}px)`;
}

const TIP = STAVE.first - 12;

/** A plectrum and its line over the strings; with `still` a mark under the slash that sounds. Stands at x = 0 until it is moved. */
export function SweepMark({
  still,
  markRef,
}: {
  readonly still: boolean;
  readonly markRef: { current: SVGGElement | null };
}) {
  return (
    <g class="sweep" visibility="hidden" ref={markRef}>
      {still ? (
        <path class="line-brass step-mark" d={`M-30 ${STAVE.last + 22}h60`} />
      ) : (
        <Sweep x={0} y={TIP} height={STAVE.last + 28 - TIP} plectrum={56} />
      )}
    </g>
  );
}
