import { along as alongAxis } from '../datum/lie.js';
import { outermost } from '../datum/outermost.js';
import { targetAt } from '../datum/target.js';
import { pointToJson } from '../format/json.js';
import type { Edge } from '../geometry/edge.js';
import { distance, moved, type Point, type Vector } from '../geometry/point.js';
import { cutOfSource } from '../geometry/source.js';
import { machineDirection } from '../load/machine-direction.js';
import { loopsOf } from '../region/measure.js';
import type { Region } from '../region/region.js';
import type { ReportWayOut } from '../report/report-schema.js';
import type { Result } from '../step/result.js';

/** How the part lies, and where its zero is. */
export type Lay = Result['steps'][number]['approach']['lay'];

/** All edges of a region. */
export function edgesIn(region: Region): Edge[] {
  return loopsOf(region).flatMap((loop) => [...loop]);
}

/** The straight face of the part along which a slug is open the widest, and how far in from it the slug goes. */
export function straightFace(plan: Region): { source: string; a: Point; b: Point; deep: number } | null {
  const lines = edgesIn(plan).flatMap((edge) =>
    edge.kind === 'line' && edge.source !== undefined && cutOfSource(edge.source) === null
      ? [{ ...edge, source: edge.source }]
      : [],
  );
  const faces = [...new Set(lines.map(({ source }) => source))].map((source) => {
    const own = lines.filter((line) => line.source === source);
    const [first] = own as [(typeof own)[number]];
    const length = distance(first.a, first.b);
    const way: Vector = { dx: (first.b.x - first.a.x) / length, dy: (first.b.y - first.a.y) / length };
    const into: Vector = { dx: -way.dy, dy: way.dx };
    const at = (p: Point) => alongAxis(p, way);
    const start = at(first.a);
    const ends = own.flatMap(({ a, b }) => [at(a), at(b)]);
    return {
      source,
      a: moved(first.a, way, Math.min(...ends) - start),
      b: moved(first.a, way, Math.max(...ends) - start),
      deep: outermost(plan, into)[1] - alongAxis(first.a, into),
    };
  });
  return faces.reduce<(typeof faces)[number] | null>(
    (best, one) => (best === null || distance(one.a, one.b) > distance(best.a, best.b) ? one : best),
    null,
  );
}

/** A line to saw along, as drawn and at the machine. */
export function lineRow(lay: Lay, a: Point, b: Point): NonNullable<ReportWayOut['line']> {
  const readout = (p: Point): [number, number] => [...targetAt(lay, p).readout];
  return {
    ends: [pointToJson(a), pointToJson(b)],
    readout: [readout(a), readout(b)],
    machine: machineDirection(lay.axes, { dx: b.x - a.x, dy: b.y - a.y }),
  };
}
