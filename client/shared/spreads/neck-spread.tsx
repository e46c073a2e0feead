import { questionWords } from '../../../server/protocol/words/question-words.ts';
import type { NeckPlace } from '../../../shared-theory/questions/question.ts';
import { neckFrets, neckPlaces, rootAsk } from '../../../shared-theory/questions/root/ask.ts';
import { fretDistance, layNeck, type NeckLayout } from '../drawings/neck-layout.ts';
import { Neck } from '../drawings/neck.tsx';
import { lensPath } from '../marks-geometry.ts';
import { point } from '../pencil.ts';
import { BEAD_PITCH, layPiles } from './bead-layout.ts';
import { BeadPile } from './bead-row.tsx';
import { handsOn, isRight, type SpreadProps } from './spread-props.ts';

const STRINGS = [5, 6] as const;
/** Of the neck that is drawn. */
const LAST_FRET = 22;
const placeKey = rootAsk.key;

/** Where a root or a bass note was found: the first bead sits on the string; string 5 piles up, string 6 hangs down. */
export function NeckSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { scale } = size;
  const { capo = 0 } = spread.asking;
  const places = neckPlaces(capo);
  const most = (low: 5 | 6): number =>
    Math.max(1, ...places.filter(({ string }) => string === low).map((place) => handsOn(spread, placeKey(place))));
  const [up, down] = [most(5), most(6)];
  const breadth = 200 * scale;
  const [upper, lower] = [0.245 * breadth, 0.755 * breadth];
  const full = BEAD_PITCH * scale;
  // Both sides share the height by what hangs on them, never less than the neck's own edge.
  const spare = size.height - (lower - upper);
  const pitch = Math.min(full, spare / (up + down));
  const piles = layPiles(
    places.map((place) => handsOn(spread, placeKey(place))),
    pitch * Math.max(up, down),
    full,
  );
  const need = (hands: number): number => Math.max(upper, (hands - 0.5) * pitch);
  const top = Math.max(0, (size.height - need(up) - need(down) - (lower - upper)) / 2);
  const layout = neckLayout(size, top + need(up) - upper, breadth, capo);
  return (
    <Neck layout={layout} names={27 * scale} inlayNumbers={36 * scale}>
      {truth ? <Ringing layout={layout} places={places} truth={truth} scale={scale} /> : null}
      {layout.capo ? <SoundingNames layout={layout} scale={scale} /> : null}
      {places.map((place, index) => {
        const pile = piles[index];
        return hands && pile ? (
          <BeadPile
            key={placeKey(place)}
            pile={pile}
            from={layout.place(place.string, place.fret)}
            toward={place.string === 5 ? 'up' : 'down'}
            halo={place.fret === capo ? 'paper' : 'shade'}
            onInk={capo > 0 && place.fret === capo}
          />
        ) : null;
      })}
    </Neck>
  );
}

/** The neck from the string numbers to where it runs off the picture. */
function neckLayout(
  { width, bleed = 0, scale }: SpreadProps['size'],
  y: number,
  breadth: number,
  capo: number,
): NeckLayout {
  const nut = 180 * scale;
  const [, highest] = neckFrets(capo);
  const marked = fretDistance(highest);
  // Nut to fret 12 takes 1400 of a picture 1920 wide, so that the strings run off its edge beyond fret 12.
  const twelve = Math.min(
    1400 * scale,
    bleed > 0 ? Number.POSITIVE_INFINITY : (width - nut) / marked,
    ((width + bleed - nut) * 0.86) / marked,
  );
  const reach = (width + bleed - nut) / twelve;
  const beyond = Array.from({ length: LAST_FRET - highest }, (_, index) => highest + index);
  const last = bleed > 0 ? (beyond.find((fret) => fretDistance(fret) >= reach) ?? LAST_FRET) : highest;
  const ground = { x: nut, y, width: fretDistance(last) * twelve, height: breadth };
  return layNeck({ flat: true, ground, from: 1, to: last, open: 132 * scale, nut: 16 * scale, capo });
}

/** The right places: the string rings from the lowest of them to the bridge, and each is ringed. */
function Ringing({
  layout,
  places,
  truth,
  scale,
}: {
  readonly layout: NeckLayout;
  readonly places: readonly NeckPlace[];
  readonly truth: NonNullable<SpreadProps['truth']>;
  readonly scale: number;
}) {
  const right = places.filter((place) => isRight(truth, placeKey(place)));
  return (
    <>
      {STRINGS.map((string) => {
        const lowest = right.find((place) => place.string === string);
        const line = layout.strings.find((line) => line.string === string);
        if (!lowest || !line) return null;
        const from = layout.place(string, lowest.fret);
        const lens = lensPath(from, line.to, 17 * scale);
        return (
          <g key={string}>
            <path
              class={`string-covered on-shade ${string === 6 ? 'g6' : 'g4'}`}
              d={`M${point(from)}L${point(line.to)}`}
            />
            <path class="lens-body" d={lens} />
            <path class="line-brass g4" d={lens} />
          </g>
        );
      })}
      {right.map((place) => {
        const [x, y] = layout.place(place.string, place.fret);
        return (
          <g key={placeKey(place)}>
            <circle
              cx={x}
              cy={y}
              r={33 * scale}
              class={place.fret === (layout.capo?.fret ?? 0) ? 'fill-paper' : 'fill-shade'}
            />
            <circle cx={x} cy={y} r={31 * scale} class="line-brass g6" />
          </g>
        );
      })}
    </>
  );
}

/** Under a capo, over its open strings: which names are meant. */
function SoundingNames({ layout, scale }: { readonly layout: NeckLayout; readonly scale: number }) {
  const size = 28 * scale;
  return (
    <>
      {questionWords.capoNames.map((line, index) => (
        <text
          key={line}
          class="spread-label fill-ink2"
          x={0}
          y={layout.ground.y - (1.6 - index) * 1.25 * size}
          font-size={size}
        >
          {line}
        </text>
      ))}
    </>
  );
}
