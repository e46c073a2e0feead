import { useState } from 'preact/hooks';
import { bassSpoken, neckAnswers, rootSpoken } from '../../../server/protocol/words/asked/neck.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { studentWords } from '../../../server/protocol/words/student.ts';
import type { NeckPlace } from '../../../shared-theory/questions/question.ts';
import { LAST_FRET, rootAsk } from '../../../shared-theory/questions/root/ask.ts';
import { useBox } from '../../shared/box.ts';
import { layNeck, neckPages, type NeckLayout } from '../../shared/drawings/neck-layout.ts';
import { Neck } from '../../shared/drawings/neck.tsx';
import { Bead, Lens } from '../../shared/music-marks.tsx';
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
export const said: PadModule<NeckPlace>['said'] = (_asking, place) => placeText(place);

const placeText = (place: NeckPlace): string =>
  fill(place.fret === 0 ? neckAnswers.neckOpen : neckAnswers.neckFret, place);

/** The two low strings: upright like a grown chord box, flat where phone and pad lie. */
export function Pad(props: PadProps<NeckPlace>) {
  const [ref, box] = useBox({ width: 328, height: 480 });
  const flat = box.width > box.height && innerWidth > innerHeight;
  // Closed, the foot may take a little of the pad: the pages stay as they were tapped.
  const least = props.truth ? LEAST_SHOWN : LEAST[flat ? 'flat' : 'upright'] * (props.closed ? 0.75 : 1);
  const pages = neckPages(groundOf(box, flat, true).length, least, LAST_FRET);
  const [turned, turn] = useState<number | null>(null);
  const holds = (fret: number): number =>
    Math.max(
      0,
      pages.findIndex(([, to]) => fret <= to),
    );
  const right = props.truth?.answer as NeckPlace | undefined;
  const page = Math.min(turned ?? holds((right ?? props.chosen)?.fret ?? 0), pages.length - 1);
  const [from, to] = pages[page] ?? [1, LAST_FRET];
  const { layout, open } = neckOn(box, flat, props.leftHanded, from, to);
  const frets = Array.from({ length: to - from + 1 }, (_, index) => from + index);
  const chosen = props.chosen && isOn(props.chosen.fret, from, to) ? props.chosen : null;
  const rightKeys = props.truth ? [props.truth.key, ...(props.truth.also ?? [])] : [];
  return (
    <>
      {pages.length > 1 && <Pages pages={pages} page={page} onTurn={turn} />}
      <div class="fill" ref={ref}>
        <svg
          class="under"
          width={box.width}
          height={box.height}
          viewBox={`0 0 ${box.width} ${box.height}`}
          aria-hidden="true"
        >
          <Neck layout={layout} names={open ? 13 : 0} numbers>
            {STRINGS.flatMap((string) =>
              (open ? [0, ...frets] : frets)
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
            {chosen && <Chosen layout={layout} place={chosen} dashed={props.dashed} />}
          </Neck>
        </svg>
        {STRINGS.flatMap((string) =>
          (open ? [0, ...frets] : frets).map((fret) => {
            const pressed = props.chosen?.string === string && props.chosen.fret === fret;
            return (
              <Choice
                key={`${string}.${fret}`}
                label={placeText({ string, fret })}
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

const isOn = (fret: number, from: number, to: number): boolean =>
  fret === 0 ? from === 1 : fret >= from && fret <= to;

/** Room for the neck in the pad: its open row and the numbers beside it taken off. */
function groundOf(box: { readonly width: number; readonly height: number }, flat: boolean, open: boolean) {
  const row = open ? (flat ? 78 : box.height < 340 ? 60 : 80) : 10;
  const length = (flat ? box.width : box.height) - row - (flat ? 4 : 10);
  return { row, length: Math.min(length, flat ? 900 : 620) };
}

function neckOn(
  box: { readonly width: number; readonly height: number },
  flat: boolean,
  mirrored: boolean,
  from: number,
  to: number,
): { readonly layout: NeckLayout; readonly open: boolean } {
  const open = from === 1;
  const { row, length } = groundOf(box, flat, open);
  const breadth = flat ? Math.min(box.height - 30, 190) : Math.min(box.width - 48, 360);
  const ground = flat
    ? {
        x: mirrored ? box.width - row - length : row,
        y: (box.height - 24 - breadth) / 2,
        width: length,
        height: breadth,
      }
    : { x: (box.width - breadth) / 2, y: row, width: breadth, height: length };
  return { layout: layNeck({ flat, mirrored, ground, from, to, open: open ? row - 14 : 0 }), open };
}

/** The bead of one's own answer, and its ring where it did not count. */
function Chosen(props: { readonly layout: NeckLayout; readonly place: NeckPlace; readonly dashed: boolean }) {
  const [x, y] = props.layout.place(props.place.string, props.place.fret);
  const halo = props.place.fret === 0 ? 'paper' : 'shade';
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
  const middle = fret === 0 ? 6.5 * (flat && zone.x > props.layout.ground.x ? -1 : 1) : 0;
  const [from, to] = flat
    ? ([
        [x + middle - half, y],
        [x + middle + half, y],
      ] as const)
    : ([
        [x, y + middle - half],
        [x, y + middle + half],
      ] as const);
  // Round one's own bead the string swings wider, or the bead would hide it.
  return <Lens from={from} to={to} amplitude={props.said ? 23 : 13} gauge={4} />;
}

function Pages(props: {
  readonly pages: readonly (readonly [number, number])[];
  readonly page: number;
  readonly onTurn: (page: number) => void;
}) {
  return (
    <div class="pages">
      <span aria-hidden="true">{studentWords.fretsWord}</span>
      {props.pages.map(([from, to], index) => (
        <button
          key={from}
          type="button"
          class="page-link"
          aria-label={fill(studentWords.frets, { from: from === 1 ? 0 : from, to })}
          aria-pressed={index === props.page}
          onClick={() => props.onTurn(index)}
        >
          {fill(studentWords.span, { from: from === 1 ? 0 : from, to })}
        </button>
      ))}
    </div>
  );
}
