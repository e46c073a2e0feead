import { describe, expect, test } from 'vitest';
import { draw, patchBetween } from '../../../server/web/patches.ts';
import { tokenBucket } from '../../../server/web/token-bucket.ts';
import { createVisitors } from '../../../server/web/visitors.ts';

describe('patches', () => {
  const between = (before: object, after: object) => patchBetween(draw(before), draw(after));
  test('hold changed top-level fields whole, and the count of sendings', () => {
    const before = { v: 1, room: 'WAKUR', seats: [{ seat: 1 }], spread: null, truth: { answer: 'up' } };
    const after = { v: 2, room: 'WAKUR', seats: [{ seat: 1 }, { seat: 2 }], spread: null, truth: null };
    expect(between(before, after)).toEqual({ v: 2, seats: [{ seat: 1 }, { seat: 2 }], truth: null });
  });
  test('are not sent when only the count of sendings differs', () => {
    expect(between({ v: 1, room: 'WAKUR' }, { v: 9, room: 'WAKUR' })).toBeNull();
  });
  test('send a field that is gone as null, and one that has come', () => {
    expect(between({ v: 1, a: 1 }, { v: 2, b: 2 })).toEqual({ v: 2, a: null, b: 2 });
  });
});

describe('the bound on messages of one socket', () => {
  test('lets a burst through, then so many a second', () => {
    let time = 0;
    const allowed = tokenBucket(10, 20, () => time);
    const count = (tries: number) => Array.from({ length: tries }, allowed).filter(Boolean).length;
    expect(count(50)).toBe(20);
    time += 1000;
    expect(count(50)).toBe(10);
    time += 60_000;
    expect(count(50)).toBe(20);
  });
});

describe('visitors', () => {
  test('are counted by address, this machine apart, and news of a new one is told', () => {
    let told = 0;
    const visitors = createVisitors(() => (told += 1));
    for (const peer of ['127.0.0.1', '::1', '::ffff:127.0.0.1', '', '::ffff:192.168.1.7', '192.168.1.7', '10.0.0.2']) {
      visitors.visited(peer);
    }
    expect([visitors.count(), told]).toEqual([2, 2]);
  });
});
