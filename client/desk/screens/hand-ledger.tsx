import { listed } from '../../../server/protocol/words/counting.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { rhythmDeskWords } from '../../../server/protocol/words/rhythm-desk-words.ts';
import type { DeskView, WireStudent } from '../../../server/protocol/views.ts';
import type { Desk } from '../desk-state.ts';
import '../rhythm.css';

const words = rhythmDeskWords.hands;

type Props = { readonly desk: Desk; readonly view: DeskView };

/** Who has played a groove of the class's beat level through, live: one press a hand, by seat, as the teacher walks along. */
export function HandLedger({ desk, view }: Props) {
  const { beatLevel } = view.settings;
  return (
    <section class="hand-ledger">
      <h2>{fill(words.heading, { level: beatLevel })}</h2>
      <p class="level-name">{view.beatLevels.find(({ level }) => level === beatLevel)?.name}</p>
      <p class="hint">{words.note}</p>
      <ul>
        {view.students
          .toSorted((a, b) => a.seat - b.seat)
          .map((student) => (
            <Hand key={student.student} desk={desk} view={view} student={student} />
          ))}
      </ul>
    </section>
  );
}

function Hand({ desk, view, student }: Props & { readonly student: WireStudent }) {
  const beat = view.settings.beatLevel;
  const played = student.hands.includes(beat);
  const others = student.hands.filter((level) => level !== beat);
  const report = view.reports.find((each) => each.student === student.student);
  return (
    <li>
      <button
        type="button"
        class="hand"
        aria-pressed={played}
        onClick={() => void desk.wish({ type: 'TickHand', student: student.student, beat, played: !played })}
      >
        <span class="hand-name">
          <bdi>{student.name}</bdi>
          <span class="hand-heard">{[heardText(report?.beat), otherLevels(others)].filter(Boolean).join(' · ')}</span>
        </span>
        <span class="hand-played">{played ? words.played : words.notPlayed}</span>
      </button>
    </li>
  );
}

/** What the ear has shown at this level, beside the hand. */
function heardText(beat: DeskView['reports'][number]['beat'] | undefined): string {
  if (beat === undefined || beat.of === 0) return words.heardNothing;
  const [needs, last] = beat.needs;
  return fill(words.heard, { right: beat.right, of: beat.of, needs, last });
}

function otherLevels(levels: readonly number[]): string {
  if (levels.length === 0) return '';
  return fill(levels.length === 1 ? words.otherOne : words.others, {
    level: levels[0] ?? '',
    levels: listed(levels.map(String)),
  });
}
