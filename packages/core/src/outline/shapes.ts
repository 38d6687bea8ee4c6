import { arcEdge, type Edge, lineEdge } from '../geometry/edge.js';
import { moved, type Point, samePoint } from '../geometry/point.js';
import { circleLoop, type Loop } from '../region/region.js';

/** Where a ready shape stands, and the name that the sources of its edges start with (`outline` unless given). */
export interface Standing {
  readonly at?: Point | undefined;
  readonly owner?: string | undefined;
}

/** How a rectangle stands (`at` is its lower left corner), and the radius of its corners. */
export interface RectangleOptions extends Standing {
  readonly corner?: number | undefined;
}

/** How a slot stands (`at` is its centre), and its angle in radians, counter-clockwise from the x axis. */
export interface SlotOptions extends Standing {
  readonly angle?: number | undefined;
}

const ORIGIN: Point = { x: 0, y: 0 };

/** Sine and cosine of a right angle in radians come out as this little, not as 0. */
const RIGHT_ANGLE_ROUNDING = 1e-15;

/**
 * A rectangle, counter-clockwise. Sources: 0 is the bottom edge, then on round; with a corner radius 0 is the
 * bottom edge, 1 the arc at the lower right, 2 the right edge, and so on. A side that the corners use up is
 * left out and the others keep their numbers.
 * @throws RangeError if a size is not a finite number over 0, or the corner radius is over half a side.
 */
export function rectangle(width: number, height: number, options: RectangleOptions = {}): Loop {
  const { at = ORIGIN, corner = 0, owner = 'outline' } = options;
  checkSize('rectangle', 'width', width);
  checkSize('rectangle', 'height', height);
  if (!(corner >= 0 && 2 * corner <= Math.min(width, height))) {
    throw new RangeError(`rectangle: corner radius is ${corner}; it must be from 0 to half the shorter side`);
  }
  return corner === 0
    ? squareCorners(at, width, height, owner)
    : roundCorners(at, width, height, corner, owner);
}

function squareCorners({ x, y }: Point, width: number, height: number, owner: string): Loop {
  const corners = [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
  return corners.map((a, i) => lineEdge(a, corners[(i + 1) % 4] as Point, `${owner}:${i}`));
}

function roundCorners({ x, y }: Point, width: number, height: number, r: number, owner: string): Loop {
  const [left, right] = innerStops(x, width, r);
  const [low, high] = innerStops(y, height, r);
  const x1 = x + width;
  const y1 = y + height;
  const corners = [
    { from: { x: right, y }, center: { x: right, y: low }, to: { x: x1, y: low } },
    { from: { x: x1, y: high }, center: { x: right, y: high }, to: { x: right, y: y1 } },
    { from: { x: left, y: y1 }, center: { x: left, y: high }, to: { x, y: high } },
    { from: { x, y: low }, center: { x: left, y: low }, to: { x: left, y } },
  ];
  let before = (corners[3] as (typeof corners)[number]).to;
  return corners.flatMap(({ from, center, to }, i) => {
    const arc = arcEdge(from, to, center, true, `${owner}:${2 * i + 1}`);
    const edges: Edge[] = samePoint(before, from)
      ? [arc]
      : [lineEdge(before, from, `${owner}:${2 * i}`), arc];
    before = to;
    return edges;
  });
}

/** Where the straight part of a side starts and ends; one place if the corners use it up. */
function innerStops(start: number, side: number, r: number): [number, number] {
  return 2 * r === side ? [start + r, start + r] : [start + r, start + side - r];
}

/**
 * A circle, counter-clockwise, of two arcs with the one source `outline:0`.
 * @throws RangeError if the diameter is not a finite number over 0.
 */
export function circle(diameter: number, options: Standing = {}): Loop {
  checkSize('circle', 'diameter', diameter);
  return circleLoop(options.at ?? ORIGIN, diameter / 2, true, `${options.owner ?? 'outline'}:0`);
}

/**
 * A slot with half-round ends, counter-clockwise. Sources: 0 is the lower straight side (seen at angle 0),
 * 1 the right end, 2 the upper side, 3 the left end. As long as it is wide, it is a circle of its two ends.
 * @param length overall length, ends included
 * @throws RangeError if a size is not a finite number over 0, or the width is over the length.
 */
export function slot(length: number, width: number, options: SlotOptions = {}): Loop {
  const { at = ORIGIN, angle = 0, owner = 'outline' } = options;
  checkSize('slot', 'length', length);
  checkSize('slot', 'width', width);
  if (width > length) throw new RangeError(`slot: width ${width} is over the length ${length}`);
  const along = unitVector(angle);
  const across = { dx: -along.dy, dy: along.dx };
  const left = moved(at, along, -(length - width) / 2);
  const right = moved(at, along, (length - width) / 2);
  const r = width / 2;
  const corners = [
    moved(left, across, -r),
    moved(right, across, -r),
    moved(right, across, r),
    moved(left, across, r),
  ];
  const [a, b, c, d] = corners as [Point, Point, Point, Point];
  const ends = [arcEdge(b, c, right, true, `${owner}:1`), arcEdge(d, a, left, true, `${owner}:3`)] as const;
  if (length === width) return ends;
  return [lineEdge(a, b, `${owner}:0`), ends[0], lineEdge(c, d, `${owner}:2`), ends[1]];
}

function unitVector(angle: number): { dx: number; dy: number } {
  const dx = Math.cos(angle);
  const dy = Math.sin(angle);
  if (Math.abs(dx) < RIGHT_ANGLE_ROUNDING) return { dx: 0, dy: Math.sign(dy) };
  if (Math.abs(dy) < RIGHT_ANGLE_ROUNDING) return { dx: Math.sign(dx), dy: 0 };
  return { dx, dy };
}

function checkSize(where: string, name: string, value: number): void {
  if (!(value > 0) || !Number.isFinite(value)) {
    throw new RangeError(`${where}: ${name} is ${value}; it must be a finite number over 0`);
  }
}
