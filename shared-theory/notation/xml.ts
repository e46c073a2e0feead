/** An element: its name, its attributes, and what it holds. False children are left out. */
export type Element = {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (Element | string)[];
};

type Child = Element | string | number | false;

/** An element without attributes. */
export function element(name: string, ...children: readonly Child[]): Element {
  return elementWith(name, {}, ...children);
}

/** An element with attributes. */
export function elementWith(
  name: string,
  attributes: Readonly<Record<string, string | number>>,
  ...children: readonly Child[]
): Element {
  const kept = children.filter((child) => child !== false);
  return { name, attributes, children: kept.map((child) => (typeof child === 'number' ? String(child) : child)) };
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** Text as XML, in ASCII alone: other signs by their numbers, those that XML 1.0 forbids as question marks. */
function escaped(text: string): string {
  return Array.from(text, (sign) => {
    const code = sign.codePointAt(0) ?? 0;
    if (code >= 0x20 && code < 0x7f) return ENTITIES[sign] ?? sign;
    const forbidden = (code < 0x20 && !'\t\n\r'.includes(sign)) || (code >= 0xd800 && code < 0xe000) || code >= 0xfffe;
    return forbidden && code < 0x10000 ? '?' : `&#${code};`;
  }).join('');
}

/** An element in lines, indented by two spaces a level; one that holds text alone stands on one line. */
export function printXml({ name, attributes, children }: Element, indent = ''): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(String(value))}"`);
  const open = `${indent}<${name}${written.join('')}`;
  if (children.length === 0) return `${open}/>\n`;
  if (children.every((child) => typeof child === 'string')) {
    return `${open}>${children.map((child) => escaped(child)).join('')}</${name}>\n`;
  }
  const inside = children.map((child) =>
    typeof child === 'string' ? `${indent}  ${escaped(child)}\n` : printXml(child, `${indent}  `),
  );
  return `${open}>\n${inside.join('')}${indent}</${name}>\n`;
}
