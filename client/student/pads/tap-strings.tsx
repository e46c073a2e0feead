import { Lens, XHead } from '../../shared/music-marks.tsx';
import type { Taps } from '../../../shared-theory/taps/taps.ts';

/** Taps in a row, and rows that fit between the strings: past them the page is turned. */
const IN_ROW = 8;
const ROWS = 4;

/** How far the strings run on past the pad on each side: to the edge of the page, or where they lie beside the question, to its line. */
export const edgeOf = (width: number): number => (innerWidth - width > 40 ? 12 : 16);

type Place = { readonly width: number; readonly height: number; readonly top: number };

/** Height of a string, 1 to 6. */
const stringAt = ({ height, top }: Place, string: number): number => top + ((string - 0.6) * (height - top)) / 6;

/** Six strings from edge to edge. */
function Strings(place: Place) {
  const edge = edgeOf(place.width);
  return (
    <>
      {[1, 2, 3, 4, 5, 6].map((string) => (
        <path
          key={string}
          d={`M${-edge} ${stringAt(place, string)}H${place.width + edge}`}
          class={`line-string g${string}`}
        />
      ))}
    </>
  );
}

/** A head for each tap between the strings, a dot for each of the first eight still to come. */
export function TapHeads(props: Place & { readonly count: number }) {
  const { count, width } = props;
  const gap = stringAt(props, 2) - stringAt(props, 1);
  const size = Math.min(24, gap * 0.46);
  const shown = count === 0 ? 0 : ((count - 1) % (IN_ROW * ROWS)) + 1;
  const at = (index: number) => ({
    x: (width * ((index % IN_ROW) + 0.8)) / (IN_ROW + 0.6),
    y: stringAt(props, 2 + Math.floor(index / IN_ROW)) + gap / 2,
  });
  return (
    <>
      <Strings {...props} />
      {Array.from({ length: Math.max(shown, count < IN_ROW ? IN_ROW : 0) }, (_, index) =>
        index < shown ? (
          <XHead key={index} {...at(index)} size={size} />
        ) : (
          <circle key={index} cx={at(index).x} cy={at(index).y} r={3.4} class="fill-string" />
        ),
      )}
    </>
  );
}

/** The last eight beats: each beat that sounded a ringing piece of string, and the hand's own taps over it from one of them on. */
export function TapsShown(props: Place & { readonly taps: Taps; readonly right: Taps }) {
  const { width, taps, right } = props;
  const last = right[right.length - 1] ?? 0;
  const beat = last / (right.length - 1);
  const [from, across] = [width * 0.06, (width * 0.84) / IN_ROW];
  const y = stringAt(props, 4);
  const gap = y - stringAt(props, 3);
  const own = taps.slice(-IN_ROW - 1);
  const [first = 0] = own;
  return (
    <>
      <Strings {...props} />
      {Array.from({ length: IN_ROW }, (_, index) => (
        <Lens
          key={index}
          from={[from + index * across, y]}
          to={[from + (index + 1) * across, y]}
          amplitude={gap * 0.18}
        />
      ))}
      {own
        .map((tap) => (tap - first) / beat)
        .filter((beats) => beats < IN_ROW + 0.5)
        .map((beats) => (
          <XHead key={beats} x={from + beats * across} y={y - gap / 2} size={Math.min(22, gap * 0.44)} />
        ))}
    </>
  );
}
