import type { Reason } from '../messages.ts';

/** Every English sentence a person reads. Named exports, so that a page carries only its own. */

/** Prompts and names of questions and answers; all pages. */
export const questionWords = {} as const;

/** The phone of a student. */
export const studentWords = {} as const;

/** The host screen. */
export const hostWords = {} as const;

/** The teacher's desk and the pairing page. */
export const deskWords = {} as const;

/** What the server and the commands print on a console. */
export const consoleWords = {} as const;

/** One sentence per refusal; blanks are filled from the reply's detail. */
export const refusals: Readonly<Record<Reason, string>> = {
  'room-not-found': 'There is no room {room}. Check the five letters on the host screen.',
  'room-ended': 'This room has closed.',
  'name-empty': 'Write a name first: any name your teacher will know.',
  'name-too-long': 'That name is too long. Up to {most} characters fit.',
  'name-not-readable': 'That name has no letters that can be shown. Write it with ordinary letters.',
  'not-joined': 'Take a seat first: write your name.',
  'not-teacher': 'Only the teacher can do that. Open the teacher link that the server printed.',
  'question-not-open': 'This question is not open.',
  'question-not-closed': 'Close the question first.',
  'question-unknown': 'This round has no such question.',
  'question-shown': 'The answer has been shown already.',
  'question-still-open': 'Another question is still open. Close it first.',
  'round-unknown': 'There is no such round.',
  'no-round': 'Start a round first.',
  'too-late': 'After the double bar. This one does not count; the next question is yours.',
  'answer-not-readable': 'That is not an answer to this question.',
  'message-not-readable': 'The message could not be read: {what}.',
  'message-too-large': 'The message is too large: at most {most} bytes.',
  'too-many-messages': 'Too many messages at once. Wait a moment.',
  'chords-not-readable': 'Could not read the chords at “{found}”: {suggestion}',
  'chord-unknown': 'The chord {found} cannot be used here: {suggestion}',
  'groove-unknown': 'There is no groove {found}.',
  'level-unknown': 'There is no level {found}. Levels go from {low} to {high}.',
  'tempo-out-of-range': 'The tempo {found} is out of range: {low} to {high} beats a minute.',
  'no-host-sound': 'No host screen has its sound on. Open the host screen and press for sound.',
  'sound-held-elsewhere': 'Another host screen holds the sound. Take it over there or here.',
  'nothing-plays': 'Nothing is playing.',
  'not-saved': 'This could not be saved, so it did not happen. Try again.',
  'page-too-old': 'This page is of an older version. Reload it.',
  'pairing-code-wrong': 'That code is wrong or more than a minute old. Ask the desk for a new one.',
  'room-full': 'The room is full.',
};

/** What a class mishears, by error kind: the finding, a sentence to say, a thing to play. */
export const errorKinds: Readonly<Record<string, { finding: string; say: string; play: string }>> = {};
