/** What this page knows of its own sound; the screens draw it and change nothing. */
export type LocalSound = {
  /** `lost`: it ran, and the system took it away. `silent`: it says it runs, but nothing leaves the page. */
  readonly state: 'off' | 'starting' | 'on' | 'silent' | 'lost' | 'failed';
  /** This is a tablet or phone with a ring switch that silences pages. */
  readonly ringSwitch: boolean;
  /** The caution stands on the screen now, between the press and the first note. */
  readonly cautioning: boolean;
  /** Hands have struck fast downs for long: the room is told to shake them out. */
  readonly shaking: boolean;
  /** Speakers were plugged or unplugged since the last test note. */
  readonly deviceChanged: boolean;
  /** Level of what leaves the page now: 0 silence, 1 full scale. Read on every frame. */
  readonly level: () => number;
  /** Where the vamp is as heard now; null while nothing plays. Read on every frame. */
  readonly position: () => Heard | null;
  /** Milliseconds by which the teacher has set the marks of the beat later, for speakers that are late. */
  readonly delayMs: number;
  /** Clicks sound once a second, to be compared with a mark. */
  readonly comparing: boolean;
  /** Seconds since the last of those clicks as the marks show it; null where there is none. Read on every frame. */
  readonly sinceClick: () => number | null;
};

/** What is heard at this moment, delay of the speakers included as far as the browser knows it. */
export type Heard =
  | { readonly phase: 'count-in'; readonly beat: number; readonly of: number }
  | {
      readonly phase: 'vamp';
      /** Bar of the loop, 0 is the first. */
      readonly bar: number;
      /** Beat in the bar with its fraction, 0 is the first. */
      readonly beat: number;
      /** Slot of the loop that sounds. */
      readonly slot: number;
      /** The loop goes on unheard. */
      readonly silent?: true;
    }
  /** The settler behind the loop; its bars count from 0. */
  | { readonly phase: 'settler'; readonly index: number; readonly bar: number; readonly beat: number }
  /** One of two readings played by turns; bars and slots are the reading's own, from 0. */
  | {
      readonly phase: 'both';
      readonly side: 'wrong' | 'right';
      readonly bar: number;
      readonly beat: number;
      readonly slot: number;
    };

/** What a press on the host screen can do. */
export type HostActions = {
  readonly pressForSound: () => void;
  readonly acceptCaution: () => void;
  readonly testNote: () => void;
  readonly takeOver: () => void;
  readonly setDelay: (milliseconds: number) => void;
  readonly compare: (on: boolean) => void;
};

/** Sound of a page that has not been pressed yet; screens without sound of their own are drawn with it. */
export const SOUND_OFF: LocalSound = {
  state: 'off',
  ringSwitch: false,
  cautioning: false,
  shaking: false,
  deviceChanged: false,
  level: () => 0,
  position: () => null,
  delayMs: 0,
  comparing: false,
  sinceClick: () => null,
};
