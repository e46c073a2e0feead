import { hostWords, questionWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { chordSymbol } from '../../../shared-theory/chords.ts';
import { printNote } from '../../shared/names.ts';
import { ChordText } from '../../shared/chord-text.tsx';
import type { ShownFact } from '../shown-facts.ts';
import type { StaveLayout } from '../stave-layout.ts';

/** Narrower slots take smaller words. */
const ROOMY = 300;

/** Words in the brackets: the slot's place, and what has been shown of its chord. */
export function SlotLabels({
  layout,
  facts,
  brackets,
  homeAsked,
}: {
  readonly layout: StaveLayout;
  readonly facts: readonly (ShownFact | null)[];
  readonly brackets: boolean;
  /** Which chord is home is what is asked now: none is called so. */
  readonly homeAsked: boolean;
}) {
  return (
    <>
      {layout.slots.map((slot, index) => {
        const fact = facts[index] ?? null;
        if (!brackets && !fact) return null;
        const narrow = slot.width < ROOMY;
        return (
          <p
            key={slot.x}
            class={narrow ? 'slot-label narrow' : 'slot-label'}
            style={{ left: `${slot.x / 16}rem`, width: `${slot.width / 16}rem` }}
          >
            {/* Where both do not fit, what has been shown says more than the place. */}
            {brackets && !(narrow && fact) ? <span class="slot-place">{slotName(index, homeAsked)}</span> : null}
            {fact ? <Fact fact={fact} /> : null}
          </p>
        );
      })}
    </>
  );
}

function slotName(slot: number, homeAsked: boolean): string {
  return slot === 0 && !homeAsked ? hostWords.round.home : (questionWords.ordinals[slot] ?? '');
}

function Fact({ fact }: { readonly fact: ShownFact }) {
  switch (fact.kind) {
    case 'chord':
      return <ChordText symbol={chordSymbol(fact.chord)} />;
    case 'quality':
      return <span class="slot-fact">{questionWords.options[fact.quality]}</span>;
    case 'root':
      return <span class="slot-fact">{fill(hostWords.round.root, { note: printNote(fact.root).text })}</span>;
  }
}
