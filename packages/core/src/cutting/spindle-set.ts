import { common, type Range } from './range.js';

/** What may limit the spindle, in turns per minute; null where there is no such limit. */
export interface SpindleLimits {
  /** Fastest that the tool may turn. */
  readonly tool: number | null;
  readonly slowest: number | null;
  readonly fastest: number | null;
  /** All speeds that the machine has, where it has steps. */
  readonly speeds: readonly number[] | null;
}

/** The speeds to set, and which limit keeps them from the whole range wished for. */
export interface SpindleSetting {
  /** null where the machine turns too fast even at its slowest. */
  readonly range: Range | null;
  readonly limitedBy: 'tool' | 'machine' | null;
}

/**
 * The speeds to set of a range wished for. Where a limit lies under the range, or no step of the machine is in it, it is
 * the next slower speed: slow is safe for the tool. Never over the range, nor over the tool's limit.
 */
export function spindleSetting(wish: Range, limits: SpindleLimits): SpindleSetting {
  const capped = limits.tool === null ? wish : under(wish, limits.tool);
  const byTool = limits.tool !== null && limits.tool < wish[1];
  const range = limits.speeds === null ? stretchOf(capped, limits) : stepsOf(capped, limits.speeds);
  const isWhole = range !== null && range[0] === capped[0] && range[1] === capped[1];
  if (!isWhole && !(range !== null && limits.speeds !== null && range[0] >= capped[0])) {
    return { range, limitedBy: 'machine' };
  }
  return { range, limitedBy: byTool ? 'tool' : null };
}

function under([least, most]: Range, cap: number): Range {
  return [Math.min(least, cap), Math.min(most, cap)];
}

function stretchOf(wish: Range, { slowest, fastest }: SpindleLimits): Range | null {
  const capped = fastest === null ? wish : under(wish, fastest);
  return slowest === null ? capped : common(capped, [slowest, Number.MAX_VALUE]);
}

function stepsOf([least, most]: Range, speeds: readonly number[]): Range | null {
  const within = speeds.filter((speed) => speed >= least && speed <= most);
  if (within.length > 0) return [Math.min(...within), Math.max(...within)];
  const slower = speeds.filter((speed) => speed < least);
  if (slower.length === 0) return null;
  const next = Math.max(...slower);
  return [next, next];
}
