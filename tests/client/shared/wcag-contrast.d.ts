declare module 'wcag-contrast' {
  /** Contrast ratio of two colours written as `#rrggbb` or `#rgb`, 1 to 21. */
  export function hex(one: string, other: string): number;
}
