/** The parts of verovio 6.3.0 that the checks of our scores use; the package brings no types. */
declare module 'verovio/wasm' {
  const createModule: () => Promise<unknown>;
  export default createModule;
}
declare module 'verovio/esm' {
  export class VerovioToolkit {
    constructor(module: unknown);
    setOptions(options: Readonly<Record<string, string | boolean>>): void;
    getLog(): string;
    loadData(text: string): number;
    /** A Standard MIDI File in base 64. */
    renderToMIDI(): string;
  }
}
