/** An event, or a part of one, as it stands in the log. */
export type Plain = Readonly<Record<string, unknown>>;

/** A part that is an object; empty where it is none. */
export function part(whole: Plain, name: string): Plain {
  const value = whole[name];
  return typeof value === 'object' && value !== null ? (value as Plain) : {};
}
