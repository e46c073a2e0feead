import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { EchoOf } from '../../../server/protocol/messages.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { rhythmDeskWords } from '../../../server/protocol/words/rhythm-desk-words.ts';
import type { DeskView, WireStep } from '../../../server/protocol/views.ts';
import { answerText } from '../../shared/answer-text.ts';
import type { Desk } from '../desk-state.ts';
import { Unfolding } from './unfolding.tsx';
import '../rhythm.css';

const words = rhythmDeskWords.echo;

type Props = { readonly desk: Desk; readonly view: DeskView; readonly step: WireStep };

/** A grid that can be played, with what it says. */
type Playable = { readonly of: EchoOf; readonly label: string; readonly name: string };

/** On muted strings: the class's grid, the right one, or the grid of one student, in private; what sounds now is pressed. */
export function Echo({ desk, view, step }: Props) {
  const { sound, spread } = view;
  const sounding = sound.playing && sound.change.kind === 'echo' ? sound.change.groove : null;
  const whose = useWhose(sounding);
  if (view.vamp?.source !== 'host') return null;
  const ask = step.ask ?? '';
  const why = !view.soundHeld ? words.noSound : sound.playing && sound.round === view.vamp.round ? '' : words.waits;
  const drawn = view.students.filter(({ answer }) => Array.isArray(answer)).toSorted((a, b) => a.seat - b.seat);
  const press = ({ of, name }: Playable): void => {
    const end = whose.begin(name);
    void desk.wish({ type: 'PlayEcho', ask, of }).then((reply) => (reply?.ok ? undefined : end()));
  };
  const button = (each: Playable, label = each.name) => {
    const on = sounding !== null && whose.name === each.name;
    return (
      <button
        type="button"
        class="toggle"
        aria-pressed={on}
        aria-label={label === each.label ? undefined : label}
        disabled={why !== ''}
        onClick={() => (on ? void desk.change({ kind: 'full' }) : press(each))}
      >
        {each.label}
      </button>
    );
  };
  const both: readonly Playable[] = [
    ...(spread?.meanGrid ? [{ of: { grid: 'class' as const }, label: words.class, name: words.class }] : []),
    { of: { grid: 'right' }, label: words.right, name: words.right },
  ];
  return (
    <section class="echo">
      <h2>{words.heading}</h2>
      <p class="hint">{why || words.lead}</p>
      <div class="kind-row">
        {both.map((each) => button(each, each.label))}
        {sounding !== null && (
          <button type="button" class="desk-link" onClick={() => void desk.change({ kind: 'full' })}>
            {words.back}
          </button>
        )}
      </div>
      <p class="echo-now" role="status">
        {[
          sounding === null ? '' : fill(words.now, { what: whose.name ?? words.another }),
          whose.next === null ? '' : fill(words.next, { what: whose.next }),
        ]
          .filter(Boolean)
          .join(' · ')}
      </p>
      {drawn.length > 0 && (
        <Unfolding more={words.each} less={words.eachLess}>
          {() => (
            <ul class="answer-list">
              {drawn.map(({ student, name, answer }) => (
                <li key={student}>
                  <bdi class="answer">{name}</bdi>
                  <span class="hands">{answerText(step.kind, answer, spread?.asking.grid)}</span>
                  {button({ of: { grid: 'student', student }, label: words.play, name }, fill(words.playOf, { name }))}
                </li>
              ))}
            </ul>
          )}
        </Unfolding>
      )}
    </section>
  );
}

/** Whose grid sounds, and whose is going to, as far as it was pressed here: one that another desk asked for is nobody's. */
function useWhose(sounding: string | null) {
  const next = useSignal<string | null>(null);
  const now = useSignal<{ readonly groove: string; readonly name: string | null } | null>(null);
  useEffect(() => {
    // Each grid that is played has a text of its own, the same grid a second time too.
    now.value = sounding === null ? null : { groove: sounding, name: next.value };
    next.value = null;
  }, [sounding]);
  return {
    name: now.value?.groove === sounding ? (now.value?.name ?? null) : null,
    next: next.value,
    begin: (pressed: string) => {
      next.value = pressed;
      return () => {
        next.value = null;
      };
    },
  };
}
