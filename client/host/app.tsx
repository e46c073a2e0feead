import type { HostView } from '../../server/protocol/views.ts';
import { hostWords } from '../../server/protocol/words/en.ts';
import { namesOf } from '../../shared-theory/namings/names-of.ts';
import { nameBy } from '../shared/names.ts';
import type { Frame } from './frame.ts';
import { Caution, SoundBanner } from './parts/sound-panel.tsx';
import { KeysReveal } from './screens/keys-reveal.tsx';
import { LessonEnd, RoomEnded, Waiting } from './screens/lesson-end.tsx';
import { Register } from './screens/register.tsx';
import { Round } from './screens/round.tsx';
import { SpreadScreen } from './screens/spread.tsx';
import type { HostActions, LocalSound } from './sound-view.ts';

export type HostProps = {
  /** null until the first view has come. */
  readonly view: HostView | null;
  /** What stands on the wall while there is no view. */
  readonly waiting: string;
  /** The connection is gone for now; the sound plays on. */
  readonly lost: boolean;
  readonly sound: LocalSound;
  readonly actions: HostActions;
  readonly frame: Frame;
  /** Reduced motion. */
  readonly still: boolean;
  /** The room has been open for a minute without a seat taken. */
  readonly unreached: boolean;
};

/** The host screen: one screen a phase, and over it what must be said at once. */
export function Host(props: HostProps) {
  const { view, sound, actions, lost } = props;
  if (view) nameBy(namesOf(view.settings.naming));
  const lesson = view?.status === 'round' && view.vamp?.source === 'host';
  return (
    <>
      <Screen {...props} />
      {view && !sound.cautioning ? <SoundBanner view={view} sound={sound} actions={actions} needed={lesson} /> : null}
      {sound.shaking ? (
        <p class="hand-care" role="status">
          {hostWords.hands.shake} <span class="hand-care-pain">{hostWords.hands.pain}</span>
        </p>
      ) : null}
      {lost ? (
        <p class="lost" role="status">
          {hostWords.round.reconnecting}
        </p>
      ) : null}
      {sound.cautioning ? <Caution actions={actions} /> : null}
    </>
  );
}

function Screen({ view, waiting, sound, actions, frame, still, unreached }: HostProps) {
  if (!view) return <Waiting sentence={waiting} />;
  switch (view.status) {
    case 'register':
      return <Register view={view} frame={frame} unreached={unreached} sound={sound} actions={actions} />;
    case 'lesson-ended':
      return <LessonEnd view={view} frame={frame} />;
    case 'room-ended':
      return <RoomEnded />;
    case 'round': {
      const { current, truth, keysReveal, spread, vamp } = view;
      if (current && truth && keysReveal && current.kind === 'keys') {
        const parts = { truth, reveal: keysReveal, frame, sound, actions };
        return <KeysReveal view={{ ...view, current }} {...parts} />;
      }
      if (current && (truth || spread)) {
        return <SpreadScreen view={{ ...view, current }} frame={frame} still={still} sound={sound} actions={actions} />;
      }
      if (vamp) {
        return <Round view={{ ...view, vamp }} frame={frame} still={still} sound={sound} actions={actions} />;
      }
      return <Register view={view} frame={frame} unreached={unreached} sound={sound} actions={actions} />;
    }
  }
}
