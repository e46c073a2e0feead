import type { SoundedNote } from '../../shared-theory/perform.ts';
import type { NoteShelf } from '../../shared-theory/sound/note-shelf.ts';

/** Longest stretch of rendering in one go, in milliseconds: half a frame, so that the page stays alive. */
const SLICE_MS = 8;

/** Gives way to the page. A message, not a timer: hidden pages have their timers slowed to one a second. */
function breathe(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.addEventListener('message', () => {
      port1.close();
      resolve();
    });
    port1.start();
    port2.postMessage(null);
  });
}

/** Renders what `notes` need and the shelf lacks, in small slices. `wanted` is asked between slices; false ends it early. */
export async function fillShelf(
  shelf: NoteShelf,
  notes: readonly SoundedNote[],
  wanted: () => boolean = () => true,
): Promise<void> {
  let since = performance.now();
  for (const note of shelf.missing(notes)) {
    if (!wanted()) return;
    shelf.take(note);
    if (performance.now() - since < SLICE_MS) continue;
    await breathe();
    since = performance.now();
  }
}
