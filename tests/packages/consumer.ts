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
if (drawTree(report).svg() !== draw(report)) throw new Error('a tree is another drawing');
if (Math.abs(areaOf(fromFlatten(toFlatten(discOfRadius({ x: 0, y: 0 }, 2)))) - 4 * Math.PI) > 1e-9) throw new Error('flatten');
if (typeof placeByDepth !== 'function') throw new Error('machining');
try {
  discOfRadius({ x: 0, y: 0 }, 'wide');
  throw new Error('a radius that is a text was taken');
} catch (error) {
  // One class in all entries.
  if (!(error instanceof EdgebiteError)) throw error;
}
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
  ['@edgebite/core', 'EdgebiteError, examine, JobError, parseJob'],
  ['@edgebite/core/testing', 'areaOf, boxRegion'],
  ['@edgebite/core/geometry', 'discOfRadius'],
  ['@edgebite/core/machining', 'placeByDepth'],
  ['@edgebite/core/flatten', 'fromFlatten, toFlatten'],
  ['@edgebite/svg', 'draw'],
  ['@edgebite/svg/tree', 'drawTree'],
  ['@edgebite/previewer', 'textReport'],
] as const;

const imports = NAMES.map(([from, names]) => `import { ${names} } from '${from}';`).join('\n');
const requires = NAMES.map(([from, names]) => `const { ${names} } = require('${from}');`).join('\n');

/** In a browser and in a worker, which has no DOM: no testing, no previewer. */
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
import { draw } from '@edgebite/svg';
const report = examine(parseJob(${JOB}));
const said = ${SAID};
postMessage(draw(report).endsWith('</svg>') ? said : 'no drawing');
`;

/** An application with a worker that its bundler finds. */
const APP = `
import { draw } from '@edgebite/svg';
import { drawTree } from '@edgebite/svg/tree';
import { examine, parseJob } from '@edgebite/core';
const report = examine(parseJob(${JOB}));
drawTree(report).addTo(document.body);
if (document.querySelector('svg').outerHTML.length < draw(report).length / 2) window.fault = 'no tree';
const worker = new Worker(new URL('./worker.js', import.meta.url), { type: 'module' });
worker.onmessage = ({ data }) => { window.answer = data; };
worker.onerror = ({ message }) => { window.fault = message; };
`;

/** The files of the schemas, under a strict validator. */
const SCHEMAS = `
const Ajv = require('ajv/dist/2020.js').default;
const ajv = new Ajv({ logger: { log() {}, warn(said) { throw new Error(said); }, error(said) { throw new Error(said); } } });
const names = ['aim', 'drawer', 'job', 'report'];
for (const name of names) ajv.addSchema(require('@edgebite/core/schemas/' + name + '.schema.json'));
if (!ajv.validate('urn:edgebite:job:1', ${JOB})) throw new Error(ajv.errorsText());
const { examine, parseJob } = require('@edgebite/core');
if (!ajv.validate('urn:edgebite:report:1', { ...examine(parseJob(${JOB})), later: 1 })) throw new Error(ajv.errorsText());
if (ajv.validate('urn:edgebite:job:1', { ...${JOB}, later: 1 })) throw new Error('a job with a strange key was taken');
console.log(names.join(' '));
`;

const TYPED = `
import { arcsFromPolyline, examine, parseJob, type Report, type Region, union } from '@edgebite/core';
import { checkLaws, type Booleans } from '@edgebite/core/testing';
import { type CircularSegment, discOfRadius } from '@edgebite/core/geometry';
import { type ToolCut, stepIn } from '@edgebite/core/machining';
import { draw } from '@edgebite/svg';
import { drawTree } from '@edgebite/svg/tree';
import { run } from '@edgebite/previewer';
export const report: Report = examine(parseJob('{}'));
export const svg: string = draw(report);
export const code: Promise<number> = run(['check', 'job.json']);
export const region: Region = union([discOfRadius({ x: 0, y: 0 }, 1)]);
export const depth = (segment: CircularSegment): number => segment.depth;
export const idOf = (cut: ToolCut): string => cut.id;
export const passes = typeof stepIn;
export const tree = (): string => drawTree(report).svg();
// Under exactOptionalPropertyTypes an option that is undefined is another thing than one that is left out.
export const plain: string = draw(report, { sheet: undefined, upright: undefined, theme: undefined, idPrefix: undefined, range: undefined });
export const deviation: number = arcsFromPolyline([], 1).deviation;
export const faults = (ops: Booleans): string[] => checkLaws(ops).map((fault) => fault.law);
// @ts-expect-error a number is no outline
export const wrong: Region = 5;
`;

const TYPED_FLATTEN = `
import type { Region } from '@edgebite/core';
import { fromFlatten, toFlatten } from '@edgebite/core/flatten';
export const region: Region = fromFlatten(toFlatten([]));
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
      exactOptionalPropertyTypes: true,
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
  'app.js': APP,
  'app.html': '<!doctype html><body><script type="module" src="./app.js"></script></body>',
  'schemas.cjs': SCHEMAS,
  'index.html': '<!doctype html><script type="module" src="./page.js"></script>',
  'typed-module.mts': TYPED,
  // The previewer is a command; its module has no CommonJS build, which a CommonJS file may only require since Node 20.19.
  'typed-common.cts': TYPED.replace(/^.*previewer.*\n/m, '').replace(/^.*run\(.*\n/m, ''),
  'tsconfig.node16.json': options('Node16', 'Node16', false, ['typed-module.mts', 'typed-common.cts']),
  'tsconfig.bundler.json': options('ESNext', 'Bundler', false, ['typed-module.mts']),
  // Declarations of @flatten-js/core have faults of their own under node16.
  'typed-flatten.mts': TYPED_FLATTEN,
  'tsconfig.flatten.json': options('ESNext', 'Bundler', false, ['typed-flatten.mts']),
};
