import { qualityAnswers, qualitySpoken } from '../../../server/protocol/words/asked/quality.ts';
import type { Quality } from '../../../shared-theory/chords.ts';
import { printChord } from '../../shared/names.ts';
import { qualitySuffix } from '../../../shared-theory/chords.ts';
import { useBox } from '../../shared/box.ts';
import { letterCells } from '../../shared/drawings/letter-cells.ts';
import { Letters } from '../../shared/drawings/letters.tsx';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

export const spoken = { quality: qualitySpoken };
export const said: PadModule<Quality>['said'] = ({ letter }, quality) =>
  letter ? printChord(letter + qualitySuffix(quality)).text : qualityAnswers[quality];

/** Chord letters in two columns; the letter itself only once the root of this chord has been shown. */
export function Pad(props: PadProps<Quality>) {
  const [ref, { width, height }] = useBox({ width: 328, height: 444 });
  const qualities = (props.asking.options ?? []) as readonly Quality[];
  const cells = letterCells(qualities.length, width, height);
  const { letter } = props.asking;
  const first = cells[0];
  const size = first ? Math.min(46, first.height * 0.4, first.width * 0.28) : 46;
  const at = qualities.findIndex((quality) => quality === props.chosen);
  const chosen = cells[at];
  return (
    <div class="fill" ref={ref}>
      <svg class="under" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <Letters
          cells={cells}
          qualities={qualities}
          letter={letter}
          words={qualityAnswers}
          size={size}
          said={props.chosen}
          sounded={props.truth?.answer as Quality | undefined}
        >
          {chosen && (
            <Ring
              key={props.chosen}
              x={chosen.x + chosen.width / 2}
              y={chosen.y + chosen.height / 2}
              rx={Math.min(chosen.width * 0.4, size * 1.6)}
              ry={Math.min(chosen.height * 0.38, size * 1.05)}
              dashed={props.dashed}
            />
          )}
        </Letters>
      </svg>
      {qualities.map((quality, index) => {
        const cell = cells[index];
        const label = letter ? printChord(letter + qualitySuffix(quality)).spoken : qualityAnswers[quality];
        return (
          cell && (
            <Choice
              key={quality}
              label={label}
              pressed={props.chosen === quality}
              closed={props.closed}
              at={cell}
              onTap={() => props.onChoose(props.chosen === quality ? null : quality)}
            />
          )
        );
      })}
    </div>
  );
}
