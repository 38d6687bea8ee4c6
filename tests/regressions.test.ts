import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkAgain, type KeptFailure, loadedChecks } from './fuzz/checks.js';

/*
 * Cases and jobs that once failed, as `npm run fuzz` has kept and shrunk them. Nothing is compared with a stored
 * answer: each file is put through the check that found it, whose outside sources stand in tests/fuzz/checks.ts.
 */

const FOLDER = new URL('regressions/', import.meta.url);
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
const checks = await loadedChecks();

describe('what once failed holds', () => {
  it('and is there', () => {
    expect(files.length).toBeGreaterThan(0);
  });

  it.each(files)('%s', (name) => {
    const kept = JSON.parse(readFileSync(new URL(name, FOLDER), 'utf8')) as KeptFailure;
    expect(Object.keys(checks)).toContain(kept.check);
    checkAgain(checks, kept);
  });
});
