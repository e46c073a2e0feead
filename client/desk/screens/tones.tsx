import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import type { Tone } from '../../../server/protocol/messages.ts';
import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { printNote } from '../../shared/names.ts';
import type { Desk } from '../desk-state.ts';
import { Part } from './part.tsx';

const words = deskWords.sound.tones;

type Props = { readonly desk: Desk; readonly view: DeskView };

/** Notes of the open strings 6 to 1. */
const STRINGS = ['E', 'A', 'D', 'G', 'B', 'E'] as const;

/** Tones from the host screen before a vamp plays: the class's A, the open strings, and a check of the speaker's bass. */
export function Tones({ desk, view }: Props) {
  /** What is asked after the check, and what was answered. */
  const check = useSignal<'asked' | 'alike' | 'different' | null>(null);
  const answers = useRef<HTMLDivElement>(null);
  useEffect(() => {
    // On a phone the answers may lie below the picture while the tones sound.
    if (check.value === 'asked') answers.current?.scrollIntoView({ block: 'nearest' });
  }, [check.value]);
  const reason = !view.soundHeld ? words.noSound : view.sound.playing ? words.plays : null;
  const sound = (tone: Tone) => desk.wish({ type: 'RequestTone', tone });
  const tone = (label: string, made: Tone, name = label) => (
    <button
      key={name}
      type="button"
      aria-label={name === label ? undefined : name}
      disabled={reason !== null}
      onClick={() => void sound(made)}
    >
      {label}
    </button>
  );
  const answer = (heard: 'alike' | 'different') => {
    const smallSpeaker = heard === 'alike';
    if (smallSpeaker === view.settings.smallSpeaker) check.value = heard;
    else
      void desk.wish({ type: 'ChangeSettings', settings: { smallSpeaker } }).then((reply) => {
        if (reply?.ok) check.value = heard;
      });
  };
  return (
    <Part title={words.title}>
      <p class="hint">{reason ?? words.lead}</p>
      <div class="tones" role="group" aria-label={words.row}>
        {tone(fill(words.reference, { pitch: view.settings.pitch }), { kind: 'reference' })}
        {STRINGS.map((open, index) => {
          const string = STRINGS.length - index;
          const note = printNote(open).text;
          return tone(note, { kind: 'string', string }, fill(words.string, { string, note }));
        })}
      </div>
      <p>
        <button
          type="button"
          class="desk-button"
          disabled={reason !== null}
          onClick={() =>
            void sound({ kind: 'bass-check' }).then((reply) => {
              if (reply?.ok) check.value = 'asked';
            })
          }
        >
          {words.check}
        </button>
      </p>
      <p class="hint">{words.checkNote}</p>
      <div role="status">
        {check.value === 'asked' && <p class="advice">{words.question}</p>}
        {check.value === 'alike' && <p class="advice">{words.small}</p>}
        {check.value === 'different' && <p class="advice">{words.well}</p>}
      </div>
      {check.value === 'asked' && (
        <div class="kind-row" role="group" aria-label={words.question} ref={answers}>
          {(['alike', 'different'] as const).map((heard) => (
            <button key={heard} type="button" class="toggle" onClick={() => answer(heard)}>
              {words[heard]}
            </button>
          ))}
        </div>
      )}
    </Part>
  );
}
