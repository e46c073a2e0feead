// @vitest-environment node
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const ROOT = join(import.meta.dirname, '../..');
const sources = ['client', 'shared-theory', 'server/protocol'].flatMap((folder) =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => ({
      name: `${folder}/${name.replaceAll('\\', '/')}`,
      text: readFileSync(join(ROOT, folder, name), 'utf8'),
    })),
);
const using = (word: RegExp) => sources.filter(({ text }) => word.test(text)).map(({ name }) => name);

describe('no page needs what a browser has on secure pages only (MDN, “Features restricted to secure contexts”)', () => {
  test('all sources are looked at', () => expect(sources.length).toBeGreaterThan(100));

  test.each([
    /randomUUID/,
    /crypto\.subtle/,
    /navigator\.clipboard/,
    /serviceWorker/,
    /getUserMedia|getDisplayMedia/,
    /AudioWorklet|audioWorklet/,
    /SharedArrayBuffer/,
    /navigator\.(share|locks|storage|bluetooth|usb|hid|serial|gpu|geolocation|vibrate)\b/,
    /requestMIDIAccess/,
    /\bcaches\.|indexedDB/,
    /new Notification|PushManager/,
  ])('nothing uses %s', (word) => expect(using(word)).toEqual([]));

  // Tone 15 builds these on audio worklets (its source, core/worklet): silent on a plain page, without an error.
  test('none of the sounds that Tone makes in a worklet', () => {
    expect(using(/\b(PluckSynth|BitCrusher|FeedbackCombFilter|LowpassCombFilter|Freeverb|JCReverb)\b/)).toEqual([]);
  });

  test.each([
    ['wakeLock', /\.wakeLock\b/, 'client/host/keep-awake.ts', /if \(!lock\)|lock\?\.|lock === undefined/],
    ['mediaDevices', /\.mediaDevices\b/, 'client/host/sound.ts', /devices\?\./],
  ])('%s is asked for in one place, which does without', (_name, word, place, guard) => {
    expect(using(word)).toEqual([place]);
    expect(sources.find(({ name }) => name === place)?.text).toMatch(guard);
  });
});
