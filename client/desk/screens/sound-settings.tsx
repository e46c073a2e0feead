import { useSignal } from '@preact/signals';
import { VOICES, type RoomSettings } from '../../../server/protocol/messages.ts';
import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { PITCH_RANGE } from '../../../shared-theory/sound/instrument.ts';
import type { Desk } from '../desk-state.ts';
import { Part } from './part.tsx';

const words = deskWords.sound.settings;
const [LOW, HIGH] = PITCH_RANGE;

type Props = { readonly desk: Desk; readonly view: DeskView };

/** What the host plays on, at which pitch, for which speaker, and who plays along when a vamp begins. */
export function SoundSettings({ desk, view: { settings } }: Props) {
  const set = (changed: Partial<RoomSettings>) => desk.wish({ type: 'ChangeSettings', settings: changed });
  const box = (label: string, checked: boolean, change: (on: boolean) => Partial<RoomSettings>) => (
    <label>
      <input type="checkbox" checked={checked} onChange={(event) => void set(change(event.currentTarget.checked))} />
      {label}
    </label>
  );
  return (
    <>
      <Part title={words.voiceTitle}>
        <div class="choice-row" role="radiogroup" aria-label={words.voiceTitle}>
          {VOICES.map((voice) => (
            <label key={voice}>
              <input
                type="radio"
                name="voice"
                checked={settings.voice === voice}
                onChange={() => void set({ voice })}
              />
              {words.voice[voice]}
            </label>
          ))}
        </div>
        <div class="choice-row">{box(words.smallSpeaker, settings.smallSpeaker, (on) => ({ smallSpeaker: on }))}</div>
        <p class="hint">{words.smallSpeakerNote}</p>
      </Part>
      <Part title={words.bandTitle}>
        <div class="choice-row" role="group" aria-label={words.bandTitle}>
          {box(words.kit, settings.band.kit, (kit) => ({ band: { ...settings.band, kit } }))}
          {box(words.bass, settings.band.bass, (bass) => ({ band: { ...settings.band, bass } }))}
        </div>
        <p class="hint">{words.bandNote}</p>
      </Part>
      <Part title={words.pitchTitle}>
        <Pitch pitch={settings.pitch} onPitch={(pitch) => void set({ pitch })} />
      </Part>
    </>
  );
}

/** The class's A as a number; outside its range nothing is sent, and the range is said. */
function Pitch({ pitch, onPitch }: { readonly pitch: number; readonly onPitch: (pitch: number) => void }) {
  const wrong = useSignal(false);
  return (
    <>
      <label class="field narrow">
        <span>{words.pitch}</span>
        <input
          name="pitch"
          type="number"
          inputMode="decimal"
          min={LOW}
          max={HIGH}
          step="any"
          aria-describedby="pitch-range"
          aria-invalid={wrong.value}
          value={String(pitch)}
          onChange={(event) => {
            const typed = Number(event.currentTarget.value);
            wrong.value = event.currentTarget.value === '' || !(typed >= LOW && typed <= HIGH);
            if (!wrong.value) onPitch(typed);
          }}
        />
      </label>
      <p id="pitch-range" class={wrong.value ? 'advice' : 'hint'} role={wrong.value ? 'alert' : undefined}>
        {fill(wrong.value ? words.pitchWrong : words.pitchRange, { low: LOW, high: HIGH })}
      </p>
    </>
  );
}
