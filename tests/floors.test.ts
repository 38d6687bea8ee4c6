import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { crowdedFolders, FLOORS, faultsOf, pageFiles, sourceFiles } from './tools/floors.mjs';

const bore = 'packages/core/src/cut/bore.ts';

describe('the floor check', () => {
  it('lets a folder import from itself and from lower floors', () => {
    expect(
      faultsOf(bore, "import { a } from './relation.js'; import type { b } from '../geometry/point.js';"),
    ).toEqual([]);
  });

  it.each([
    ["import { a } from '../left/piece.js';", 'left stands on a higher floor'],
    ["import type { a } from '../job/schema.js';", 'job stands on a higher floor'],
    ["export * from '../left/piece.js';", 'left stands on a higher floor'],
    ["const a = await import('../left/piece.js');", 'left stands on a higher floor'],
    ["import { a } from '../index.js';", 'lies on no floor'],
    ["import { a } from '../../../svg/src/index.js';", 'lies outside packages/core/src/'],
    ["import { readFile } from 'node:fs';", 'imports node:fs'],
    ["import { a } from '@edgebite/core';", 'imports @edgebite/core'],
    ["import fc from 'fast-check';", 'imports fast-check'],
    ["import { a } from 'zodiac';", 'imports zodiac'],
  ])('names the fault in %s', (text, fault) => {
    expect(faultsOf(bore, text)).toEqual([expect.stringContaining(fault)]);
  });

  it('refuses a folder that is no floor', () => {
    expect(faultsOf('packages/core/src/misc/a.ts', '')).toEqual([
      expect.stringContaining('misc is not a floor'),
    ]);
  });

  it('lets the entry file and the testing floor see every floor', () => {
    const all = FLOORS.core.map((floor) => `export * from '../${floor}/a.js';`).join('\n');
    expect(faultsOf('packages/core/src/testing/index.ts', `import fc from 'fast-check';\n${all}`)).toEqual(
      [],
    );
    expect(faultsOf('packages/core/src/index.ts', all.replaceAll("'../", "'./"))).toEqual([]);
  });

  it('holds the rooms of svg to their order too', () => {
    const plan = 'packages/svg/src/plan/a.ts';
    expect(faultsOf(plan, "import { a } from '../pen/b.js';")).toEqual([]);
    expect(faultsOf(plan, "import { a } from '../draw/b.js';")).toEqual([
      expect.stringContaining('draw stands on a higher floor'),
    ]);
  });

  it('lets svg import core, and previewer both, but nothing upwards', () => {
    const both = "import { a } from '@edgebite/core'; import { b } from '@edgebite/svg';";
    expect(faultsOf('packages/previewer/src/a.ts', both)).toEqual([]);
    expect(faultsOf('packages/svg/src/a.ts', both)).toEqual([
      expect.stringContaining('imports @edgebite/svg'),
    ]);
    expect(faultsOf('packages/svg/src/a.ts', "import { a } from '@edgebite/previewer';")).toHaveLength(1);
  });

  it('reads the sources of all packages and leaves their tests out', () => {
    const files = sourceFiles(fileURLToPath(new URL('..', import.meta.url)));
    expect(files).toContain('packages/core/src/geometry/edge.ts');
    expect(files.filter((file) => file.includes('.test.'))).toEqual([]);
  });
});

describe('the folder check', () => {
  const full = Array.from({ length: 20 }, (_, k) => `packages/core/src/cut/file-${k}.ts`);

  it('lets a folder hold twenty files, and what lies in folders below it', () => {
    expect(crowdedFolders([...full, 'packages/core/src/cut/below/a.ts', 'packages/core/src/a.ts'])).toEqual(
      [],
    );
  });

  it('names a folder that holds more', () => {
    expect(crowdedFolders([...full, 'packages/core/src/cut/one-more.ts'])).toEqual([
      'packages/core/src/cut holds 21 files; part it: 20 at most',
    ]);
  });

  it('finds none in the packages and the page', () => {
    const root = fileURLToPath(new URL('..', import.meta.url));
    expect(pageFiles(root).length).toBeGreaterThan(50);
    expect(crowdedFolders([...sourceFiles(root), ...pageFiles(root)])).toEqual([]);
  });
});
