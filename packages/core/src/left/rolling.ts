import { withinTurn } from '../geometry/angle.js';
import { sweep } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import { turnBetween } from './interior-angle.js';
import { ROOM_SLACK, type Wall, type Walls } from './walls.js';

/** How the centre of a disc moves that rolls along a wall; places along it as `alongWall` has them. */
export interface Rolling {
  readonly length: number;
  /** How far the centre goes for each unit along the wall. */
  readonly pace: number;
  readonly centerAt: (along: number) => Point;
}

/** How a disc of a radius rolls along a wall; null where it is larger than the rounded end that it should lie in. */
export function rollingOn(wall: Wall, radius: number): Rolling | null {
  if (wall.shape === 'flat') {
    const { a } = wall.edge;
    const { along, normal, length } = wall;
    const centerAt = (s: number) => ({
      x: a.x + along.dx * s + normal.dx * radius,
      y: a.y + along.dy * s + normal.dy * radius,
    });
    return { length, pace: 1, centerAt };
  }
  const { center, side } = wall;
  const away = wall.radius - side * radius;
  if (away < 0) return null;
  const out =
    wall.shape === 'corner'
      ? wall.normalBefore
      : {
          dx: (wall.edge.a.x - center.x) / wall.radius,
          dy: (wall.edge.a.y - center.y) / wall.radius,
        };
  // Of a corner the place is an angle, of an arc a length.
  const scale = wall.shape === 'corner' ? 1 : wall.radius;
  const centerAt = (s: number) => {
    const cos = Math.cos(s / scale) * away;
    const sin = Math.sin(s / scale) * side * away;
    return { x: center.x + out.dx * cos - out.dy * sin, y: center.y + out.dx * sin + out.dy * cos };
  };
  return { length: turnOf(wall) * scale, pace: away / scale, centerAt };
}

function turnOf(wall: Exclude<Wall, { shape: 'flat' }>): number {
  if (wall.shape === 'arc') return wall.edge.kind === 'arc' ? sweep(wall.edge) : 0;
  return withinTurn(-turnBetween(wall.normalBefore, wall.normalAfter));
}

/** A part of a wall, by places along it. */
export interface Open {
  readonly low: number;
  readonly high: number;
}

const WHOLE: readonly Open[] = [{ low: -Infinity, high: Infinity }];

/** How often a wall is halved in search of open parts. */
const MOST_HALVINGS = 6;

/** Parts along which the centre moves by less than this share of the radius are not halved. */
const SHORT_SHARE = 1 / 8;

/** Places along a wall may lie so far (radians) beyond its ends by rounding. */
const BEYOND = 4e-6;

/**
 * The parts of a wall on which discs of a radius may find room; elsewhere there is a crowd. All of the wall where that
 * is not worth the search.
 */
export function openParts(walls: Walls, wall: Wall, radius: number): readonly Open[] {
  const rolling = rollingOn(wall, radius);
  if (rolling === null) return [];
  if (radius < walls.crowd.least) return WHOLE;
  const { length, pace, centerAt } = rolling;
  const slack = 2 * ROOM_SLACK * walls.tolerance + BEYOND * length * pace;
  const open: Open[] = [];
  const look = (low: number, high: number, halvings: number) => {
    const middle = (low + high) / 2;
    const sway = ((high - low) / 2) * pace;
    if (walls.crowd.isWithin(centerAt(middle), radius - sway - slack)) return;
    if (sway < radius * SHORT_SHARE || halvings === 0) {
      open.push({ low: low === 0 ? -Infinity : low, high: high === length ? Infinity : high });
      return;
    }
    look(low, middle, halvings - 1);
    look(middle, high, halvings - 1);
  };
  look(0, length, MOST_HALVINGS);
  return open;
}
