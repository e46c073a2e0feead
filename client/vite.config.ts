import { defineConfig, type Plugin } from 'vite';

const OUT = '../.build/client';

/**
 * A chunk that is loaded late has no style sheet and no chunks of its own to fetch beside it: a plain import does.
 * The usual helper costs a phone as much as a pad.
 */
const plainImports: Plugin = {
  name: 'plain-imports',
  enforce: 'pre',
  applyToEnvironment: ({ name }) => name === 'student',
  load: (id) => (id === '\0vite/preload-helper.js' ? 'export const __vitePreload = (load) => load();' : undefined),
};

/**
 * Parts of the socket library that no page uses: our server offers no web transport, nobody sends bytes, and the address of a line is
 * a whole one that any browser of today can read by itself.
 */
const UNUSED: readonly (readonly [file: RegExp, code: string])[] = [
  [/engine\.io-client\/build\/esm\/transports\/webtransport\.js$/, 'export class WT {}'],
  [/engine\.io-parser\/build\/esm\/contrib\/base64-arraybuffer\.js$/, 'export const decode = () => null;'],
  [
    /engine\.io-parser\/build\/esm\/encodePacket\.browser\.js$/,
    "import { PACKET_TYPES } from './commons.js'; export const encodePacket = ({ type, data }, _bytes, done) => done(PACKET_TYPES[type] + (data ?? '')); export const encodePacketToBinary = () => {};",
  ],
  [
    /engine\.io-client\/build\/esm\/contrib\/parseuri\.js$/,
    "export function parse(source) { const { protocol, hostname, port, search } = new URL(source); return { source, protocol: protocol.slice(0, -1), host: hostname.replace(/[[\\]]/g, ''), port, query: search.slice(1) }; }",
  ],
  [
    /socket\.io-client\/build\/esm\/url\.js$/,
    "import { parse } from 'engine.io-client'; export const url = (uri, path) => ({ ...parse(uri), id: uri + path, path: '/' });",
  ],
  [
    /socket\.io-parser\/build\/esm\/is-binary\.js$/,
    'export const isBinary = () => false; export const hasBinary = isBinary;',
  ],
  [
    /socket\.io-parser\/build\/esm\/binary\.js$/,
    'export const deconstructPacket = (packet) => ({ packet, buffers: [] }); export const reconstructPacket = (packet) => packet;',
  ],
];

const leanSocket: Plugin = {
  name: 'lean-socket',
  enforce: 'pre',
  load: (id) => UNUSED.find(([file]) => file.test(id))?.[1],
};

/**
 * Five pages; the server writes the crib's sheet into its own. Phones get a build of their own: in a common one, what host and desk use of a shared module would travel to
 * phones too. Phone floor: Safari 14 and Chrome 87.
 */
export default defineConfig(({ command }) => ({
  root: 'client',
  base: '/',
  publicDir: 'public',
  plugins: [plainImports, leanSocket],
  build: {
    outDir: OUT,
    emptyOutDir: true,
    target: ['safari14', 'chrome87', 'firefox78'],
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  ...(command === 'build' && {
    environments: {
      client: {
        build: {
          rolldownOptions: {
            input: {
              host: 'client/host.html',
              desk: 'client/desk.html',
              pair: 'client/pair.html',
              crib: 'client/crib.html',
            },
          },
        },
      },
      student: {
        consumer: 'client' as const,
        build: {
          outDir: OUT,
          emptyOutDir: false,
          copyPublicDir: false,
          modulePreload: false as const,
          rolldownOptions: {
            input: { student: 'client/student.html' },
            // All that every phone needs in one file; left alone, the bundler cuts it where pads share a part.
            output: {
              codeSplitting: {
                groups: [
                  { name: 'student', test: /client\/student\/main\.tsx$/ },
                  { name: 'printer', test: /shared-theory\/printer\.ts$/ },
                  { name: 'letters', test: /client\/shared\/chord-text\.tsx$/ },
                ],
              },
            },
          },
        },
      },
    },
    builder: {
      buildApp: async (builder) => {
        for (const name of ['client', 'student']) {
          const environment = builder.environments[name];
          if (environment) await builder.build(environment);
        }
      },
    },
  }),
}));
