import { candidateKeys } from '../candidates.ts';
import { keySignature } from '../keys.ts';
import { swingMark, swingOf, tempoMark } from '../notation/directions.ts';
import { symbolsOver } from '../notation/lines.ts';
import type { Attack } from '../notation/bars.ts';
import { barElements, type PlacedLine } from '../notation/measures.ts';
import { DIVISIONS } from '../notation/note-values.ts';
import { partsOf, type Part, type ScoreWords } from '../notation/parts.ts';
import { layoutOf, sectionsOf, type Layout, type Section } from '../notation/sections.ts';
import { element, elementWith, printXml, type Element } from '../notation/xml.ts';
import type { Performance } from '../perform.ts';
import type { VoicedVamp } from '../vamps.ts';
import type { Voice } from './instrument.ts';
import { meterFacts } from './midi.ts';

/** Loops that `writeMusicXml` needs of a performance, to know how a loop goes on that has been played before. */
export const SCORE_LOOPS = 3;

const DOCTYPE =
  '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">';

/**
 * A vamp as a MusicXML 4.0 partwise score, in ASCII: the loop between repeat signs, each stroke of the guitar with its notes, its way, accent
 * and touch, chord symbols with their shapes, tempo and swing; bass and kit as further parts where the performance has them.
 * Swung strokes are written straight. The signature is that of the only major key that owns the chords, none where there are
 * several. RangeError for a performance of fewer than `SCORE_LOOPS` loops; one with human timing has no place on paper.
 */
export function writeMusicXml(
  vamp: VoicedVamp,
  performance: Performance,
  words: ScoreWords,
  voice: Voice = 'steel',
): string {
  if (performance.loops < SCORE_LOOPS)
    throw new RangeError(`A score needs ${SCORE_LOOPS} loops of its vamp, not ${performance.loops}.`);
  const layout = layoutOf(vamp);
  const signature = signatureOf(vamp);
  const sheet: Sheet = { vamp, words, layout, signature, sections: sectionsOf(layout, performance) };
  const parts = partsOf(vamp, performance, words, voice, layout, signature);
  const score = elementWith(
    'score-partwise',
    { version: '4.0' },
    element('work', element('work-title', words.name)),
    element('identification', element('encoding', element('software', words.software), ...supports())),
    element('part-list', ...parts.map(({ listed }) => listed)),
    ...parts.map((part, index) => elementWith('part', { id: part.id }, ...measures(sheet, part, index === 0))),
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${DOCTYPE}\n${printXml(score)}`;
}

function supports(): Element[] {
  return ['accidental', 'beam'].map((name) => elementWith('supports', { element: name, type: 'yes' }));
}

/** Sharps or flats of the only major key that owns the chords; 0 where several do, or none. */
function signatureOf({ slots }: VoicedVamp): number {
  const [key, ...others] = candidateKeys(
    slots.map(({ chord }) => chord),
    'majors',
  );
  return key && others.length === 0 ? keySignature(key) : 0;
}

/** The meter, or that of a bar of so many divisions, which counts in smaller notes where it must. */
function timeOf({ meter }: VoicedVamp, length: number): Element {
  const { denominator } = meterFacts(meter);
  const beats = (lower: number) => (length * lower) / (4 * DIVISIONS);
  const lower = [denominator, 8, 16].find((each) => Number.isInteger(beats(each))) ?? 16;
  return element('time', element('beats', beats(lower)), element('beat-type', lower));
}

type Sheet = {
  readonly vamp: VoicedVamp;
  readonly words: ScoreWords;
  readonly layout: Layout;
  readonly signature: number;
  readonly sections: readonly Section[];
};

/** The measures of a part; the one that `leads` carries tempo and chord symbols for all. The last section is repeated. */
function measures({ vamp, words, layout, signature, sections }: Sheet, part: Part, leads: boolean): readonly Element[] {
  const swing = swingOf(vamp);
  const { bars } = layout;
  let before = 0;
  let last: Attack | undefined;
  return sections.flatMap((section, index) => {
    const repeated = index === sections.length - 1;
    const { attacks: own, over } = part.line(section);
    // What was struck at the end of the way in holds over into the loop.
    const attacks = last ? [{ ...last, at: last.at - layout.loop }, ...own] : own;
    last = own.at(-1);
    const line: PlacedLine = {
      attacks,
      over: [...(leads ? symbolsOver(vamp, layout, section, index === 0) : []), ...over],
      end: repeated ? layout.loop : Infinity,
    };
    return bars.map((bar, place) => {
      const begins = index === 0 && place === 0;
      const length = bar.to - bar.from;
      const attributes = element(
        'attributes',
        begins && element('divisions', DIVISIONS),
        begins && element('key', element('fifths', part.pitched ? signature : 0)),
        length !== before && timeOf(vamp, length),
        begins && part.clef,
      );
      before = length;
      return elementWith(
        'measure',
        { number: index * bars.length + place + 1 },
        repeated && place === 0 && barline('forward'),
        attributes.children.length > 0 && attributes,
        begins && leads && tempoMark(vamp),
        begins && leads && swing !== null && swingMark(swing, words.swing),
        ...barElements(bar, line, vamp.meter, signature),
        repeated && place === bars.length - 1 && barline('backward'),
      );
    });
  });
}

function barline(way: 'forward' | 'backward'): Element {
  return elementWith(
    'barline',
    { location: way === 'forward' ? 'left' : 'right' },
    element('bar-style', way === 'forward' ? 'heavy-light' : 'light-heavy'),
    elementWith('repeat', { direction: way }),
  );
}
