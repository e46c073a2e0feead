/** Fetches a part of the page; where the network fails, again after a pause until it is here: what needs it waits with the phone. */
export async function untilHere<T>(load: () => Promise<T>): Promise<T> {
  for (;;) {
    try {
      return await load();
    } catch {
      await new Promise((resolve) => setTimeout(resolve, AGAIN_MS));
    }
  }
}

const AGAIN_MS = 2000;
