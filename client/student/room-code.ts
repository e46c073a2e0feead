/** Most letters of a code where many rooms live. */
const MOST_LETTERS = 12;

/** Letters of a room code as typed or as a path, upper case; null where there is none. */
export function roomCode(text: string): string | null {
  const letters = text.toUpperCase().replace(/[^A-Z]/g, '');
  return letters.length >= 5 && letters.length <= MOST_LETTERS ? letters : null;
}

/** The room that an address names: `/WAKUR`. */
export const roomOfPath = (path: string): string | null => roomCode(path.split('/')[1] ?? '');
