import type { Distance } from './distance.js';
import { cellAt } from './grid.js';
import { fromTool, partOf, type Tool } from './job.js';
import { KEPT, type Moment, NOBODY, type Run, UNKNOWN } from './run.js';
import type { Place } from './shapes.js';
import { takenBy } from './steps.js';

/** Whose the metal at a place is, as a tool meets it. */
export type Whose = 'stands' | 'lifted' | 'untold';

/** Between what a signed distance can lie. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
  /** The least without tools that stand on the same centre as what is asked about. */
  readonly lowOfOthers: number;
}

/** The metal of one slab at some moment, asked about exactly, by signed distances. */
export interface Metal {
  /**
   * Least and most that the signed distance can be at all places within reach of a place.
   * @param about the places lie on circles about this one, no further in or out than `deep` from that of the place
   */
  readonly bounds: (x: number, y: number, reach: number, about?: Place, deep?: number) => Bounds;
  /** Whose metal is at a place where some is. */
  readonly whose: (x: number, y: number) => Whose;
}

/** Two places nearer than this are one. */
const SAME = 1e-9;

/**
 * The metal of a slab at a moment.
 * @param lifted tells of loose bodies whether they count as lifted out
 */
export function metalAt(run: Run, moment: Moment, slab: number, lifted: (body: number) => boolean): Metal {
  const part = partOf(run.job);
  const tools: Tool[] = run.steps
    .slice(0, moment.done)
    .filter(({ step }) => takenBy(step, run.slabs).includes(slab))
    .map(({ step }) => step.tool);
  const away = tools.map(fromTool);
  const cells = run.grid.across * run.grid.along;
  return {
    bounds: (x, y, reach, about, deep = 0) => {
      const middle = part(x, y);
      let [low, high] = [middle - reach, middle + reach];
      let lowOfOthers = low;
      for (let k = 0; k < tools.length; k++) {
        const value = (away[k] as Distance)(x, y);
        // On a circle about the tool's own centre its distance does not change.
        const isSame = about !== undefined && isAbout(tools[k] as Tool, about);
        const by = isSame ? deep : reach;
        low = Math.min(low, value - by);
        high = Math.min(high, value + by);
        if (!isSame) lowOfOthers = Math.min(lowOfOthers, value - by);
        if (high < 0) break;
      }
      return { low, high, lowOfOthers };
    },
    whose: (x, y) => {
      const cell = cellAt(run.grid, x, y);
      const owner = cell === null ? NOBODY : (moment.owner[slab * cells + cell] as number);
      if (owner === KEPT) return 'stands';
      if (owner === UNKNOWN || owner === NOBODY) return 'untold';
      return lifted(owner) ? 'lifted' : 'stands';
    },
  };
}

function isAbout(tool: Tool, [x, y]: Place): boolean {
  if (tool.kind !== 'disc' && tool.kind !== 'ring') return false;
  return Math.abs(tool.center[0] - x) < SAME && Math.abs(tool.center[1] - y) < SAME;
}
