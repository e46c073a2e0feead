import { GrooveError, GROOVES, parseGroove } from '../../shared-theory/grooves.ts';
import type { Groove } from '../../shared-theory/grooves.ts';
import { MOST_GROOVES, type RoomSettings } from '../protocol/messages.ts';
import type { Refusal } from './commands.ts';
import { refuse } from './commands.ts';

/** Longest id of a groove: commands name it. */
const MOST_ID = 40;
/** Longest name: it stands in lists and on scores. */
const MOST_NAME = 60;
/** Control and format signs, lone surrogates, private use: what a line of text may not hide. */
const INVISIBLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Zl}\p{Zp}]/u;

/** A text in the grid language as a groove of a class's own, or why it cannot be one. */
export function readOwnGroove(text: string): Groove | Refusal {
  if (INVISIBLE.test(text.replaceAll(/[\t\r\n\u200c\u200d]/g, ' '))) {
    return refuse('groove-not-readable', {
      what: 'Groove: it holds signs that cannot be seen; write it anew without.',
    });
  }
  const groove = parsed(text);
  if (groove instanceof GrooveError) {
    const { line, lane, slot, message } = groove;
    const place = { line, ...(lane === null ? {} : { lane }), ...(slot === null ? {} : { slot }) };
    return refuse('groove-not-readable', { what: message, ...place });
  }
  for (const [what, text, most] of [
    ['id', groove.id, MOST_ID],
    ['name', groove.name, MOST_NAME],
  ] as const) {
    if (text.length <= most) continue;
    const fault = `Groove, header: the ${what} has ${text.length} letters; ${most} at most.`;
    return refuse('groove-not-readable', { what: fault });
  }
  return GROOVES.some(({ id }) => id === groove.id) ? refuse('groove-taken', { found: groove.id }) : groove;
}

/** A class's own grooves, read once for each list; what cannot be read any more is none of them. */
export function ownGrooves({ grooves }: Pick<RoomSettings, 'grooves'>): readonly Groove[] {
  const read =
    known.get(grooves) ??
    grooves.flatMap((text) => {
      const groove = readOwnGroove(text);
      return 'reason' in groove ? [] : [groove];
    });
  known.set(grooves, read);
  return read;
}

const known = new WeakMap<readonly string[], readonly Groove[]>();

/** The groove of that id, among own ones and the catalogue's; where there is none, which there are. */
export function grooveNamed(found: string, own: readonly Groove[]): Groove | Refusal {
  const groove = [...own, ...GROOVES].find(({ id }) => id === found);
  const ids = new Set([...GROOVES, ...own].map(({ id }) => id));
  return groove ?? refuse('groove-unknown', { found, known: [...ids].join(', ') });
}

/** The groove of a round, whatever the class and the catalogue have made of it since; none where it has none that can be read. */
export function grooveHeard({ grooveText }: { readonly grooveText: string }): readonly Groove[] {
  const groove = parsed(grooveText);
  return groove instanceof GrooveError ? [] : [groove];
}

/** What is wrong with a class's list of own grooves; null where nothing is. */
export function groovesFault(texts: readonly string[]): string | null {
  if (texts.length > MOST_GROOVES) return `${texts.length} grooves: ${MOST_GROOVES} at most`;
  const ids = new Set(texts.map(grooveId));
  if (ids.size !== texts.length) return 'two grooves of one id';
  const unread = texts.find((text) => 'reason' in readOwnGroove(text));
  return unread === undefined ? null : `groove ${JSON.stringify(grooveId(unread))}`;
}

/** The list with a groove in one line, in place of one of the same id. */
export function withGroove(grooves: readonly string[], text: string): readonly string[] {
  const at = grooves.findIndex((each) => grooveId(each) === grooveId(text));
  return at < 0 ? [...grooves, text] : grooves.with(at, text);
}

/** The list without the groove of an id. */
export function withoutGroove(grooves: readonly string[], id: string): readonly string[] {
  return grooves.filter((text) => grooveId(text) !== id);
}

/** A groove's text begins with its id. */
export function grooveId(text: string): string {
  return text.slice(0, Math.max(0, text.indexOf(','))).trim();
}

function parsed(text: string): Groove | GrooveError {
  try {
    return parseGroove(text);
  } catch (error) {
    if (error instanceof GrooveError) return error;
    throw error;
  }
}
