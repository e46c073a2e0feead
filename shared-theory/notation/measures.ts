import type { Meter } from '../vamps.ts';
import { barItems, type Attack, type Bar, type Item } from './bars.ts';
import { beamElements } from './beams.ts';
import { signedBy } from './spelling.ts';
import { loudness, type StaffNote } from './staff-notes.ts';
import { element, elementWith, type Element } from './xml.ts';

/** Something over the staff, at a place of its section. */
export type Placed = { readonly at: number; readonly element: Element };

/** What a part writes of one section: what begins, and what stands over the staff where. */
export type Line = { readonly attacks: readonly Attack[]; readonly over: readonly Placed[] };

/** A section in its place: ties go no further than `end`, in divisions from its start. */
export type PlacedLine = Line & { readonly end: number };

const ACCIDENTALS: Readonly<Record<string, string>> = {
  '-3': 'triple-flat',
  '-2': 'flat-flat',
  '-1': 'flat',
  '0': 'natural',
  '1': 'sharp',
  '2': 'double-sharp',
  '3': 'triple-sharp',
};

/** Knows which signs a reader of the bar still remembers; gives the sign a note needs, null for none. */
function signReader(signature: number): (note: StaffNote) => string | null {
  const seen = new Map<string, number>();
  return ({ pitch: { step, alter, octave }, instrument }) => {
    if (instrument !== null) return null;
    const place = `${step}${octave}`;
    if ((seen.get(place) ?? signedBy(signature, step)) === alter) return null;
    seen.set(place, alter);
    return ACCIDENTALS[alter] ?? null;
  };
}

function staffPlace({ pitch: { step, alter, octave }, instrument }: StaffNote): Element {
  return instrument === null
    ? element('pitch', element('step', step), alter !== 0 && element('alter', alter), element('octave', octave))
    : element('unpitched', element('display-step', step), element('display-octave', octave));
}

/** What every note and rest has after its length. Elements in the order of the schema's complex type `note`. */
function valueElements({ value }: Item): Element[] {
  return [element('voice', 1), element('type', value.type), ...(value.dots === 1 ? [element('dot')] : [])];
}

function itemElements(item: Item, beams: readonly Element[], signOf: (note: StaffNote) => string | null): Element[] {
  const duration = element('duration', item.value.length);
  if (item.notes.length === 0) return [element('note', element('rest'), duration, ...valueElements(item))];
  return item.notes.map((note, index) => {
    const { before, after } = item.tied;
    const ties = [...(before ? ['stop'] : []), ...(after ? ['start'] : [])];
    // What is tied over the bar line keeps its sign, and the new bar does not remember it.
    const sign = before ? null : signOf(note);
    // A tie into nothing: what rings on.
    const rings = !after && (note.letRing || item.ringsOn) ? [elementWith('tied', { type: 'let-ring' })] : [];
    // How a note is struck stands where it is.
    const struck = before ? [] : note.notations;
    const notations = [...ties.map((type) => elementWith('tied', { type })), ...rings, ...struck];
    return elementWith(
      'note',
      { dynamics: loudness(note.accent) },
      index > 0 && element('chord'),
      staffPlace(note),
      duration,
      ...ties.map((type) => elementWith('tie', { type })),
      note.instrument !== null && elementWith('instrument', { id: note.instrument }),
      ...valueElements(item),
      sign !== null && element('accidental', sign),
      note.notehead !== null && element('notehead', note.notehead),
      ...(index === 0 ? beams : []),
      notations.length > 0 && element('notations', ...notations),
      note.muted && element('play', element('mute', 'palm')),
    );
  });
}

/** A bar's notes and rests, with what stands over them before the note it stands over. */
export function barElements(
  bar: Bar,
  { attacks, over, end }: PlacedLine,
  meter: Meter,
  signature: number,
): readonly Element[] {
  const items = barItems(
    bar,
    attacks,
    over.map(({ at }) => at),
    meter,
    end,
  );
  const above = over.filter(({ at }) => at >= bar.from && at < bar.to);
  if (items.length === 0) {
    const rest = elementWith('rest', { measure: 'yes' });
    const whole = element('note', rest, element('duration', bar.to - bar.from), element('voice', 1));
    return [...above.map((placed) => placed.element), whole];
  }
  const beams = beamElements(items, meter);
  const signOf = signReader(signature);
  return items.flatMap((item, index) => [
    ...above.filter(({ at }) => at - bar.from === item.at).map((placed) => placed.element),
    ...itemElements(item, beams[index] ?? [], signOf),
  ]);
}
