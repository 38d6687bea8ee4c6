import { intersect } from '../combine/boolean.js';
import type { Doing } from '../cutting/doing.js';
import type { Metal } from '../cutting/material.js';
import { checkOverZero, checkPlace } from '../geometry/checks.js';
import { distance, type Point } from '../geometry/point.js';
import { contains } from '../region/contains.js';
import { area, centroid } from '../region/measure.js';
import { disc, type Region } from '../region/region.js';
import { checkLayers, type Layer } from './by-height.js';
import { engagementOf } from './engagement.js';
import { metalNear } from './near-tool.js';
import { distanceToBoundary } from './touch.js';

/** A tool where it goes down, and the metal there. */
export interface PlacedTool {
  readonly doing: Doing;
  /** Whether an end mill cuts to its centre; null where the job does not say. */
  readonly cutsToCenter: boolean | null;
  readonly center: Point;
  /** Of the tool; of a boring head that of its circle, of an end mill that mills round that of the bore. */
  readonly radius: number;
  /** The metal before the cut, as depths of the tool from where it starts on down. */
  readonly layers: readonly Layer[];
  /** Null where the material is not in the tables. */
  readonly metal: Metal | null;
}

/** Why the metal under a tool does not guide it. */
export type BadFooting =
  /** Its centre is off the metal, and there is metal on one side of it or on some. */
  | 'center in air'
  /** Its centre is on metal, and part of it over an edge. */
  | 'over an edge'
  /** All of its rim is in metal, but a hole that is not in its middle is under it. */
  | 'over a hole';

/** A fault, or a fact worth knowing, of a tool in its place. Depths are those of the tool. */
export type PlaceFact =
  /** A tool without its own lead enters metal so. `away`: from its centre to the metal, 0 if it is on it. */
  | {
      readonly kind: 'enters badly';
      readonly footing: BadFooting;
      readonly atDepth: number;
      readonly away: number;
    }
  /** It enters well, and comes into a void on its way. */
  | {
      readonly kind: 'comes into a void';
      readonly footing: BadFooting;
      readonly atDepth: number;
      readonly away: number;
    }
  /** An end mill that does not cut to its centre, or of which that is not said, goes straight down on metal. */
  | { readonly kind: 'plunges on its center'; readonly known: boolean; readonly atDepth: number }
  /** A boring head is set down on metal at its centre, where no bar can cut. */
  | { readonly kind: 'bores without a hole'; readonly atDepth: number }
  /** A twist drill's lips are drawn into the metal; `opensOut`: in a hole that is there already. */
  | { readonly kind: 'grabs'; readonly metal: Metal; readonly opensOut: boolean };

/**
 * The faults of a tool in its place, and facts worth knowing, height by height. A twist drill, and an end mill that
 * does not cut to its centre, are guided by the metal under them: all of it has to be there where they enter, or a
 * hole in its middle, and no void on the way. A boring bar cannot cut at its centre. A drill's lips grab in brass and
 * bronze.
 *
 * Source: common practice, no source.
 * @throws RangeError if the radius is not a finite number over 0, a coordinate or depth is not finite, or the layers
 *   are none, or not in order.
 */
export function placeFacts(tool: PlacedTool): PlaceFact[] {
  checkPlace('placeFacts', 'center', tool.center);
  checkOverZero('placeFacts', 'radius', tool.radius);
  checkLayers('placeFacts', tool.layers);
  switch (tool.doing) {
    case 'drills': {
      const stands = standsOf(tool);
      return [...footingFacts(stands), ...grabbing(tool, stands)];
    }
    case 'plunges':
      return plungeFacts(tool);
    case 'bores': {
      const { center, layers } = tool;
      const first = layers.find(({ metal }) => contains(metalNear(metal, center, 0), center) === 'inside');
      return first === undefined ? [] : [{ kind: 'bores without a hole', atDepth: first.from }];
    }
    case 'mills round':
      return goesDownInside(tool);
    case 'rings':
    case 'mills along':
      return [];
  }
}

/** What a tool stands on in a layer. */
interface LayerFooting {
  readonly depth: number;
  readonly on: 'nothing' | 'metal' | 'middle hole' | BadFooting;
  readonly onMetal: boolean;
  readonly away: number;
}

/** An area that lacks less than this share of the tool's is all of it: rounding of an overlay. */
const ALL = 1e-9;

/**
 * A hole is in the middle of a tool if it moves the centre of area of what is left by less than this share of the
 * radius: far more than a hole that was drilled for it is off. Common practice, no source.
 */
const IN_THE_MIDDLE = 0.01;

function standsOf({ center, radius, layers }: PlacedTool): LayerFooting[] {
  const known = new Map<Region, Omit<LayerFooting, 'depth'>>();
  return layers.map(({ from, metal }) => {
    const standing = known.get(metal) ?? standingOn(metalNear(metal, center, 2 * radius), center, radius);
    known.set(metal, standing);
    return { depth: from, ...standing };
  });
}

function standingOn(metal: Region, center: Point, radius: number): Omit<LayerFooting, 'depth'> {
  const under = intersect([metal, disc(center, radius)]);
  if (under.length === 0) return { on: 'nothing', onMetal: false, away: 0 };
  const all = Math.PI * radius * radius;
  if (all - area(under) <= ALL * all) return { on: 'metal', onMetal: true, away: 0 };
  const where = contains(metal, center);
  const away = where === 'outside' ? distanceToBoundary(under, center) : 0;
  const isInside = where === 'inside';
  const isRimWhole = 1 - engagementOf(metal, center, radius).share <= ALL;
  if (!isRimWhole)
    return { on: where === 'outside' ? 'center in air' : 'over an edge', onMetal: isInside, away };
  const off = distance(centroid(under) as Point, center);
  const isMiddle = where === 'outside' && off <= IN_THE_MIDDLE * radius;
  return { on: isMiddle ? 'middle hole' : 'over a hole', onMetal: isInside, away };
}

function isBad(on: LayerFooting['on']): on is BadFooting {
  return on === 'center in air' || on === 'over an edge' || on === 'over a hole';
}

/** The first bad footing: of a tool that enters badly it need not be said what it meets then. */
function footingFacts(stands: readonly LayerFooting[]): PlaceFact[] {
  const entry = stands.findIndex(({ on }) => on !== 'nothing');
  const bad = stands.findIndex(({ on }) => isBad(on));
  const found = stands[bad];
  if (found === undefined || !isBad(found.on)) return [];
  const { on: footing, depth: atDepth, away } = found;
  return [{ kind: bad === entry ? 'enters badly' : 'comes into a void', footing, atDepth, away }];
}

/** Metals that draw a twist drill's lips in, as these have a hook. Common practice, no source. */
const GRABBING: readonly Metal[] = ['brass', 'bronze'];

function grabbing({ metal }: PlacedTool, stands: readonly LayerFooting[]): PlaceFact[] {
  if (metal === null || !GRABBING.includes(metal) || stands.every(({ on }) => on === 'nothing')) return [];
  return [{ kind: 'grabs', metal, opensOut: stands.some(({ on }) => on === 'middle hole') }];
}

/** An end mill that mills round goes down somewhere in the bore first: wherever that is, where all of it is metal. */
function goesDownInside(tool: PlacedTool): PlaceFact[] {
  if (tool.cutsToCenter === true) return [];
  const entry = standsOf(tool).find(({ on }) => on !== 'nothing');
  if (entry?.on !== 'metal') return [];
  return [{ kind: 'plunges on its center', known: tool.cutsToCenter === false, atDepth: entry.depth }];
}

function plungeFacts(tool: PlacedTool): PlaceFact[] {
  if (tool.cutsToCenter === true) return [];
  const stands = standsOf(tool);
  const first = stands.find(({ onMetal }) => onMetal);
  const known = tool.cutsToCenter === false;
  const onCenter: PlaceFact[] =
    first === undefined ? [] : [{ kind: 'plunges on its center', known, atDepth: first.depth }];
  // Of a tool that may well cut to its centre no more can be said.
  return known && onCenter.length === 0 ? footingFacts(stands) : onCenter;
}
