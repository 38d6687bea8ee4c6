import * as previewer from '@edgebite/previewer';
import * as svg from '@edgebite/svg';
import * as tree from '@edgebite/svg/tree';
import { describe } from 'vitest';
import { PREVIEWER, SVG } from './rows-svg.js';
import { functionsOf, testTable } from './table.js';

/* The same table as for core, of the packages that stand on it. */

describe('every public function of svg', () => {
  testTable(functionsOf({ ...svg }), SVG);
});

describe('every tree of svg', () => {
  const { draw, drawView } = SVG;
  if (draw === undefined || drawView === undefined) throw new Error('the drawings have no rows');
  const texts = functionsOf({ ...tree }).map(([name, call]): [string, typeof call] => [
    name,
    // What the tree is as a text: svg.js keeps much in it that is not the drawing's.
    (...given) => (call(...given) as { node: { outerHTML: string } }).node.outerHTML,
  ]);
  testTable(texts, { drawTree: draw, drawViewTree: drawView });
});

describe('every public function of the previewer', () => {
  // The command reads arguments as a person types them: packages/previewer/src/run.test.ts.
  testTable(
    functionsOf({ ...previewer }).filter(([name]) => name !== 'run'),
    PREVIEWER,
  );
});
