import { useSignal } from '@preact/signals';
import { render } from 'preact';
import { deskWords, refusals } from '../../server/protocol/words/en.ts';
import { Wordmark } from '../shared/marks.tsx';
import '@fontsource-variable/atkinson-hyperlegible-next';
import '@fontsource-variable/besley';
import '../shared/style.css';
import './desk.css';
import { pairBy } from './requests.ts';

const words = deskWords.pairing;

/** A phone becomes a second desk by typing the code that the first one shows. */
function Pairing() {
  const code = useSignal('');
  const notice = useSignal('');
  const pair = async (event: Event) => {
    event.preventDefault();
    const outcome = await pairBy(code.value.trim().toUpperCase());
    notice.value = outcome === 'paired' ? words.done : refusals[outcome];
    if (outcome === 'paired') location.assign('/desk');
  };
  return (
    <form class="desk-lobby" onSubmit={(event) => void pair(event)}>
      <Wordmark />
      <h1>{words.heading}</h1>
      <p class="lead">{words.lead}</p>
      <label class="field">
        <span>{words.code}</span>
        <input
          class="code-input"
          name="code"
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          maxLength={12}
          value={code.value}
          onInput={(event) => {
            code.value = event.currentTarget.value;
          }}
        />
      </label>
      <button type="submit" class="desk-button primary">
        {words.go}
      </button>
      <p class="notice" role="status">
        {notice.value}
      </p>
    </form>
  );
}

const root = document.getElementById('desk');
if (root) render(<Pairing />, root);
