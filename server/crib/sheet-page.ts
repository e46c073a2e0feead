import { chordSymbol, QUALITIES } from '../../shared-theory/chords.ts';
import type { Guitar } from '../../shared-theory/crib/shapes.ts';
import type { GuitarCrib } from '../../shared-theory/crib/typed.ts';
import { roundCrib, typedCrib } from '../../shared-theory/crib/typed.ts';
import { differentSlots } from '../../shared-theory/different-chords.ts';
import { TUNINGS } from '../../shared-theory/neck/tunings.ts';
import type { TuningId } from '../../shared-theory/neck/tunings.ts';
import { ReadingError } from '../../shared-theory/reading-error.ts';
import { POLICIES } from '../../shared-theory/truth.ts';
import type { Policy } from '../../shared-theory/truth.ts';
import { parseVamp } from '../../shared-theory/vamps.ts';
import type { Slot } from '../../shared-theory/vamps.ts';
import { HIGHEST_CAPO } from '../protocol/messages.ts';
import type { RoomSettings } from '../protocol/messages.ts';
import { cribWords } from '../protocol/words/crib-words.ts';
import { fill } from '../protocol/words/fill.ts';
import type { HeardRound } from '../rooms/events.ts';
import { vampOf } from '../rooms/heard-round.ts';
import type { Choices } from './choices.ts';
import { choicesMarkup } from './choices.ts';
import type { Html } from './html.ts';
import { html } from './html.ts';
import { sheetNames } from './names.ts';
import { sheetMarkup } from './page.ts';

const words = cribWords.page;

/** What an address asks for, as it was written there. */
export type SheetQuery = Readonly<Record<string, string | undefined>>;

/** A page with a sheet, or with what was wrong; the status it is answered with. */
export type SheetPage = { readonly status: 200 | 400 | 404; readonly title: string; readonly body: Html };

/** More different chords than this do not go on one sheet. */
const MOST_CHORDS = 8;
/** A longer loop does not either: a song of one chord a bar. */
const MOST_SLOTS = 32;
const BEATS = 4;
const HANDS = ['right', 'left'] as const;

/** An address that asks for what there is not. */
class WrongChoice extends Error {}

/** Why a loop goes on no sheet, told before anything is worked out; null where it does. */
function tooMuch(slots: readonly Slot[]): string | null {
  const different = differentSlots(slots.map(({ chord }) => chord)).length;
  if (different > MOST_CHORDS) return fill(words.many, { found: different });
  return slots.length > MOST_SLOTS ? fill(words.long, { most: MOST_SLOTS, found: slots.length }) : null;
}

/** The sheet of chords as typed, under a room's settings unless the address says otherwise; without chords, where to type them. */
export function typedPage(room: string, settings: RoomSettings, query: SheetQuery): SheetPage {
  const text = query['chords'] ?? '';
  if (query['chords'] === undefined) return formPage(200, null, { chords: '', ...defaults(settings) }, room);
  try {
    const choices = readChoices(settings, query, text);
    const slots = parseVamp(text, BEATS, settings.naming);
    const wrong = tooMuch(slots);
    if (wrong !== null) return formPage(400, wrong, choices, room);
    const { policy, guitar } = choices;
    const crib = typedCrib(
      slots,
      { policy, qualities: qualitiesOf(settings), capo: guitar.capo, slashIsNew: settings.slashIsNew },
      guitar,
    );
    const loop = slots.map(({ chord }) => chordSymbol(chord));
    return sheetPage(crib, loop, choices, { room, settings, path: `/desk/${room}/crib` });
  } catch (error) {
    const sentence = sentenceOf(error);
    if (sentence === null) throw error;
    const choices = { chords: text, ...defaults(settings) };
    return formPage(400, sentence, choices, room);
  }
}

/** The sheet of a round as it is heard. */
export function roundPage(room: string, settings: RoomSettings, round: HeardRound, query: SheetQuery): SheetPage {
  const slots = vampOf(round).slots;
  const loop = round.slots.map(({ chord }) => chord);
  const chords = loop.map(sheetNames(settings.naming).chord).join(' ');
  try {
    const read = readChoices(settings, query, chords);
    const choices = { ...read, policy: round.settings.policy };
    const wrong = tooMuch(slots);
    if (wrong !== null) return formPage(400, wrong, choices, room);
    const crib = roundCrib({ ...round, slots }, choices.guitar);
    return sheetPage(crib, loop, choices, { room, settings, path: `/desk/${room}/crib/${round.number}` });
  } catch (error) {
    const sentence = sentenceOf(error);
    if (sentence === null) throw error;
    return formPage(400, sentence, { chords, ...defaults(settings) }, room);
  }
}

/** Where a room has no such round. */
export function noRoundPage(room: string, settings: RoomSettings): SheetPage {
  return formPage(404, words.noRound, { chords: '', ...defaults(settings) }, room);
}

function sheetPage(
  crib: GuitarCrib,
  loop: readonly string[],
  choices: Choices,
  { room, settings, path }: { readonly room: string; readonly settings: RoomSettings; readonly path: string },
): SheetPage {
  const names = sheetNames(settings.naming);
  return {
    status: 200,
    title: fill(cribWords.title, { chords: loop.map(names.chord).join(' ') }),
    body: html`${choicesMarkup(choices, { room, path, wrong: null })}
      <main>${sheetMarkup(crib, loop, { names, leftHanded: choices.leftHanded })}</main>`,
  };
}

function formPage(status: SheetPage['status'], wrong: string | null, choices: Choices, room: string): SheetPage {
  return {
    status,
    title: cribWords.titleAlone,
    body: html`<main>${choicesMarkup(choices, { room, path: null, wrong })}</main>`,
  };
}

function defaults({ policy, capo }: RoomSettings): Omit<Choices, 'chords'> {
  return { policy, guitar: { tuning: 'standard', capo }, leftHanded: false };
}

/** The choices of an address; WrongChoice for one that there is not. */
function readChoices(settings: RoomSettings, query: SheetQuery, chords: string): Choices {
  const usual = defaults(settings);
  const capos = Array.from({ length: HIGHEST_CAPO + 1 }, (_, fret) => String(fret));
  const policy: Policy = choice(query, 'policy', POLICIES, usual.policy);
  const capo = Number(choice(query, 'capo', capos, String(usual.guitar.capo)));
  const tuning = choice(query, 'tuning', Object.keys(TUNINGS) as TuningId[], usual.guitar.tuning);
  const hand = choice(query, 'hand', HANDS, 'right');
  const guitar: Guitar = { tuning, capo };
  return { chords, policy, guitar, leftHanded: hand === 'left' };
}

function choice<T extends string>(query: SheetQuery, field: string, known: readonly T[], usual: T): T {
  const found = query[field];
  if (found === undefined || found === '') return usual;
  const choice = known.find((each) => each === found);
  if (choice === undefined) throw new WrongChoice(fill(words.wrong, { field, found, known: known.join(', ') }));
  return choice;
}

function qualitiesOf({ qualities }: RoomSettings) {
  return QUALITIES.filter((quality) => qualities.includes(quality));
}

/** What was wrong, in a sentence; null for a fault of ours. */
function sentenceOf(error: unknown): string | null {
  if (error instanceof WrongChoice) return error.message;
  if (!(error instanceof ReadingError)) return null;
  const { found, suggestion } = error;
  return found === '' ? fill(words.nothing, { suggestion }) : fill(words.unreadable, { found, suggestion });
}
