import { type Bounds, boxesMeet, grown } from '../geometry/bounds.js';
import { type ArcEdge, lineEdge } from '../geometry/edge.js';
import { distance, type Point } from '../geometry/point.js';
import { neckBetween } from '../left/necks.js';
import { type Strip, stripsBetween } from '../left/strips.js';
import { nearestOnWall, type RoundWall, type Wall, type Walls, wallsOf } from '../left/walls.js';
import type { Region } from '../region/region.js';
import { type Curve, circle, curveOf } from './curves.js';

/** A web between walls that keep still towards each other, as what another boundary can come upon. */
export interface StillNeck {
  /** The middle of its disc, or the line along which discs lie. */
  readonly line: Curve;
  /** Half the thickness: a boundary nearer than this to the line is in the way. */
  readonly half: number;
  /** Both ends of that line; none if it closes. */
  readonly ends: readonly Point[];
  /** Where discs at the ends touch the walls. */
  readonly feet: readonly Point[];
}

/** The webs of a section under a limit that come near a box. */
export function stillNecks(section: Region, limit: number, box: Bounds): StillNeck[] {
  const walls = wallsOf(section);
  if (walls === null) return [];
  const found: StillNeck[] = [];
  for (const i of walls.near(grown(box, limit))) {
    for (const j of walls.near(grown(walls.boxes[i] as Bounds, limit))) {
      if (!boxesMeet(walls.boxes[j] as Bounds, grown(box, limit)) || j <= i) continue;
      for (const strip of stripsBetween(walls, i, j, limit)) found.push(neckOfStrip(walls, strip));
      const neck = neckBetween(walls, i, j, limit);
      if (neck === null) continue;
      const { middle, thickness, p, q } = neck;
      found.push({ line: circle(middle, 0), half: thickness / 2, ends: [], feet: [p, q] });
    }
  }
  return found;
}

function neckOfStrip(walls: Walls, { one, other, thickness, length, at }: Strip): StillNeck {
  const ends = [at(0), at(length)] as const;
  const sides = [one, other].map((k) => walls.list[k] as Wall);
  return {
    line: lineOf(sides, ends, at(length / 2), walls.tolerance),
    half: thickness / 2,
    ends,
    feet: ends.flatMap((end) => sides.map((wall) => nearestOnWall(wall, end).at)),
  };
}

/** The line along the middle of a strip: straight between flat walls, an arc between round ones. */
function lineOf(
  sides: readonly Wall[],
  [a, b]: readonly [Point, Point],
  middle: Point,
  tolerance: number,
): Curve {
  const round = sides.find((wall): wall is RoundWall => wall.shape === 'arc');
  if (round === undefined) return curveOf(lineEdge(a, b));
  const { center, side } = round;
  const radius = distance(center, middle);
  if (distance(a, b) <= tolerance) return circle(center, radius);
  // A strip is walked along its first wall.
  const ccw = (sides[0] === round ? side : -side) > 0;
  const edge: ArcEdge = { kind: 'arc', a, b, center, radius, ccw };
  return { shape: 'round', center, radius, edge, way: 1 };
}
