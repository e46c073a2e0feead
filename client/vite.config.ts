import { defineConfig } from 'vite';

/** Three pages, one per role. Phone floor: Safari 14 and Chrome 87. */
export default defineConfig({
  root: 'client',
  base: '/',
  publicDir: 'public',
  build: {
    outDir: '../.build/client',
    emptyOutDir: true,
    target: ['safari14', 'chrome87', 'firefox78'],
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      input: {
        student: 'client/student.html',
        host: 'client/host.html',
        desk: 'client/desk.html',
        pair: 'client/pair.html',
      },
    },
  },
});
