import type { Side } from '../cut/cut.js';
import { depthTarget } from './depth-target.js';
import { inUnit } from './length-unit.js';
import { type Interval, spread } from './reach.js';
import type { Laid } from './setup.js';

/** A level of a cut or a face of the part: the face of the drawn part that it is measured from, and how far it may be off. */
export interface Level {
  readonly from: Side;
  /** Upwards on the part as drawn, in its unit: what is known, and each cause. */
  readonly known: number;
  readonly causes: readonly { readonly key: string; readonly by: number }[];
}

/** A face of the part. */
export function faceLevel(from: Side): Level {
  return { from, known: 0, causes: [] };
}

/** What the end of a cut is worked out from. */
export interface EndTask {
  /** The height at which its tool is to stand, over the face that the part lies on. */
  readonly lowest: number;
  readonly thickness: number;
  /** What the tool is called: another tool is touched off anew. */
  readonly tool: string;
  readonly cut: string;
}

/**
 * How far the end of a blind cut may be off: by the links of the zero in Z, half a step of what is read there, and the known
 * rounding of its target. Null where the setup has no zero in Z.
 *
 * Source: as of targets, see `depthTarget`.
 */
export function endLevel(lay: Laid, task: EndTask): Level | null {
  const { z, setup, part } = lay;
  const zero = setup.zero.z;
  const target = depthTarget(lay, { ...task, tolerance: 0, from: 'top' });
  if (z === null || zero === null || target === null) return null;
  const { units, resolution, sense } = setup.heights;
  const inPart = (length: number) => inUnit(length, units, part.units);
  const up = setup.lie.flip === null ? 1 : -1;
  const isTop = zero.at === task.thickness;
  const from = isTop === (setup.lie.flip === null) ? 'top' : 'bottom';
  // Where the level reads more than it is taken for, the tool stands lower by as much.
  const links = z.links.flatMap(({ tolerance }, k) => {
    const { name, way } = zero.links[k] as { readonly name: string | null; readonly way: 1 | -1 };
    const key = name === null ? `link ${k} in ${setup.id} z for ${task.tool}` : `thing ${name}`;
    return tolerance === 0 ? [] : [{ key, by: -up * sense * way * inPart(tolerance) }];
  });
  return {
    from,
    known: up * sense * inPart(target.roundingError),
    causes: [...links, { key: `read ${task.cut} in ${setup.id} z`, by: up * inPart(resolution / 2) }],
  };
}

/**
 * Between what the metal between two levels can lie; below 0 there is none. The thickness of the part counts where they are
 * measured from different faces of it.
 */
export function floorInterval(thickness: number, lower: Level, upper: Level, tolerance: number): Interval {
  const sum = new Map<string, number>();
  for (const { key, by } of upper.causes) sum.set(key, (sum.get(key) ?? 0) + by);
  for (const { key, by } of lower.causes) sum.set(key, (sum.get(key) ?? 0) - by);
  if (lower.from !== upper.from) sum.set('thickness', (sum.get('thickness') ?? 0) + tolerance);
  const { worst, rss } = spread({
    known: thickness + upper.known - lower.known,
    causes: [...sum.values()].map((by) => ({ by, share: 1 })),
    slack: 0,
  });
  return { worst, rss };
}
