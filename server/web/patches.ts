/** A view with each of its fields as JSON text, so that it is serialised and compared once for all who see it. */
export type Drawn = { readonly view: Readonly<Record<string, unknown>>; readonly fields: ReadonlyMap<string, string> };

/** Draws a view for comparison. Its `v` counts sendings and is compared by nobody. */
export function draw(view: object): Drawn {
  const entries = Object.entries(view).filter(([name]) => name !== 'v');
  return {
    view: view as Readonly<Record<string, unknown>>,
    fields: new Map(entries.map(([name, value]) => [name, JSON.stringify(value) ?? 'null'])),
  };
}

/** The top-level fields that differ, and `v`; null where none does. A field that is gone comes as null. */
export function patchBetween(before: Drawn, after: Drawn): Readonly<Record<string, unknown>> | null {
  const patch: Record<string, unknown> = {};
  for (const [name, text] of after.fields) if (before.fields.get(name) !== text) patch[name] = after.view[name];
  for (const name of before.fields.keys()) if (!after.fields.has(name)) patch[name] = null;
  return Object.keys(patch).length === 0 ? null : { v: after.view['v'], ...patch };
}
