// Adds a CommonJS build to a package's dist, for `require` on Nodes that cannot require ES modules (20.0 to 20.18):
//   node ../../tests/tools/cjs.mjs ENTRY...   in the package's folder, entries as paths under src without ending.
// One set of files with shared parts, so that classes such as JobError are the same in all entries.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { cwd } from 'node:process';
import { build } from 'vite';

const entries = process.argv.slice(2);
if (entries.length === 0) throw new Error('cjs.mjs: name the entries, such as index');

/** ES modules only, so that they go into the build; small, and without a state of their own. */
const BUNDLED = ['flatbush', 'flatqueue'];

const home = cwd();
const out = join(home, 'dist', 'cjs');
rmSync(out, { recursive: true, force: true });

// The declarations serve both: what makes them CommonJS is the package.json beside them.
for (const name of readdirSync(join(home, 'dist'), { recursive: true, encoding: 'utf8' })) {
  if (!name.endsWith('.d.ts') || name.startsWith('cjs')) continue;
  const target = join(out, name);
  mkdirSync(dirname(target), { recursive: true });
  const text = readFileSync(join(home, 'dist', name), 'utf8');
  writeFileSync(target, text.replace(/^\/\/# sourceMappingURL=.*\n?/m, ''));
}
mkdirSync(out, { recursive: true });
writeFileSync(join(out, 'package.json'), '{ "type": "commonjs" }\n');

await build({
  root: home,
  configFile: false,
  logLevel: 'warn',
  publicDir: false,
  build: {
    target: 'node20',
    outDir: out,
    emptyOutDir: false,
    minify: false,
    sourcemap: true,
    lib: {
      entry: Object.fromEntries(entries.map((entry) => [entry, join(home, 'dist', `${entry}.js`)])),
      formats: ['cjs'],
      fileName: (_, name) => `${name}.js`,
    },
    rolldownOptions: {
      external: (name) => !/^[./]/.test(name) && !BUNDLED.includes(name),
      output: { chunkFileNames: 'shared-[hash].js', exports: 'named' },
    },
  },
});

for (const entry of entries) {
  const text = readFileSync(join(out, `${entry}.js`), 'utf8');
  if (!text.includes('exports.')) throw new Error(`cjs.mjs: ${entry}.js exports nothing`);
}
