import { useSignal, type Signal } from '@preact/signals';
import { grooveWords as words } from '../../../server/protocol/words/groove-words.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { GROOVES, grooveLine, withOpening, type Groove } from '../../../shared-theory/grooves.ts';
import type { Desk } from '../desk-state.ts';
import { draftOf, emptyDraft } from '../groove-draft.ts';
import { ownGrooves } from '../read-groove.ts';
import '../groove.css';
import { GrooveEditor } from './groove-editor.tsx';
import { GrooveDrawing } from './groove-grid.tsx';
import { GrooveStrip } from './groove-strip.tsx';

type Props = { readonly desk: Desk; readonly view: DeskView };

/** The grooves of the class and of the catalogue, each to be looked at, copied and played; and the one that is being drawn. */
export function GrooveLeaf({ desk, view }: Props) {
  const open = useSignal<string | null>(null);
  const saved = useSignal(false);
  const own = ownGrooves(view.settings);
  if (desk.drawing.value)
    return (
      <GrooveEditor
        desk={desk}
        view={view}
        draft={desk.drawing.value}
        onEnd={(id) => {
          desk.drawing.value = null;
          open.value = id ?? open.value;
          saved.value = id !== null;
        }}
      />
    );
  const list = (grooves: readonly Groove[], mine: boolean) => (
    <ul>
      {grooves.map((groove) => (
        <Item key={groove.id} desk={desk} groove={groove} mine={mine} open={open} />
      ))}
    </ul>
  );
  return (
    <section class="groove-leaf">
      <h1>{words.heading}</h1>
      <p class="lead">{words.lead}</p>
      <p>
        <button
          type="button"
          class="desk-button"
          onClick={() => {
            desk.drawing.value = emptyDraft(words.newName);
          }}
        >
          {words.draw}
        </button>
      </p>
      <p class="advice" role="status">
        {saved.value && words.editor.saved}
      </p>
      <h2>{words.own}</h2>
      {own.length > 0 ? list(own, true) : <p class="hint">{words.none}</p>}
      <h2>{words.known}</h2>
      {list(GROOVES, false)}
    </section>
  );
}

type ItemProps = {
  readonly desk: Desk;
  readonly groove: Groove;
  /** One of the class's own. */
  readonly mine: boolean;
  readonly open: Signal<string | null>;
};

function Item({ desk, groove, mine, open }: ItemProps) {
  const here = open.value === groove.id;
  return (
    <li class="groove-item">
      <button
        type="button"
        class="groove-line"
        aria-expanded={here}
        onClick={() => {
          open.value = here ? null : groove.id;
        }}
      >
        <span>
          <strong>{groove.name}</strong>
          <span class="groove-facts">{factsOf(groove)}</span>
        </span>
        <GrooveStrip slots={groove.slots} />
      </button>
      {here && <Details desk={desk} groove={groove} mine={mine} />}
    </li>
  );
}

function factsOf({ meter, tempo: [low, high], swing: [from, to] }: Groove): string {
  const facts = fill(words.facts, { meter, low, high });
  if (to <= 1) return facts;
  return `${facts}, ${from === to ? fill(words.swungOnce, { low: from }) : fill(words.swung, { low: from, high: to })}`;
}

function Details({ desk, groove, mine }: Omit<ItemProps, 'open'>) {
  const erasing = useSignal(false);
  const { opening } = withOpening(groove);
  const draw = (name: string, id: string | null) => {
    desk.drawing.value = draftOf({ ...groove, name }, id);
  };
  return (
    <div class="groove-details">
      <GrooveDrawing grid={groove.grid} slots={groove.slots} />
      {opening && (
        <>
          <h3>{words.first}</h3>
          <p class="hint">{opening[0]?.zone === 'all' ? words.opens : words.opensOther}</p>
          <GrooveDrawing grid={groove.grid} slots={opening} />
        </>
      )}
      <div class="kind-row">
        <button
          type="button"
          class="toggle"
          onClick={() => {
            desk.groove.value = groove.id;
            desk.show('start');
            desk.turnTo('round');
          }}
        >
          {words.choose}
        </button>
        {mine && (
          <button type="button" class="toggle" onClick={() => draw(groove.name, groove.id)}>
            {words.change}
          </button>
        )}
        <button type="button" class="toggle" onClick={() => draw(fill(words.copyName, { name: groove.name }), null)}>
          {words.copy}
        </button>
        {mine && (
          <button
            type="button"
            class="toggle"
            onClick={() => {
              if (erasing.value) void desk.wish({ type: 'EraseGroove', groove: groove.id });
              erasing.value = !erasing.value;
            }}
          >
            {erasing.value ? words.eraseSure : words.erase}
          </button>
        )}
      </div>
      <label class="field">
        <span>{words.editor.text}</span>
        <textarea
          class="groove-text"
          rows={3}
          readOnly
          value={grooveLine(groove)}
          onFocus={(event) => event.currentTarget.select()}
        />
      </label>
    </div>
  );
}
