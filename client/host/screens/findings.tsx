import type { HostView, WireCommonError } from '../../../server/protocol/views.ts';
import { errorKinds, hostWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { PluckedString } from '../../shared/finding-marks.tsx';
import { Header } from '../parts/header.tsx';

const words = hostWords.findings;

/** Never more at once: a class takes home what it can remember. */
const MOST = 3;

/** Width of the string and room around it, in drawing units. */
const STRING = 400;
const AROUND = 24;

/** What this room mishears: each with a sentence to say and how often it happened. Counts of answers, no names. */
export function Findings(props: { readonly view: HostView; readonly onTurn: () => void }) {
  const found = props.view.common.slice(0, MOST);
  return (
    <main class="screen findings">
      <Header>
        <span class="label">{hostWords.end.label}</span>
      </Header>
      <h1 class="question">{words.heading}</h1>
      <table class="finding-list">
        <thead>
          <tr>
            <td />
            <th scope="col">
              <span class="posts" style={{ width: `${(STRING + 2 * AROUND) / 16}rem` }}>
                <span>{words.never}</span>
                <span>{words.always}</span>
              </span>
            </th>
          </tr>
        </thead>
        <tbody>
          {found.map((each) => (
            <Finding key={each.error} found={each} />
          ))}
        </tbody>
      </table>
      <footer class="foot low">
        <span class="label">{words.legend}</span>
        <button type="button" class="turn" onClick={props.onTurn}>
          {words.turn}
        </button>
      </footer>
    </main>
  );
}

function Finding({ found }: { readonly found: WireCommonError }) {
  const kind = errorKinds[found.error];
  const counted = fill(words.counted, { times: found.times, chances: found.chances });
  return (
    <tr>
      <th scope="row">
        <span class="found">{kind?.finding ?? found.error}</span>
        <span class="to-say">{kind?.say}</span>
      </th>
      <td>
        <svg
          aria-hidden="true"
          viewBox={`${-AROUND} -52 ${STRING + 2 * AROUND} 90`}
          width={`${(STRING + 2 * AROUND) / 16}rem`}
          height={`${90 / 16}rem`}
        >
          <PluckedString
            width={STRING}
            share={found.times / found.chances}
            interval={found.interval}
            guessing={found.guessing}
          />
        </svg>
        <span class="counted">{counted}</span>
      </td>
    </tr>
  );
}
