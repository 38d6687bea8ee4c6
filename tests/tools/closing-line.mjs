// Prints how a test run ended, from the JSON report that vitest wrote: `12 passed, 0 failed`.
import { readFileSync } from 'node:fs';

const [file] = process.argv.slice(2);
if (!file) throw new Error('usage: node tests/tools/closing-line.mjs REPORT.json');
const { numPassedTests, numFailedTests, numPendingTests, numTodoTests } = JSON.parse(
  readFileSync(file, 'utf8'),
);
const skipped = numPendingTests + numTodoTests;
console.log(`${numPassedTests} passed, ${numFailedTests} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
