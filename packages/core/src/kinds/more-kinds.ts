import { METALS } from '../cutting/material.js';
import type { RegionPart } from '../region/region.js';
import { type Check, faultIn, flag, type Kind, must, num, number, overZero, pair, text } from './kinds.js';
import { edges, loop, region } from './region-kind.js';
import { byWord, SIDES } from './shared-kinds.js';

/* What arguments of single functions must be. */

export const PINS: Kind = [1, 2];

/** A part of a region is looked at as a region of one part. */
export const part: Check = (value) => {
  const fault = region([value as RegionPart]);
  return fault === null ? null : { ...fault, at: fault.at.replace(/^\[0\]/, '') };
};

/** A region, or a closed chain of edges. */
export const shape: Check = (value) => {
  const isLoop = Array.isArray(value) && value.length > 0 && Object.hasOwn(Object(value[0]), 'kind');
  return isLoop ? loop(value) : region(value);
};

const END: Kind = ['start', 'end'];

/** What a drawing measures a place from. */
export const fromEdge: Check = (value) =>
  byWord('from', {
    edge: { edge: text, distance: number, side: SIDES },
    along: { edge: text, end: END, distance: number },
    corner: { edge: text, end: END, distance: number },
  })(value);

/** A radius, or a word. */
export const lead: Check = (value) =>
  value === 'largest' || value === 'none' || typeof value === 'number'
    ? null
    : must(value, 'be a finite number over 0, "largest" or "none"');

/** A direction as drawn: a vector, or an angle. */
export const heading: Check = (value) => {
  if (typeof value === 'number') return number(value);
  return faultIn({ has: { dx: num, dy: num } }, value) === null
    ? null
    : must(value, 'be an angle in radians, or a vector { dx, dy }');
};

const footing: Kind = ['center in air', 'over an edge', 'over a hole'];

/** What `placeFacts` says of a tool. */
export const fact: Check = (value) =>
  byWord('kind', {
    'enters badly': { footing, atDepth: number, away: number },
    'comes into a void': { footing, atDepth: number, away: number },
    'plunges on its center': { known: flag, atDepth: number },
    'bores without a hole': { atDepth: number },
    grabs: { metal: METALS, opensOut: flag },
  })(value);

/** Why `wayOff` found none. */
export const why: Check = (value) =>
  byWord('reason', {
    'walled in': { share: number, from: number, to: number },
    'core stands': {},
    'no room': { within: number, clearance: number },
    'keep-out': { ids: { listOf: text } },
  })(value);

/** How far a pass goes. */
export const travel: Check = (value) =>
  byWord('doing', {
    rings: { depth: number },
    bores: { depth: number },
    plunges: { depth: number },
    drills: { depth: number, diameter: overZero },
    'mills round': { diameter: overZero, toolDiameter: overZero },
    'mills along': { edges },
  })(value);

const estimate: Kind = { orNull: { has: { value: number, worst: pair } } };

/** What `fitCircle` gives. */
export const fit: Kind = {
  has: { center: { has: { x: number, y: number } }, radius: estimate, x: estimate, y: estimate },
};

/** An edge of a report: points are pairs. */
export const reportEdge: Check = (value) =>
  byWord('kind', {
    line: { a: pair, b: pair },
    arc: { a: pair, b: pair, center: pair, radius: overZero, ccw: flag },
  })(value);

/** A region of a report. */
export const reportRegion: Check = (value) =>
  faultIn(
    { listOf: { has: { outer: { listOf: reportEdge }, holes: { listOf: { listOf: reportEdge } } } } },
    value,
  );
