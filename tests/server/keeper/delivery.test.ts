import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { seededRandom } from '../../../shared-theory/random.ts';
import type { Caller } from '../../../server/keeper/keeper.ts';
import { createKeeper } from '../../../server/keeper/keeper.ts';
import { foldRoom } from '../../../server/keeper/room-log.ts';
import { hashToken } from '../../../server/keeper/token.ts';
import type { Command } from '../../../server/protocol/messages.ts';
import { emptyMemory, memoryStore } from '../../../server/store/memory-store.ts';
import { HANDS, SETTINGS } from '../../support/given.ts';

const DESK: Caller = { role: 'desk', session: 'desk' };
const phone = (number: number): Caller => ({
  role: 'student',
  session: `socket ${number}`,
  tokenHash: hashToken(`t${number}`),
});

/** Seeds are printed by fast-check when it fails. */
test('R51 R53 each answer counts once under lost acknowledgements, repeats, wrong order and a store that fails', async () => {
  await fc.assert(
    fc.asyncProperty(fc.integer(), fc.integer({ min: 1, max: 6 }), async (seed, students) => {
      const random = seededRandom(seed >>> 0);
      const memory = emptyMemory();
      const store = memoryStore(memory);
      let failing = false;
      const shaky = {
        ...store,
        append: async (appends: Parameters<typeof store.append>[0]) => {
          if (failing && random() < 0.3) throw new Error('disk full');
          if (failing && random() < 0.2) return appends.map(() => 'collided' as const);
          return store.append(appends);
        },
      };
      let drawn = 0;
      const keeper = createKeeper({
        store: shaky,
        clock: { wall: () => drawn, mono: () => drawn, boot: 'boot-1' },
        chance: {
          hex: (bytes) => (++drawn).toString(16).padStart(bytes * 2, '0'),
          below: (n) => Math.floor(random() * n),
        },
        changed: () => {},
        erased: () => {},
        order: () => {},
        fault: () => {},
      });
      const room = await keeper.open('class-1', SETTINGS);
      /** As a phone does: again until it is acknowledged, now and then once more though it was. */
      const deliver = async (caller: Caller, command: Command): Promise<void> => {
        for (;;) {
          const reply = await keeper.submit(room, caller, command);
          if (reply.ok && random() < 0.7) return;
          if (!reply.ok) expect(reply.reason).toBe('not-saved');
        }
      };
      failing = true;
      const everyone = Array.from({ length: students }, (_, number) => number);
      await Promise.all(
        everyone.map((number) => deliver(phone(number), { type: 'Join', id: `join ${number}`, name: 'Ana', ...HANDS })),
      );
      const desks = [DESK, { ...DESK, session: 'other desk' }];
      const start: Command = {
        type: 'StartGuitarRound',
        id: 's',
        after: 0,
        chords: 'Em D',
        groove: null,
        tempo: null,
        directions: null,
      };
      await Promise.all(desks.map((desk) => deliver(desk, start)));
      await Promise.all(
        desks.map((desk) =>
          deliver(desk, { type: 'OpenQuestion', id: 'o', round: 'r1', question: 'direction-1', how: 'phones' }),
        ),
      );
      const last = new Map<number, string>();
      const sends = everyone.flatMap((number) =>
        Array.from({ length: 3 }, (_, index) => {
          const answer = ['up', 'down', 'same'][Math.floor(random() * 3)] ?? 'up';
          last.set(number, answer);
          return {
            at: random(),
            number,
            command: {
              type: 'WriteAnswer',
              id: `w${index}`,
              ask: 'a1',
              counter: index + 1,
              answer,
              heldMs: 0,
            } as const,
          };
        }),
      );
      await Promise.all(
        sends.toSorted((one, other) => one.at - other.at).map(({ number, command }) => deliver(phone(number), command)),
      );
      await Promise.all(desks.map((desk) => deliver(desk, { type: 'CloseQuestion', id: 'c', ask: 'a1' })));
      const live = await keeper.look(room, ({ state, seq }) => ({
        seq,
        students: state.students.size,
        answers: [...(state.sheets.get('a1')?.answers.values() ?? [])],
        folded: structuredClone(state),
      }));
      expect(live?.students).toBe(students);
      expect(live?.answers.map(({ counter }) => counter)).toEqual(everyone.map(() => 3));
      expect(live?.answers.map(({ answer }) => answer).toSorted()).toEqual([...last.values()].toSorted());
      const log = memory.rooms.get(room);
      const count = (type: string) => log?.rows.filter((row) => row.type === type).length;
      expect(['StudentJoined', 'RoundStarted', 'QuestionOpened', 'QuestionClosed'].map(count)).toEqual([
        students,
        1,
        1,
        1,
      ]);
      const folded = foldRoom({ rows: log?.rows ?? [], people: [...(log?.people.values() ?? [])] });
      expect(folded.state).toEqual(live?.folded);
      expect(folded.seq).toBe(live?.seq);
      await keeper.close();
    }),
    { numRuns: 40 },
  );
});
