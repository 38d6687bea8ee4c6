import { fileURLToPath } from 'node:url';
import { build, preview } from 'vite';
import { notices } from './notices.mjs';
import { HEADERS, META_POLICY } from './policy.mjs';

/** @param {string} path */
const at = (path) => fileURLToPath(new URL(path, import.meta.url));

/** The folder that holds the page once it is built. */
export const FOLDER = at('../../../out/page');

/** The folder that holds it in the package, for those who install nothing else. */
export const PACKED = at('../web');

/**
 * @param {string} outDir
 * @returns {import('vite').InlineConfig}
 */
function config(outDir) {
  const { gather, write } = notices();
  return {
    configFile: false,
    root: at('.'),
    base: './',
    logLevel: 'warn',
    resolve: {
      alias: [
        { find: /^@edgebite\/core\/door$/, replacement: at('../../core/src/door.ts') },
        { find: /^@edgebite\/core$/, replacement: at('../../core/src/index.ts') },
        { find: /^@edgebite\/svg$/, replacement: at('../../svg/src/index.ts') },
        { find: /^@edgebite\/svg\/tree$/, replacement: at('../../svg/src/tree-browser.ts') },
      ],
    },
    plugins: [
      write,
      {
        name: 'edgebite-policy',
        transformIndexHtml: (html) => html.replace('POLICY', META_POLICY),
      },
      {
        // Browsers load no modules from a folder on the disk, only plain scripts.
        name: 'edgebite-plain-script',
        transformIndexHtml: {
          order: 'post',
          handler: (html) =>
            html
              .replaceAll('<script type="module" crossorigin', '<script defer')
              .replaceAll('<link rel="stylesheet" crossorigin', '<link rel="stylesheet"'),
        },
      },
    ],
    worker: { format: 'iife', plugins: () => [gather()] },
    build: {
      outDir,
      emptyOutDir: true,
      target: 'es2023',
      // The policy allows no data: addresses, and the helper for old browsers would have to fetch.
      assetsInlineLimit: 0,
      modulePreload: false,
      rolldownOptions: { output: { format: 'iife' } },
      cssCodeSplit: false,
      chunkSizeWarningLimit: 2048,
    },
  };
}

/** Builds the page into a folder of static files. */
export async function buildPage(outDir = FOLDER) {
  await build(config(outDir));
}

/**
 * Serves a built page on this machine only; resolves to its address and a way to stop. Another port is taken where
 * the one that is asked for is in use.
 */
export async function servePage({ outDir = FOLDER, port = 4180 } = {}) {
  const server = await preview({
    ...config(outDir),
    preview: { host: '127.0.0.1', port, strictPort: false, headers: HEADERS },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === 'string') throw new Error('the server of the page has no port');
  return { address: `http://127.0.0.1:${address.port}/`, stop: () => server.close() };
}
