import {
  type Axes,
  axesOf,
  type Bounds,
  type Report,
  type ReportRegion,
  type ReportSetup,
} from '@edgebite/core';
import { boundsAsLies } from '../plan/lie.js';
import { boundsOfEdges, type Place } from '../view/edges.js';
import { asItLies } from '../view/view.js';

/** The metal that stands when the first step of a setup begins, from below upwards as the part lies; the part where that is not told. */
export function standingIn(report: Report, { id, up }: ReportSetup): readonly ReportRegion[] {
  const layers = report.steps.find(({ setup }) => setup === id)?.before ?? null;
  if (layers === null) return [report.outline];
  const regions = layers.map(({ region }) => region);
  return up === 'top' ? regions : regions.reverse();
}

/** The box round the part as it lies: exact where it lies square to its drawing, else round the box of the drawing. */
export function boxAsLies(report: Report, setup: ReportSetup): Bounds {
  const edges = report.outline.flatMap(({ outer }) => outer);
  const box = boundsOfEdges(edges) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  return boundsAsLies(box, axesOf(setup));
}

/** Share of the part's size within which a place is on a face: measured lengths differ from the drawing by as much. */
const ON = 0.01;

/**
 * Where along a face a tip touches it or a stop bears: the middle of its longest straight edge at that height along the
 * axis, else the place of an arc or a corner there; the middle of the part where there is none.
 */
export function placeOnFace(report: Report, setup: ReportSetup, axis: 'x' | 'y', at: number): number {
  const axes = axesOf(setup);
  const box = boxAsLies(report, setup);
  const slack = ON * Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const [k, across] = axis === 'x' ? [0, 1] : [1, 0];
  const onFace = standingIn(report, setup).map((region) => facesIn(region, axes, [k, across], at, slack));
  // Where less stands, from there on: so it stands over the whole height.
  const least = (one: readonly Found[]) => one.reduce((sum, { length }) => sum + length, 0);
  const [found = []] = [...onFace].sort((p, q) => least(p) - least(q));
  const best = found.reduce<Found | null>(
    (most, one) => (most === null || one.length > most.length ? one : most),
    null,
  );
  if (best !== null) return best.at;
  return axis === 'x' ? (box.minY + box.maxY) / 2 : (box.minX + box.maxX) / 2;
}

/** A place on a face, and how long the straight edge is that it is the middle of; -1 for a corner. */
interface Found {
  readonly at: number;
  readonly length: number;
}

function facesIn(
  region: ReportRegion,
  axes: Axes,
  [k, across]: readonly [number, number],
  at: number,
  slack: number,
): Found[] {
  const edges = region.flatMap(({ outer, holes }) => [outer, ...holes]).flat();
  const isOn = (p: Place) => Math.abs((p[k] as number) - at) <= slack;
  return edges.flatMap((edge): Found[] => {
    const [a, b] = [lain(axes, edge.a), lain(axes, edge.b)];
    if (edge.kind === 'arc') {
      const center = lain(axes, edge.center);
      const reach = Math.abs(Math.abs((center[k] as number) - at) - edge.radius);
      return reach <= slack ? [{ at: center[across] as number, length: 0 }] : [];
    }
    if (isOn(a) && isOn(b)) {
      const [p, q] = [a[across] as number, b[across] as number];
      return [{ at: (p + q) / 2, length: Math.abs(q - p) }];
    }
    return [a, b].filter(isOn).map((p) => ({ at: p[across] as number, length: -1 }));
  });
}

function lain(axes: Axes, place: Place): Place {
  return asItLies(axes, place);
}
