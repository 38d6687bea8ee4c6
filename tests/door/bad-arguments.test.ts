import * as core from '@edgebite/core';
import * as flatten from '@edgebite/core/flatten';
import { describe, expect, it } from 'vitest';
import { GEOMETRY } from './rows-geometry.js';
import { JOBS } from './rows-jobs.js';
import { TOOLS } from './rows-tools.js';
import { functionsOf, testTable } from './table.js';

/*
 * Every public function with every argument spoiled, as plain JavaScript may: each call ends in an EdgebiteError that says
 * where and what to do, or the value is written down as fine and no number of the answer is none.
 */
describe('every public function of core', () => {
  const functions = functionsOf({ ...core, ...flatten });

  it('is looked for', () => {
    expect(functions.length).toBeGreaterThan(150);
  });

  testTable(functions, { ...GEOMETRY, ...TOOLS, ...JOBS });
});
