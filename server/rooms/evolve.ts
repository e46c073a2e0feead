import type { RoomEvent, Stamp } from './events.ts';
import { correct } from './evolve-correction.ts';
import { askInstead, openSheet, plain } from './evolve-sheets.ts';
import { soundOn } from './evolve-sound.ts';
import { settingsAfter } from './settings.ts';
import type { RoomState, Sheet, Student } from './state.ts';
import { questionOf, roundOf, unasked } from './state.ts';

/** Folds one event into the room, in place. Holds no rule and never throws: what `decide` allowed has happened. */
export function evolve(state: RoomState, event: RoomEvent, stamp: Stamp): void {
  switch (event.type) {
    case 'AnswerWritten':
      return write(state, event);
    case 'HearingSignalled':
      state.sheets.get(event.ask)?.cannotHear.add(event.student);
      touched(state, event.student);
      return;
    case 'StudentJoined': {
      const { student, seat } = event;
      const begun = { counter: 0, revision: 0, depth: 'keys', hands: [] } as const;
      state.students.set(student, { student, seat, joinedTurn: state.turn, ...begun });
      return;
    }
    case 'PersonChanged':
      touched(state, event.student);
      return;
    case 'DepthSet': {
      const found = state.students.get(event.student);
      if (found !== undefined) found.depth = event.depth;
      return;
    }
    case 'HandTicked': {
      const { beat, played } = event;
      const found = state.students.get(event.student);
      if (found === undefined) return;
      const others = found.hands.filter((each) => each !== beat);
      found.hands = (played ? [...others, beat] : others).toSorted((one, other) => one - other);
      return;
    }
    case 'EchoOrdered':
      state.echo = { groove: event.groove, student: event.student };
      state.echoes += 1;
      return;
    case 'RoomOpened':
      state.status = 'register';
      state.room = event.room;
      state.class = event.class;
      state.settings = event.settings;
      return;
    case 'SettingsChanged':
      state.settings = settingsAfter(state.settings, event);
      // Notes are called otherwise at once, on all pages.
      if (event.settings.naming !== undefined) state.turn += 1;
      return;
    case 'GrooveSaved':
    case 'GrooveErased':
      state.settings = settingsAfter(state.settings, event);
      return;
    case 'LessonPlanned':
      state.plan = event.items;
      return;
    case 'RoundStarted':
      state.rounds.push({
        heard: event.round,
        questions: new Map(event.round.questions.map(({ id }) => [id, unasked()])),
        tempoChanged: false,
        corrections: 0,
        sounded: { since: null, cameHome: null },
        revision: 0,
      });
      state.status = 'round';
      state.open = null;
      state.current = null;
      state.awaited = null;
      state.turn += 1;
      return;
    case 'QuestionOpened':
      openSheet(state, event, stamp);
      return;
    case 'AskedInstead':
      askInstead(state, event);
      return;
    case 'MemoryAwaited':
      state.awaited = event.question;
      return;
    case 'MemoryDropped':
      state.awaited = null;
      return;
    case 'QuestionClosed': {
      const sheet = state.sheets.get(event.ask);
      if (sheet === undefined) return;
      turnOn(state, sheet);
      for (const each of [sheet, ...asidesOf(state, sheet)]) each.closed = { stamp: plain(stamp), turn: state.turn };
      state.open = null;
      state.current = sheet;
      return;
    }
    case 'SpreadShown': {
      const sheet = state.sheets.get(event.ask);
      if (sheet === undefined) return;
      sheet.spreadShown = true;
      look(state, sheet);
      return;
    }
    case 'QuestionShown': {
      const sheet = state.sheets.get(event.ask);
      const record = sheet && questionOf(state, sheet);
      if (sheet === undefined || record === undefined) return;
      record.shown = true;
      turnOn(state, sheet);
      state.current = sheet;
      return;
    }
    case 'AnswerLetStand': {
      const { round, question, answer, stands } = event;
      const heard = roundOf(state, round)?.heard;
      if (heard === undefined) return;
      state.letStand.push({ heard, question, answer, stands });
      // Of what has not been shown anywhere nobody sees anything new, and nobody may learn that there was something to say.
      if (state.rounds.some(({ questions }) => questions.get(question)?.shown === true)) state.turn += 1;
      return;
    }
    case 'QuestionStruck': {
      const round = roundOf(state, event.round);
      const record = round?.questions.get(event.question);
      if (round === undefined || record === undefined) return;
      record.struck = event.struck;
      round.revision += 1;
      state.turn += 1;
      return;
    }
    case 'TruthCorrected':
      correct(state, event, plain(stamp));
      return;
    case 'VampStarted':
    case 'ChangeTook':
    case 'SilenceKept':
    case 'VampStopped':
      soundOn(state, event, stamp);
      return;
    case 'LessonEnded':
      state.status = 'lesson-ended';
      state.awaited = null;
      state.turn += 1;
      return;
    case 'RoomClosed':
      state.status = 'room-ended';
      state.awaited = null;
      state.turn += 1;
      return;
    case 'Erased':
      return;
  }
}

function write(state: RoomState, event: Extract<RoomEvent, { type: 'AnswerWritten' }>): void {
  const { student, ask, counter, answer } = event;
  const sheet = state.sheets.get(ask);
  if (sheet !== undefined) {
    const times = (sheet.answers.get(student)?.times ?? 0) + 1;
    sheet.answers.set(student, { counter, answer, times });
  }
  // One that was in the air when the sheet closed.
  if (sheet !== undefined && sheet.closed !== null) touchRound(state, sheet);
  const writer = touched(state, student);
  if (writer !== undefined && counter > writer.counter) writer.counter = counter;
}

/** The sheets that are asked in the place of one. */
function asidesOf(state: RoomState, { instead }: Sheet): readonly Sheet[] {
  return [...new Set(instead.values())].flatMap((ask) => (ask === null ? [] : (state.sheets.get(ask) ?? [])));
}

/** All students see something new of a sheet, and its round is marked anew. */
function turnOn(state: RoomState, sheet: Sheet): void {
  state.turn += 1;
  touchRound(state, sheet);
}

function touchRound(state: RoomState, { round }: Sheet): void {
  const record = state.rounds[round.number - 1];
  if (record !== undefined) record.revision += 1;
}

/** Showing the spread of another closed sheet turns the students' page to it. */
function look(state: RoomState, sheet: Sheet): void {
  if (state.current === sheet) return;
  state.current = sheet;
  state.turn += 1;
}

function touched(state: RoomState, student: string): Student | undefined {
  const found = state.students.get(student);
  if (found !== undefined) found.revision += 1;
  return found;
}
