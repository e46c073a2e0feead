import type { HostView, WireKeysReveal, WireSpread, WireTruth } from '../../../server/protocol/views.ts';
import { hostWords } from '../../../server/protocol/words/en.ts';
import { chordSymbol, readSymbol } from '../../../shared-theory/chords.ts';
import { candidateKeys } from '../../../shared-theory/candidates.ts';
import { differentChords } from '../../../shared-theory/different-chords.ts';
import { chordEms, SvgChord } from '../../shared/chord-text.tsx';
import { joinPath, layCircle, neighbourRuns, type CircleLayout } from '../../shared/drawings/circle-layout.ts';
import { Circle } from '../../shared/drawings/circle.tsx';
import { Bead } from '../../shared/music-marks.tsx';
import { handsOnKeys, KeyBeads, scalesOrKeys } from '../../shared/spreads/keys-spread.tsx';
import { isNarrow, MARGIN, moreLines, setQuestion, type Frame } from '../frame.ts';
import { familiesOf, forkOf, layRows } from '../key-rows.ts';
import { Header, StepRow } from '../parts/header.tsx';
import { KeyRow, nameOf, type Columns } from '../parts/key-row.tsx';
import { BothReadings } from '../parts/both-readings.tsx';
import { SoundLine, type SoundProps } from '../parts/sound-panel.tsx';
import { TuningFork } from '../parts/tuning-fork.tsx';
import { deciderSentence, keySaid, revealSentence } from '../sentences.ts';
import { emptySpread, spreadLabel } from './spread.tsx';

const words = hostWords.reveal;
/** Height of header, question and foot, in drawing units. */
const AROUND = 470;

type KeysRevealProps = Omit<SoundProps, 'view'> & {
  readonly view: HostView & { readonly current: NonNullable<HostView['current']> };
  readonly truth: WireTruth;
  readonly reveal: WireKeysReveal;
  readonly frame: Frame;
};

/** The keys that own the chords: on the circle, as chart rows that start on the vamp's first chord, and the note that decides. */
export function KeysReveal({ view, truth, reveal, frame, sound, actions }: KeysRevealProps) {
  const title = revealSentence(view, truth);
  const width = frame.width - 2 * MARGIN;
  const setting = setQuestion(title, width, 1, [106, 96, 85, 74]);
  const height = frame.height - AROUND - moreLines(setting);
  const spread = view.spread ?? emptySpread(view.current);
  return (
    <main class="screen keys-reveal">
      <Header>
        <StepRow steps={view.steps} current={view.current} />
      </Header>
      <section class="ask" aria-live="polite">
        <h1 class="question shown" style={{ fontSize: `${setting.size / 16}rem` }}>
          {title}
        </h1>
        <p class="instruction">{deciderSentence(reveal)}</p>
      </section>
      <section class="drawing">
        <svg
          role="img"
          aria-label={spreadLabel(view, truth)}
          viewBox={`0 0 ${width} ${height}`}
          width={`${width / 16}rem`}
          height={`${height / 16}rem`}
        >
          <Owners reveal={reveal} truth={truth} spread={spread} width={width} height={height} />
          {reveal.rows.length > 0 ? (
            <Charts reveal={reveal} capo={view.vamp?.capo ?? 0} width={width} height={height} />
          ) : (
            <Nowhere chords={reveal.chords} width={width} height={height} />
          )}
        </svg>
      </section>
      <footer class="foot low">
        <span class="label">{view.spread ? words.oneDot : ''}</span>
        <BothReadings view={view} sound={sound} />
        {view.vamp?.source === 'host' ? (
          <SoundLine view={view} sound={sound} actions={actions} bare={isNarrow(frame)} />
        ) : null}
        <span class="label legend">{reveal.deciders.length > 0 ? words.notch : ''}</span>
      </footer>
    </main>
  );
}

/** Where the circle stands: its middle, and how large. */
function circleIn(width: number, height: number, minors: boolean): CircleLayout {
  const radius = Math.min(232, height * 0.386, width * 0.136);
  return layCircle(Math.max(radius * 1.33, 0.182 * width), height / 2 + 6, radius, minors);
}

function Owners({
  reveal,
  truth,
  spread,
  width,
  height,
}: {
  readonly reveal: WireKeysReveal;
  readonly truth: WireTruth;
  readonly spread: WireSpread;
  readonly width: number;
  readonly height: number;
}) {
  const policy = spread.asking.options?.[0] ?? 'majors';
  const minors = policy !== 'majors' && policy !== 'modes';
  const layout = circleIn(width, height, minors);
  const owners = scalesOrKeys(truth.key);
  const places = [...layout.majors, ...layout.minors].filter(({ id }) => owners.includes(id)).map(({ place }) => place);
  const runs = neighbourRuns(places);
  const neighbours = runs.length === 1 && runs[0]?.steps === new Set(places).size - 1;
  // A minor key with its seventh raised may stand away from the others.
  const said = owners.length === 1 ? words.oneOwner : neighbours ? words.neighbours : '';
  const lines = owners.length === 0 ? [] : said.split(/ (?=\S+$)/);
  const size = minors ? 24 : 34;
  return (
    <>
      <Circle layout={layout} said={[]} sounded={owners} />
      {owners.length === 0 && !minors ? <ChordOwners reveal={reveal} layout={layout} /> : null}
      {owners.length === 0 ? <NoKeyHands layout={layout} hands={handsOnKeys(spread).get('none') ?? 0} /> : null}
      <KeyBeads layout={layout} spread={spread} room={{ width: width * 0.4, height: height + 40 }} scale={1} />
      {lines.map((line, index) => (
        <text
          key={line}
          class="spread-label fill-ink2"
          x={layout.cx}
          y={layout.cy + (index - 0.1) * 1.25 * size}
          font-size={size}
          text-anchor="middle"
        >
          {line}
        </text>
      ))}
    </>
  );
}

/** Hands that said so where no key owns all: a bead and its number in the middle of the circle. */
function NoKeyHands({ layout, hands }: { readonly layout: CircleLayout; readonly hands: number }) {
  if (hands === 0) return null;
  return (
    <>
      <Bead x={layout.cx - 18} y={layout.cy} r={9} />
      <text class="spread-count" x={layout.cx + 2} y={layout.cy + 13} font-size={36}>
        {hands}
      </text>
    </>
  );
}

/** Where no key owns all: the owners of each chord as an arc of its own, so that the eye sees that they do not meet. */
function ChordOwners({ reveal, layout }: { readonly reveal: WireKeysReveal; readonly layout: CircleLayout }) {
  return (
    <>
      {different(reveal.chords).map((symbol, index) => {
        const ids = candidateKeys([readSymbol(symbol)], 'majors').map(({ id }) => id);
        const places = layout.majors.filter((peg) => ids.includes(peg.id)).map((peg) => peg.place);
        const inner = layout.inner - 15 * index;
        return neighbourRuns(places).map((run) => {
          const middle = ((run.from + run.steps / 2) * 30 - 90) * (Math.PI / 180);
          const out = inner - 36;
          return (
            <g key={`${symbol} ${run.from}`}>
              <path class="line-brass truth-rule" d={joinPath({ ...layout, inner }, run)} />
              <SvgChord
                symbol={symbol}
                x={layout.cx + out * Math.cos(middle)}
                y={layout.cy + out * Math.sin(middle)}
                size={34}
              />
            </g>
          );
        });
      })}
    </>
  );
}

/** Chart rows of all owners, with a fork between neighbours. */
function Charts({
  reveal,
  capo,
  width,
  height,
}: {
  readonly reveal: WireKeysReveal;
  readonly capo: number;
  readonly width: number;
  readonly height: number;
}) {
  const families = familiesOf(reveal);
  const layout = layRows(families, height, capo);
  const forks = families.slice(1).map((lower, index) => {
    const upper = families[index];
    return upper ? forkOf(upper, lower) : null;
  });
  // Where the keys part before the last column, the prongs need room right of it.
  const beyond = forks.some((fork) => fork && fork.column !== 6);
  const longest = Math.max(...families.flatMap((family) => family.keys.map(({ key }) => nameOf(key, family).length)));
  const columns: Columns = columnsIn(width, beyond, longest);
  return (
    <>
      {families.map((family, index) => (
        <KeyRow
          key={family.keys[0]?.key}
          family={family}
          columns={columns}
          capo={capo}
          y={layout.rules[index] ?? 0}
          scale={layout.scale}
        />
      ))}
      {forks.map((fork, index) =>
        fork ? (
          <TuningFork
            key={fork.upper}
            fork={fork}
            columns={columns}
            y={layout.forks[index] ?? 0}
            scale={layout.scale}
            edge={width + MARGIN}
          />
        ) : null,
      )}
    </>
  );
}

/**
 * Columns of the seven chords: 118 apart at 1920, closer where the picture is narrower, the prongs need room or a name before a row
 * is long (`F# mixolydian`).
 */
function columnsIn(width: number, beyond: boolean, longest: number): Columns {
  const label = 0.416 * width;
  const first = label + Math.min(longest > LONG ? 300 : 231, (longest > LONG ? 0.18 : 0.14) * width);
  const end = beyond ? width - 0.055 * width : width - 53;
  const pitch = Math.min(118, (end - first) / 6);
  return { label, labelSize: (first - pitch * 0.66 - label) / (0.52 * longest), first, pitch };
}

/** Letters of a name that still stand in the usual room. */
const LONG = 10;

/** Which keys each chord lives in, where none of them stands in every row. */
function Nowhere({
  chords,
  width,
  height,
}: {
  readonly chords: readonly string[];
  readonly width: number;
  readonly height: number;
}) {
  const rows = different(chords);
  const row = Math.min(150, height / rows.length);
  const top = (height - row * rows.length) / 2;
  const left = 0.43 * width;
  return (
    <>
      {rows.map((symbol, index) => {
        const y = top + (index + 0.5) * row;
        const keys = candidateKeys([readSymbol(symbol)], 'majors').map(({ name }) => keySaid(name));
        return (
          <g key={symbol}>
            {index > 0 ? <path class="line-string g1" d={`M${left} ${y - row / 2}H${width}`} /> : null}
            <SvgChord
              symbol={symbol}
              x={left}
              y={y}
              size={Math.min(76, row * 0.6, 230 / chordEms(symbol))}
              anchor="start"
            />
            <text class="spread-label" x={left + 250} y={y + 16} font-size="44">
              {keys.length === 0 ? words.noOwner : keys.join('\u2003')}
            </text>
          </g>
        );
      })}
    </>
  );
}

/** A foreign bass is a note that a key must hold: each chord over each of its basses has a row. */
function different(chords: readonly string[]): readonly string[] {
  return differentChords(chords.map(readSymbol), { slashIsNew: true }).map(chordSymbol);
}
