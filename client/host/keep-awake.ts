/**
 * Keeps the picture on the wall lit where the browser allows it (secure pages, so mostly the laptop's own address). Asked anew
 * whenever the page comes back into view, since hiding it gives the lock up.
 */
export function keepAwake(): void {
  const lock = (navigator as { readonly wakeLock?: WakeLock }).wakeLock;
  if (!lock) return;
  const ask = (): void => {
    // Refused on low battery or while hidden: the lesson goes on without it.
    if (document.visibilityState === 'visible') lock.request('screen').catch(() => undefined);
  };
  document.addEventListener('visibilitychange', ask);
  ask();
}
