import type { Guitar } from '../../shared-theory/crib/shapes.ts';
import { TUNINGS } from '../../shared-theory/neck/tunings.ts';
import type { TuningId } from '../../shared-theory/neck/tunings.ts';
import { POLICIES } from '../../shared-theory/truth.ts';
import type { Policy } from '../../shared-theory/truth.ts';
import { HIGHEST_CAPO } from '../protocol/messages.ts';
import { cribWords } from '../protocol/words/crib-words.ts';
import type { Html } from './html.ts';
import { html } from './html.ts';

const words = cribWords.page;

/** What a sheet is made for. */
export type Choices = {
  /** As typed, or of a round as printed. */
  readonly chords: string;
  readonly policy: Policy;
  readonly guitar: Guitar;
  readonly leftHanded: boolean;
};

/** Where a sheet stands: `path` of the sheet that is shown, null where there is none, and then what was wrong. */
type Place = { readonly room: string; readonly path: string | null; readonly wrong: string | null };

/** What stands above a sheet on the screen and is never printed: another vamp, another guitar, the other hand. Works without a script. */
export function choicesMarkup(choices: Choices, { room, path, wrong }: Place): Html {
  const { chords, policy, guitar, leftHanded } = choices;
  const capos = Array.from({ length: HIGHEST_CAPO + 1 }, (_, fret) => String(fret));
  return html`<nav class="choices" aria-label="${words.choices}">
    ${path === null ? html`<h1>${cribWords.titleAlone}</h1>` : html`<p>${words.print}</p>`}
    ${wrong === null ? null : html`<p role="alert">${wrong}</p>`}
    <form action="/desk/${room}/crib" method="get">
      <label class="wide"
        >${words.chords} <input name="chords" value="${chords}" required autocomplete="off" spellcheck="false"
      /></label>
      ${select('policy', words.policy, policy, POLICIES, (each) => cribWords.policyNames[each])}
      ${select('capo', words.capo, String(guitar.capo), capos, (each) => (each === '0' ? words.noCapo : each))}
      ${select('tuning', words.tuning, guitar.tuning, Object.keys(TUNINGS) as TuningId[], (each) => cribWords.tunings[each])}
      ${select('hand', words.hand, leftHanded ? 'left' : 'right', ['right', 'left'] as const, (each) => words[each])}
      <button>${words.show}</button>
    </form>
    <p>
      ${path === null ? null : html`<a href="${otherHand(choices, path)}">${leftHanded ? words.toRight : words.toLeft}</a> `}
      <a href="/desk/${room}">${words.desk}</a>
    </p>
  </nav>`;
}

/** The same sheet with its boxes the other way round. */
function otherHand({ chords, policy, guitar, leftHanded }: Choices, path: string): string {
  const typed = path.endsWith('/crib');
  const query = new URLSearchParams({
    ...(typed ? { chords, policy } : {}),
    capo: String(guitar.capo),
    tuning: guitar.tuning,
    hand: leftHanded ? 'right' : 'left',
  });
  return `${path}?${query.toString()}`;
}

function select<T extends string>(
  name: string,
  label: string,
  chosen: T,
  options: readonly T[],
  said: (option: T) => string,
): Html {
  return html`<label
    >${label}
    <select name="${name}">
      ${options.map((option) => html`<option value="${option}" ${option === chosen ? html`selected` : null}>${said(option)}</option>`)}
    </select></label
  >`;
}
