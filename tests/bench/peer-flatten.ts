import { arcEdge, type Edge, type Loop, lineEdge, loopArea, loopsOf } from '@edgebite/core';
import Flatten from '@flatten-js/core';
import type { Library } from './library.js';

/** Where the first of several arcs of a full circle starts: at no round angle, where it was found to be right. */
const SEAM = 0.3711;

/**
 * The booleans of @flatten-js/core, full circles written as some number of arcs: one is fastest, three with oblique
 * seams were measured to fail least. Cuts that overlap cannot be one operand; they are made in turn.
 */
export function flattenLibrary(arcs: 1 | 3): Library<Flatten.Polygon, Loop[]> {
  return {
    name: `flatten-js@${arcs}`,
    take: (regions) => {
      const polygon = new Flatten.Polygon();
      for (const region of regions) for (const loop of loopsOf(region)) polygon.addFace(shapesOf(loop, arcs));
      return polygon;
    },
    subtract: (from, cuts) => Flatten.BooleanOperations.subtract(from, cuts),
    grow: null,
    give: (result) =>
      [...(result.faces as Iterable<Flatten.Face>)].map((face) => face.shapes.flatMap(edgesOf)),
    // Its outer faces may run in either direction, and its holes in the other one.
    areaOf: (given) => Math.abs(given.reduce((sum, loop) => sum + loopArea(loop), 0)),
    free: () => {},
    takesOverlaps: false,
    // Its tolerance of 1e-6 mm moves every edge by as much at most.
    error: () => 1e-6,
  };
}

function shapesOf(loop: Loop, arcs: number): (Flatten.Segment | Flatten.Arc)[] {
  const [one, two] = loop;
  if (loop.length === 2 && one?.kind === 'arc' && two?.kind === 'arc') {
    const center = new Flatten.Point(one.center.x, one.center.y);
    const seam = arcs === 1 ? 0 : SEAM;
    return Array.from({ length: arcs }, (_, k) => {
      const angle = (steps: number): number => seam + ((one.ccw ? steps : -steps) * 2 * Math.PI) / arcs;
      return new Flatten.Arc(center, one.radius, angle(k), angle(k + 1), one.ccw);
    });
  }
  return loop.map(shapeOf);
}

function shapeOf(edge: Edge): Flatten.Segment | Flatten.Arc {
  const { a, b } = edge;
  if (edge.kind === 'line')
    return new Flatten.Segment(new Flatten.Point(a.x, a.y), new Flatten.Point(b.x, b.y));
  const { x, y } = edge.center;
  const [start, end] = [Math.atan2(a.y - y, a.x - x), Math.atan2(b.y - y, b.x - x)];
  return new Flatten.Arc(new Flatten.Point(x, y), edge.radius, start, end, edge.ccw);
}

/** Two edges for a full circle, else one. */
function edgesOf(shape: Flatten.Segment | Flatten.Arc): Edge[] {
  const a = { x: shape.start.x, y: shape.start.y };
  const b = { x: shape.end.x, y: shape.end.y };
  if (shape instanceof Flatten.Segment) return [lineEdge(a, b)];
  const center = { x: shape.pc.x, y: shape.pc.y };
  const ccw = shape.counterClockwise;
  if (shape.sweep < FULL_TURN) return [arcEdge(a, b, center, ccw)];
  const opposite = { x: 2 * center.x - a.x, y: 2 * center.y - a.y };
  return [arcEdge(a, opposite, center, ccw), arcEdge(opposite, a, center, ccw)];
}

/** An arc of that much is a full circle, short of it by rounding only. */
const FULL_TURN = 2 * Math.PI * (1 - 1e-12);
