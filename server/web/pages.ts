import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { pageWords } from '../protocol/words/en.ts';

export const PAGES = ['student', 'host', 'desk', 'pair', 'crib'] as const;
export type PageName = (typeof PAGES)[number];

/** Where the pages come from: built files, or the development server. */
export type PageSource = (page: PageName, url: string) => Promise<string>;

/** Built pages; each is read once. */
export function builtPages(folder: string): PageSource {
  const pages = new Map<PageName, Promise<string>>();
  return (page) => {
    const known = pages.get(page) ?? readFile(join(folder, `${page}.html`), 'utf8');
    pages.set(page, known);
    return known;
  };
}

/** A page of one sentence, for people who stand before a closed door. */
export function plainPage(sentence: string): string {
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta name="robots" content="noindex" />
    <title>${escaped(pageWords.title)}</title>
  </head>
  <body>
    <h1>${escaped(pageWords.title)}</h1>
    <p>${escaped(sentence)}</p>
  </body>
</html>
`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
