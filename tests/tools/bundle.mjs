// What a package publishes: its sources in one file an entry, with parts that entries share beside them; source maps; and
// the same for `require`, for Nodes that cannot require ES modules (20.0 to 20.18). In the package's folder:
//   node ../../tests/tools/bundle.mjs ENTRY...              entries as paths under src without ending
//   node ../../tests/tools/bundle.mjs --esm-only ENTRY...   ES modules alone
//   node ../../tests/tools/bundle.mjs --command ENTRY       beside what is there, a program with all that it needs inside
// The compiler has written the declarations to dist/types before.
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cwd } from 'node:process';
import { build as esbuild } from 'esbuild';
import { build as vite } from 'vite';
import { pastEntries } from './past-entries.mjs';
import { marked } from './pure.mjs';

const isCommand = process.argv.includes('--command');
const entries = process.argv.slice(2).filter((name) => !name.startsWith('--'));
if (entries.length === 0) throw new Error('bundle.mjs: name the entries, such as index');

/**
 * Packages that go into the files: ES modules only, which older Nodes cannot require, and zod, of which a file with what is used
 * loads in half the time of its own sixty.
 * Their licences go along.
 */
const BUNDLED = ['flatbush', 'flatqueue', 'zod'];

const home = cwd();
const dist = join(home, 'dist');
if (!isCommand)
  for (const name of readdirSync(dist)) if (name !== 'types') rmSync(join(dist, name), { recursive: true });
const sources = Object.fromEntries(entries.map((entry) => [entry, join(home, 'src', `${entry}.ts`)]));

/** @param {string} name of an entry: `@edgebite/core/door` */
function sourceOf(name) {
  const [, pack = '', entry = 'index'] = name.split('/');
  return join(home, '..', pack, 'src', `${entry}.ts`);
}

/**
 * A command takes in all that it uses, and leaves the rest of that away: it starts at once. commander can start programs for
 * commands; there are none, and what it takes to start them is left away too.
 * @param {{ path: string, kind: string }} wanted
 */
function outside({ path, kind }) {
  if (kind === 'entry-point' || BUNDLED.includes(path)) return null;
  if (!isCommand) return { path, external: true };
  if (path.startsWith('@edgebite/')) return { path: sourceOf(path) };
  if (path === 'node:child_process') return { path, namespace: 'none' };
  return path === 'commander' ? null : { path, external: true };
}

const past = pastEntries(join(home, '..'), sourceOf);

/** @param {string} path of a source file */
function sourceText(path) {
  const text = readFileSync(path, 'utf8');
  return marked(isCommand ? past(text) : text, path);
}

// One set of files with shared parts, so that classes such as JobError are the same in all entries.
const REQUIRE =
  "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);";

/** How long a line of a command may be, in characters: the place in a stack trace is to say something without its map. */
const LINE = 200;

const { metafile } = await esbuild({
  entryPoints: sources,
  outdir: dist,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: isCommand ? 'node' : 'neutral',
  // commander is CommonJS and asks for modules of Node by `require`.
  banner: isCommand ? { js: REQUIRE } : {},
  mainFields: ['module', 'main'],
  plugins: [
    {
      name: 'others-stay-outside',
      setup: ({ onResolve, onLoad }) => {
        onResolve({ filter: /^[^./]/ }, outside);
        onLoad({ filter: /.*/, namespace: 'none' }, () => ({ contents: 'module.exports = {}' }));
        onLoad({ filter: /\/src\/.*\.ts$/ }, ({ path }) => ({
          contents: sourceText(path),
          loader: 'ts',
        }));
      },
    },
  ],
  target: 'es2022',
  // Nobody bundles a command again, which would need the marks that fall away with the white space. Names stay, for stack traces.
  minifyWhitespace: isCommand,
  minifySyntax: isCommand,
  lineLimit: isCommand ? LINE : 0,
  sourcemap: true,
  sourcesContent: false,
  chunkNames: isCommand ? 'command-[hash]' : 'shared-[hash]',
  legalComments: 'none',
  logLevel: 'warning',
  metafile: true,
});

const inside = [...BUNDLED, 'commander'].filter((name) =>
  Object.keys(metafile.inputs).some((path) => path.includes(`node_modules/${name}/`)),
);
if (inside.length > 0) {
  const notices = inside.map((name) => {
    const folder = join(home, '..', '..', 'node_modules', name);
    const { version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    return `${name} ${version} (${license})\n\n${readFileSync(join(folder, 'LICENSE'), 'utf8').trim()}\n`;
  });
  writeFileSync(
    join(dist, 'third-party.txt'),
    `Of other packages, these files hold:\n\n${notices.join('\n')}`,
  );
}

if (!isCommand && !process.argv.includes('--esm-only')) {
  const out = join(dist, 'cjs');
  // The declarations serve both: what makes them CommonJS is the package.json beside them.
  cpSync(join(dist, 'types'), join(out, 'types'), {
    recursive: true,
    filter: (path) => !/\.(map|tsbuildinfo)$/.test(path),
  });
  for (const name of readdirSync(join(out, 'types'), { recursive: true, encoding: 'utf8' })) {
    if (!name.endsWith('.d.ts')) continue;
    const file = join(out, 'types', name);
    writeFileSync(file, readFileSync(file, 'utf8').replace(/^\/\/# sourceMappingURL=.*\n?/m, ''));
  }
  mkdirSync(out, { recursive: true });
  writeFileSync(join(out, 'package.json'), '{ "type": "commonjs" }\n');
  await vite({
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
      lib: { entry: sources, formats: ['cjs'], fileName: (_, name) => `${name}.js` },
      rolldownOptions: {
        external: (name) => !/^[./]/.test(name) && !BUNDLED.includes(name),
        output: { chunkFileNames: 'shared-[hash].js', exports: 'named' },
      },
    },
  });
  for (const entry of entries) {
    const text = readFileSync(join(out, `${entry}.js`), 'utf8');
    if (!text.includes('exports.')) throw new Error(`bundle.mjs: ${entry}.js exports nothing`);
  }
}
