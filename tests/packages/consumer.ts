// The files of an empty project that uses the packages as others do.

const JOB = `{
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [80, 30] }, thickness: 12 },
  cuts: [{ id: 'seat', kind: 'annular', center: [70, 14], diameter: 26, wall: 4.5 }],
}`;

/** What every use must come to: pieces, and the area of the slug, pi 8.5^2 to two digits. */
export const EXPECTED = 'kept slug 226.98';

const SAID = "report.pieces.map(({ role }) => role).join(' ') + ' ' + report.pieces[1].area.toFixed(2)";

/** Uses core and its testing entry, svg and the previewer, and prints what comes of it. */
const BODY = `
const report = examine(parseJob(${JOB}));
if (!(draw(report).startsWith('<svg') || draw(report).includes('<svg'))) throw new Error('no drawing');
if (areaOf(boxRegion(0, 0, 2, 3)) !== 6) throw new Error('testing');
if (!textReport(report).includes('slug')) throw new Error('text');
try {
  parseJob({});
  throw new Error('an empty job was taken');
} catch (error) {
  if (!(error instanceof JobError)) throw error;
}
console.log(${SAID});
`;

const NAMES = [
  ['@edgebite/core', 'examine, JobError, parseJob'],
  ['@edgebite/core/testing', 'areaOf, boxRegion'],
  ['@edgebite/svg', 'draw'],
  ['@edgebite/previewer', 'textReport'],
] as const;

const imports = NAMES.map(([from, names]) => `import { ${names} } from '${from}';`).join('\n');
const requires = NAMES.map(([from, names]) => `const { ${names} } = require('${from}');`).join('\n');

/** In a browser and in a worker: no testing, no previewer; a worker has no DOM, so no drawing there. */
const PAGE = `
import { examine, parseJob } from '@edgebite/core';
import { draw } from '@edgebite/svg';
const report = examine(parseJob(${JOB}));
const said = ${SAID};
const svg = draw(report);
window.answer = svg.includes('</svg>') ? said : 'no drawing';
`;

const WORKER = `
import { examine, parseJob } from '@edgebite/core';
const report = examine(parseJob(${JOB}));
postMessage(${SAID});
`;

const TYPED = `
import { arcsFromPolyline, examine, parseJob, type Report, type Region, union } from '@edgebite/core';
import { checkLaws, type Booleans } from '@edgebite/core/testing';
import { draw } from '@edgebite/svg';
import { run } from '@edgebite/previewer';
export const report: Report = examine(parseJob('{}'));
export const svg: string = draw(report);
export const code: Promise<number> = run(['check', 'job.json']);
export const region: Region = union([]);
export const deviation: number = arcsFromPolyline([], 1).deviation;
export const faults = (ops: Booleans): string[] => checkLaws(ops).map((fault) => fault.law);
// @ts-expect-error a number is no outline
export const wrong: Region = 5;
`;

const options = (
  module: string,
  moduleResolution: string,
  skipLibCheck: boolean,
  files: readonly string[],
): string =>
  JSON.stringify({
    compilerOptions: {
      module,
      moduleResolution,
      target: 'ES2023',
      lib: ['ES2023', 'DOM'],
      strict: true,
      noEmit: true,
      skipLibCheck,
      types: ['node'],
    },
    files,
  });

/** Name and text of each file. */
export const FILES: Readonly<Record<string, string>> = {
  'use.mjs': `${imports}\n${BODY}`,
  'use.cjs': `${requires}\n${BODY}`,
  'page.js': PAGE,
  'worker.js': WORKER,
  'index.html': '<!doctype html><script type="module" src="./page.js"></script>',
  'typed-module.mts': TYPED,
  // The previewer is a command; its module has no CommonJS build, which a CommonJS file may only require since Node 20.19.
  'typed-common.cts': TYPED.replace(/^.*previewer.*\n/m, '').replace(/^.*run\(.*\n/m, ''),
  // Declarations of @flatten-js/core have faults of their own under node16; ours are looked at under bundler.
  'tsconfig.node16.json': options('Node16', 'Node16', true, ['typed-module.mts', 'typed-common.cts']),
  'tsconfig.bundler.json': options('ESNext', 'Bundler', false, ['typed-module.mts']),
};
