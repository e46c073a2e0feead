import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { isFresh } from '../../server/client-build.ts';

const roots: string[] = [];
afterEach(() => roots.splice(0).forEach((root) => rmSync(root, { recursive: true })));

/** A project whose files were last changed at the given seconds. */
function project(files: Readonly<Record<string, number>>): { readonly root: string; readonly built: string } {
  const root = mkdtempSync(join(tmpdir(), 'hearsay-build-'));
  roots.push(root);
  const touched = new Map<string, number>();
  for (const [name, time] of Object.entries(files)) {
    const path = join(root, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, name);
    utimesSync(path, time, time);
    for (let folder = dirname(path); folder !== root; folder = dirname(folder)) {
      touched.set(folder, Math.max(touched.get(folder) ?? 0, time));
    }
  }
  for (const [folder, time] of touched) utimesSync(folder, time, time);
  return { root, built: join(root, '.build', 'client') };
}

const SOURCES = {
  'client/student/main.tsx': 100,
  'shared-theory/keys.ts': 100,
  'server/protocol/words/en.ts': 100,
  'package-lock.json': 100,
};
const pages = (time: number) =>
  Object.fromEntries(['student', 'host', 'desk', 'pair', 'crib'].map((page) => [`.build/client/${page}.html`, time]));

describe('built pages', () => {
  const fresh = (files: Readonly<Record<string, number>>) => {
    const { root, built } = project(files);
    return isFresh(root, built);
  };
  test('are used again while they are newer than all they are made of', () => {
    expect(fresh({ ...SOURCES, ...pages(200) })).toBe(true);
  });
  test.each(Object.keys(SOURCES))('are built anew when %s is newer', (source) => {
    expect(fresh({ ...SOURCES, ...pages(200), [source]: 300 })).toBe(false);
  });
  test('are built anew when a page is missing, or one is older than the rest', () => {
    const { '.build/client/pair.html': _pair, ...three } = pages(200);
    expect(fresh({ ...SOURCES, ...three })).toBe(false);
    expect(fresh({ ...SOURCES, ...pages(200), '.build/client/host.html': 50 })).toBe(false);
    expect(fresh(SOURCES)).toBe(false);
  });
  test('are built anew when a source was taken away', () => {
    const { root, built } = project({ ...SOURCES, ...pages(200) });
    utimesSync(join(root, 'client', 'student'), 300, 300);
    expect(isFresh(root, built)).toBe(false);
  });
  test('do not hang on what the server alone is made of', () => {
    expect(fresh({ ...SOURCES, ...pages(200), 'server/rooms/decide.ts': 300 })).toBe(true);
  });
});
