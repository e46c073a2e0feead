import { seventhAnswers, seventhSpoken } from '../../../server/protocol/words/asked/seventh.ts';
import { printChord } from '../../shared/names.ts';
import { useBox } from '../../shared/box.ts';
import type { AskedSeventh } from '../../../shared-theory/questions/question.ts';
import { ASKED_SEVENTHS } from '../../../shared-theory/questions/seventh/ask.ts';
import { SeventhCell, seventhWriting } from '../../shared/drawings/sevenths.tsx';
import { seventhSymbols } from '../../shared/seventh-symbol.ts';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

export const spoken = { seventh: seventhSpoken };
export const said: PadModule<AskedSeventh>['said'] = ({ letter }, seventh) => {
  const symbols = seventhSymbols(letter);
  return symbols ? printChord(symbols[seventh]).text : seventhAnswers[seventh];
};

/** Three rows: a chord without a seventh, with the leaning one, with the soft one. */
export function Pad(props: PadProps<AskedSeventh>) {
  const [ref, { width, height }] = useBox({ width: 328, height: 420 });
  const row = height / ASKED_SEVENTHS.length;
  const symbols = seventhSymbols(props.asking.letter);
  const cell = { x: 4, y: row / 2, width: width - 8, height: row };
  const writing = seventhWriting(cell, symbols);
  return (
    <div class="rows" ref={ref}>
      {ASKED_SEVENTHS.map((seventh) => {
        const isSaid = props.chosen === seventh;
        return (
          <Choice
            key={seventh}
            class="row"
            label={symbols ? printChord(symbols[seventh]).spoken : seventhAnswers[seventh]}
            pressed={isSaid}
            closed={props.closed}
            onTap={() => props.onChoose(isSaid ? null : seventh)}
          >
            <svg width={width} height={row} viewBox={`0 0 ${width} ${row}`} aria-hidden="true">
              <SeventhCell
                {...cell}
                seventh={seventh}
                symbols={symbols}
                said={isSaid}
                sounded={props.truth?.answer === seventh}
              >
                {isSaid && (
                  <Ring
                    x={writing.x + writing.width / 2}
                    y={row / 2}
                    rx={writing.width / 2 + 16}
                    ry={Math.min(row * 0.4, writing.size * 1.3)}
                    dashed={props.dashed}
                  />
                )}
              </SeventhCell>
            </svg>
          </Choice>
        );
      })}
    </div>
  );
}
