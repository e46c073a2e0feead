import { useState } from 'preact/hooks';
import { fill } from '../../../server/protocol/words/fill.ts';
import { numeralAnswers, numeralSpoken } from '../../../server/protocol/words/asked/numeral.ts';
import { qualityAnswers } from '../../../server/protocol/words/asked/quality.ts';
import { ordinal } from '../../../server/protocol/words/ordinals.ts';
import { printNumeral } from '../../../shared-theory/printer.ts';
import { MOST_NUMERALS } from '../../../shared-theory/questions/numeral/ask.ts';
import { useBox } from '../../shared/box.ts';
import { NumeralBars } from '../../shared/drawings/numeral-bars.tsx';
import { numeralsText, rightReadings } from '../../shared/right-readings.ts';
import { Choice } from './choice.tsx';
import { DEGREES, FORMS, SIGNS, nextEmpty, numeralOf, partsOf, withBar } from './numeral-parts.ts';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

export const spoken = { numeral: numeralSpoken };
export const said: PadModule<readonly string[]>['said'] = (_asking, numerals) => numeralsText(numerals);

/** Bars of the loop to write in, and what is written: a degree, then its form. An unfinished answer holds `''` for an empty bar. */
export function Pad(props: PadProps<readonly string[]>) {
  const { asking, chosen, closed, truth } = props;
  const [ref, { width, height }] = useBox({ width: 328, height: 180 });
  const count = asking.loop === 'one' ? 1 : asking.loop === 'two' ? 2 : MOST_NUMERALS;
  const [{ bar: active, fresh }, turn] = useState({ bar: 0, fresh: false });
  const said = chosen ?? [];
  const bar = width / count;
  const now = partsOf(said[active] ?? '');
  const write = (numeral: string, at = active): void => {
    props.onChoose(withBar(said, at, numeral));
    turn({ bar: at, fresh: numeral !== '' });
  };
  /** A degree begins a numeral: in the next empty bar, where the one that was written last has its own. The same again empties it. */
  const begin = (degree: number): void => {
    if (now?.degree === degree) return write('');
    const next = fresh && now ? nextEmpty(said, active, count) : null;
    const { sign, form } = next === null && now ? now : ({ sign: '', form: 'major' } as const);
    write(numeralOf({ sign, form, degree }), next ?? active);
  };
  const key = said.join(' ');
  const isRight = truth !== undefined && [truth.key, ...(truth.also ?? [])].includes(key);
  const rows = truth ? rightReadings(truth).filter((reading) => reading.join(' ') !== key) : [];
  const own = Math.min(height / (rows.length + 1), 150);
  const row = Math.min((height - own) / Math.max(1, rows.length), 84);
  // Low, over the keys, while there are keys.
  const top = truth ? 0 : height - own;
  return (
    <>
      <div class="fill" ref={ref}>
        <svg class="under" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
          <NumeralBars
            bars={count}
            numerals={said}
            width={width}
            y={top + own / 2}
            height={own * 0.62}
            heavy={closed ? null : active}
            sounded={isRight}
          >
            {props.dashed &&
              said.map(
                (numeral, at) =>
                  numeral !== '' && (
                    <Ring key={at} x={bar * (at + 0.5)} y={top + own / 2} rx={bar * 0.3} ry={own * 0.24} dashed />
                  ),
              )}
          </NumeralBars>
          {rows.map((reading, index) => (
            <NumeralBars
              key={reading.join(' ')}
              bars={count}
              numerals={reading}
              width={width}
              y={own + row * (index + 0.5)}
              height={row * 0.62}
              heavy={null}
              sounded
            />
          ))}
        </svg>
        {Array.from({ length: count }, (_, at) => (
          <Choice
            key={at}
            label={fill(numeralAnswers.bar, {
              which: ordinal(at),
              numeral: said[at] ? printNumeral(said[at]).spoken : numeralAnswers.empty,
            })}
            pressed={active === at}
            closed={closed}
            at={{ x: bar * at, y: top, width: bar, height: own }}
            onTap={() => turn({ bar: at, fresh: false })}
          />
        ))}
      </div>
      {!truth && (
        <>
          <div class="keys-row">
            {DEGREES.map((roman, degree) => (
              <Choice
                key={roman}
                class="key numeral"
                label={printNumeral(roman).spoken}
                pressed={now?.degree === degree}
                closed={closed}
                onTap={() => begin(degree)}
              >
                {roman}
              </Choice>
            ))}
          </div>
          <div class="keys-row">
            {SIGNS.map(({ sign, print, name }) => (
              <Choice
                key={sign}
                class="key numeral"
                label={numeralAnswers[name]}
                pressed={now?.sign === sign}
                closed={closed || !now}
                onTap={() => now && write(numeralOf({ ...now, sign: now.sign === sign ? '' : sign }))}
              >
                {print}
              </Choice>
            ))}
            {FORMS.map((form) => (
              <Choice
                key={form}
                class="key numeral"
                label={qualityAnswers[form]}
                pressed={now?.form === form}
                closed={closed || !now}
                onTap={() => now && write(numeralOf({ ...now, form }))}
              >
                {printNumeral(numeralOf({ sign: '', degree: now?.degree ?? 0, form })).text}
              </Choice>
            ))}
          </div>
        </>
      )}
    </>
  );
}
