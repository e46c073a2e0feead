import { rhythmDeskWords } from '../../../server/protocol/words/rhythm-desk-words.ts';
import type { WireTaps } from '../../../server/protocol/views.ts';
import { useCalm } from '../calm.ts';
import { tapsLines } from '../taps-text.ts';
import '../rhythm.css';

const words = rhythmDeskWords.taps;

/** What the class taps while it taps: its tempo large enough for a glance, and how it lies around it. */
export function ClassTaps({ taps }: { readonly taps: WireTaps }) {
  const { tempo, ...rest } = useCalm(taps);
  return (
    <section class="class-taps" aria-label={words.label}>
      <p class="label" aria-hidden="true">
        {words.label}
      </p>
      {tempo === null ? (
        <p class="lead">{words.waiting}</p>
      ) : (
        <p class="class-tempo">
          <strong>{Math.round(tempo)}</strong> {words.aMinute}
        </p>
      )}
      <ul>
        {tapsLines({ tempo, ...rest }).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
