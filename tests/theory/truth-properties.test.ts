import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chordIntervals, type Chord } from '../../shared-theory/chords.ts';
import { keyId, parseKeyName } from '../../shared-theory/keys.ts';
import { modulo, pitchClass, transpose } from '../../shared-theory/pitch.ts';
import { besideAll } from '../../shared-theory/questions/beside.ts';
import { askableQuestions, markAnswer } from '../../shared-theory/questions/judges.ts';
import type { Kind, QuestionSettings } from '../../shared-theory/questions/question.ts';
import { guitarTruth, POLICIES, type Truth } from '../../shared-theory/truth.ts';
import { anySymbolChord, RESPELLED } from '../support/theory-arbitraries.ts';
import { answers, SETTINGS } from './questions/given.ts';

/** A chord a number of semitones higher, spelled as the letters go. */
const USUAL = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];

function moved(chord: Chord, semitones: number): Chord {
  const root = USUAL[(pitchClass(chord.root) + semitones) % 12] ?? 'C';
  if (chord.bass === undefined) return { ...chord, root };
  return { ...chord, root, bass: bassAbove(chord, root) };
}

/** The note of a chord on another root that stands where the bass stands in it. */
function bassAbove(chord: Chord, root: string): string {
  const above = modulo(pitchClass(chord.bass ?? chord.root) - pitchClass(chord.root), 12);
  const interval = chordIntervals(chord).find(({ semitones }) => semitones % 12 === above);
  return transpose(root, interval ?? { steps: 0, semitones: 0 });
}

function respelled(chord: Chord): Chord {
  const root = RESPELLED[chord.root] ?? chord.root;
  return chord.bass === undefined ? { ...chord, root } : { ...chord, root, bass: bassAbove(chord, root) };
}

const truthOf = (loop: readonly Chord[]) => guitarTruth(loop.map((chord) => ({ chord, beats: 4 })));
const loops = fc.array(anySymbolChord, { minLength: 1, maxLength: 4 });

/** Keys as sounds: tonic's pitch class and mode. */
const sounding = (keys: readonly string[], semitones = 0) =>
  keys
    .map((name) => {
      const { tonic, mode } = parseKeyName(name);
      return `${(pitchClass(tonic) + semitones) % 12} ${mode}`;
    })
    .toSorted();

function settlersBySound(truth: Truth): readonly string[] {
  return truth.settlers.map(({ keys }) => keys.majors.map((name) => keyId(parseKeyName(name))).join(' ')).toSorted();
}

describe('truths', () => {
  test('of a transposed vamp are transposed', () => {
    fc.assert(
      fc.property(loops, fc.integer({ min: 1, max: 11 }), (loop, semitones) => {
        const low = truthOf(loop);
        const high = truthOf(loop.map((chord) => moved(chord, semitones)));
        expect(high.count).toBe(low.count);
        expect(high.qualities).toEqual(low.qualities);
        expect(high.sevenths).toEqual(low.sevenths);
        expect(high.distances).toEqual(low.distances);
        expect(high.roots.map(pitchClass)).toEqual(low.roots.map((root) => (pitchClass(root) + semitones) % 12));
        expect(high.bass.map((midi) => midi % 12)).toEqual(low.bass.map((midi) => (midi + semitones) % 12));
        for (const policy of POLICIES) {
          expect(sounding(high.keys[policy])).toEqual(sounding(low.keys[policy], semitones));
        }
      }),
    );
  });

  test('of a respelled vamp give every answer the same mark', () => {
    const asked = loops.chain((loop) => {
      const truth = truthOf(loop);
      const policy = fc.constantFrom(...POLICIES);
      const questions = askableQuestions(truth, SETTINGS).filter(({ kind }) => kind !== 'home');
      return policy.chain((each) => {
        const settings: QuestionSettings = { ...SETTINGS, policy: each };
        return fc
          .constantFrom(...questions)
          .chain((question) =>
            answers(question.kind, settings).map((answer) => ({ loop, truth, settings, question, answer })),
          );
      });
    });
    fc.assert(
      fc.property(asked, ({ loop, truth, settings, question: { kind, target }, answer }) => {
        const other = truthOf(loop.map(respelled));
        const askable = (each: Truth) => askableQuestions(each, settings).map(({ id }) => id);
        expect(askable(other)).toEqual(askable(truth));
        const mark = (each: Truth) =>
          markAnswer<Kind>(kind, answer, { truth: each, target, settings, beside: besideAll(each), own: {} });
        expect(mark(other)).toEqual(mark(truth));
      }),
    );
  });

  test('of a rotated loop have the same chords and the same keys, and count from another home', () => {
    fc.assert(
      fc.property(loops, fc.nat(3), (loop, by) => {
        const turn = by % loop.length;
        const turned = [...loop.slice(turn), ...loop.slice(0, turn)];
        const [here, there] = [truthOf(loop), truthOf(turned)];
        expect(there.count).toBe(here.count);
        for (const policy of POLICIES) expect(sounding(there.keys[policy])).toEqual(sounding(here.keys[policy]));
        const home = pitchClass(there.roots[0] ?? '');
        const counted = there.roots.slice(1).map((root) => modulo(pitchClass(root) - home, 12));
        const names = ['1', 'b2', '2', 'b3', '3', '4', '#4', '5', 'b6', '6', 'b7', '7'];
        expect(there.distances).toEqual(counted.map((semitones) => names[semitones]));
        expect(settlersBySound(there)).toEqual(settlersBySound(here));
      }),
    );
  });
});
