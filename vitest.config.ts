import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** A long run tries this many times as many cases; set EDGEBITE_RUNS for another factor. */
const LONG_RUN_FACTOR = '20';

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig(({ mode }) => ({
  resolve: {
    // Tests read the TypeScript sources, so that most of them need no build.
    alias: [
      { find: /^@edgebite\/core\/testing$/, replacement: at('packages/core/src/testing/index.ts') },
      ...['door', 'flatten', 'geometry', 'machining'].map((entry) => ({
        find: new RegExp(`^@edgebite/core/${entry}$`),
        replacement: at(`packages/core/src/${entry}.ts`),
      })),
      { find: /^@edgebite\/core$/, replacement: at('packages/core/src/index.ts') },
      { find: /^@edgebite\/previewer$/, replacement: at('packages/previewer/src/index.ts') },
      { find: /^@edgebite\/svg\/tree$/, replacement: at('packages/svg/src/tree.ts') },
      { find: /^@edgebite\/svg$/, replacement: at('packages/svg/src/index.ts') },
    ],
  },
  test: {
    // Browser tests need Chromium, which the usual suite must do without: vitest run --mode browser.
    include:
      mode === 'browser'
        ? ['tests/browser/**/*.test.ts']
        : ['tests/**/*.test.ts', 'packages/*/src/**/*.test.ts'],
    exclude: ['**/node_modules/**', '**/dist/**', ...(mode === 'browser' ? [] : ['tests/browser/**'])],
    // A test that asserts nothing cannot fail.
    expect: { requireAssertions: true },
    setupFiles: [at('tests/tools/setup.ts')],
    env: { EDGEBITE_RUNS: process.env.EDGEBITE_RUNS ?? (mode === 'long' ? LONG_RUN_FACTOR : '1') },
    // No test is timed; the limit only ends a hang, on a busy machine too.
    testTimeout: mode === 'long' ? 1_800_000 : 300_000,
  },
}));
