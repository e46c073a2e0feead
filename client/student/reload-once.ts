const MARK = 'hearsay:reloaded';

/** Loads the page anew where it is older than the server, but never in a loop. */
export function reloadOnce(): void {
  try {
    if (sessionStorage.getItem(MARK)) return;
    sessionStorage.setItem(MARK, '1');
  } catch {
    // Where nothing can be remembered, a reload could repeat for ever: the sentence asks for it instead.
    return;
  }
  location.reload();
}
