import { homeAnswers, homeSpoken } from '../../../server/protocol/words/asked/home.ts';
import { ordinal } from '../../../server/protocol/words/ordinals.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { useBox } from '../../shared/box.ts';
import { homesAsked } from '../../shared/homes-asked.ts';
import { letterCells } from '../../shared/drawings/letter-cells.ts';
import { Stop } from '../../shared/drawings/stop.tsx';
import { Choice } from './choice.tsx';
import type { PadModule, PadProps } from './pad.ts';
import { Ring } from './ring.tsx';

const nameOf = (chord: number): string => fill(homeAnswers.chord, { which: ordinal(chord) });

export const spoken = { home: homeSpoken };
export const said: PadModule<number>['said'] = (_asking, chord) => nameOf(chord);

/** One cell for each different chord, in the order in which they first sound. */
export function Pad({ asking, chosen, closed, dashed, onChoose }: PadProps<number>) {
  const [ref, { width, height }] = useBox({ width: 328, height: 420 });
  const chords = homesAsked(asking);
  const rows = Math.ceil(chords / 2);
  const cells = letterCells(chords, width, Math.min(height, rows * 230));
  const top = height - Math.min(height, rows * 230);
  return (
    <div class="fill" ref={ref}>
      <svg class="under" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <path d={`M${width / 2} ${top}V${height}`} class="line-ink g3" />
        {rows > 1 && <path d={`M0 ${(top + height) / 2}H${width}`} class="line-string g1" />}
        {cells.map((cell, chord) => {
          const isSaid = chosen === chord;
          const [x, y] = [cell.x + cell.width / 2, top + cell.y + cell.height / 2];
          const word = Math.min(22, cell.height * 0.16, cell.width * 0.13);
          const mark = { width: Math.min(cell.width * 0.56, 170), height: Math.min(cell.height * 0.5, 110) };
          const low = y + mark.height / 2 + word * 1.1;
          return (
            <g key={chord}>
              <Stop x={x} y={y - word} {...mark} said={isSaid} />
              <text x={x} y={low + word * 0.3} font-size={word} text-anchor="middle" class="serif">
                {nameOf(chord)}
              </text>
              {isSaid && (
                <Ring
                  x={x}
                  y={low}
                  rx={Math.min(cell.width * 0.46, word * (0.27 * nameOf(chord).length + 0.9))}
                  ry={word}
                  dashed={dashed}
                />
              )}
            </g>
          );
        })}
      </svg>
      {cells.map((cell, chord) => (
        <Choice
          key={chord}
          label={nameOf(chord)}
          pressed={chosen === chord}
          closed={closed}
          at={{ ...cell, y: top + cell.y }}
          onTap={() => onChoose(chosen === chord ? null : chord)}
        />
      ))}
    </div>
  );
}
