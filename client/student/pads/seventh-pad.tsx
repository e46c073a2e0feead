import { seventhAnswers, seventhSays, seventhSpoken } from '../../../server/protocol/words/asked/seventh.ts';
import { printChord } from '../../../shared-theory/printer.ts';
import { useBox } from '../../shared/box.ts';
import type { AskedSeventh } from '../../../shared-theory/questions/question.ts';
import { ASKED_SEVENTHS } from '../../../shared-theory/questions/seventh/ask.ts';
import { SeventhCell } from '../../shared/drawings/sevenths.tsx';
import { seventhSymbol } from '../../shared/seventh-symbol.ts';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

export const spoken = { seventh: seventhSpoken };
export const said: PadModule<AskedSeventh>['said'] = ({ letter }, seventh) => {
  const symbol = seventhSymbol(letter, seventh);
  return symbol ? printChord(symbol).text : seventhAnswers[seventh];
};

/** Three rows: a chord without a seventh, with the leaning one, with the soft one. */
export function Pad(props: PadProps<AskedSeventh>) {
  const [ref, { width, height }] = useBox({ width: 328, height: 420 });
  const row = height / ASKED_SEVENTHS.length;
  return (
    <div class="rows" ref={ref}>
      {ASKED_SEVENTHS.map((seventh) => {
        const isSaid = props.chosen === seventh;
        const symbol = seventhSymbol(props.asking.letter, seventh);
        const word = seventhSays[seventh];
        return (
          <Choice
            key={seventh}
            class="row"
            label={symbol ? printChord(symbol).spoken : seventhAnswers[seventh]}
            pressed={isSaid}
            closed={props.closed}
            onTap={() => props.onChoose(isSaid ? null : seventh)}
          >
            <svg width={width} height={row} viewBox={`0 0 ${width} ${row}`} aria-hidden="true">
              <SeventhCell
                seventh={seventh}
                symbol={symbol}
                word={word}
                x={4}
                y={row / 2}
                width={width - 8}
                height={row}
                said={isSaid}
                sounded={props.truth?.answer === seventh}
              />
              {isSaid && (
                <Ring
                  x={width * 0.64}
                  y={row / 2}
                  rx={Math.min(width * 0.3, 150)}
                  ry={Math.min(row * 0.4, 62)}
                  dashed={props.dashed}
                />
              )}
            </svg>
          </Choice>
        );
      })}
    </div>
  );
}
