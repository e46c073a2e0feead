import { questionWords } from '../../../server/protocol/words/en.ts';
import { beadsBeside, layCircle, polar, type CircleLayout, type Peg } from '../drawings/circle-layout.ts';
import { Circle } from '../drawings/circle.tsx';
import type { Rect } from '../drawings/neck-layout.ts';
import { homesAsked } from '../homes-asked.ts';
import { homeCell, HomeRow } from '../drawings/home-row.tsx';
import { HOME_IDS } from '../../../shared-theory/questions/keys/ask.ts';
import { Bead } from '../music-marks.tsx';
import type { SpreadProps } from './spread-props.ts';
import type { WireSpread } from '../../../server/protocol/views.ts';

/** Bead and pitch beside a peg on the host screen. */
const PITCH = 19;
const LEAST_PITCH = 9;

/** Narrower drawings, in units of the host screen, have no room for the homes beside the circle. */
const LEAST_BESIDE = 1100;

/** Hands on each key: an answer of several keys is a hand on each of them. */
export function handsOnKeys(spread: WireSpread): ReadonlyMap<string, number> {
  const hands = new Map<string, number>();
  for (const { key, count } of spread.counts) {
    for (const id of key.split(' ')) hands.set(id, (hands.get(id) ?? 0) + count);
  }
  return hands;
}

/**
 * Which keys were heard to own the chords: beads in twos outward of each peg; those who said none stand in the middle. Where a
 * settler was asked, the keys that did not own the loop step back.
 */
export function KeysSpread({ spread, truth, size, hands = true }: SpreadProps) {
  const { width, height, scale } = size;
  const [policy, ...owners] = spread.asking.options ?? [];
  const scales = policy === 'modes';
  const minors = !scales && policy !== 'majors';
  // A settler leaves scales; which chord is home was asked before.
  const homes = scales && spread.kind === 'keys';
  // The homes stand beside the circle, or under it where there is no room.
  const under = homes && width < LEAST_BESIDE * scale;
  const below = under ? 0.24 * height : 0;
  const radius = Math.min(268 * scale, (height - below) * 0.385, width * 0.36);
  const layout = layCircle(
    homes && !under ? Math.max(radius * 1.7, width * 0.34) : width / 2,
    (height - below) / 2,
    radius,
    minors,
  );
  const beside = layout.cx + 2 * radius;
  const row = under
    ? { x: 0.05 * width, y: height - 0.22 * height, width: 0.95 * width, height: 0.12 * height }
    : {
        x: beside,
        y: height * 0.34,
        width: Math.min(width - beside, 640 * scale),
        height: Math.min(90 * scale, height * 0.2),
      };
  const right = truth ? scalesOrKeys(truth.key) : undefined;
  return (
    <>
      <Circle
        layout={layout}
        said={[]}
        among={owners.length > 0 ? owners : undefined}
        {...(right ? { sounded: right } : {})}
      />
      {hands ? (
        <KeyBeads layout={layout} spread={spread} room={{ width, height: height - below }} scale={scale} />
      ) : null}
      {homes ? <Homes spread={spread} truth={truth} row={row} hands={hands} /> : null}
      <NoKey
        layout={layout}
        text={questionWords.options[spread.kind === 'settler' ? 'none-left' : scales ? 'no-scale' : 'no-key']}
        hands={hands ? (handsOnKeys(spread).get('none') ?? 0) : 0}
        right={right?.length === 0}
        scale={scale}
      />
    </>
  );
}

/** The keys or scales of an answer by its key, without a home beside them. */
export const scalesOrKeys = (key: string): readonly string[] =>
  key.split(' ').filter((id) => id !== 'none' && !HOME_IDS.includes(id));

/** Which chord was marked as home: its row, and the hands under each. */
function Homes({
  spread,
  truth,
  row,
  hands,
}: Required<Pick<SpreadProps, 'spread' | 'hands'>> & { readonly truth: SpreadProps['truth']; readonly row: Rect }) {
  const on = handsOnKeys(spread);
  const homes = HOME_IDS.slice(0, homesAsked(spread.asking));
  const right = truth ? [truth.key, ...(truth.also ?? [])].flatMap((key) => key.split(' ')) : [];
  return (
    <>
      <HomeRow {...row} homes={homes} said={[]} sounded={right} />
      {homes.map((id, at) => {
        const cell = homeCell(row, homes.length, at);
        const count = on.get(id) ?? 0;
        return hands ? (
          <text
            key={id}
            class={`spread-count${count === 0 ? ' nobody' : ''}`}
            x={cell.x + cell.width / 2}
            y={row.y + row.height * 1.7}
            font-size={0.47 * row.height}
            text-anchor="middle"
          >
            {count}
          </text>
        ) : null;
      })}
    </>
  );
}

/** Beads outward of every peg, all of one size: the size at which the fullest peg's beads stay in the picture. */
export function KeyBeads({
  layout,
  spread,
  room,
  scale,
}: {
  readonly layout: CircleLayout;
  readonly spread: WireSpread;
  readonly room: { readonly width: number; readonly height: number };
  readonly scale: number;
}) {
  const hands = handsOnKeys(spread);
  const outer = layout.majors.map((peg) => ({ peg, count: hands.get(peg.id) ?? 0 }));
  const wanted = Math.min(
    PITCH * scale,
    ...outer.map(({ peg, count }) => roomBeside(layout, peg, room) / (Math.ceil(count / 2) + 0.6)),
  );
  const many = wanted < LEAST_PITCH * scale;
  const pitch = many ? PITCH * scale : wanted;
  return (
    <>
      {outer.map(({ peg, count }) => (
        <g key={peg.id}>
          {beadsBeside(layout, peg, many ? Math.min(1, count) : count, pitch).map(([x, y]) => (
            <Bead key={`${x} ${y}`} x={x} y={y} r={0.42 * pitch} />
          ))}
          {many && count > 0 ? (
            <PegNumber layout={layout} peg={peg} share={1.165} out={2.4 * pitch} count={count} size={36 * scale} />
          ) : null}
        </g>
      ))}
      {/* The inner ring has no room for piles: one bead and its number. */}
      {layout.minors.map((peg) => {
        const count = hands.get(peg.id) ?? 0;
        return count > 0 ? (
          <PegNumber key={peg.id} layout={layout} peg={peg} share={0.36} out={0} count={count} size={34 * scale} />
        ) : null;
      })}
    </>
  );
}

function PegNumber({
  layout,
  peg,
  share,
  out,
  count,
  size,
}: {
  readonly layout: CircleLayout;
  readonly peg: Peg;
  readonly share: number;
  readonly out: number;
  readonly count: number;
  readonly size: number;
}) {
  const [x, y] = polar(layout.cx, layout.cy, layout.radius * share + out, peg.place * 30);
  return (
    <text class="spread-count" x={x} y={y + 0.35 * size} font-size={size} text-anchor="middle">
      {count}
    </text>
  );
}

/** Length from a peg's outer edge to the edge of the drawing, along its post. */
function roomBeside({ cx, cy, radius }: CircleLayout, peg: Peg, room: { width: number; height: number }): number {
  const [dx, dy] = polar(0, 0, 1, peg.place * 30);
  const reach = (direction: number, before: number, after: number): number =>
    Math.abs(direction) < 1e-6 ? Number.POSITIVE_INFINITY : direction > 0 ? after / direction : before / -direction;
  const edge = Math.min(reach(dx, cx, room.width - cx), reach(dy, cy, room.height - cy));
  return edge - radius * 1.165;
}

/** Those who said that no key owns all, in the middle of the circle; brass under the words when that is right. */
function NoKey({
  layout,
  text,
  hands,
  right,
  scale,
}: {
  readonly layout: CircleLayout;
  readonly text: string;
  readonly hands: number;
  readonly right: boolean;
  readonly scale: number;
}) {
  const size = Math.min(36 * scale, layout.inner * 0.24);
  const words = text.split(' ');
  const half = Math.ceil(words.length / 2);
  const lines = [words.slice(0, half).join(' '), words.slice(half).join(' ')];
  const { cx, cy } = layout;
  return (
    <g class={hands > 0 || right ? 'no-key' : 'no-key nobody'}>
      {lines.map((line, index) => (
        <text
          key={line}
          class="spread-label"
          x={cx}
          y={cy + (index - 0.9) * 1.2 * size}
          font-size={size}
          text-anchor="middle"
        >
          {line}
        </text>
      ))}
      {right ? <path class="line-brass g6" d={`M${cx - 2.2 * size} ${cy + 0.75 * size}h${4.4 * size}`} /> : null}
      {hands > 0 ? (
        <>
          <Bead x={cx - 0.55 * size} y={cy + 1.7 * size} r={0.3 * size} />
          <text class="spread-count" x={cx - 0.05 * size} y={cy + 2.08 * size} font-size={1.15 * size}>
            {hands}
          </text>
        </>
      ) : null}
    </g>
  );
}
