// The packages as others get them: packed, looked over, installed in an empty project, and used from there by ES
// modules, by require, in browser bundles and in a worker: npm run check:packages. Ends with 1 on any fault.
import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build as esbuild } from 'esbuild';
import { type Browser, chromium } from 'playwright-core';
import { publint } from 'publint';
import { formatMessage } from 'publint/utils';
import { build as vite } from 'vite';
import { checkApi } from '../tools/api.mjs';
import { sizesHeld } from '../tools/sizes.js';
import { EXPECTED, FILES } from './consumer.js';

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const PACKAGES = ['core', 'svg', 'previewer'] as const;
type Pack = (typeof PACKAGES)[number];

/** What npm says of a packed package. */
interface Tarball {
  readonly name: string;
  readonly filename: string;
  readonly files: readonly { readonly path: string }[];
}
const BROWSERS = ['/usr/bin/chromium', '/usr/bin/google-chrome'];

const faults: string[] = [];
let checks = 0;

async function check(name: string, work: () => unknown): Promise<void> {
  checks++;
  try {
    const started = performance.now();
    const said = await work();
    const took = ((performance.now() - started) / 1000).toFixed(1);
    console.log(`ok    ${name}${typeof said === 'string' ? `: ${said}` : ''} (${took} s)`);
  } catch (error) {
    const { stdout, stderr, stack } = error as Error & { stdout?: string; stderr?: string };
    faults.push(name);
    console.error(`FAULT ${name}\n${stdout || stderr || stack}`);
  }
}

function same(got: unknown, wanted: unknown): void {
  if (got !== wanted) throw new Error(`got ${JSON.stringify(got)}, not ${JSON.stringify(wanted)}`);
}

const command = (file: string, args: readonly string[], cwd: string): string =>
  execFileSync(file, args, { cwd, encoding: 'utf8', stdio: 'pipe' });
const node = (file: string, args: readonly string[], cwd: string): string =>
  command(process.execPath, [file, ...args], cwd);
const tool = (path: string): string => join(ROOT, 'node_modules', path);

function packed(folder: string): Readonly<Record<Pack, Tarball>> {
  const workspaces = PACKAGES.flatMap((pack) => ['-w', `@edgebite/${pack}`]);
  const out = command('npm', ['pack', '--json', '--pack-destination', folder, ...workspaces], ROOT);
  // Newer npm tells of several packages as an object, older as a list.
  const list: Tarball[] = Object.values(JSON.parse(out.slice(out.search(/^[[{]/m))));
  return Object.fromEntries(list.map((one) => [one.name.replace('@edgebite/', ''), one])) as Record<
    Pack,
    Tarball
  >;
}

function lookOver({ files }: Tarball, pack: Pack): string {
  const names = files.map(({ path }) => path);
  for (const needed of [
    'LICENSE',
    'README.md',
    'CHANGELOG.md',
    'package.json',
    'dist/index.js',
    'dist/types/index.d.ts',
  ]) {
    if (!names.includes(needed)) throw new Error(`${needed} is not in it`);
  }
  const stray = names.filter((name) => /\.test\.|tsbuildinfo|fixtures|api\.txt/.test(name));
  if (stray.length > 0) throw new Error(`should not be in it: ${stray.join(', ')}`);
  for (const name of names.filter((one) => one.endsWith('.js') && one.startsWith('dist'))) {
    // What only passes names on has nothing to map.
    const text = readFileSync(join(ROOT, 'packages', pack, name), 'utf8');
    if (text.includes('sourceMappingURL') && !names.includes(`${name}.map`))
      throw new Error(`${name} has no source map`);
  }
  return `${names.length} files`;
}

/** Source maps lead to sources that are in the package, or in those that went into it. */
function mapsLead(pack: Pack): void {
  const dist = join(ROOT, 'packages', pack, 'dist');
  for (const name of readdirSync(dist).filter((file) => file.endsWith('.js.map'))) {
    const map = JSON.parse(readFileSync(join(dist, name), 'utf8'));
    for (const source of map.sources) {
      // What the command does without.
      if (source.startsWith('none:')) continue;
      if (!existsSync(join(dist, source))) throw new Error(`${name} leads to ${source}, which is not there`);
    }
  }
}

async function linted(pack: Pack): Promise<void> {
  const folder = join(ROOT, 'packages', pack);
  const { messages, pkg } = await publint({ pkgDir: folder, level: 'suggestion', strict: true, pack: false });
  if (messages.length > 0)
    throw new Error(messages.map((one) => formatMessage(one, pkg) ?? one.code).join('\n'));
}

function project(folder: string, tarballs: Readonly<Record<Pack, Tarball>>): string {
  const file = (pack: Pack): string => `file:${join(folder, tarballs[pack].filename)}`;
  const lock = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8')).packages;
  const home = join(folder, 'project');
  mkdirSync(home);
  const own = Object.fromEntries(PACKAGES.map((pack) => [`@edgebite/${pack}`, file(pack)]));
  // The versions that are locked here: they lie in the cache, and what is tested does not change by itself.
  const locked = (name: string): string => lock[`node_modules/${name}`].version;
  const others = ['fast-check', '@flatten-js/core', 'ajv', '@types/node'];
  const dependencies = { ...own, ...Object.fromEntries(others.map((name) => [name, locked(name)])) };
  writeFileSync(join(home, 'package.json'), JSON.stringify({ private: true, dependencies, overrides: own }));
  for (const [name, text] of Object.entries(FILES)) writeFileSync(join(home, name), text);
  command('npm', ['install', '--prefer-offline', '--no-audit', '--no-fund', '--ignore-scripts'], home);
  return home;
}

async function bundledBy(home: string, bundler: 'esbuild' | 'vite'): Promise<string> {
  const out = join(home, `out-${bundler}`);
  for (const entry of ['page', 'worker']) {
    const source = join(home, `${entry}.js`);
    if (bundler === 'esbuild') {
      const outfile = join(out, `${entry}.js`);
      await esbuild({ entryPoints: [source], outfile, bundle: true, format: 'iife', logLevel: 'error' });
    } else {
      const lib = {
        entry: source,
        formats: ['iife' as const],
        name: 'bundle',
        fileName: () => `${entry}.js`,
      };
      const build = { outDir: out, emptyOutDir: false, lib };
      await vite({ root: home, configFile: false, logLevel: 'error', build });
    }
  }
  return out;
}

async function inBrowser(browser: Browser, folder: string): Promise<void> {
  const page = await browser.newPage();
  const problems: string[] = [];
  page.on('pageerror', (error) => problems.push(error.message));
  await page.route('http://edgebite.test/**', (route) => {
    const name = new URL(route.request().url()).pathname.slice(1);
    if (name === '')
      return route.fulfill({ contentType: 'text/html', body: '<script src="page.js"></script>' });
    return route.fulfill({ contentType: 'text/javascript', body: readFileSync(join(folder, name)) });
  });
  await page.goto('http://edgebite.test/');
  same(await page.evaluate('window.answer'), EXPECTED);
  const worker = `new Promise((done, fail) => {
    const worker = new Worker('worker.js');
    worker.onmessage = ({ data }) => done(data);
    worker.onerror = ({ message }) => fail(new Error(message));
  })`;
  same(await page.evaluate(worker), EXPECTED);
  if (problems.length > 0) throw new Error(problems.join('\n'));
  await page.close();
}

/** A page as vite builds an application: with a worker of its own, as modules. */
async function builtByVite(home: string): Promise<string> {
  const outDir = join(home, 'out-app');
  const input = join(home, 'app.html');
  await vite({
    root: home,
    configFile: false,
    logLevel: 'error',
    worker: { format: 'es' },
    build: { outDir, emptyOutDir: true, rolldownOptions: { input } },
  });
  return outDir;
}

async function appInBrowser(browser: Browser, folder: string): Promise<void> {
  const page = await browser.newPage();
  const problems: string[] = [];
  page.on('pageerror', (error) => problems.push(error.message));
  await page.route('http://edgebite.test/**', (route) => {
    const name = new URL(route.request().url()).pathname.slice(1);
    const contentType = name.endsWith('.html') ? 'text/html' : 'text/javascript';
    return route.fulfill({ contentType, body: readFileSync(join(folder, name)) });
  });
  await page.goto('http://edgebite.test/app.html');
  await page.waitForFunction('window.answer !== undefined || window.fault !== undefined');
  same(await page.evaluate('window.answer'), EXPECTED);
  if (problems.length > 0) throw new Error(problems.join('\n'));
  await page.close();
}

const folder = mkdtempSync(join(tmpdir(), 'edgebite-packages-'));
try {
  await check('API reports', () => {
    const stale = checkApi(false);
    if (stale.length > 0) throw new Error(stale.join('\n'));
  });
  const tarballs = packed(folder);
  for (const pack of PACKAGES) {
    await check(`${pack}: contents`, () => lookOver(tarballs[pack], pack));
    await check(`${pack}: source maps`, () => mapsLead(pack));
    await check(`${pack}: publint`, () => linted(pack));
    await check(`${pack}: types resolve`, () => {
      const profile = pack === 'previewer' ? 'esm-only' : 'node16';
      const tarball = join(folder, tarballs[pack].filename);
      node(tool('@arethetypeswrong/cli/dist/index.js'), [tarball, '--profile', profile, '--no-emoji'], ROOT);
    });
  }
  const home = project(folder, tarballs);
  await check('by import', () => same(node('use.mjs', [], home).trim(), EXPECTED));
  await check('by require', () => same(node('use.cjs', [], home).trim(), EXPECTED));
  await check('the command', () => {
    if (!node(join(home, 'node_modules/.bin/edgebite'), ['schema'], home).includes('"edgebite job')) {
      throw new Error('it prints no schema');
    }
  });
  await check('schemas by ajv', () => same(node('schemas.cjs', [], home).trim(), 'aim drawer job report'));
  for (const resolution of ['node16', 'bundler', 'flatten']) {
    await check(`types under ${resolution}`, () => {
      node(tool('typescript/bin/tsc'), ['-p', `tsconfig.${resolution}.json`], home);
    });
  }
  const executablePath = BROWSERS.find((path) => existsSync(path));
  if (executablePath === undefined) throw new Error(`no browser at ${BROWSERS.join(' or ')}`);
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox'] });
  for (const bundler of ['esbuild', 'vite'] as const) {
    await check(`page and worker by ${bundler}`, async () =>
      inBrowser(browser, await bundledBy(home, bundler)),
    );
  }
  await check('page with a module worker by vite', async () =>
    appInBrowser(browser, await builtByVite(home)),
  );
  await browser.close();
  await check('sizes by use', sizesHeld);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
console.log(`${checks - faults.length} passed, ${faults.length} failed`);
if (faults.length > 0) process.exitCode = 1;
