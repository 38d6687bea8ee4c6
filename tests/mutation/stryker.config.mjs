/* Mutation test of the kernel: npm run mutate. A part of it: npm run mutate -- --mutate 'packages/core/src/left/webs.ts' */
import { readdirSync } from 'node:fs';

/** Files that do not count: they try other libraries, or whether laws find faults that they plant themselves. */
const WITHOUT = new Set([
  'tests/region/flatten-families.test.ts',
  'tests/region/law-faults.test.ts',
  'tests/region/offset-peers.test.ts',
  'tests/region/peers.test.ts',
]);

/** The test files of a folder, but for those. */
export function testsIn(folder) {
  return readdirSync(new URL(`../../${folder}`, import.meta.url))
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => `${folder}/${name}`)
    .filter((file) => !WITHOUT.has(file))
    .sort();
}

export default {
  mutate: ['packages/core/src/{geometry,region,noding,overlay,clear,combine,left}/**/*.ts', '!**/*.test.ts'],
  plugins: ['./tests/mutation/runner.mjs'],
  testRunner: 'in-one-process',
  inOneProcess: {
    /** Share of the usual number of generated cases: a mutant is met by hundreds of tests. */
    runs: 0.02,
    /** By the start of their names. */
    leaveOut: [
      // They count that their cases are many.
      'knife edges against other computations > feathers are what rolling a disc along either edge finds',
      'webs are what sampling finds > in parts made to be thin',
      'pieces of generated jobs of many depths > add up, slab by slab and cut by cut',
      'a report after changes is that of the changed job > on plates with holes of all kinds',
      // Each takes longer than hundreds of the others, and finds nothing that they do not.
      'a handle > ',
      'a report after changes is that of the changed job > on the example ',
      'exact case chain-200-001 > ',
      'exact cases give the same from every start, mirrored, turned, far away and at any scale > chain-',
      'exact cases give the same from every start, mirrored, turned, far away and at any scale > generic-',
      'exact cases give the same from every start, mirrored, turned, far away and at any scale > split-',
      'exact cases give the same from every start, mirrored, turned, far away and at any scale > outline-holes-',
      'the laws hold in the family > grid',
      'the laws hold in the family > inside-a-hole',
      'the laws hold in the family > many-discs',
      'the laws hold in the family > rough-then-finish',
      'the laws hold in the family > split',
      'the laws hold in the family > touching-grid',
      'reports of the examples > saddle-block.json',
      'offset is what its definition says > on cut outlines and heaps of shapes, at distances at which something just happens',
      'webs are what sampling finds > after cuts: generic-discs',
      'webs are what sampling finds > after cuts: inside-a-hole',
      'webs are what sampling finds > after cuts: many-discs',
      'webs are what sampling finds > after cuts: nested-rings',
      'webs are what sampling finds > after cuts: touching-holes',
      'webs are what sampling finds > after cuts: split',
      'webs of a job > slot ',
      'what once failed holds > job-held-slugs-',
      'what once failed holds > job-slug',
      'what once failed holds > laws-holes-idle-edges-halved',
      'what once failed holds > laws-level-contact',
      'what once failed holds > laws-ring-touching-a-hole',
      'webs of a job > hole ',
    ],
    testFiles: [
      'tests/regressions.test.ts',
      ...['tests/geometry', 'tests/region', 'tests/left'].flatMap(testsIn),
      'tests/jobs/examiner.test.ts',
      'tests/jobs/report.test.ts',
      'packages/core/src/cut/swept.test.ts',
      'packages/core/src/cut/footprint.test.ts',
    ],
  },
  coverageAnalysis: 'perTest',
  warnings: { unknownOptions: false },
  ignorePatterns: ['docs', 'out', 'prove-failures', 'packages/svg', 'packages/previewer', 'packages/*/dist'],
  tempDirName: 'out/mutation',
  reporters: ['clear-text', 'json', 'progress-append-only'],
  clearTextReporter: { allowColor: false, reportTests: false, logTests: false, reportMutants: false },
  jsonReporter: { fileName: 'out/mutation.json' },
  thresholds: { high: 90, low: 80, break: 80 },
  concurrency: 2,
  disableTypeChecks: false,
  allowEmpty: false,
};
