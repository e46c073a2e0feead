/** Puts values into a sentence's blanks: `fill('{n} of {of}', { n: 3, of: 5 })` is `3 of 5`. An unknown blank stays. */
export function fill(text: string, detail: Readonly<Record<string, string | number>> = {}): string {
  return text.replace(/\{(\w+)\}/g, (blank, name: string) => String(detail[name] ?? blank));
}
