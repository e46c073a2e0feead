/** Longest stretch of work in one go, in milliseconds: half a frame, so that the page stays alive. */
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

/** Does one piece of work after the other in small slices. `wanted` is asked before each; false ends it early, and is returned. */
export async function inSlices(works: readonly (() => void)[], wanted: () => boolean = () => true): Promise<boolean> {
  let since = performance.now();
  for (const work of works) {
    if (!wanted()) return false;
    work();
    if (performance.now() - since < SLICE_MS) continue;
    await breathe();
    since = performance.now();
  }
  return wanted();
}
