import type { Region } from '@edgebite/core';
import { transformed, UNMOVED } from '@edgebite/core/testing';
import { box, loopThrough, section, slotHole } from './section-builder.js';

/*
 * Webs in closed form. Two separate holes d - r1 - r2, hole to straight edge distance - r (elementary); an eccentric
 * bore in a round R - r - e (Dr. Math, "eccentric tube": e = D/2 - AB - d/2). Lengths from the triangle of two
 * centres and the centre of the disc of the limit's diameter, which is as far from either as the sum (inside a
 * rounded end: the difference) of the radii.
 */

/** A web as it should be; what is left out is not looked at. */
export interface Wanted {
  readonly thickness: number;
  readonly at?: readonly [number, number];
  readonly length?: number;
  readonly strip?: number;
  readonly between?: readonly [string, string];
}

/** A section, and its webs under a limit. */
export interface Case {
  readonly name: string;
  readonly region: Region;
  readonly limit: number;
  readonly webs: readonly Wanted[];
  /** Its loops touch: the shape can be cut, but no job may have it for its outline. */
  readonly touching?: boolean;
}

/** Distance from (x, y) to where two circles round (0, 0) and (d, 0) meet. */
export function toMeeting(d: number, r: number, s: number, x: number, y = 0): number {
  const along = (d * d + r * r - s * s) / (2 * d);
  return Math.hypot(along - x, Math.sqrt(r * r - along * along) - y);
}

/** From the middle of a neck between a hole and a straight edge to the disc as thick as the limit. */
export function flareAtEdge(radius: number, web: number, limit: number): number {
  const out = Math.sqrt((radius + limit / 2) ** 2 - (radius + web - limit / 2) ** 2);
  return Math.hypot(out, limit / 2 - web / 2);
}

export function flareBetweenHoles(r: number, s: number, web: number, limit: number): number {
  return toMeeting(r + s + web, r + limit / 2, s + limit / 2, r + web / 2);
}

export function flareInRound(outer: number, inner: number, offset: number, limit: number): number {
  const web = outer - inner - offset;
  return toMeeting(offset, outer - limit / 2, inner + limit / 2, outer - web / 2);
}

export const SQRT_HALF = Math.SQRT1_2;

export const ell: Region = section(
  loopThrough([
    [0, 0],
    [60, 0],
    [60, 20],
    [20, 20],
    [20, 60],
    [0, 60],
  ]),
);

export const withHole = (region: Region, ...holes: Region[number]['holes']): Region =>
  region.map((part) => ({ ...part, holes: [...part.holes, ...holes] }));

/** A plate with all corners rounded: bottom, right, top, left are edges 0, 2, 4, 6. */
export function rounded(width: number, height: number, radius: number): Region {
  const [w, h, r] = [width, height, radius];
  return section(
    loopThrough([
      [r, 0, [r, r], true],
      [w - r, 0],
      [w, r, [w - r, r], true],
      [w, h - r],
      [w - r, h, [w - r, h - r], true],
      [r, h],
      [0, h - r, [r, h - r], true],
      [0, r],
    ]),
  );
}

/** Straight walls that end in a half circle of radius 10 at either end. */
export const barWithRoundEnds: Region = section(
  loopThrough([
    [-20, -10, [-20, 0], true],
    [20, -10],
    [20, 10, [20, 0], true],
    [-20, 10],
  ]),
);

/** A curved hole round the origin, between two radii and two angles, with round ends. */
export function curvedSlot(
  inner: number,
  outer: number,
  from: number,
  to: number,
): Region[number]['holes'][number] {
  const mid = (inner + outer) / 2;
  const p = (r: number, angle: number) => [r * Math.cos(angle), r * Math.sin(angle)] as const;
  // Clockwise: along the inner wall forward, over the end cap, back along the outer wall.
  const steps = [
    [...p(inner, from), p(mid, from), false],
    [...p(inner, to), [0, 0], true],
    [...p(outer, to), p(mid, to), false],
    [...p(outer, from), [0, 0], false],
  ] as const;
  const wide = to - from > Math.PI;
  if (wide) throw new RangeError('curvedSlot: up to half a turn');
  return loopThrough(steps, 'cut').map((edge) => ({ ...edge, source: 'cut:curve' }));
}

/** A slot that rises by an angle to the right, its left centre at (x, y). */
export function tiltedSlot(
  x: number,
  y: number,
  length: number,
  radius: number,
  tilt: number,
): Region[number]['holes'][number] {
  const turn = { ...UNMOVED, turn: [Math.cos(tilt), Math.sin(tilt)], shift: [x, y] } as const;
  const [part] = transformed(section(box(1, 1), slotHole(0, length, 0, radius)), turn);
  return (part as Region[number]).holes[0] as Region[number]['holes'][number];
}

export function arcStrip(radius: number, web: number, turn: number): number {
  // At a straight end the disc of the web stops half its thickness short.
  return (radius + web / 2) * (turn - 2 * Math.asin(web / 2 / (radius + web / 2)));
}

/** A ring of 270 degrees with square ends. */
export function openRing(inner: number, outer: number): Region {
  return section(
    loopThrough([
      [outer, 0],
      [0, -outer, [0, 0], true],
      [0, -inner],
      [inner, 0, [0, 0], false],
    ]),
  );
}
