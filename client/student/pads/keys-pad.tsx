import {
  homeWords,
  keysAnswers,
  keysSpoken,
  noKeyLines,
  settlerSpoken,
} from '../../../server/protocol/words/asked/keys.ts';
import { figureOrdinal } from '../../../server/protocol/words/ordinals.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { printKey } from '../../shared/names.ts';
import type { KeyId } from '../../../shared-theory/questions/question.ts';
import { HOME_IDS, KEY_IDS } from '../../../shared-theory/questions/keys/ask.ts';
import { useBox } from '../../shared/box.ts';
import { homesAsked } from '../../shared/homes-asked.ts';
import { keyName, layCircle, polar } from '../../shared/drawings/circle-layout.ts';
import type { Rect } from '../../shared/drawings/neck-layout.ts';
import type { Point } from '../../shared/pencil.ts';
import { Circle } from '../../shared/drawings/circle.tsx';
import { homeCell, HomeRow } from '../../shared/drawings/home-row.tsx';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

export const spoken = { keys: keysSpoken, settler: settlerSpoken };

/** Names in a row: `G major, E minor`; a home behind them. */
export const said: PadModule<readonly KeyId[]>['said'] = ({ kind }, ids) => {
  if (ids.length === 0) return keysAnswers[kind === 'settler' ? 'none-left' : 'no-key'];
  return ids.map((id) => (isHome(id) ? homeName(id) : printKey(keyName(id)).text)).join(', ');
};

const isHome = (id: KeyId): boolean => HOME_IDS.includes(id);
const homeName = (id: KeyId): string => fill(homeWords.is, { which: figureOrdinal(HOME_IDS.indexOf(id)) });

/** In the order of the list, so that two ways to one answer are one answer. */
const ALL_IDS = [...KEY_IDS, ...HOME_IDS];
/** Height of the row of homes: a thumb's, and a little air. */
const HOMES = 54;

/**
 * The circle of fifths: several keys may be marked; the middle says that no key owns all. Once the owners of the loop have been
 * shown, a settler leaves some of them: only those can be marked. Where scales are asked for, one chord of the loop may be marked
 * as home below.
 */
export function Pad(props: PadProps<readonly KeyId[]>) {
  const [ref, box] = useBox({ width: 344, height: 420 });
  const [policy, ...owners] = props.asking.options ?? [];
  const { truth } = props;
  const scales = policy === 'modes';
  const minors = !scales && policy !== 'majors';
  const among = owners.length > 0 ? owners : undefined;
  const settles = props.asking.kind === 'settler';
  const homes = scales && !settles ? HOME_IDS.slice(0, homesAsked(props.asking)) : [];
  const width = box.width;
  const height = box.height - (homes.length > 0 ? HOMES + 6 : 0);
  // Once shown, a bead stands outside of each key that was marked.
  const radius = Math.min(width / 2, height / 2 - 1, 250) / (truth ? 1.32 : 1.17);
  const [cx, cy] = [width / 2, height / 2];
  const layout = layCircle(cx, cy, radius, minors);
  const row = { x: 0, y: height + 4, width, height: HOMES };
  const marked = props.chosen ?? [];
  const right = (truth?.answer as readonly KeyId[] | undefined)?.filter((id) => !isHome(id));
  const rightHomes = truth ? [truth.key, ...(truth.also ?? [])].flatMap((key) => key.split(' ')) : [];
  const none = props.chosen !== null && marked.length === 0;
  const size = Math.min(layout.inner * 0.25, 20);
  const toggle = (id: KeyId): void => {
    // Of homes there is one.
    const others = marked.filter((other) => other !== id && !(isHome(id) && isHome(other)));
    const next = marked.includes(id) ? others : [...others, id];
    props.onChoose(next.length > 0 ? ALL_IDS.filter((known) => next.includes(known)) : null);
  };
  return (
    <div class="fill" ref={ref}>
      <svg class="under" width={width} height={box.height} viewBox={`0 0 ${width} ${box.height}`} aria-hidden="true">
        <Circle layout={layout} said={marked} among={among} {...(right && { sounded: right })}>
          {noKeyLines[settles ? 'left' : scales ? 'ownsScale' : 'owns'].map((line, index) => (
            <text
              key={line}
              x={cx}
              y={cy + size * (index === 0 ? -0.28 : 0.92)}
              font-size={size}
              text-anchor="middle"
              class={none ? 'serif' : 'serif fill-ink2'}
            >
              {line}
            </text>
          ))}
          {truth &&
            [...layout.majors, ...layout.minors]
              .filter(({ id }) => marked.includes(id))
              .map((peg) => {
                const [x, y] = polar(cx, cy, radius * (peg.id.endsWith('m') ? 0.5 : 1.25), peg.place * 30);
                return (
                  <circle
                    key={peg.id}
                    cx={x}
                    cy={y}
                    r={radius * (peg.id.endsWith('m') ? 0.032 : 0.05)}
                    class="fill-ink"
                  />
                );
              })}
          {right?.length === 0 && <circle cx={cx} cy={cy} r={layout.inner * 0.86} class="line-brass g6" />}
          {none && <Ring x={cx} y={cy} rx={layout.inner * 0.74} ry={layout.inner * 0.5} dashed={props.dashed} />}
        </Circle>
        {homes.length > 0 && <HomeRow {...row} homes={homes} said={marked} sounded={rightHomes} />}
      </svg>
      {[...layout.majors, ...layout.minors].map(({ id, at }) => {
        if (among && !among.includes(id)) return null;
        const minor = id.endsWith('m');
        // Circles that just touch their neighbours: no thumb can hit two.
        const reach = minor ? Math.min(0.169 * radius, 26) : Math.min((minors ? 0.176 : 0.258) * radius, 44);
        return (
          <Choice
            key={id}
            class="peg"
            label={printKey(keyName(id)).spoken}
            pressed={marked.includes(id)}
            closed={props.closed}
            at={square(at, reach, width, height)}
            onTap={() => toggle(id)}
          />
        );
      })}
      <Choice
        class="peg"
        label={keysAnswers[settles ? 'none-left' : 'no-key']}
        pressed={none}
        closed={props.closed}
        at={{ x: cx - layout.inner, y: cy - layout.inner, width: 2 * layout.inner, height: 2 * layout.inner }}
        onTap={() => props.onChoose(none ? null : [])}
      />
      {homes.map((id, at) => (
        <Choice
          key={id}
          label={homeName(id)}
          pressed={marked.includes(id)}
          closed={props.closed}
          at={homeCell(row, homes.length, at)}
          onTap={() => toggle(id)}
        />
      ))}
    </div>
  );
}

/** A square round a point, cut at the pad's edges. */
function square([x, y]: Point, reach: number, width: number, height: number): Rect {
  const [left, top] = [Math.max(0, x - reach), Math.max(0, y - reach)];
  return { x: left, y: top, width: Math.min(width, x + reach) - left, height: Math.min(height, y + reach) - top };
}
