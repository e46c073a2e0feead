import { deskWords, errorKinds } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import type { DeskView, WireCommonError } from '../../../server/protocol/views.ts';
import { PluckedString } from '../../shared/finding-marks.tsx';
import type { Desk } from '../desk-state.ts';
import { PlayBoth } from './play-both.tsx';

const words = deskWords.findings;

/** Width of the string and room around it, in drawing units. */
const STRING = 300;
const AROUND = 14;

type Props = { readonly desk: Desk; readonly view: DeskView };

/** What the class mishears, as the lesson goes: each with a sentence to say, a thing to play, how often, and both to hear. */
export function Findings({ desk, view }: Props) {
  return (
    <section class="findings">
      <h2>{words.heading}</h2>
      {view.common.length === 0 && <p class="hint">{words.none}</p>}
      <ul>
        {view.common.map((found) => (
          <Finding key={found.error} desk={desk} view={view} found={found} />
        ))}
      </ul>
    </section>
  );
}

function Finding({ desk, view, found }: Props & { readonly found: WireCommonError }) {
  const kind = errorKinds[found.error];
  if (!kind) return null;
  const { times, chances } = found;
  return (
    <li>
      <h3>{kind.finding}</h3>
      <p class="say">“{kind.say}”</p>
      <p>{kind.play}</p>
      <p class="hint">{fill(words.counted, { times, chances })}</p>
      <svg
        class="finding-string"
        aria-hidden="true"
        width={(STRING + 2 * AROUND) * 0.7}
        height={88 * 0.7}
        viewBox={`${-AROUND} -50 ${STRING + 2 * AROUND} 88`}
      >
        <PluckedString width={STRING} share={times / chances} interval={found.interval} guessing={found.guessing} />
      </svg>
      {found.ask !== null && <PlayBoth desk={desk} view={view} ask={found.ask} playable readings={null} />}
    </li>
  );
}
