/** Formants one to three of a sound of speech, in hertz. */
type Formants = readonly [number, number, number];

/** Where a spoken number is at one moment: in between, all of it moves in straight lines. */
export type Moment = {
  /** Seconds from the onset. */
  readonly at: number;
  readonly formants: Formants;
  /** Amplitude of the voice, 0 to 1. */
  readonly voice: number;
  /** Amplitude of the breath, 0 to 1, and the band in hertz that the mouth lets through. */
  readonly breath: number;
  readonly low: number;
  readonly high: number;
};

/**
 * Mean formants of the vowels that are needed, of American men: Peterson and Barney, "Control methods used in a study of the vowels", Journal of the Acoustical
 * Society of America 24 (1952), table II, from memory.
 */
const VOWELS = {
  heed: [270, 2290, 3010],
  hawed: [570, 840, 2410],
  whod: [300, 870, 2240],
  hud: [640, 1190, 2390],
  heard: [490, 1350, 1690],
} as const satisfies Readonly<Record<string, Formants>>;

/** Where the vowel goes from or to in a consonant with voice: lips closing, the tongue curled back, the tongue's tip up (usual values). */
const W: Formants = [290, 610, 2150];
const R: Formants = [310, 1060, 1380];
const N: Formants = [280, 1500, 2500];

const NO_BREATH = { breath: 0, low: 1000, high: 4000 } as const;
const TONGUE_TIP = { low: 2800, high: 6500 } as const;
const TEETH = { low: 1400, high: 7500 } as const;

/** Seconds that a spoken number lasts: short enough for the fastest count. */
export const SPOKEN_SECONDS = 0.28;

/** The numbers that are counted in, from one: every one begins with its consonant, whose breath bursts at once. */
export const SPOKEN_NUMBERS: readonly (readonly Moment[])[] = [
  [
    { at: 0, formants: W, voice: 0.7, breath: 0.5, low: 300, high: 1500 },
    { at: 0.012, formants: W, voice: 0.8, ...NO_BREATH },
    { at: 0.07, formants: VOWELS.hud, voice: 1, ...NO_BREATH },
    { at: 0.16, formants: VOWELS.hud, voice: 1, ...NO_BREATH },
    { at: 0.19, formants: N, voice: 0.5, ...NO_BREATH },
    { at: SPOKEN_SECONDS, formants: N, voice: 0, ...NO_BREATH },
  ],
  [
    { at: 0, formants: [350, 1700, 2600], voice: 0, breath: 1, ...TONGUE_TIP },
    { at: 0.012, formants: [350, 1700, 2600], voice: 0, breath: 0.45, ...TONGUE_TIP },
    { at: 0.032, formants: [320, 1400, 2400], voice: 0, breath: 0.2, ...TONGUE_TIP },
    { at: 0.036, formants: [320, 1350, 2400], voice: 0.9, breath: 0.05, ...TONGUE_TIP },
    { at: 0.09, formants: VOWELS.whod, voice: 1, ...NO_BREATH },
    { at: 0.2, formants: VOWELS.whod, voice: 0.9, ...NO_BREATH },
    { at: SPOKEN_SECONDS, formants: VOWELS.whod, voice: 0, ...NO_BREATH },
  ],
  [
    { at: 0, formants: R, voice: 0, breath: 0.6, ...TEETH },
    { at: 0.04, formants: R, voice: 0, breath: 0.4, ...TEETH },
    { at: 0.045, formants: R, voice: 0.7, breath: 0.1, ...TEETH },
    { at: 0.07, formants: R, voice: 0.9, ...NO_BREATH },
    { at: 0.13, formants: VOWELS.heed, voice: 1, ...NO_BREATH },
    { at: 0.21, formants: VOWELS.heed, voice: 0.9, ...NO_BREATH },
    { at: SPOKEN_SECONDS, formants: VOWELS.heed, voice: 0, ...NO_BREATH },
  ],
  [
    { at: 0, formants: [400, 800, 2300], voice: 0, breath: 0.6, ...TEETH },
    { at: 0.04, formants: [400, 800, 2300], voice: 0, breath: 0.4, ...TEETH },
    { at: 0.045, formants: [450, 800, 2350], voice: 0.8, breath: 0.1, ...TEETH },
    { at: 0.08, formants: VOWELS.hawed, voice: 1, ...NO_BREATH },
    { at: 0.15, formants: VOWELS.hawed, voice: 1, ...NO_BREATH },
    { at: 0.21, formants: VOWELS.heard, voice: 0.7, ...NO_BREATH },
    { at: SPOKEN_SECONDS, formants: VOWELS.heard, voice: 0, ...NO_BREATH },
  ],
];
