/**
 * Puts values into a sentence's blanks: `fill('{n} of {of}', { n: 3, of: 5 })` is `3 of 5`. An unknown blank stays; a part in square
 * brackets stands only where all its blanks are known.
 */
export function fill(text: string, detail: Readonly<Record<string, string | number>> = {}): string {
  return text
    .replace(/\[([^[\]]*\{\w+\}[^[\]]*)\]/g, (_, part: string) => {
      return [...part.matchAll(BLANK)].every(([, name = '']) => detail[name] !== undefined) ? part : '';
    })
    .replace(BLANK, (blank, name: string) => String(detail[name] ?? blank));
}

const BLANK = /\{(\w+)\}/g;
