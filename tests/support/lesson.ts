import type { DeskView } from '../../server/protocol/views.ts';
import { until, type StudentClient, type WatcherClient } from './socket-client.ts';

type Desk = WatcherClient<DeskView>;

/** Starts a round on the teacher's own guitar, for which no sound is needed, and gives its id. */
export async function startGuitarRound(desk: Desk, chords = 'Em D'): Promise<string> {
  const after = desk.view().vamp?.number ?? 0;
  const reply = await desk.send({
    type: 'StartGuitarRound',
    after,
    chords,
    groove: null,
    tempo: null,
    directions: null,
  });
  if (!reply.ok) throw new Error(`the round did not start: ${reply.reason}`);
  return (reply.value as { readonly round: string }).round;
}

/** Opens a question and gives its ask. */
export async function openQuestion(desk: Desk, round: string, question = 'direction-1'): Promise<string> {
  const reply = await desk.send({ type: 'OpenQuestion', round, question, how: 'phones' });
  if (!reply.ok) throw new Error(`the question did not open: ${reply.reason}`);
  return (reply.value as { readonly ask: string }).ask;
}

/** Writes an answer once the phone shows the question, and gives the reply. */
export async function write(
  student: StudentClient,
  ask: string,
  counter: number,
  answer: unknown = 'down',
  heldMs = 0,
) {
  await until(
    () => student.common()?.ask === ask && student.common()?.phase === 'open',
    `question ${ask} on the phone`,
  );
  return student.send({ type: 'WriteAnswer', ask, counter, answer, heldMs });
}
