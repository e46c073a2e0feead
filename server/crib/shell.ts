import { escaped } from './html.ts';
import type { SheetPage } from './sheet-page.ts';

/** A sheet in the built page that carries its style: the title and the place for the sheet are filled in. */
export function inShell(shell: string, { title, body }: Pick<SheetPage, 'title' | 'body'>): string {
  return shell
    .replace(/<title>[^<]*<\/title>/, () => `<title>${escaped(title)}</title>`)
    .replace('<!--sheet-->', () => body.markup);
}
