import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The file beside the page in which the notices are. */
export const NOTICES = 'third-party-notices.txt';

const LICENCE = /^(licen[cs]e|copying|notice)(\.|$)/i;

/**
 * The folder of the package that a bundled module is of; null for the page's own and for helpers of the bundler.
 * @param {string} id
 */
function packageOf(id) {
  const match = /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/.exec(id);
  return match?.[1] ?? null;
}

/**
 * What the licence of a package wants to stand wherever a copy of it goes.
 * @param {string} folder
 * @throws Error if it has no text of a licence: the page must not be given to others then
 */
function noticeOf(folder) {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const texts = readdirSync(folder)
    .filter((file) => LICENCE.test(file))
    .sort()
    .map((file) => readFileSync(join(folder, file), 'utf8').replaceAll('\r\n', '\n').trim());
  if (texts.length === 0) throw new Error(`${name} is part of the page, but has no text of its licence`);
  return { name, text: [`${name} ${version} (${license})`, ...texts].join('\n\n') };
}

/**
 * Gathers what is bundled, in the page and in its worker, and writes the notices of all of it beside the page.
 * @returns {{ gather: () => import('vite').Plugin, write: import('vite').Plugin }}
 */
export function notices() {
  /** @type {Set<string>} */
  const folders = new Set();
  /** @param {import('vite').Rollup.OutputBundle} bundle */
  const add = (bundle) => {
    for (const part of Object.values(bundle)) {
      if (part.type !== 'chunk') continue;
      for (const id of Object.keys(part.modules)) {
        const folder = packageOf(id);
        if (folder !== null && existsSync(join(folder, 'package.json'))) folders.add(folder);
      }
    }
  };
  return {
    gather: () => ({ name: 'edgebite-bundled', generateBundle: (_, bundle) => add(bundle) }),
    write: {
      name: 'edgebite-notices',
      generateBundle(_, bundle) {
        add(bundle);
        const all = [...folders].map(noticeOf).sort((a, b) => (a.name < b.name ? -1 : 1));
        const source = `${HEAD}\n\n${all.map(({ text }) => text).join(`\n\n${RULE}\n\n`)}\n`;
        this.emitFile({ type: 'asset', fileName: NOTICES, source });
      },
    },
  };
}

const RULE = '-'.repeat(80);

const HEAD = `This page has code of the packages below in it, under their licences.\n\n${RULE}`;
