import { beatStanding } from '../../shared-theory/beat-mastery.ts';
import type { BeatStanding } from '../../shared-theory/beat-mastery.ts';
import type { AskedQuestion, AskedRound } from '../../shared-theory/diagnosis/asked.ts';
import type { BreakdownLine } from '../../shared-theory/diagnosis/breakdown.ts';
import type { StudentReport } from '../../shared-theory/diagnosis/reports.ts';
import { spreadOf } from '../../shared-theory/diagnosis/spread.ts';
import { namesOf } from '../../shared-theory/namings/names-of.ts';
import { COLLECTED_KINDS, TAPPED_KINDS } from '../../shared-theory/questions/question.ts';
import { reprintedVamp } from '../../shared-theory/vamps.ts';
import type * as Wire from '../protocol/views.ts';
import { askedRound } from './asked-rounds.ts';
import { bothReadings } from './both-readings.ts';
import { beatFor, breakdownFor, commonFor, reportsFor } from './lesson-facts.ts';
import type { RoomState } from './state.ts';
import { currentRound } from './state.ts';
import { askingOn } from './view-parts.ts';

/** What the lesson has shown so far, as it travels. Who may see which of it is decided in `view.ts` alone. */

/** Found on the wall at the end, at most. */
const MOST_ON_THE_WALL = 3;

const drawn = new WeakMap<RoomState, { readonly at: string; readonly from: unknown; readonly lines: Lines }>();
type Lines = readonly Wire.WireBreakdownLine[];

/** The lesson question by question; the same object until something of it changes. */
export function wireBreakdown(state: RoomState): Lines {
  const from = breakdownFor(state);
  // Pads tell more once more has been shown.
  const at = String(state.turn);
  const last = drawn.get(state);
  if (last?.from === from && last.at === at) return last.lines;
  const lines = from.map((line) => wireLine(state, line));
  drawn.set(state, { at, from, lines });
  return lines;
}

function wireLine(state: RoomState, line: BreakdownLine): Wire.WireBreakdownLine {
  const firsts = state.rounds[line.round - 1]?.questions.get(line.question)?.firsts ?? [];
  const [sheet] = firsts;
  return {
    asking: sheet === undefined ? { kind: line.kind, target: line.target } : askingOn(state, sheet),
    question: line.question,
    round: line.round,
    kind: line.kind,
    target: line.target,
    right: line.right,
    part: line.part,
    wrong: line.wrong,
    notSure: line.notSure,
    silent: line.silent,
    missed: line.missed.map(({ key, answer, count, error }) => ({ key, answer, count, error })),
    truth: line.truth,
    memory: firsts.length > 0 && firsts.every(({ how }) => how === 'memory'),
  };
}

const gathered = new WeakMap<AskedRound, readonly Wire.WireOpinions[]>();

/** What was collected and never marked, question by question. */
export function wireOpinions(state: RoomState): readonly Wire.WireOpinions[] {
  return state.rounds.flatMap((record) => {
    const round = askedRound(state, record);
    const known = gathered.get(round) ?? round.questions.flatMap((question) => opinionsOn(round, question));
    gathered.set(round, known);
    return known;
  });
}

function opinionsOn({ number }: AskedRound, question: AskedQuestion): readonly Wire.WireOpinions[] {
  const { id, kind, target, sheets, struck, gone } = question;
  const [first] = sheets;
  if (!COLLECTED_KINDS.has(kind) || TAPPED_KINDS.has(kind) || first === undefined || struck === true || gone === true)
    return [];
  const { counts, notSure } = spreadOf(kind, first.answers, first.seats);
  const fell = counts.map(({ key, answer, count }) => ({ key, answer, count }));
  return [{ round: number, question: id, kind, target, counts: fell, notSure }];
}

/** The common errors; `playable` says of a sheet whether both of it can be played here and now. */
export function wireCommon(state: RoomState, playable: (ask: string) => boolean): readonly Wire.WireCommonError[] {
  return commonFor(state).map(({ error, times, chances, interval, guessing, kinds, where }) => {
    const [sheet] = state.rounds[where.round - 1]?.questions.get(where.question)?.firsts ?? [];
    const ask = sheet !== undefined && playable(sheet.ask) ? sheet.ask : null;
    return { error, times, chances, interval, guessing, kinds, ask };
  });
}

/** The common errors on the wall: the few that matter most. */
export function wireCommonForAll(state: RoomState): readonly Wire.WireCommonError[] {
  return wireCommon(state, () => false).slice(0, MOST_ON_THE_WALL);
}

/** Whether both readings of a sheet can be played here and now. */
export function canPlayBoth(state: RoomState, ask: string, soundHolder: string | null): boolean {
  const sheet = state.sheets.get(ask);
  const round = currentRound(state);
  const { sound } = state;
  return (
    sheet !== undefined &&
    sheet.closed !== null &&
    state.open === null &&
    round !== null &&
    sheet.round === round.heard &&
    sheet.round.source === 'host' &&
    sound.playing &&
    sound.round === round.heard.id &&
    soundHolder !== null &&
    bothReadings(state, sheet) !== null
  );
}

const reported = new WeakMap<
  RoomState,
  { readonly at: string; readonly from: unknown; readonly reports: readonly Wire.WireStudentReport[] }
>();

/** Each student's lesson, by seat; the same object until something of it changes. */
export function wireReports(state: RoomState): readonly Wire.WireStudentReport[] {
  const from = reportsFor(state);
  const { beatLevel } = state.settings;
  const students = [...state.students.values()];
  const at = `${beatLevel}|${students.map(({ hands }) => hands.join()).join('|')}`;
  const last = reported.get(state);
  if (last?.from === from && last.at === at) return last.reports;
  const shown = beatFor(state);
  const reports = students.flatMap(({ student, hands }) => {
    const report = from.get(student);
    if (report === undefined) return [];
    return [wireReport(student, report, beatStanding(beatLevel, shown.get(student) ?? [], hands.includes(beatLevel)))];
  });
  reported.set(state, { at, from, reports });
  return reports;
}

function wireReport(student: string, report: StudentReport, beat: BeatStanding): Wire.WireStudentReport {
  return {
    student,
    right: report.right,
    part: report.part,
    wrong: report.wrong,
    notSure: report.notSure,
    silent: report.silent,
    of: report.of,
    points: report.points,
    memory: { right: report.memory.right, of: report.memory.of },
    beat: { right: beat.right, of: beat.of, needs: beat.needs, played: beat.played },
    errors: report.errors.map(({ error, times }) => ({ error, times })),
    habits: report.habits.map(({ habit, times, of }) => ({ habit, times, of })),
  };
}

/** The plan, and which of its rounds have been played. */
export function wirePlan({ plan, rounds }: RoomState): Wire.DeskView['plan'] {
  const played = new Set(rounds.flatMap(({ heard: { item } }) => item ?? []));
  return {
    items: plan.map(({ item, level, kinds }) => ({ item, level, kinds })),
    played: [...played].filter((item) => plan.some((each) => each.item === item)),
  };
}

/** The running round as the teacher entered it; null where Hearsay plays, and where it was not kept. */
export function wireEntered(state: RoomState): Wire.DeskView['entered'] {
  const round = currentRound(state);
  const entered = round?.heard.entered ?? null;
  if (round === null || entered === null) return null;
  const { groove, tempo, directions } = entered;
  const { naming } = state.settings;
  const chords =
    entered.naming === naming ? entered.chords : reprintedVamp(entered.chords, entered.naming, namesOf(naming));
  const shown = round.heard.questions.filter(({ id }) => round.questions.get(id)?.shown === true).length;
  return { chords, groove, tempo, directions, corrections: round.corrections, shown };
}
