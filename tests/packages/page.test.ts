import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';
import { ran } from '../../packages/previewer/fixtures/ran.js';

/* What somebody has who installs the package of the command and nothing else: the page, built, and its notices. */

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const WEB = `${ROOT}packages/previewer/web/`;

let files: readonly string[] = [];

// Only ends a hang: the page is built by this.
beforeAll(() => {
  const out = execFileSync('npm', ['pack', '--dry-run', '--json', '-w', '@edgebite/previewer'], {
    cwd: ROOT,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  // Newer npm tells of packages as an object, older as a list.
  const [packed] = Object.values(JSON.parse(out.slice(out.search(/^[[{]/m)))) as {
    files: { path: string }[];
  }[];
  files = packed?.files.map(({ path }) => path) ?? [];
}, 300_000);

describe('the package of the command', () => {
  it('holds the page, and all that the page refers to', () => {
    expect(files).toContain('web/index.html');
    const markup = readFileSync(`${WEB}index.html`, 'utf8');
    const parts = [...markup.matchAll(/(?:src|href)="\.\/([^"]+)"/g)].map(([, path]) => `web/${path}`);
    // Its script, its style, its icon and its notices.
    expect(parts.length).toBeGreaterThanOrEqual(4);
    for (const part of parts) expect(files).toContain(part);
    expect(files.some((path) => /^page\/|\.test\./.test(path))).toBe(false);
  });

  it('tells where the page is', async () => {
    const { code, out, err } = await ran(['page'], ROOT);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(fileURLToPath(out.trim())).toBe(`${WEB}index.html`);
  });
});

/** The folder of each package of which another bundler puts code into the page or its worker. */
async function bundled(): Promise<string[]> {
  const page = `${ROOT}packages/previewer/page/src/`;
  const { metafile } = await build({
    entryPoints: [`${page}main.tsx`, `${page}worker/worker.ts`],
    absWorkingDir: ROOT,
    bundle: true,
    write: false,
    metafile: true,
    outdir: 'out',
    format: 'esm',
    jsx: 'automatic',
    jsxImportSource: 'preact',
    logLevel: 'silent',
    alias: {
      '@edgebite/core/door': `${ROOT}packages/core/src/door.ts`,
      '@edgebite/core': `${ROOT}packages/core/src/index.ts`,
      '@edgebite/svg/tree': `${ROOT}packages/svg/src/tree-browser.ts`,
      '@edgebite/svg': `${ROOT}packages/svg/src/index.ts`,
    },
    // The worker's text and the examples come by queries of the page's own bundler.
    plugins: [
      {
        name: 'queries',
        setup: ({ onResolve }) => onResolve({ filter: /\?/ }, ({ path }) => ({ path, external: true })),
      },
    ],
  });
  const inputs = Object.values(metafile.outputs).flatMap((output) => Object.entries(output.inputs));
  const names = inputs.flatMap(([path, { bytesInOutput }]) =>
    bytesInOutput > 0 ? (/node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path)?.slice(1) ?? []) : [],
  );
  return [...new Set(names)].sort();
}

describe('the notices beside the page', () => {
  it('have the whole licence of each package that is part of it, and of no other', async () => {
    const told = readFileSync(`${WEB}third-party-notices.txt`, 'utf8');
    const names = await bundled();
    // What it is built on, lest nothing be looked for.
    expect(names).toEqual(expect.arrayContaining(['@svgdotjs/svg.js', 'idb-keyval', 'preact', 'flatbush']));
    for (const name of names) {
      const folder = `${ROOT}node_modules/${name}/`;
      const { version } = JSON.parse(readFileSync(`${folder}package.json`, 'utf8'));
      expect(told).toContain(`\n${name} ${version} (`);
      const licences = readdirSync(folder).filter((file) => /^licen[cs]e/i.test(file));
      expect(licences).not.toEqual([]);
      for (const file of licences) expect(told).toContain(readFileSync(`${folder}${file}`, 'utf8').trim());
    }
    const heads = [...told.matchAll(/^(\S+) \d+\.\d+\.\d+\S* \(/gm)].map(([, name]) => name);
    expect(heads).toEqual(names);
  });
});
