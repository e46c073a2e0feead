/** The parts of teoria 2.5.0 that the checks of our theory use; the package brings no types. */
declare module 'teoria' {
  type Named = { simple: () => string[] };
  type Note = { fq: () => number };
  const teoria: {
    note: (name: string) => Note;
    scale: (tonic: string, name: string) => Named;
    chord: (symbol: string) => Named;
    interval: (low: Note, high: Note) => { toString: () => string };
  };
  export default teoria;
}
