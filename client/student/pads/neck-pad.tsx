import { useState } from 'preact/hooks';
import { bassSpoken, capoWords, neckAnswers, rootSpoken } from '../../../server/protocol/words/asked/neck.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { studentWords } from '../../../server/protocol/words/student.ts';
import type { NeckPlace } from '../../../shared-theory/questions/question.ts';
import { neckFrets, rootAsk } from '../../../shared-theory/questions/root/ask.ts';
import { useBox } from '../../shared/box.ts';
import { layNeck, neckPages, type NeckLayout } from '../../shared/drawings/neck-layout.ts';
import { Neck } from '../../shared/drawings/neck.tsx';
import { Bead, Lens } from '../../shared/music-marks.tsx';
import type { Point } from '../../shared/pencil.ts';
import { sameAnswer } from '../moment.ts';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

/** Least length of a fret for a thumb: along an upright neck, and along a flat one. */
const LEAST = { upright: 44, flat: 24 } as const;
/** Where nothing is tapped any more, the whole neck fits. */
const LEAST_SHOWN = 10;
const STRINGS = [6, 5] as const;

export const spoken = { root: rootSpoken, bass: bassSpoken };
export const said: PadModule<NeckPlace>['said'] = ({ capo }, place) => placeText(place, capo);

/** On a capo's fret the open strings sound. */
const placeText = (place: NeckPlace, capo = 0): string =>
  fill(place.fret === capo ? neckAnswers.neckOpen : neckAnswers.neckFret, place);

/** The two low strings: upright like a grown chord box, flat where phone and pad lie. */
export function Pad(props: PadProps<NeckPlace>) {
  const [ref, box] = useBox({ width: 328, height: 480 });
  const flat = box.width > box.height && innerWidth > innerHeight;
  // Closed, the foot may take a little of the pad: the pages stay as they were tapped.
  const least = props.truth ? LEAST_SHOWN : LEAST[flat ? 'flat' : 'upright'] * (props.closed ? 0.75 : 1);
  const capo = props.asking.capo ?? 0;
  const [lowest, highest] = neckFrets(capo);
  const pagesFrom = (first: number) => neckPages(groundOf(box, flat, openRow(capo)).length, least, highest, first);
  const [below, above] = [pagesFrom(Math.max(1, capo - 1)), pagesFrom(Math.max(1, capo))];
  // Of the frets behind a capo one is enough to be seen, and none where it would cost a page.
  const pages = below.length > above.length ? above : below;
  const [[first] = [1]] = pages;
  const [turned, turn] = useState<number | null>(null);
  const holds = (fret: number): number =>
    Math.max(
      0,
      pages.findIndex(([, to]) => fret <= to),
    );
  const right = props.truth?.answer as NeckPlace | undefined;
  const page = Math.min(turned ?? holds((right ?? props.chosen)?.fret ?? 0), pages.length - 1);
  const [from, to] = pages[page] ?? [first, highest];
  const row = from === first ? openRow(capo) : 'none';
  const layout = neckOn(box, flat, props.leftHanded, { from, to, row, capo });
  const lowestHere = from === first ? lowest : from;
  const frets = Array.from({ length: to - lowestHere + 1 }, (_, index) => lowestHere + index);
  const chosen = props.chosen && frets.includes(props.chosen.fret) ? props.chosen : null;
  const rightKeys = props.truth ? [props.truth.key, ...(props.truth.also ?? [])] : [];
  return (
    <>
      {(pages.length > 1 || capo > 0) && <Pages pages={pages} page={page} lowest={lowest} onTurn={turn} />}
      <div class="fill" ref={ref}>
        <svg
          class="under"
          width={box.width}
          height={box.height}
          viewBox={`0 0 ${box.width} ${box.height}`}
          aria-hidden="true"
        >
          <Neck layout={layout} names={row === 'none' ? 0 : 13} numbers>
            {STRINGS.flatMap((string) =>
              frets
                .filter((fret) => rightKeys.includes(rootAsk.key({ string, fret })))
                .map((fret) => (
                  <Ringing
                    key={`${string}.${fret}`}
                    layout={layout}
                    string={string}
                    fret={fret}
                    flat={flat}
                    said={sameAnswer(props.chosen, { string, fret })}
                  />
                )),
            )}
            {chosen && <Chosen layout={layout} place={chosen} open={lowest} dashed={props.dashed} />}
          </Neck>
        </svg>
        {STRINGS.flatMap((string) =>
          frets.map((fret) => {
            const pressed = props.chosen?.string === string && props.chosen.fret === fret;
            return (
              <Choice
                key={`${string}.${fret}`}
                label={placeText({ string, fret }, capo)}
                pressed={pressed}
                closed={props.closed}
                at={layout.zone(string, fret)}
                onTap={() => props.onChoose(pressed ? null : { string, fret })}
              />
            );
          }),
        )}
      </div>
    </>
  );
}

/**
 * What stands before the first fret of a page: the open strings before the nut, to be marked; the ends of the strings with their
 * numbers where a capo stands; nothing on a later page.
 */
type Row = 'open' | 'ends' | 'none';

const openRow = (capo: number): Row => (capo === 0 ? 'open' : 'ends');

/** Room for the neck in the pad: its open row and the numbers beside it taken off. */
function groundOf(box: { readonly width: number; readonly height: number }, flat: boolean, before: Row) {
  const open = flat ? 78 : box.height < 340 ? 60 : 80;
  const row = { open, ends: 44, none: 10 }[before];
  const length = (flat ? box.width : box.height) - row - (flat ? 4 : 10);
  return { row, length: Math.min(length, flat ? 900 : 620) };
}

function neckOn(
  box: { readonly width: number; readonly height: number },
  flat: boolean,
  mirrored: boolean,
  part: { readonly from: number; readonly to: number; readonly row: Row; readonly capo: number },
): NeckLayout {
  const { row, length } = groundOf(box, flat, part.row);
  const breadth = flat ? Math.min(box.height - 30, 190) : Math.min(box.width - 48, 360);
  const ground = flat
    ? {
        x: mirrored ? box.width - row - length : row,
        y: (box.height - 24 - breadth) / 2,
        width: length,
        height: breadth,
      }
    : { x: (box.width - breadth) / 2, y: row, width: breadth, height: length };
  return layNeck({ ...part, flat, mirrored, ground, open: part.row === 'none' ? 0 : row - 14 });
}

/** The bead of one's own answer, and its ring where it did not count. */
function Chosen(props: {
  readonly layout: NeckLayout;
  readonly place: NeckPlace;
  /** Fret of the open strings: 0, or that of the capo. */
  readonly open: number;
  readonly dashed: boolean;
}) {
  const [x, y] = props.layout.place(props.place.string, props.place.fret);
  const halo = props.place.fret === props.open ? 'paper' : 'shade';
  return props.dashed ? <Ring x={x} y={y} rx={15} ry={15} dashed /> : <Bead x={x} y={y} r={15.5} halo={halo} />;
}

/** A place of the right note: the string rings across its fret. */
function Ringing(props: {
  readonly layout: NeckLayout;
  readonly string: 5 | 6;
  readonly fret: number;
  readonly flat: boolean;
  readonly said: boolean;
}) {
  const { string, fret, flat } = props;
  const zone = props.layout.zone(string, fret);
  const [x, y] = props.layout.place(string, fret);
  // Before the nut the string's number takes the outer end.
  const half = (flat ? zone.width : zone.height) / 2 - (fret === 0 ? 13 : 0);
  const inward = fret === 0 ? 6.5 * (flat && zone.x > props.layout.ground.x ? -1 : 1) : 0;
  const middle = inward + (flat ? zone.x + zone.width / 2 : zone.y + zone.height / 2);
  const at = (end: number): Point => (flat ? [middle + end, y] : [x, middle + end]);
  // Round one's own bead the string swings wider, or the bead would hide it.
  return <Lens from={at(-half)} to={at(half)} amplitude={props.said ? 23 : 13} gauge={4} />;
}

function Pages(props: {
  readonly pages: readonly (readonly [number, number])[];
  readonly page: number;
  /** Fret of the open strings: 0, or that of the capo. */
  readonly lowest: number;
  readonly onTurn: (page: number) => void;
}) {
  const { pages, page, lowest, onTurn } = props;
  const spans = pages.map(([from, to], index) => ({ from: index === 0 ? lowest : from, to }));
  return (
    <div class="pages">
      {lowest > 0 && <p>{capoWords.names}</p>}
      {spans.length > 1 && <span aria-hidden="true">{studentWords.fretsWord}</span>}
      {spans.length > 1 &&
        spans.map((span, index) => (
          <button
            key={span.from}
            type="button"
            class="page-link"
            aria-label={fill(studentWords.frets, span)}
            aria-pressed={index === page}
            onClick={() => onTurn(index)}
          >
            {fill(studentWords.span, span)}
          </button>
        ))}
    </div>
  );
}
