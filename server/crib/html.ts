/** Markup that may stand in a page as it is. */
export type Html = { readonly markup: string };

type Part = Html | string | number | null | readonly (Html | string | number | null)[];

/** Markup from a template: texts are escaped, markup and lists of it stand as they are, null is nothing. */
export function html(texts: TemplateStringsArray, ...parts: readonly Part[]): Html {
  return { markup: texts.map((text, index) => text + markupOf(parts[index] ?? null)).join('') };
}

function markupOf(part: Part): string {
  if (part === null) return '';
  if (typeof part === 'string' || typeof part === 'number') return escaped(String(part));
  return 'markup' in part ? part.markup : part.map(markupOf).join('');
}

/** Text as it may stand in markup and in a quoted attribute. */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
