import { readdirSync, readFileSync } from 'node:fs';
import { arcEdge, isoWords, lineEdge } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { ROOT, textOf } from './pages.js';

const p = (x: number, y: number) => ({ x, y });

describe('the guides agree with the code', () => {
  it('on the words that a path is written in', () => {
    const guide = /`isoWords` for a path[\s\S]*$/.exec(textOf('docs/step-in-passes.md'))?.[0] ?? '';
    const told = [...guide.matchAll(/`([GXYZIJF]\d*)`/g)].map(([, word]) => word);
    const path = [
      lineEdge(p(0, 0), p(10, 0)),
      arcEdge(p(10, 0), p(10, 10), p(10, 5), true),
      arcEdge(p(10, 10), p(20, 10), p(15, 10), false),
    ];
    const blocks = (['mm', 'inch'] as const).flatMap((units) =>
      (['G20/G21', 'G70/G71'] as const).flatMap((unitWords) =>
        (['absolute', 'incremental'] as const).flatMap(
          (coordinates) =>
            isoWords([path], { units, unitWords, coordinates, feed: 100, heights: { clear: 5, cut: -2 } })
              .blocks,
        ),
      ),
    );
    const words = blocks.flatMap((block) =>
      block.split(' ').map((word) => (word.startsWith('G') ? word : word.slice(0, 1))),
    );
    expect(new Set(words)).toEqual(new Set(told));
  });

  it('that no test reads a clock', () => {
    expect(textOf('docs/performance.md')).toContain('nothing in the test suite is timed');
    const tests = ['tests', 'packages'].flatMap((folder) =>
      readdirSync(`${ROOT}${folder}`, { recursive: true, encoding: 'utf8' })
        .filter((file) => file.endsWith('.test.ts') && !file.includes('node_modules'))
        .map((file) => `${folder}/${file}`),
    );
    expect(tests.length).toBeGreaterThan(150);
    const clocks = new RegExp(['performance\\.now', 'Date\\.now', 'cpuUsage', 'hrtime'].join('|'));
    const readers = tests.filter((file) =>
      clocks.test(readFileSync(`${ROOT}${file}`, 'utf8').replace(/\['[^\]]*'\]/g, '')),
    );
    expect(readers).toEqual([]);
  });
});
