import { renderUnicodeCompact } from 'uqr';
import { consoleWords } from './protocol/words/en.ts';
import { fill } from './protocol/words/fill.ts';

const words = consoleWords.server;
/** Light modules around the code: readers need four. */
const QUIET_ZONE = 4;
/** White on black whatever the theme of the terminal: readers want the dark modules dark. */
const QR_COLOURS = '\u001b[38;5;231;48;5;16m';
const PLAIN = '\u001b[0m';

export type Greeting = {
  readonly teacherLink: string;
  /** Addresses for phones, the best first; empty where this machine is in no network. */
  readonly phones: readonly string[];
  readonly more: readonly string[];
  readonly showMore: boolean;
  readonly folder: string;
  /** Whether colours can be used. */
  readonly terminal: boolean;
};

/** What the server says once it runs. */
export function greeting({ teacherLink, phones, more, showMore, folder, terminal }: Greeting): string {
  const [phone] = phones;
  const others = [...phones.slice(1), ...more];
  const parts = [words.ready, `${words.teacher}\n  ${teacherLink}`];
  if (phone === undefined) parts.push(words.noNetwork);
  else parts.push(`${words.phones}\n  ${phone}`, qrBlock(phone, terminal));
  if (others.length > 0) {
    parts.push(
      showMore
        ? [words.otherAddresses, ...others.map((address) => `  ${address}`)].join('\n')
        : fill(words.moreAddresses, { n: others.length }),
    );
  }
  parts.push(`${fill(words.data, { folder })}\n${words.stop}`);
  return `\n${parts.join('\n\n')}\n`;
}

/** The square code of an address in block characters, with the quiet zone that readers need. */
export function qrBlock(text: string, terminal: boolean): string {
  const lines = renderUnicodeCompact(text, { ecc: 'M', border: QUIET_ZONE }).split('\n');
  return (terminal ? lines.map((line) => QR_COLOURS + line + PLAIN) : lines).join('\n');
}
