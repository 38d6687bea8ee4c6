import { inShape } from './distance.js';
import { fromTool, type KeepOutDocument, type Tool } from './job.js';
import type { Metal } from './metal.js';
import { loopsOf, type Place } from './shapes.js';

/** Something that a tool may meet: least and most of its signed distance near a place, and whether it is there. */
interface Thing {
  readonly at: (x: number, y: number) => number;
  /** Whether what is there counts; null if that is not told. */
  readonly counts: (x: number, y: number) => boolean | null;
}

export type Meeting = 'meets' | 'clear' | 'untold';

/**
 * Whether a tool goes into something by more than a depth, at some place. What it goes into by less than twice that
 * may be told either way. By squares, quartered where the signed distances at their middles leave it open.
 */
function meeting(tool: Tool, thing: Thing, box: readonly [Place, Place], depth: number): Meeting {
  let isUntold = false;
  const away = fromTool(tool);
  const look = (x: number, y: number, half: number): boolean => {
    const reach = half * Math.SQRT2;
    const inTool = -away(x, y);
    if (inTool + reach < depth) return false;
    const inThing = thing.at(x, y);
    if (inThing + reach < depth) return false;
    if (inTool > depth && inThing > depth) {
      const counts = thing.counts(x, y);
      if (counts === true) return true;
      if (counts === null) isUntold = true;
      // The whole square may be of what is lifted out; look on where it may be not.
      if (reach < Math.min(inTool, inThing)) return false;
    }
    if (reach < depth) return false;
    const by = half / 2;
    return (
      look(x - by, y - by, by) ||
      look(x + by, y - by, by) ||
      look(x - by, y + by, by) ||
      look(x + by, y + by, by)
    );
  };
  const [[left, front], [right, back]] = box;
  const half = Math.max(right - left, back - front) / 2;
  if (look((left + right) / 2, (front + back) / 2, half)) return 'meets';
  return isUntold ? 'untold' : 'clear';
}

/** Whether a tool goes into the metal of a slab by more than a depth. */
export function meetsMetal(tool: Tool, metal: Metal, depth: number): Meeting {
  return meeting(
    tool,
    {
      at: (x, y) => metal.bounds(x, y, 0).low,
      counts: (x, y) => {
        const whose = metal.whose(x, y);
        return whose === 'untold' ? null : whose === 'stands';
      },
    },
    boxOfTool(tool),
    depth,
  );
}

/** Whether a tool goes into the plan of a keep-out by more than a depth. */
export function meetsKeepOut(tool: Tool, { shape }: KeepOutDocument, depth: number): boolean {
  const thing: Thing = { at: inShape(loopsOf(shape)), counts: () => true };
  return meeting(tool, thing, boxOfTool(tool), depth) === 'meets';
}

function boxOfTool(tool: Tool): readonly [Place, Place] {
  const places =
    'center' in tool
      ? [tool.center]
      : tool.path.flatMap((edge): Place[] => {
          if (edge.kind === 'line') return [edge.a, edge.b];
          const [[ax, ay], [cx, cy]] = [edge.a, edge.center];
          const radius = Math.hypot(ax - cx, ay - cy);
          return [
            [cx - radius, cy - radius],
            [cx + radius, cy + radius],
          ];
        });
  const xs = places.map(([x]) => x);
  const ys = places.map(([, y]) => y);
  return [
    [Math.min(...xs) - tool.radius, Math.min(...ys) - tool.radius],
    [Math.max(...xs) + tool.radius, Math.max(...ys) + tool.radius],
  ];
}
