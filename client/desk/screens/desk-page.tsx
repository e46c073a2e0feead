import { useEffect } from 'preact/hooks';
import { deskWords, refusals } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { namesOf } from '../../../shared-theory/namings/names-of.ts';
import { nameBy } from '../../shared/names.ts';
import { LEAVES, type Desk } from '../desk-state.ts';
import { CorrectForm } from './correct-form.tsx';
import { CribLeaf } from './crib-leaf.tsx';
import { answers, grooves, leaves } from './late.tsx';
import { RoundLeaf } from './round-leaf.tsx';
import { Script } from './script.tsx';
import { StartForm } from './start-form.tsx';

/** The teacher's private page: one leaf at a time on a phone, the round beside the others on a laptop. */
export function DeskPage({ desk }: { readonly desk: Desk }) {
  const view = desk.view.value;
  const status = desk.status.value;
  useEffect(() => {
    if (view) document.title = fill(deskWords.page, { room: view.room });
  }, [view?.room]);
  useEffect(() => void answers.fetch(), []);
  const drawn = desk.drawing.value !== null;
  useEffect(() => {
    // What is turned to is read from its beginning, wherever the last one was left.
    window.scrollTo(0, 0);
  }, [desk.leaf.value, desk.form.value, drawn]);
  if (status.kind === 'refused') {
    const sentence = refusals[status.reason as keyof typeof refusals] ?? deskWords.unconfirmed;
    return (
      <div class="desk-lobby">
        <h1>{fill(sentence, status.detail)}</h1>
        <p>
          <a href="/desk">{deskWords.room.newRoom}</a>
        </p>
      </div>
    );
  }
  if (!view) return <p class="desk-lobby">{deskWords.connecting}</p>;
  nameBy(namesOf(view.settings.naming));
  return (
    <div class="desk">
      <header class="desk-head">
        <p>
          <span class="desk-name">{deskWords.name}</span> <strong>{view.room}</strong>
        </p>
        <p class="desk-where">{whereWeAre(view)}</p>
      </header>
      <nav class="desk-leaves" aria-label={deskWords.leavesLabel}>
        {LEAVES.map((leaf) => (
          <button
            key={leaf}
            type="button"
            aria-current={desk.leaf.value === leaf ? 'page' : undefined}
            onClick={() => desk.turnTo(leaf)}
          >
            {deskWords.leaves[leaf]}
          </button>
        ))}
      </nav>
      {status.kind === 'lost' && (
        <p class="notice standing" role="alert">
          {deskWords.lost}
        </p>
      )}
      <div class="desk-body">
        <Leaf desk={desk} view={view} />
      </div>
      <div class="desk-foot">
        <p class="notice" role="status">
          {desk.notice.value}
        </p>
        <Script desk={desk} view={view} />
      </div>
    </div>
  );
}

function Leaf({ desk, view }: { readonly desk: Desk; readonly view: DeskView }) {
  switch (desk.leaf.value) {
    case 'round':
      if (desk.form.value === 'correct' && view.entered) return <CorrectForm desk={desk} view={view} />;
      if (desk.form.value === 'start' || !view.vamp) return <StartForm desk={desk} view={view} />;
      if (view.status === 'lesson-ended')
        return <leaves.Late>{({ LessonEnd }) => <LessonEnd desk={desk} view={view} />}</leaves.Late>;
      return <RoundLeaf desk={desk} view={view} />;
    case 'lesson':
      return <leaves.Late>{({ LessonLeaf }) => <LessonLeaf desk={desk} view={view} />}</leaves.Late>;
    case 'grooves':
      return <grooves.Late>{({ GrooveLeaf }) => <GrooveLeaf desk={desk} view={view} />}</grooves.Late>;
    case 'roll':
      return <leaves.Late>{({ RollLeaf }) => <RollLeaf desk={desk} view={view} />}</leaves.Late>;
    case 'crib':
      return <CribLeaf view={view} />;
    case 'room':
      return <leaves.Late>{({ RoomLeaf }) => <RoomLeaf desk={desk} view={view} />}</leaves.Late>;
  }
}

function whereWeAre(view: DeskView): string {
  const { round } = deskWords;
  if (view.status === 'room-ended') return deskWords.room.ended;
  if (!view.vamp) return round.none;
  const number = fill(round.number, { number: view.vamp.number });
  const source = view.vamp.source === 'guitar' ? round.guitar : fill(round.level, { level: view.vamp.level ?? '' });
  return `${number}, ${source}`;
}
