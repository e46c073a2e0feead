/** The parts of music-tempo 1.0.3 that the checks of our grooves use; the package brings no types. */
declare module 'music-tempo' {
  export default class MusicTempo {
    constructor(
      samples: Float32Array,
      options: { readonly bufferSize: number; readonly hopSize: number; readonly timeStep: number },
    );
    /** Beats a minute, as text with three decimals. */
    readonly tempo: string;
  }
}
