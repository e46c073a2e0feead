import { capoNames } from '../../../server/protocol/words/capo-names.ts';
import { deskWords } from '../../../server/protocol/words/en.ts';
import { fill } from '../../../server/protocol/words/fill.ts';
import { safeSentence } from '../../../server/protocol/words/safe-sentences.ts';
import { cribWords } from '../../../server/protocol/words/crib-words.ts';
import { listed } from '../../../server/protocol/words/counting.ts';
import { visitedSentence } from '../../../server/protocol/words/visited-sentences.ts';
import type { DeskView } from '../../../server/protocol/views.ts';
import { printNumeral } from '../../../shared-theory/printer.ts';
import { ChordText } from '../../shared/chord-text.tsx';
import { printChord, printKey, printNote } from '../../shared/names.ts';
import { shapeName } from '../../shared/shape-name.ts';

const words = deskWords.crib;
/** In the naming of the page. */
const NAMES = {
  note: (name: string) => printNote(name).text,
  chord: (symbol: string) => printChord(symbol).text,
  key: (name: string) => printKey(name).text,
  numeral: (numeral: string) => printNumeral(numeral).text,
};

/** The teacher's sheet of this vamp: numerals in each owning key, what decides, what settles. */
export function CribLeaf({ view }: { readonly view: DeskView }) {
  const { crib, vamp } = view;
  const capo = vamp?.capo ?? 0;
  const typed = (
    <a class="desk-link" href={`/desk/${view.room}/crib`} target="_blank" rel="noopener">
      {words.typed}
    </a>
  );
  if (!crib || !vamp) {
    return (
      <section class="crib">
        <p class="lead">{words.noVamp}</p>
        <p>{typed}</p>
      </section>
    );
  }
  const leaves = (note: string, keys: readonly string[]) =>
    fill(words.leaves, { note, keys: listed(keys.map((key) => printKey(key).text)) });
  return (
    <section class="crib">
      <h1>{words.heading}</h1>
      {crib.keys.length === 0 ? (
        <p class="lead">{words.none}</p>
      ) : (
        <table>
          <thead>
            <tr>
              <th scope="col">{capo > 0 ? capoNames.sounding : words.key}</th>
              {crib.chords.map((chord, index) => (
                <th key={index} scope="col" class="crib-chord">
                  <ChordText symbol={chord} />
                </th>
              ))}
            </tr>
            {capo > 0 && (
              <tr>
                <th scope="row">{fill(capoNames.shape, { capo })}</th>
                {crib.chords.map((chord, index) => (
                  <td key={index} class="crib-chord shape">
                    <ChordText symbol={shapeName(chord, capo)} />
                  </td>
                ))}
              </tr>
            )}
          </thead>
          <tbody>
            {crib.keys.map(({ key, numerals }) => (
              <tr key={key}>
                <th scope="row">{printKey(key).text}</th>
                {numerals.map((numeral, index) => (
                  <td key={index} class="numeral">
                    {printNumeral(numeral).text}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <Lines title={cribWords.visited.title} lines={crib.visited.map((key) => visitedSentence(key, NAMES))} />
      <Lines title={words.safe} lines={[safeSentence(crib.safe, crib.safeOf, NAMES)]} />
      <Lines
        title={words.deciders}
        lines={crib.deciders.map(({ note, leaves: keys }) => leaves(printNote(note).text, keys))}
      />
      <Lines
        title={words.settlers}
        lines={crib.settlers.map(({ chord, leaves: keys }) => leaves(printChord(chord).text, keys))}
      />
      <Lines title={words.bass} lines={[crib.bass.map((note) => printNote(note).text).join(' ')]} />
      <p>
        <a class="desk-link" href={`/desk/${view.room}/crib/${vamp.number}`} target="_blank" rel="noopener">
          {words.print}
        </a>
        {typed}
      </p>
      {vamp.grooveText !== '' && <VampFiles room={view.room} number={vamp.number} />}
    </section>
  );
}

/** What plays, to take home: as sound, as notes, as a score. */
function VampFiles({ room, number }: { readonly room: string; readonly number: number }) {
  const files = deskWords.sound.files;
  return (
    <>
      <h2>{files.title}</h2>
      <p class="file-links">
        {(['wav', 'midi', 'musicxml'] as const).map((kind) => (
          <a
            key={kind}
            class="desk-link"
            href={`/api/rooms/${room}/rounds/${number}.${kind === 'midi' ? 'mid' : kind}`}
            download
          >
            {files[kind]}
          </a>
        ))}
      </p>
    </>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <>
      <h2>{title}</h2>
      <ul class="crib-lines">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}
