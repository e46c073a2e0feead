import { rhythmDeskWords } from '../../../server/protocol/words/rhythm-desk-words.ts';
import type { DeskView, WireStudent } from '../../../server/protocol/views.ts';
import { tapCells } from '../taps-text.ts';
import { Unfolding } from './unfolding.tsx';
import '../rhythm.css';

const words = rhythmDeskWords.taps;
const COLUMNS = ['name', 'tempo', 'uneven', 'drift'] as const;

/** What each hand tapped, by seat: private. */
export function TapsTable({ view }: { readonly view: DeskView }) {
  // Who was asked something else is no hand of this question.
  const students = view.students.filter(({ instead }) => instead === undefined).toSorted((a, b) => a.seat - b.seat);
  if (students.length === 0) return null;
  return (
    <Unfolding more={words.table} less={words.tableLess}>
      {() => (
        <table class="taps-table">
          <thead>
            <tr>
              {COLUMNS.map((column) => (
                <th key={column} scope="col">
                  {words.columns[column]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {students.map((student) => (
              <Hand key={student.student} student={student} />
            ))}
          </tbody>
        </table>
      )}
    </Unfolding>
  );
}

function Hand({ student: { name, taps, wrote } }: { readonly student: WireStudent }) {
  return (
    <tr>
      <th scope="row">
        <bdi>{name}</bdi>
      </th>
      {taps ? (
        tapCells(taps).map((cell, column) => <td key={COLUMNS[column + 1]}>{cell}</td>)
      ) : (
        <td colSpan={3} class="unread">
          {wrote ? words.unread : words.none}
        </td>
      )}
    </tr>
  );
}
