import Flatten from '@flatten-js/core';
import { normalize } from '../combine/boolean.js';
import { withinTurn } from '../geometry/angle.js';
import { arcEdge, type Edge, lineEdge } from '../geometry/edge.js';
import { joinEdges } from '../outline/join.js';
import { loopsOf } from '../region/measure.js';
import type { Loop, Region } from '../region/region.js';

/**
 * A region as a polygon of the flatten-js library, one face for each loop and one shape for each edge; outer
 * faces run counter-clockwise, holes clockwise. Names of edges are lost. That library keeps the angles of an
 * arc's ends, not the ends, so these may move by a last digit.
 */
export function toFlatten(region: Region): Flatten.Polygon {
  const polygon = new Flatten.Polygon();
  for (const loop of loopsOf(region)) polygon.addFace(loop.map(shapeOf));
  return polygon;
}

function shapeOf(edge: Edge): Flatten.Segment | Flatten.Arc {
  if (edge.kind === 'line') {
    return new Flatten.Segment(Flatten.point(edge.a.x, edge.a.y), Flatten.point(edge.b.x, edge.b.y));
  }
  const { center, radius, a, b, ccw } = edge;
  const angle = (p: { x: number; y: number }) => withinTurn(Math.atan2(p.y - center.y, p.x - center.x));
  return new Flatten.Arc(Flatten.point(center.x, center.y), radius, angle(a), angle(b), ccw);
}

/**
 * The region that a polygon of the flatten-js library encloses. Its faces may run in any direction; a face
 * inside another is a hole in it, one inside a hole is a part again (even-odd rule).
 * @throws RangeError if a face is open, or a number in it is not finite.
 */
export function fromFlatten(polygon: Flatten.Polygon): Region {
  const faces = [...polygon.faces] as Flatten.Face[];
  return normalize(faces.map(loopOf), 'evenodd');
}

function loopOf(face: Flatten.Face, index: number): Loop {
  const { edges, gaps } = joinEdges(face.shapes.flatMap(edgesOf), true);
  const gap = gaps[0];
  if (gap !== undefined) {
    throw new RangeError(`fromFlatten: face ${index} is open by ${gap.size} after its edge ${gap.edge}`);
  }
  return edges;
}

/**
 * Two edges for a full circle, else one. A shape is told by what it has, since there may be two copies of that library, each with
 * classes of its own.
 */
function edgesOf(shape: Flatten.Segment | Flatten.Arc): Edge[] {
  const a = { x: shape.start.x, y: shape.start.y };
  const b = { x: shape.end.x, y: shape.end.y };
  if (!('pc' in shape)) return [lineEdge(a, b)];
  const center = { x: shape.pc.x, y: shape.pc.y };
  const ccw = shape.counterClockwise;
  if (shape.sweep < 2 * Math.PI * (1 - FULL_TURN_ROUNDING)) return [arcEdge(a, b, center, ccw)];
  const opposite = { x: 2 * center.x - a.x, y: 2 * center.y - a.y };
  return [arcEdge(a, opposite, center, ccw), arcEdge(opposite, a, center, ccw)];
}

/** An arc short of a full turn by less than this share is a full circle: its ends are kept as rounded angles. */
const FULL_TURN_ROUNDING = 1e-12;
