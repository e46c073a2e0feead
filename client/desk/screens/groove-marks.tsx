import { grooveWords as words } from '../../../server/protocol/words/groove-words.ts';
import { slotSounds, type Grid, type GrooveSlot } from '../../../shared-theory/groove-grid.ts';
import { Mark } from '../../shared/marks.tsx';
import { Accent, DownBow, Slash, UpBow, XHead } from '../../shared/music-marks.tsx';
import type { DrawnLane } from '../groove-draft.ts';
import { saidCount } from '../groove-layout.ts';

/** What stands in the cells of a groove's grid, drawn and said. */

/** Height of a slash by its accent, in pixels; silence is a dash. */
const HEIGHTS = { 1: 20, 2: 32, 3: 44 } as const;
const FOOT = 58;

/** A cell in words: `heavy`, `silent down`, `high strings`. */
export function saidValue(slot: GrooveSlot, lane: DrawnLane): string {
  switch (lane) {
    case 'acc':
      return words.accents[slot.accent];
    case 'strk':
      return words.strokes[slot.stroke];
    case 'zone':
      return words.zones[slot.zone].long;
    case 'tch':
      return words.touches[slot.touch].long;
  }
}

/** A whole pattern in words, by its strokes that sound. */
export function saidSlots(grid: Grid, slots: readonly GrooveSlot[]): string {
  return slots
    .flatMap((slot, place) =>
      slotSounds(slot)
        ? `${saidCount(grid, place)}: ${(['strk', 'zone', 'tch', 'acc'] as const).map((lane) => saidValue(slot, lane)).join(', ')}`
        : [],
    )
    .join('; ');
}

type CellProps = { readonly slots: readonly GrooveSlot[]; readonly place: number; readonly lane: DrawnLane };

/** What is seen of a cell. */
export function CellMark({ slots, place, lane }: CellProps) {
  const slot = slots[place];
  if (!slot) return null;
  switch (lane) {
    case 'acc':
      return <AccentMark accent={slot.accent} />;
    case 'strk':
      return <StrokeMark stroke={slot.stroke} />;
    case 'zone':
      return <span class="groove-word">{words.zones[slot.zone].short}</span>;
    case 'tch':
      return <TouchMark slots={slots} place={place} />;
  }
}

function AccentMark({ accent }: { readonly accent: GrooveSlot['accent'] }) {
  if (accent === 0)
    return (
      <Mark width={44} height={64}>
        <path d={`M14 ${FOOT - 10}h16`} class="line-string g4" />
      </Mark>
    );
  const height = HEIGHTS[accent];
  return (
    <Mark width={44} height={64}>
      {accent === 3 && <Accent x={22} y={6} size={16} />}
      <Slash x={22} y={FOOT - height / 2} height={height} />
    </Mark>
  );
}

/** Letters of the strokes without a pick, as in the grid language. */
const FINGERED: Readonly<Partial<Record<GrooveSlot['stroke'], string>>> = { thumb: 'T', fingers: 'F', pinch: 'P' };

function StrokeMark({ stroke }: { readonly stroke: GrooveSlot['stroke'] }) {
  const letter = FINGERED[stroke];
  if (letter !== undefined) return <span class="groove-letter">{letter}</span>;
  return (
    <Mark width={44} height={28}>
      {stroke === 'down' && <DownBow x={22} y={14} size={20} />}
      {stroke === 'up' && <UpBow x={22} y={14} size={20} />}
      {/* The hand passes: the sign small, in brackets. */}
      {stroke === 'down-silent' && <path d="M18 19V9H26V19" class="line-string g3" />}
      {stroke === 'up-silent' && <path d="M18 9L22 19L26 9" class="line-string g3" />}
      {(stroke === 'down-silent' || stroke === 'up-silent') && (
        <path d="M13 6Q9 14 13 22M31 6Q35 14 31 22" class="line-string g2" />
      )}
      {stroke === 'none' && <circle cx={22} cy={14} r={2.4} class="fill-string" />}
    </Mark>
  );
}

/** `P.M.` where a palm mute begins, dashes as long as it lasts, a hook at its end; other touches as an x or a word. */
function TouchMark({ slots, place }: Omit<CellProps, 'lane'>) {
  const slot = slots[place];
  if (slot && isMuted(slots, place)) {
    const begins = !isMuted(slots, place - 1);
    const ends = !isMuted(slots, place + 1);
    return (
      <span class="palm-mute">
        {begins && <span class="groove-word">{words.touches.palm.short}</span>}
        {!(begins && ends) && <span class={ends ? 'dashes end' : 'dashes'} />}
      </span>
    );
  }
  if (slot?.touch === 'dead')
    return (
      <Mark width={44} height={28}>
        <XHead x={22} y={14} size={14} />
      </Mark>
    );
  return <span class="groove-word">{slot && words.touches[slot.touch].short}</span>;
}

/** Whether a palm mute lasts over a slot: it has one, or is silent between two that have. */
function isMuted(slots: readonly GrooveSlot[], place: number): boolean {
  const slot = slots[place];
  if (!slot) return false;
  if (slotSounds(slot)) return slot.touch === 'palm';
  const before = slots.slice(0, place).findLast(slotSounds);
  const after = slots.slice(place + 1).find(slotSounds);
  return before?.touch === 'palm' && after?.touch === 'palm';
}
