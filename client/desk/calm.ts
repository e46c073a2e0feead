import { useEffect, useRef, useState } from 'preact/hooks';

/** Milliseconds that a number stands at least: an eye at a glance reads it, and nothing flickers. */
export const CALM_MS = 500;

/** A value that changes at most twice a second, however often it comes: between, the last one waits. */
export function useCalm<T>(value: T): T {
  const [shown, show] = useState(value);
  const latest = useRef(value);
  const since = useRef(performance.now());
  const waiting = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  latest.current = value;
  useEffect(() => {
    if (Object.is(value, shown) || waiting.current !== undefined) return;
    const turn = (): void => {
      waiting.current = undefined;
      since.current = performance.now();
      show(() => latest.current);
    };
    const rest = since.current + CALM_MS - performance.now();
    if (rest <= 0) turn();
    else waiting.current = setTimeout(turn, rest);
  }, [value]);
  useEffect(() => () => clearTimeout(waiting.current), []);
  return shown;
}
