import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { examine, parseJob, type Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { sheetOf } from '../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../packages/previewer/src/sheet/text.js';

/*
 * What a tired person does on reading a sentence: "hold it" is done with a hand. That work is clamped and never held
 * by hand near a turning cutter is what shop rule books say (docs/cutting-numbers.md).
 */

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** Told to hold, but for being told never to. */
const HOLD =
  /(?<!never |not )\b(?:hold|support|steady|grip|press) (?:it|them|that|against|the (?:part|piece|slug|work))\b/gi;

function texts(folder: string, ending: RegExp): { readonly file: string; readonly text: string }[] {
  return readdirSync(`${ROOT}${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((file) => ending.test(file) && !/\.test\.ts$|node_modules/.test(file))
    .map((file) => ({ file: `${folder}/${file}`, text: readFileSync(`${ROOT}${folder}/${file}`, 'utf8') }));
}

describe('words', () => {
  it('tell nobody to hold anything', () => {
    const all = [
      ...['core', 'svg', 'previewer'].flatMap((name) => texts(`packages/${name}/src`, /\.ts$/)),
      ...texts('packages/previewer/page', /\.tsx?$|\.html$/),
      ...texts('docs', /\.md$/),
      { file: 'README.md', text: readFileSync(`${ROOT}README.md`, 'utf8') },
    ];
    expect(all.length).toBeGreaterThan(100);
    const told = all.flatMap(({ file, text }) => {
      // A rule for a sentence, so a comment that speaks of code may say what it likes.
      const said = file.endsWith('.md')
        ? text.replaceAll('\n', ' ')
        : text.replace(/^\s*(?:\/?\*|\/\/).*$/gm, '');
      return [...said.matchAll(HOLD)].map(({ index }) => `${file}: ${said.slice(index - 40, index + 40)}`);
    });
    expect(told).toEqual([]);
  });

  it('are told by what they would be told by', () => {
    expect('Hold the part against that.').toMatch(new RegExp(HOLD, 'i'));
    expect('Clamp it, never hold it by hand.').not.toMatch(new RegExp(HOLD, 'i'));
  });
});

const plate = { rectangle: [80, 40] };

function reportOf(cuts: readonly object[], more: object = {}): Report {
  return examine(
    parseJob({ edgebite: 1, units: 'mm', part: { outline: plate, thickness: 10 }, cuts, ...more }),
  );
}

const strap = (from: number) => ({
  keepOut: [{ id: 'strap', kind: 'clamp', shape: { rectangle: [20, 20], at: [55, 10] }, from, to: 30 }],
});

const slit = { id: 'slit', kind: 'swept', diameter: 4, path: { svgPath: 'M50 -5 L50 45' } };
const hole = { id: 'bore', kind: 'bore', center: [60, 20], diameter: 10 };
const ring = { id: 'ring', kind: 'annular', center: [60, 20], diameter: 20, wall: 3 };

/** A job for each code whose words tell what to do about metal that moves or a cutter that meets something. */
const JOBS: readonly (readonly [code: string, report: Report])[] = [
  ['loose-offcut', reportOf([slit])],
  ['held-slug', reportOf([{ ...ring, depth: 8 }])],
  ['hits-clamp', reportOf([hole], strap(5))],
  ['grip-lost', reportOf([slit], { ...strap(10), keep: [10, 20] })],
  ['held-place-cut-away', reportOf([hole], { keep: [60, 20] })],
  ['one-sided-load', reportOf([{ id: 'bite', kind: 'bore', center: [80, 20], diameter: 12 }])],
  ['grip-bears-on-nothing', reportOf([hole], { keepOut: [{ ...strap(20).keepOut[0], from: 20 }] })],
];

/** Those of which a caution tells too. */
const SAID = ['loose-offcut', 'held-slug', 'hits-clamp', 'grip-lost', 'held-place-cut-away'];

describe('a finding on metal that can move', () => {
  it.each(JOBS)('%s says to clamp, never to hold by hand', (code, report) => {
    const found = report.findings.filter((finding) => finding.code === code);
    expect(found).not.toEqual([]);
    for (const { message } of found) {
      expect(message).toMatch(/\bclamp/i);
      expect(message).toMatch(/never hold .* by hand/);
    }
  });

  it('has its say in the cautions too', () => {
    for (const [code, report] of JOBS) {
      const told = report.cautions.filter(({ message }) => /by hand/.test(message)).map(({ code }) => code);
      if (SAID.includes(code)) expect(told, code).not.toEqual([]);
    }
  });
});

describe('the sheet that goes to the machine', () => {
  it.each(JOBS)('says to clamp, never to hold by hand, where there is %s', (_, report) => {
    const text = sheetText(sheetOf(report)).replace(/\s+/g, ' ');
    expect(text).toMatch(/\bclamp [^.]*\bby hand\b/i);
  });
});

describe('a slug that comes loose', () => {
  it('is touched when the spindle stands still and it is cool, and not before', () => {
    const own = reportOf([ring]);
    const passing = reportOf([ring, { id: 'bore', kind: 'bore', center: [60, 20], diameter: 20 }]);
    for (const { findings } of [own, passing]) {
      const [found] = findings.filter(({ code }) => code === 'loose-slug');
      expect(found?.message).toMatch(/spindle/);
      expect(found?.message).toMatch(/cool/);
    }
  });
});
