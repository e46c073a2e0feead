import { describe, expect, test } from 'vitest';
import { csvOf } from '../../../server/export/csv.ts';
import { lessonTable } from '../../../server/export/lesson-table.ts';
import { NAMINGS } from '../../../shared-theory/printer.ts';
import type { Naming } from '../../../shared-theory/printer.ts';
import type { NewEvent } from '../../../server/rooms/events.ts';
import { asked, closed, fold, guitar, joined, opened, peopleIn, started } from '../../support/given.ts';

const wrote = (student: string, ask: string, answer: unknown): NewEvent =>
  ({ type: 'AnswerWritten', student, ask, counter: 1, answer }) as NewEvent;

const LESSON: readonly NewEvent[] = [
  opened,
  joined('one', 1),
  joined('two', 2),
  joined('three', 3),
  started(guitar('Em D')),
  asked('a1', 'quality-0'),
  wrote('one', 'a1', 'minor'),
  wrote('two', 'a1', 'major'),
  closed('a1'),
  asked('a2', 'root-0'),
  wrote('two', 'a2', { string: 5, fret: 2 }),
  wrote('three', 'a2', 'not-sure'),
  closed('a2'),
  asked('a3', 'direction-1'),
  wrote('one', 'a3', 'up'),
];
const NAMES = { one: 'Zoë', two: '=1+1', three: 'Bo' };

describe('the lesson as a table', () => {
  test('one row for each student and each closed question, by seats, with answer, mark and what it shows', () => {
    const [heading, ...rows] = lessonTable(fold(LESSON), peopleIn(LESSON, NAMES));
    expect(heading).toHaveLength(11);
    expect(rows).toEqual([
      [1, 'Em D', 'quality-0', 1, 'Zoë', 'minor', 'minor', 1, 'right', '', ''],
      [1, 'Em D', 'quality-0', 2, '=1+1', 'major', 'minor', 0, 'wrong', '', ''],
      [1, 'Em D', 'quality-0', 3, 'Bo', '', 'minor', null, 'silent', '', ''],
      [1, 'Em D', 'root-0', 1, 'Zoë', '', 'string 6, fret 0', null, 'silent', '', ''],
      [1, 'Em D', 'root-0', 2, '=1+1', 'string 5, fret 2', 'string 6, fret 0', 0.4, 'wrong', 'hears-the-fifth', ''],
      [1, 'Em D', 'root-0', 3, 'Bo', 'not-sure', 'string 6, fret 0', 0, 'abstain', '', ''],
    ]);
  });

  test('chords by the names that the class has for them', () => {
    const chords = (naming: Naming) => {
      const settings: NewEvent = { type: 'SettingsChanged', settings: { naming } };
      const events = [opened, settings, joined('one', 1), started(guitar('Bb F#m B/D#'))];
      const [, row] = lessonTable(fold([...events, asked('a1', 'quality-0'), closed('a1')]), peopleIn(events));
      return row?.[1];
    };
    expect(NAMINGS.map(chords)).toEqual([
      'B♭ F♯m B/D♯',
      'B Fism H/Dis',
      'B♭ Fism H/Dis',
      'Bes Fism B/Dis',
      'Si♭ Fa♯m Si/Re♯',
    ]);
  });

  test('a name that looks like a formula stands behind an apostrophe in the file, and accents hold', () => {
    const file = csvOf(lessonTable(fold(LESSON), peopleIn(LESSON, NAMES)));
    expect(file).toContain(",2,'=1+1,major,");
    expect(file).toContain(',1,Zoë,minor,');
  });

  test('before the first answer there is a heading alone', () => {
    expect(lessonTable(fold([opened]), { shown: new Map() })).toHaveLength(1);
  });
});
