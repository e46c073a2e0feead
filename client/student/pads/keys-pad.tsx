import { questionWords } from '../../../server/protocol/words/question-words.ts';
import { studentWords } from '../../../server/protocol/words/student.ts';
import { printKey } from '../../../shared-theory/printer.ts';
import type { KeyId } from '../../../shared-theory/questions/question.ts';
import { KEY_IDS } from '../../../shared-theory/questions/keys/ask.ts';
import { useBox } from '../../shared/box.ts';
import { keyName, layCircle, polar } from '../../shared/drawings/circle-layout.ts';
import type { Rect } from '../../shared/drawings/neck-layout.ts';
import type { Point } from '../../shared/pencil.ts';
import { Circle } from '../../shared/drawings/circle.tsx';
import { Choice } from './choice.tsx';
import type { PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

/**
 * The circle of fifths: several keys may be marked; the middle says that no key owns all. Once the owners of the loop have been
 * shown, a settler leaves some of them: only those can be marked.
 */
export function Pad(props: PadProps<readonly KeyId[]>) {
  const [ref, { width, height }] = useBox({ width: 344, height: 420 });
  const [policy, ...owners] = props.asking.options ?? [];
  const minors = policy === 'relatives';
  const among = owners.length > 0 ? owners : undefined;
  const settles = props.asking.kind === 'settler';
  // Once shown, a bead stands outside of each key that was marked.
  const radius = Math.min(width / 2, height / 2 - 1, 250) / (props.truth ? 1.32 : 1.17);
  const [cx, cy] = [width / 2, height / 2];
  const layout = layCircle(cx, cy, radius, minors);
  const said = props.chosen ?? [];
  const right = props.truth?.answer as readonly KeyId[] | undefined;
  const none = props.chosen !== null && said.length === 0;
  const size = Math.min(layout.inner * 0.25, 20);
  const toggle = (id: KeyId): void => {
    const next = said.includes(id) ? said.filter((other) => other !== id) : [...said, id];
    // In the order of the list, so that two ways to one answer are one answer.
    props.onChoose(next.length > 0 ? KEY_IDS.filter((known) => next.includes(known)) : null);
  };
  return (
    <div class="fill" ref={ref}>
      <svg class="under" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <Circle layout={layout} said={said} among={among} {...(right && { sounded: right })}>
          {studentWords[settles ? 'noKeyLeft' : 'noKey'].map((line, index) => (
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
          {props.truth &&
            [...layout.majors, ...layout.minors]
              .filter(({ id }) => said.includes(id))
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
            pressed={said.includes(id)}
            closed={props.closed}
            at={square(at, reach, width, height)}
            onTap={() => toggle(id)}
          />
        );
      })}
      <Choice
        class="peg"
        label={questionWords.options[settles ? 'none-left' : 'none']}
        pressed={none}
        closed={props.closed}
        at={{ x: cx - layout.inner, y: cy - layout.inner, width: 2 * layout.inner, height: 2 * layout.inner }}
        onTap={() => props.onChoose(none ? null : [])}
      />
    </div>
  );
}

/** A square round a point, cut at the pad's edges. */
function square([x, y]: Point, reach: number, width: number, height: number): Rect {
  const [left, top] = [Math.max(0, x - reach), Math.max(0, y - reach)];
  return { x: left, y: top, width: Math.min(width, x + reach) - left, height: Math.min(height, y + reach) - top };
}
