import file from '../shared/fonts/besley-600.woff2?url';

/** Loads the one face of the phone after the first paint: nothing that can be tapped waits for it. */
export function loadFace(): void {
  if (!('FontFace' in window)) return;
  requestAnimationFrame(() =>
    setTimeout(() => {
      const face = new FontFace('Besley', `url(${file})`, { weight: '400 900' });
      face.load().then(
        (loaded) => document.fonts.add(loaded),
        // The page holds with the phone's own faces.
        () => undefined,
      );
    }),
  );
}
