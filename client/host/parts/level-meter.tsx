import { useLayoutEffect, useRef } from 'preact/hooks';
import { hostWords } from '../../../server/protocol/words/en.ts';

/** Quietest level the meter shows, in decibels below full scale. */
const FLOOR_DB = -48;

/** Share of the meter's length for a level from 0 to 1: even steps in decibels, as the ear takes them. */
function meterShare(level: number): number {
  if (!(level > 0)) return 0;
  const decibels = 20 * Math.log10(level);
  return Math.min(1, Math.max(0, 1 - decibels / FLOOR_DB));
}

/** The level of what leaves the page, as a length of brass on a string between quiet and loud. */
export function LevelMeter({ level, width }: { readonly level: () => number; readonly width: number }) {
  const bar = useRef<SVGPathElement>(null);
  useLayoutEffect(() => {
    let request = 0;
    const tick = (): void => {
      if (bar.current) bar.current.style.transform = `scaleX(${meterShare(level())})`;
      request = requestAnimationFrame(tick);
    };
    tick();
    return () => cancelAnimationFrame(request);
  }, [level]);
  const ticks = [0.25, 0.5, 0.75];
  return (
    <svg
      class="meter"
      role="img"
      aria-label={hostWords.sound.meter}
      viewBox={`0 0 ${width} 28`}
      width={`${width / 16}rem`}
      height="1.75rem"
    >
      <path class="line-string g3" d={`M0 14H${width}`} />
      {ticks.map((share) => (
        <path key={share} class="line-string g1" d={`M${share * width} 6v16`} />
      ))}
      <path class="line-brass meter-bar" ref={bar} d={`M0 14H${width}`} />
      <path class="line-ink g5" d={`M0 2v24M${width} 2v24`} />
    </svg>
  );
}
