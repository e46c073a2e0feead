import { expect, test } from 'vitest';
import { createKeep } from '../../../client/shared/storage.ts';

const refuse = (): never => {
  throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
};

function working() {
  const map = new Map<string, string>();
  return {
    getItem: (name: string) => map.get(name) ?? null,
    setItem: (name: string, value: string) => void map.set(name, value),
    removeItem: (name: string) => void map.delete(name),
  };
}

test('keeps over a reload where the browser stores', () => {
  const store = working();
  createKeep(() => store).set('token', 'ab');
  const again = createKeep(() => store);
  expect(again.get('token')).toBe('ab');
  again.remove('token');
  expect(createKeep(() => store).get('token')).toBeNull();
  expect(again.lasting()).toBe(true);
});

test.each([
  ['naming the storage throws', () => refuse()],
  ['every call throws', () => ({ getItem: refuse, setItem: refuse, removeItem: refuse })],
])('%s: memory answers, and says that it does not last', (_, open) => {
  const keep = createKeep(open);
  keep.set('token', 'ab');
  expect(keep.get('token')).toBe('ab');
  expect(keep.lasting()).toBe(false);
  keep.remove('token');
  expect(keep.get('token')).toBeNull();
});

test('a value that no longer fits does not leave the old one in force', () => {
  const store = { ...working() };
  const keep = createKeep(() => store);
  keep.set('pending', 'old');
  store.setItem = refuse;
  keep.set('pending', 'new');
  expect(keep.get('pending')).toBe('new');
});
