import type { EveryCut } from '../cut/cut.js';
import type { JobIssue } from '../document/errors.js';
import { FINEST_SHARE, ROUNDEST_SHARE } from '../document/limits.js';
import type { PlainCut } from '../document/schema.js';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';
import type { Point } from '../geometry/point.js';
import type { Faults } from '../job/faults.js';
import type { PartName, Units } from '../job/job.js';
import type { AlongPlan, CenterPlan, JobCut } from '../job/plan.js';
import { bad, pointOf } from '../job/read-edges.js';
import type { Region } from '../region/region.js';
import { byNumbers } from './by-numbers.js';
import { readAlong } from './read-along.js';
import { isPoint, readPlacement } from './read-center.js';
import { readDepth } from './read-depth.js';
import { type DrawnPath, readPath } from './read-path.js';
import { passesIssues, planOf } from './read-plan.js';

/** What a cut is checked against; null for what is at fault itself. */
export interface PartSize {
  readonly thickness: number | null;
  readonly outline: Region | null;
  readonly names: readonly PartName[];
  /** Longer side of the box round the outline. */
  readonly extent: number | null;
  readonly units: Units;
  readonly resolution: number;
}

/** Where a cut is, read from a job. */
interface PlacedCut {
  readonly center: Point | null;
  readonly path: readonly Edge[];
  readonly diameter: number;
  readonly plan: { readonly center?: CenterPlan | null; readonly along?: AlongPlan };
}

/**
 * A cut of a job; null if it has faults, which are taken down. Values that are sound are checked even where
 * others are at fault already, so that all faults are found in one go.
 */
export function readCut(written: PlainCut, path: string, part: PartSize, faults: Faults): JobCut | null {
  const document = byNumbers(written, part);
  const sound = (...keys: string[]) => keys.every((key) => faults.sound(`${path}/${key}`));
  if (!sound('kind')) return null;
  const depth = sound('depth', 'reach') ? readDepth(document, part.thickness) : null;
  const place = placementOfCut(document, path, part, faults);
  const own = sound('diameter') ? document.diameter : undefined;
  const diameter = own ?? place?.diameter ?? null;
  if (document.kind === 'bore' && document.passes !== undefined && sound('passes')) {
    faults.add(passesIssues(document.passes, diameter, `${path}/passes`));
  }
  if (diameter !== null && sound('diameter')) {
    const finest = finestOf(part, place);
    if (document.kind === 'annular' && sound('wall')) {
      faults.add(wallIssues({ diameter, wall: document.wall }, path, finest));
    }
    faults.add(diameterIssues(diameter, path, finest));
  }
  if (!faults.sound(path) || depth === null || place === null) return null;
  const { breakThrough } = document;
  const past = sound('breakThrough') && breakThrough !== undefined ? { breakThrough } : {};
  if (breakThrough !== undefined && !depth.through) {
    faults.add([
      {
        path: `${path}/breakThrough`,
        message: 'belongs to a cut through the part, and this one is blind; leave it out',
      },
    ]);
    return null;
  }
  const every = { id: document.id, from: document.from ?? 'top', ...depth, ...past };
  return cutOf(document, every, place, part.units);
}

function placementOfCut(document: PlainCut, path: string, part: PartSize, faults: Faults): PlacedCut | null {
  return document.kind === 'swept'
    ? sweptPlace(document, path, part, faults)
    : roundPlace(document, path, part, faults);
}

function sweptPlace(
  document: PlainCut & { readonly kind: 'swept' },
  path: string,
  { outline }: PartSize,
  faults: Faults,
): PlacedCut | null {
  if (!faults.sound(`${path}/path`)) return null;
  const { diameter, path: given, from = 'top' } = document;
  const drawn: DrawnPath | null = 'along' in given ? null : given;
  if (drawn !== null) {
    const edges = faults.take(readPath(drawn, `${path}/path`));
    return edges && { center: null, path: edges, diameter, plan: {} };
  }
  if (outline === null || !('along' in given) || !faults.sound(`${path}/diameter`)) return null;
  const read = faults.take(readAlong(given.along, outline, { diameter, from }, `${path}/path/along`));
  return read && { center: null, path: read.edges, diameter, plan: { along: read.plan } };
}

function roundPlace(
  document: PlainCut & { readonly kind: 'bore' | 'annular' },
  path: string,
  { outline, resolution }: PartSize,
  faults: Faults,
): PlacedCut | null {
  const { center, diameter } = document;
  const diameterPath = `${path}/diameter`;
  const isSound = faults.sound(`${path}/center`);
  if (!faults.sound(diameterPath)) return null;
  if (!isSound || isPoint(center)) {
    if (diameter === undefined && !(isSound === false && isThrough(center))) {
      const message = 'is missing; only where the centre is given by three points does it follow';
      faults.take(bad(diameterPath, message));
    }
    if (!isSound || !isPoint(center) || diameter === undefined) return null;
    return { center: pointOf(center), path: [], diameter, plan: {} };
  }
  if (outline === null) return null;
  const task = { outline, diameter: diameter ?? null, resolution, path: `${path}/center`, diameterPath };
  const read = faults.take(readPlacement(center, task));
  if (read === null) return null;
  return { center: read.center, path: [], diameter: read.diameter, plan: { center: read.plan } };
}

/** Whether a centre that has faults is meant to be given by three points. */
function isThrough(center: unknown): boolean {
  return typeof center === 'object' && center !== null && 'through' in center;
}

function cutOf(document: PlainCut, every: EveryCut, place: PlacedCut, units: Units): JobCut {
  const { diameter, path } = place;
  const plan = planOf(document, units, place.plan);
  const all = plan === undefined ? every : { ...every, plan };
  const center = place.center as Point;
  switch (document.kind) {
    case 'bore':
      return { ...all, kind: 'bore', center, diameter };
    case 'annular':
      return {
        ...all,
        kind: 'annular',
        center,
        diameter,
        wall: document.wall,
        reach: document.reach ?? null,
      };
    case 'swept':
      return { ...all, kind: 'swept', diameter, path };
  }
}

/** The smallest size of a cut that keeps its shape beside the part, and as far out as the cut is. */
function finestOf(part: PartSize, place: PlacedCut | null): number {
  const { center = null, path = [] } = place ?? {};
  const numbers = center === null ? path.flatMap(numbersOf) : [center.x, center.y];
  const farthest = numbers.reduce((most, n) => Math.max(most, Math.abs(n)), 0);
  return Math.max((part.extent ?? 0) * FINEST_SHARE, farthest * ROUNDEST_SHARE);
}

function numbersOf(edge: Edge): number[] {
  return Object.values(edgeBounds(edge));
}

function diameterIssues(diameter: number, path: string, finest: number): JobIssue[] {
  if (diameter >= finest) return [];
  const message = `is ${diameter}, too small to keep its shape beside this part or so far out; from ${finest} on it does`;
  return [{ path: `${path}/diameter`, message }];
}

function wallIssues(
  { diameter, wall }: { readonly diameter: number; readonly wall: number },
  path: string,
  finest: number,
): JobIssue[] {
  const core = diameter - 2 * wall;
  const say = (message: string): JobIssue[] => [{ path: `${path}/wall`, message }];
  if (core <= 0) return say(`must be under half the diameter, ${diameter / 2}; it is ${wall}`);
  if (Math.min(core, wall) >= finest) return [];
  return say(`is ${wall} and leaves a core ${core} across; each must be ${finest} or more to keep its shape`);
}
