import { useEffect, useState } from 'preact/hooks';
import { fill } from '../../server/protocol/words/fill.ts';
import { studentWords } from '../../server/protocol/words/student.ts';
import type { StudentCommon, WireAsking } from '../../server/protocol/views.ts';
import type { Keep } from '../shared/storage.ts';
import { reloadOnce } from './reload-once.ts';
import { roomCode, roomOfPath } from './room-code.ts';
import { Join } from './screens/join.tsx';
import type { RoomDoor } from './screens/room-door.tsx';
import { Question } from './screens/question.tsx';
import { Quiet } from './screens/quiet.tsx';
import { fetchLater, useLater } from './late-parts.ts';
import { useStore } from './store.ts';
import { untilHere } from './until-here.ts';
import { createStudent, type Seat, type Student } from './student-state.ts';

/** How this phone was held last time, in any room. */
const SEAT = 'hearsay:seat';

/** The student's page: a room's door, or the room. */
export function App(props: { readonly keep: Keep; readonly path: string }) {
  const [room, enter] = useState(() => roomOfPath(props.path));
  const [fault, blame] = useState('');
  // Whoever scanned the code on the wall never sees this door.
  const [door, hang] = useState<{ readonly Door: typeof RoomDoor } | null>(null);
  useEffect(() => {
    if (!room) void untilHere(() => import('./screens/room-door.tsx')).then(({ RoomDoor: Door }) => hang({ Door }));
  }, [room]);
  const go = (next: string | null): void => {
    history.replaceState(null, '', `/${next ?? ''}`);
    enter(next);
  };
  if (!room) {
    const onRoom = (typed: string): void => {
      const code = roomCode(typed);
      blame(code ? '' : studentWords.roomWrong);
      if (code) go(code);
    };
    return door && <door.Door first={roomOfPath(props.path) ?? ''} fault={fault} onRoom={onRoom} />;
  }
  const leave = (why: string): void => {
    blame(why);
    go(null);
  };
  return <Room key={room} room={room} keep={props.keep} onLeave={leave} />;
}

function Room(props: { readonly room: string; readonly keep: Keep; readonly onLeave: (why: string) => void }) {
  const [student, hold] = useState<Student | null>(null);
  useEffect(() => {
    const opened = createStudent(props.room, props.keep);
    document.title = fill(studentWords.pageTitle, { room: props.room });
    hold(opened);
    return () => opened.close();
  }, [props.room]);
  return student && <Inside student={student} keep={props.keep} onLeave={props.onLeave} />;
}

/** Everything below is drawn from what the server said last. */
export function Inside(props: {
  readonly student: Student;
  readonly keep: Keep;
  readonly onLeave: (why: string) => void;
}) {
  const { student, keep } = props;
  const { room } = student;
  const { common, own, status, refusal, atDoor, joining } = useStore(student.store);
  const later = useLater();
  const fault = refusal ? (later?.sentenceOf(refusal) ?? studentWords.failed) : '';

  useEffect(() => {
    if (!refusal) return;
    void fetchLater();
    if (refusal.reason === 'page-too-old') reloadOnce();
    // With its sentence, which may have to be fetched first.
    if (refusal.reason === 'room-not-found' && later) props.onLeave(fault);
  }, [refusal, later]);

  if (common?.phase === 'room-ended' || refusal?.reason === 'room-ended') {
    return <Quiet room={room} name={own?.name ?? ''} title={studentWords.roomEnded} />;
  }
  if (status.kind === 'refused') return <Quiet room={room} name="" title={fault} />;
  if (!own) {
    // A phone that has been here waits for its seat instead of asking for a name again.
    if (!atDoor) return <Quiet room={room} name="" title={studentWords.connecting} />;
    const join = (seat: Seat): void => {
      keep.set(SEAT, JSON.stringify(seat));
      void student.join(seat);
    };
    return (
      <Join
        room={room}
        first={readSeat(keep.get(SEAT))}
        busy={joining}
        fault={fault}
        forgets={!keep.lasting()}
        onJoin={join}
        onLeave={() => props.onLeave('')}
      />
    );
  }
  if (common && isAsking(common)) return <Question key={common.ask} student={student} common={common} own={own} />;
  if (common?.phase === 'lesson-ended') {
    return (
      <Quiet room={room} name={own.name} title={studentWords.lessonEnded}>
        {own.lesson && own.lesson.of > 0 && (
          <>
            <p class="lesson-count">{fill(studentWords.lessonRight, own.lesson)}</p>
            {own.lesson.part > 0 && <p>{fill(studentWords.lessonPartToo, own.lesson)}</p>}
          </>
        )}
        <p>{studentWords.lessonThanks}</p>
      </Quiet>
    );
  }
  return (
    <Quiet room={room} name={own.name} title={studentWords.listen}>
      <p role="status">{status.kind === 'live' ? studentWords.listenMore : studentWords.lost}</p>
    </Quiet>
  );
}

type Asking = StudentCommon & { readonly ask: string; readonly asking: WireAsking };

const isAsking = (common: StudentCommon): common is Asking => common.ask !== undefined && common.asking !== undefined;

function readSeat(text: string | null): Seat {
  const none: Seat = { name: '', leftHanded: false, pair: false, leftThumb: false };
  if (!text) return none;
  try {
    const { name, leftHanded, pair, leftThumb } = JSON.parse(text) as Partial<Seat>;
    return {
      name: typeof name === 'string' ? name : '',
      leftHanded: leftHanded === true,
      pair: pair === true,
      leftThumb: leftThumb === true,
    };
  } catch {
    // Not ours: begin with an empty door.
    return none;
  }
}
