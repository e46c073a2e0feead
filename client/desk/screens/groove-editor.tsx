import { useSignal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { grooveWords } from '../../../server/protocol/words/groove-words.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { slotSounds, TEMPO_LIMITS } from '../../../shared-theory/groove-grid.ts';
import { GrooveError } from '../../../shared-theory/groove-text.ts';
import { GROOVES } from '../../../shared-theory/grooves.ts';
import type { Desk } from '../desk-state.ts';
import {
  draftLine,
  draftOf,
  pressed,
  slotsOf,
  typedOn,
  withOwnOpening,
  withPush,
  type Cell,
  type GrooveDraft,
  type Side,
} from '../groove-draft.ts';
import { saidCount } from '../groove-layout.ts';
import { ownGrooveIds } from '../own-grooves.ts';
import { faultyCell, readGroove } from '../read-groove.ts';
import { GrooveEditGrid } from './groove-grid.tsx';
import { NameFields, TempoFields } from './groove-fields.tsx';

const words = grooveWords.editor;

type Props = {
  readonly desk: Desk;
  readonly view: DeskView;
  readonly draft: GrooveDraft;
  /** The drawing is over: saved under this id, or null where it was given up. */
  readonly onEnd: (saved: string | null) => void;
};

/** A groove under the pencil: its name, grid and tempo, each slot to be pressed, and the same as one line of text. */
export function GrooveEditor({ desk, view, draft, onEnd }: Props) {
  const own = ownGrooveIds(view.settings);
  const taken = new Set(view.grooves.map(({ id }) => id).filter((id) => id !== draft.id));
  const line = draftLine(draft, taken);
  /** The line as it is being typed, and what is wrong with it. */
  const typed = useSignal<{ readonly text: string; readonly fault: GrooveError | null } | null>(null);
  const first = useRef(line);
  const leaving = useSignal(false);
  const fault = typed.value?.fault ?? null;
  // A slot of another grid has no place on this one.
  const cell = fault && typed.value?.text.includes(`| ${draft.grid} |`) ? faultyCell(fault) : null;
  const unready = fault ? null : unreadyOf(draft, line);
  const set = (changed: GrooveDraft) => {
    desk.drawing.value = changed;
    typed.value = null;
    leaving.value = false;
  };
  const read = (text: string) => {
    const groove = readGroove(text);
    if (groove instanceof GrooveError) {
      typed.value = { text, fault: groove };
      return;
    }
    // A line of the class's own goes back into its place, one of the catalogue's becomes another.
    const known = GROOVES.some(({ id }) => id === groove.id);
    desk.drawing.value = draftOf(groove, known ? null : groove.id);
    typed.value = { text, fault: null };
  };
  const save = async () => {
    const reply = await desk.wish({ type: 'SaveGroove', text: line });
    if (reply?.ok) onEnd((reply.value as { readonly groove?: string } | undefined)?.groove ?? '');
  };
  const replaced = draft.id !== null && own.has(draft.id) ? view.grooves.find(({ id }) => id === draft.id) : undefined;
  return (
    <section class="groove-leaf groove-editor">
      <p>
        <button
          type="button"
          class="desk-link"
          onClick={() => {
            if (leaving.value || line === first.current) onEnd(null);
            else leaving.value = true;
          }}
        >
          {leaving.value ? words.backSure : words.back}
        </button>
      </p>
      <h1>{replaced ? words.title : words.new}</h1>
      <NameFields draft={draft} onChange={set} />
      <p class="hint">{words.how}</p>
      <EditSide draft={draft} side="pattern" fault={cell} onChange={set} />
      {draft.opening ? (
        <>
          <h2>{grooveWords.first}</h2>
          <EditSide draft={draft} side="opening" fault={cell} onChange={set} />
          <button type="button" class="desk-link" onClick={() => set({ ...draft, opening: null })}>
            {words.dropOpening}
          </button>
        </>
      ) : (
        <button type="button" class="desk-link" onClick={() => set(withOwnOpening(draft))}>
          {words.addOpening}
        </button>
      )}
      <TempoFields draft={draft} onChange={set} />
      <TextLine
        text={typed.value?.text ?? line}
        fault={fault && faultSentence(draft, fault, cell)}
        onText={read}
        onLeave={() => {
          // A line that can be read stands as the drawing has it; one that cannot waits to be mended.
          if (fault === null) typed.value = null;
        }}
      />
      {unready && <p class="advice">{unready}</p>}
      {replaced && <p class="hint">{fill(words.replaces, { name: replaced.name })}</p>}
      <p>
        <button
          type="button"
          class="desk-button primary"
          disabled={desk.busy.value || fault !== null || unready !== null}
          onClick={() => void save()}
        >
          {words.save}
        </button>
      </p>
    </section>
  );
}

/** Why a drawing cannot be saved yet; null where it can. */
function unreadyOf(draft: GrooveDraft, line: string): string | null {
  if (draft.name.trim() === '') return grooveWords.faults.nameEmpty;
  if (!slotsOf(draft.grid, draft.pattern).some(slotSounds)) return grooveWords.faults.silent;
  const [slowest, fastest] = [Number(draft.slowest), Number(draft.fastest)];
  const [low, high] = TEMPO_LIMITS;
  if (!(slowest >= low && slowest <= fastest && fastest <= high)) return fill(grooveWords.faults.tempo, { low, high });
  const groove = readGroove(line);
  return groove instanceof GrooveError ? groove.message : null;
}

type SideProps = {
  readonly draft: GrooveDraft;
  readonly side: Side;
  /** The cell at fault in a line that could not be read. */
  readonly fault: Cell | null;
  readonly onChange: (draft: GrooveDraft) => void;
};

function EditSide({ draft, side, fault, onChange }: SideProps) {
  const drawn = draft[side];
  if (!drawn) return null;
  const { grid } = draft;
  const several = drawn.pushes.length > 1;
  return (
    <>
      <GrooveEditGrid
        grid={grid}
        slots={slotsOf(grid, drawn)}
        side={side}
        label={side === 'pattern' ? words.pattern : grooveWords.first}
        fault={fault?.side === side ? fault : null}
        onPress={(at) => onChange(pressed(draft, at))}
        onType={(at, sign) => {
          const changed = typedOn(draft, at, sign);
          if (changed) onChange(changed);
          return changed !== null;
        }}
      />
      <div class="choice-row">
        {drawn.pushes.map((push, bar) => (
          <label key={bar}>
            <input
              type="checkbox"
              checked={push}
              onChange={(event) => onChange(withPush(draft, side, bar, event.currentTarget.checked))}
            />
            {several ? fill(grooveWords.pushBar, { bar: bar + 1 }) : grooveWords.push}
          </label>
        ))}
      </div>
    </>
  );
}

/** What is wrong with a line, and where it is ringed. */
function faultSentence(draft: GrooveDraft, fault: GrooveError, cell: Cell | null): string {
  const place = cell && {
    lane: grooveWords.lanes[cell.lane],
    count: saidCount(draft.grid, cell.slot),
  };
  return [fill(words.fault, { fault: fault.message }), place && fill(words.faultAt, place)].filter(Boolean).join(' ');
}

type TextProps = {
  readonly text: string;
  readonly fault: string | null;
  readonly onText: (text: string) => void;
  readonly onLeave: () => void;
};

/** The drawing as one line: to be copied, to be pasted over, to be changed. */
function TextLine({ text, fault, onText, onLeave }: TextProps) {
  const field = useRef<HTMLTextAreaElement>(null);
  const selected = useSignal(false);
  return (
    <>
      <label class="field">
        <span>{words.text}</span>
        <textarea
          ref={field}
          class="groove-text"
          name="groove-line"
          rows={4}
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          aria-invalid={fault !== null}
          aria-describedby="groove-text-note"
          value={text}
          onInput={(event) => {
            selected.value = false;
            onText(event.currentTarget.value);
          }}
          onBlur={onLeave}
        />
      </label>
      <div id="groove-text-note">
        <p class="hint">{words.textNote}</p>
        <p class="advice" role="alert">
          {fault}
        </p>
      </div>
      <p>
        <button
          type="button"
          class="desk-link"
          onClick={() => {
            field.current?.focus();
            field.current?.select();
            selected.value = true;
          }}
        >
          {words.select}
        </button>{' '}
        <span role="status">{selected.value && words.selected}</span>
      </p>
    </>
  );
}
