import { useCallback, useState } from 'preact/hooks';

export type Box = { readonly width: number; readonly height: number };

/** Size of an element in CSS pixels, kept up to date; `first` until it has been measured. */
export function useBox(first: Box): readonly [(element: Element | null) => (() => void) | void, Box] {
  const [box, setBox] = useState(first);
  const ref = useCallback((element: Element | null) => {
    if (!element || typeof ResizeObserver === 'undefined') return undefined;
    const measure = (): void => {
      const { width, height } = element.getBoundingClientRect();
      // Not laid out (hidden, or a test without layout): the first guess stands.
      if (width > 0 && height > 0)
        setBox((old) => (old.width === width && old.height === height ? old : { width, height }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, box];
}
