// Prints how test runs ended, from the JSON reports that vitest wrote, added up: `12 passed, 0 failed`.
import { readFileSync } from 'node:fs';

const files = process.argv.slice(2);
if (files.length === 0) throw new Error('usage: node tests/tools/closing-line.mjs REPORT.json ...');
const total = { passed: 0, failed: 0, skipped: 0 };
for (const file of files) {
  const report = JSON.parse(readFileSync(file, 'utf8'));
  total.passed += report.numPassedTests;
  total.failed += report.numFailedTests;
  total.skipped += report.numPendingTests + report.numTodoTests;
}
const { passed, failed, skipped } = total;
console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
