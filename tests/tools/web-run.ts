import { parseArgs } from 'node:util';
import { type Region, subtract } from '@edgebite/core';
import { cutRegions, extentOf, families } from '@edgebite/core/testing';
import fc from 'fast-check';
import { thinParts } from '../left/thin-parts.js';
import { checkWebs, isFar, isTooFine, type WebCheck } from '../left/web-check.js';

/*
 * node tests/tools/run.mjs tests/tools/web-run.ts --cases 3000 --seed 7
 * Webs against the sampler, each case at several limits: parts made to be thin, then every family of cuts that the
 * sampler can resolve. Exit code 1 if anything differed; each difference is printed with its family and number.
 */

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '3000' },
    seed: { type: 'string', default: '1' },
    family: { type: 'string' },
  },
});

const seed = wholeNumber('seed', values.seed);
const total = wholeNumber('cases', values.cases);
const sources: readonly (readonly [string, fc.Arbitrary<Region>])[] = [
  ['thin parts', thinParts],
  ...families
    .filter((family) => !isTooFine(family))
    .map((family) => {
      const sections = family.cases
        .filter(({ outline }) => !isFar(outline))
        .map((cutCase) => subtract(cutCase.outline, cutRegions(cutCase)));
      return [family.name, sections] as const;
    }),
];
const chosen = sources.filter(([name]) => values.family === undefined || name === values.family);
if (chosen.length === 0) throw new RangeError(`--family ${values.family}: there is no family of that name`);

let differing = 0;
let sum: WebCheck = { sampled: 0, reported: 0, thickness: 0, strip: 0, flare: 0, flares: 0 };
for (const [name, sections] of chosen) {
  // Parts made to be thin are half of all cases.
  const share = name === 'thin parts' ? 0.5 : 0.5 / Math.max(1, chosen.length - 1);
  const numRuns = Math.max(1, Math.ceil(total * (chosen.length === 1 ? 1 : share)));
  const before = differing;
  fc.sample(sections, { seed: ownSeed(name), numRuns }).forEach((section, k) => {
    for (const limit of [0.02, 0.1, 0.35])
      check(`${name} ${k}, limit ${limit} of the extent`, section, limit);
  });
  console.log(`${name}: ${numRuns} cases at 3 limits, ${differing - before} differed`);
}
console.log(
  `${sum.sampled} sampled, ${sum.reported} reported, ${sum.flares} lengths walked; off by at most ` +
    `${sum.thickness.toExponential(1)} in thickness, ${sum.strip.toExponential(1)} in strips, ` +
    `${sum.flare.toExponential(1)} in lengths, as shares of the extent`,
);
console.log(differing === 0 ? `seed ${seed}: none differed` : `seed ${seed}: ${differing} differed`);
if (differing > 0) process.exitCode = 1;

function check(what: string, section: Region, limit: number): void {
  try {
    const one = checkWebs(section, limit * extentOf(section));
    sum = {
      sampled: sum.sampled + one.sampled,
      reported: sum.reported + one.reported,
      thickness: Math.max(sum.thickness, one.thickness),
      strip: Math.max(sum.strip, one.strip),
      flare: Math.max(sum.flare, one.flare),
      flares: sum.flares + one.flares,
    };
  } catch (error) {
    differing += 1;
    console.log(`${what}: ${error instanceof Error ? error.message : error}`);
  }
}

function ownSeed(name: string): number {
  return [...name].reduce((hash, letter) => (hash * 31 + letter.charCodeAt(0)) | 0, seed);
}

function wholeNumber(option: string, text: string): number {
  const value = Number(text);
  if (!Number.isSafeInteger(value) || value < 0)
    throw new RangeError(`--${option} ${text}: not a whole number`);
  return value;
}
