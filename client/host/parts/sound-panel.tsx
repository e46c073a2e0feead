import type { HostView } from '../../../server/protocol/views.ts';
import { hostWords } from '../../../server/protocol/words/en.ts';
import type { HostActions, LocalSound } from '../sound-view.ts';
import { LateSpeakers } from './late-speakers.tsx';
import { LevelMeter } from './level-meter.tsx';

export type SoundProps = {
  readonly view: Pick<HostView, 'holdsSound' | 'soundHeld' | 'sound'>;
  readonly sound: LocalSound;
  readonly actions: HostActions;
};

const words = hostWords.sound;

/** What a person must know of the sound, in one sentence. */
function soundSentence({ view, sound }: Omit<SoundProps, 'actions'>): string {
  if (view.soundHeld && !view.holdsSound) return words.elsewhere;
  switch (sound.state) {
    case 'on':
      return sound.deviceChanged ? words.device : words.on;
    case 'starting':
      return words.starting;
    case 'silent':
      return words.silent;
    case 'lost':
      return words.lost;
    case 'failed':
      return words.failed;
    case 'off':
      return view.sound.playing ? words.goesOn : words.here;
  }
}

/** The one press that starts or mends the sound; null where nothing needs a press. */
function MainPress({ view, sound, actions }: SoundProps) {
  if (view.soundHeld && !view.holdsSound) {
    return (
      <button type="button" class="press" onClick={actions.takeOver}>
        {words.takeOver}
      </button>
    );
  }
  if (sound.state === 'on') {
    return (
      <button type="button" class="press quiet" onClick={actions.testNote}>
        {words.testNote}
      </button>
    );
  }
  return (
    <button type="button" class="press" disabled={sound.state === 'starting'} onClick={actions.pressForSound}>
      {words.press}
    </button>
  );
}

/** The sound on the register page: one press, a test note, its level. */
export function SoundPanel(props: SoundProps) {
  const { view, sound, actions } = props;
  const runs = sound.state === 'on' && (view.holdsSound || !view.soundHeld);
  return (
    <section class="sound-panel" aria-label={words.meter}>
      <MainPress {...props} />
      <p class="sound-sentence" role="status">
        {soundSentence(props)} {sound.ringSwitch && sound.state !== 'on' ? words.phoneHint : ''}
      </p>
      {runs ? <LateSpeakers sound={sound} actions={actions} playing={view.sound.playing} /> : null}
      {runs ? (
        <div class="sound-level">
          <span class="label">{words.quiet}</span>
          <LevelMeter level={sound.level} width={420} />
          <span class="label">{words.loud}</span>
        </div>
      ) : null}
    </section>
  );
}

type SoundLineProps = SoundProps & {
  /** There is room for the presses alone. */
  readonly bare: boolean;
  /** A mark of the beat is shown: it can be shifted. */
  readonly marked?: boolean;
};

/** The sound during a lesson: small, and always within reach. */
export function SoundLine(props: SoundLineProps) {
  const { view, sound, actions, bare, marked = false } = props;
  const elsewhere = view.soundHeld && !view.holdsSound;
  if (sound.state === 'on' && !elsewhere) {
    return (
      <div class="sound-line">
        {marked ? <LateSpeakers sound={sound} actions={actions} playing={view.sound.playing} /> : null}
        <button type="button" class="small-press" onClick={actions.testNote}>
          {words.testNote}
        </button>
        {bare ? null : <LevelMeter level={sound.level} width={150} />}
      </div>
    );
  }
  return (
    <div class="sound-line">
      {bare ? null : <span class="label">{elsewhere ? words.elsewhere : words.off}</span>}
      <button
        type="button"
        class="small-press"
        disabled={sound.state === 'starting'}
        onClick={elsewhere ? actions.takeOver : actions.pressForSound}
      >
        {elsewhere ? words.takeOver : words.press}
      </button>
    </div>
  );
}

/** Over any screen of a lesson when the sound that should run does not, or may not be heard. */
export function SoundBanner(props: SoundProps & { readonly needed: boolean }) {
  const { view, sound, needed } = props;
  const elsewhere = view.soundHeld && !view.holdsSound;
  const wrong = sound.state !== 'on' && sound.state !== 'starting';
  if (elsewhere || !needed || !(wrong || sound.deviceChanged)) return null;
  return (
    <div class="banner" role="alert">
      <p>{sound.state === 'off' && !view.sound.playing ? words.off : soundSentence(props)}</p>
      <MainPress {...props} />
    </div>
  );
}

/** Shown once on a machine, before its first note. */
export function Caution({ actions }: Pick<SoundProps, 'actions'>) {
  const { heading, lines, go } = hostWords.caution;
  return (
    <div class="caution" role="dialog" aria-modal="true" aria-labelledby="caution-heading">
      <h2 id="caution-heading">{heading}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {/* The press must be where the first sound begins: browsers start sound only inside one. */}
      <button type="button" class="press" ref={(button) => button?.focus()} onClick={actions.acceptCaution}>
        {go}
      </button>
    </div>
  );
}
