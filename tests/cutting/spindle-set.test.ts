import { type SpindleLimits, spindleSetting } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../tools/runs.js';

const NONE: SpindleLimits = { tool: null, slowest: null, fastest: null, speeds: null };

describe('the speed to set', () => {
  it.each([
    ['is the range wished for where nothing limits it', {}, [300, 400], null],
    ['stays under the limit of the tool', { tool: 350 }, [300, 350], 'tool'],
    ['is the whole range where the limit of the tool is its upper end', { tool: 400 }, [300, 400], null],
    ['or that of the machine is, or its slowest the lower', { slowest: 300, fastest: 400 }, [300, 400], null],
    ['is the limit of the tool where that is slower', { tool: 100 }, [100, 100], 'tool'],
    ['stays within the machine', { slowest: 320, fastest: 380 }, [320, 380], 'machine'],
    ['is the fastest of the machine where that is slower', { fastest: 200 }, [200, 200], 'machine'],
    ['is none where the machine is too fast', { slowest: 500 }, null, 'machine'],
    ['is none where a tool is too slow for the machine', { tool: 100, slowest: 150 }, null, 'machine'],
    ['takes the steps within the range', { speeds: [80, 310, 390, 600] }, [310, 390], null],
    ['takes steps at its very ends', { speeds: [80, 300, 350, 400, 600] }, [300, 400], null],
    ['takes the next slower step where none is', { speeds: [80, 210, 600] }, [210, 210], 'machine'],
    ['is none where all steps are faster', { speeds: [500, 600] }, null, 'machine'],
    ['keeps a step under the limit of the tool', { speeds: [210, 340, 390], tool: 350 }, [340, 340], 'tool'],
  ] as const)('%s', (_, limits, range, limitedBy) => {
    expect(spindleSetting([300, 400], { ...NONE, ...limits })).toEqual({ range, limitedBy });
  });

  it('is never over the wish, the tool or the machine, whatever they are', () => {
    const speed = fc.integer({ min: 1, max: 5000 });
    const maybe = fc.option(speed, { nil: null });
    fc.assert(
      fc.property(
        speed,
        speed,
        maybe,
        maybe,
        fc.option(fc.array(speed, { minLength: 1 }), { nil: null }),
        (a, b, tool, fastest, speeds) => {
          const most = Math.max(a, b);
          const limits = { ...NONE, tool, fastest: speeds === null ? fastest : null, speeds };
          const { range } = spindleSetting([Math.min(a, b), most], limits);
          if (range === null) return;
          expect(range[0]).toBeLessThanOrEqual(range[1]);
          expect(range[1]).toBeLessThanOrEqual(Math.min(most, tool ?? most, limits.fastest ?? most));
          if (speeds !== null) for (const end of range) expect(speeds).toContain(end);
        },
      ),
      { numRuns: runs(300) },
    );
  });
});
