/*
 * Mutation test of the rooms above the kernel, one at a time:
 * npm run mutate:rooms -- --mutate 'packages/core/src/find/*.ts'
 */
import { readFileSync } from 'node:fs';
import kernel, { testsIn } from './stryker.config.mjs';

const FOLDERS = [
  'alike',
  'center',
  'cutting',
  'datum',
  'jobs',
  'load',
  'measure',
  'sheet',
  'tolerance',
  'whole',
];

/** What the runner has no stand-in for. */
const WITHOUT_STAND_IN = /\b(beforeEach|beforeAll|afterEach|afterAll|vi)\b.*from 'vitest'/;

function isRunnable(file) {
  return !WITHOUT_STAND_IN.test(readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8'));
}

export default {
  ...kernel,
  mutate: [
    'packages/core/src/{datum,cutting,load,passes,placing,path,measure,setups,state,result,step,find,write}/**/*.ts',
  ],
  inOneProcess: {
    runs: 0.02,
    /** In ms. */
    slowest: 400,
    /** They count that their cases are many. */
    leaveOut: [
      // It reads the sources as they are written.
      'words > tell nobody to hold anything',
      'stepIn and openOut > obey the laws on generated parts',
      'gouges > tells just how much too large a tool is for a path, on generated outlines',
      'jobs of placements, passes and paths are refused with their faults, or have sound reports',
      'a report after changes is that of the changed job > on plates with holes of all kinds',
      'wayOff > agrees with trying many directions and places, in generated metal of two heights',
      'generated bites > measured by their points give radius and centre back, within the sampling',
    ],
    testFiles: FOLDERS.flatMap((folder) => testsIn(`tests/${folder}`)).filter(isRunnable),
  },
  ignorePatterns: ['out', 'prove-failures', 'packages/*/dist'],
  jsonReporter: { fileName: 'out/mutation-rooms.json' },
};
