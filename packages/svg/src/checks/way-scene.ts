import type { Report, ReportCheck, ReportEdge, ReportWay } from '@edgebite/core';
import type { Place } from '../view/edges.js';

/** A circle on the part. */
export interface Round {
  readonly center: Place;
  readonly radius: number;
}

/** What there is to see of a way to measure an arc, on the part as drawn. */
export interface WayScene {
  /** Between what is read: the reading is as long as that. */
  readonly ends: readonly [Place, Place];
  /** Pins or balls that lie in the arc. */
  readonly pins: readonly Round[];
  /** A line that the reading is taken from: along a face, or the chord that a gauge stands on; null without one. */
  readonly base: readonly [Place, Place] | null;
}

/** How far a straightedge over an opening goes past its horns, as a share of the radius. */
const PAST = 0.25;

/**
 * What there is to see of a way; null of a wall or a round that the report does not tell of.
 *
 * Source: definitions of the readings.
 */
export function wayScene(report: Report, check: ReportCheck, way: ReportWay): WayScene | null {
  const { center, radius } = check;
  const none = { pins: [], base: null };
  switch (way.kind) {
    case 'across': {
      const along = way.along as Place;
      return { ...none, ends: [moved(center, along, -radius), moved(center, along, radius)] };
    }
    case 'height': {
      const chord = way.chord as number;
      const deep = middleOf(check);
      const across: Place = [-deep[1], deep[0]];
      const middle = moved(center, deep, Math.sqrt(radius ** 2 - (chord / 2) ** 2));
      const base = [moved(middle, across, -chord / 2), moved(middle, across, chord / 2)] as const;
      return { pins: [], base, ends: [middle, moved(center, deep, radius)] };
    }
    case 'wall':
    case 'round': {
      const other = way.kind === 'wall' ? seatOf(report, check, way) : roundOf(report, check, way);
      if (other === null) return null;
      const towards = unit([other.center[0] - center[0], other.center[1] - center[1]]);
      const sign = way.kind === 'wall' ? -1 : 1;
      return {
        ...none,
        ends: [moved(center, towards, radius), moved(other.center, towards, sign * other.radius)],
      };
    }
    default:
      return faceScene(check, way);
  }
}

/** Of a reading from or to a straight face. */
function faceScene({ center, radius }: ReportCheck, way: ReportWay): WayScene {
  const { at, into } = way.face as NonNullable<ReportWay['face']>;
  const along: Place = [-into[1], into[0]];
  const inside = (center[0] - at[0]) * into[0] + (center[1] - at[1]) * into[1];
  const foot = moved(center, into, -inside);
  const half = radius * (1 + PAST);
  const base = [moved(foot, along, -half), moved(foot, along, half)] as const;
  switch (way.kind) {
    case 'opening': {
      const under = way.under as number;
      const middle = moved(foot, into, under);
      const chord = Math.sqrt(Math.max(0, radius ** 2 - (inside - under) ** 2));
      return {
        pins: [],
        base: under === 0 ? null : base,
        ends: [moved(middle, along, -chord), moved(middle, along, chord)],
      };
    }
    case 'depth':
      return { pins: [], base, ends: [foot, moved(center, into, radius)] };
    case 'left':
      return { pins: [], base: null, ends: [moved(center, into, -radius), foot] };
    default: {
      const sign = way.kind === 'over pins' ? -1 : 1;
      const size = (way.pin as number) / 2;
      const aside = way.pins === 1 ? 0 : size;
      const deep = Math.sqrt(Math.max(0, (radius - size) ** 2 - aside ** 2));
      const between = moved(center, into, sign * deep);
      const sides = aside === 0 ? [0] : [-aside, aside];
      const pins = sides.map((side) => ({ center: moved(between, along, side), radius: size }));
      // The outermost place of a pin, as seen from what it lies on.
      const [first] = pins as [Round];
      const out = moved(first.center, into, -sign * size);
      const to = moved(out, into, -dot(sub(out, at), into));
      return { pins, base: sign < 0 ? null : base, ends: sign < 0 ? [out, to] : [to, out] };
    }
  }
}

/** The direction of the middle of the longest stretch of an arc. */
function middleOf({ spans }: ReportCheck): Place {
  const [longest = [0, 0]] = [...spans].sort((a, b) => b[1] - b[0] - (a[1] - a[0]));
  const angle = ((longest[0] + longest[1]) / 2) * (Math.PI / 180);
  return [Math.cos(angle), Math.sin(angle)];
}

/** The other arc of a wall: of its cut the one that leaves the wall that is read. */
function seatOf({ checks }: Report, check: ReportCheck, { cut, reading }: ReportWay): Round | null {
  const off = (one: Round) =>
    Math.abs(Math.hypot(...sub(one.center, check.center)) - one.radius - check.radius - reading);
  return nearest(
    checks.filter((one) => one.cut === cut && one !== check),
    off,
    check.radius,
  );
}

/** The round of the outline to which is read. */
function roundOf({ outline }: Report, check: ReportCheck, { round, reading }: ReportWay): Round | null {
  const arcs = outline
    .flatMap(({ outer, holes }) => [outer, ...holes].flat())
    .filter(
      (edge): edge is Extract<ReportEdge, { kind: 'arc' }> => edge.kind === 'arc' && edge.source === round,
    );
  const off = (one: Round) =>
    Math.abs(Math.hypot(...sub(one.center, check.center)) - check.radius + one.radius - reading);
  return nearest(arcs, off, check.radius);
}

/** Rounding of a reading, as a share of the radius. */
const ALIKE = 1e-6;

function nearest<R extends Round>(all: readonly R[], off: (one: R) => number, radius: number): R | null {
  const [best] = [...all].sort((a, b) => off(a) - off(b));
  return best !== undefined && off(best) <= ALIKE * radius ? best : null;
}

function moved([x, y]: Place, [dx, dy]: Place, by: number): Place {
  return [x + dx * by, y + dy * by];
}

function sub([x, y]: Place, [dx, dy]: Place): Place {
  return [x - dx, y - dy];
}

function dot([x, y]: Place, [dx, dy]: Place): number {
  return x * dx + y * dy;
}

function unit([x, y]: Place): Place {
  const length = Math.hypot(x, y);
  return [x / length, y / length];
}
