import type { LiveSocket } from './live.ts';

/** Who of the students is connected. A student may have several pages open and is still one student. */
export type Seats = {
  /** A page that has not joined. */
  readonly stand: (socket: LiveSocket) => void;
  readonly sit: (socket: LiveSocket, student: string) => void;
  readonly leave: (socket: LiveSocket) => void;
  /** Gives up a seat and returns its pages; they stand. */
  readonly remove: (student: string) => readonly LiveSocket[];
  /** Open pages of a student. */
  readonly pages: (student: string) => number;
  readonly here: () => ReadonlySet<string>;
  readonly isEmpty: () => boolean;
};

export function createSeats(): Seats {
  const sitting = new Map<string, Set<LiveSocket>>();
  const standing = new Set<LiveSocket>();
  return {
    stand: (socket) => void standing.add(socket),
    sit: (socket, student) => {
      standing.delete(socket);
      const pages = sitting.get(student) ?? new Set();
      sitting.set(student, pages.add(socket));
    },
    leave: (socket) => {
      standing.delete(socket);
      const { student } = socket.data;
      const pages = student === null ? undefined : sitting.get(student);
      pages?.delete(socket);
      if (student !== null && pages?.size === 0) sitting.delete(student);
    },
    remove: (student) => {
      const pages = [...(sitting.get(student) ?? [])];
      sitting.delete(student);
      for (const socket of pages) standing.add(socket);
      return pages;
    },
    pages: (student) => sitting.get(student)?.size ?? 0,
    here: () => new Set(sitting.keys()),
    isEmpty: () => sitting.size === 0 && standing.size === 0,
  };
}
