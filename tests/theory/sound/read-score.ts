/** What stands in one `note` of a score; `at` and `duration` in divisions, `at` from the part's start as written. */
export type ReadNote = {
  readonly at: number;
  readonly duration: number;
  readonly measure: number;
  /** In a chord with the note before. */
  readonly chord: boolean;
  /** MIDI note as it begins to sound; null for rests, drums and what is tied to the note before. */
  readonly midi: number | null;
  /** Spelled, with its octave: `Bb3`. */
  readonly name: string | null;
  readonly instrument: string | null;
  readonly type: string | null;
  readonly dots: number;
  readonly xml: string;
};

export type ReadMeasure = { readonly xml: string; readonly length: number; readonly notes: readonly ReadNote[] };

const NATURALS: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

export function textOf(xml: string, name: string): string | null {
  return new RegExp(`<${name}(?: [^>]*)?>([^<]*)</${name}>`).exec(xml)?.[1] ?? null;
}

function elements(xml: string, name: string): readonly string[] {
  return xml.match(new RegExp(`<${name}(?: [^>]*)?>[^]*?</${name}>`, 'g')) ?? [];
}

/** The parts of a score by the letter of MusicXML 4.0, "note": a chord begins with the note before it, all else goes on. */
export function readScore(xml: string): readonly (readonly ReadMeasure[])[] {
  return elements(xml, 'part').map((part) => {
    let at = 0;
    return elements(part, 'measure').map((measure, index) => {
      const began = at;
      let start = at;
      const notes = elements(measure, 'note').map((note): ReadNote => {
        const chord = note.includes('<chord/>');
        const duration = Number(textOf(note, 'duration'));
        if (!chord) {
          start = at;
          at += duration;
        }
        const step = textOf(note, 'step');
        const alter = Number(textOf(note, 'alter') ?? 0);
        const octave = Number(textOf(note, 'octave'));
        return {
          at: start,
          duration,
          measure: index + 1,
          chord,
          midi:
            step === null || note.includes('<tie type="stop"/>')
              ? null
              : 12 * (octave + 1) + (NATURALS[step] ?? 0) + alter,
          name: step === null ? null : step + (alter < 0 ? 'b' : '#').repeat(Math.abs(alter)) + octave,
          instrument: /<instrument id="([^"]+)"/.exec(note)?.[1] ?? null,
          type: textOf(note, 'type'),
          dots: note.match(/<dot\/>/g)?.length ?? 0,
          xml: note,
        };
      });
      return { xml: measure, length: at - began, notes };
    });
  });
}
