import type { Cut, EveryCut } from '../cut/cut.js';
import type { Edge } from '../geometry/edge.js';
import { edgeBounds } from '../geometry/measure.js';
import type { JobIssue } from './errors.js';
import type { Faults } from './faults.js';
import { FINEST_SHARE, ROUNDEST_SHARE } from './limits.js';
import { readDepth } from './read-depth.js';
import { pointOf } from './read-edges.js';
import { readPath } from './read-path.js';
import type { CutDocument } from './schema.js';

/** What a cut is checked against; null for what is at fault itself. */
export interface PartSize {
  readonly thickness: number | null;
  /** Longer side of the box round the outline. */
  readonly extent: number | null;
}

/**
 * A cut of a job; null if it has faults, which are taken down. Values that are sound are checked even where
 * others are at fault already, so that all faults are found in one go.
 */
export function readCut(document: CutDocument, path: string, part: PartSize, faults: Faults): Cut | null {
  const sound = (...keys: string[]) => keys.every((key) => faults.sound(`${path}/${key}`));
  if (!sound('kind')) return null;
  const depth = sound('depth', 'reach') ? readDepth(document, part.thickness) : null;
  const route =
    document.kind === 'swept' && sound('path') ? faults.take(readPath(document.path, `${path}/path`)) : [];
  const finest = finestOf(part, document.kind === 'swept' ? route : sound('center') ? document.center : null);
  if (sound('diameter')) {
    if (document.kind === 'annular' && sound('wall')) faults.add(wallIssues(document, path, finest));
    faults.add(diameterIssues(document.diameter, path, finest));
  }
  const fine = faults.sound(path) && depth !== null && route !== null;
  return fine ? cutOf(document, { id: document.id, from: document.from ?? 'top', ...depth }, route) : null;
}

function cutOf(document: CutDocument, every: EveryCut, path: readonly Edge[]): Cut {
  const { diameter } = document;
  switch (document.kind) {
    case 'bore':
      return { ...every, kind: 'bore', center: pointOf(document.center), diameter };
    case 'annular': {
      const { center, wall, reach = null } = document;
      return { ...every, kind: 'annular', center: pointOf(center), diameter, wall, reach };
    }
    case 'swept':
      return { ...every, kind: 'swept', diameter, path };
  }
}

/** The smallest size of a cut that keeps its shape beside the part, and as far out as the cut is. */
function finestOf(part: PartSize, where: readonly Edge[] | readonly [number, number] | null): number {
  const numbers = (where ?? []).flatMap((item) => (typeof item === 'number' ? [item] : numbersOf(item)));
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
