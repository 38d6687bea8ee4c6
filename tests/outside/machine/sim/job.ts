import { type Distance, furthestOf, inShape, toPath } from './distance.js';
import type { Lie } from './lie.js';
import { type Edge, loopsOf, type Place, type ShapeDocument } from './shapes.js';

/** A cut as a job writes it, of the kinds that this check reads. */
export interface CutDocument {
  readonly id: string;
  readonly kind: 'bore' | 'annular' | 'swept';
  readonly center?: Place;
  readonly diameter: number;
  readonly wall?: number;
  readonly reach?: number;
  readonly path?: { readonly edges: readonly Edge[] };
  readonly depth?: number | 'through';
  readonly from?: 'top' | 'bottom';
  readonly clearance?: number;
  readonly passes?: {
    readonly kind: 'step in' | 'open out';
    readonly bite: number;
    readonly [key: string]: unknown;
  };
}

export interface SetupDocument {
  readonly id: string;
  readonly flip?: 'x' | 'y';
  readonly turn?: number;
  readonly zero: unknown;
  readonly cuts: readonly string[];
}

export interface KeepOutDocument {
  readonly id: string;
  readonly kind: 'jaw' | 'stop' | 'parallel' | 'clamp';
  readonly shape: ShapeDocument;
  readonly from: number;
  readonly to: number;
  readonly setup?: string;
}

export interface JobDocument {
  readonly edgebite: 1;
  readonly name?: string;
  readonly units: 'mm' | 'inch';
  readonly part: { readonly outline: ShapeDocument; readonly thickness: number; readonly material?: string };
  readonly keep?: Place;
  readonly limits?: { readonly web?: number; readonly knifeEdge?: number; readonly hold?: number };
  readonly setups?: readonly SetupDocument[];
  readonly keepOut?: readonly KeepOutDocument[];
  readonly cuts: readonly CutDocument[];
}

/** A tool standing or driven somewhere: what it sweeps, over 0 outside of it. */
export type Tool =
  | { readonly kind: 'disc'; readonly center: Place; readonly radius: number }
  | { readonly kind: 'ring'; readonly center: Place; readonly radius: number; readonly wall: number }
  | { readonly kind: 'path'; readonly path: readonly Edge[]; readonly radius: number }
  | {
      readonly kind: 'driven ring';
      readonly path: readonly Edge[];
      readonly radius: number;
      readonly wall: number;
    };

/** Signed distance from what a tool sweeps: below 0 within it. */
export function fromTool(tool: Tool): Distance {
  const { radius } = tool;
  switch (tool.kind) {
    case 'disc': {
      const [cx, cy] = tool.center;
      return (x, y) => Math.sqrt((x - cx) ** 2 + (y - cy) ** 2) - radius;
    }
    case 'ring': {
      const [cx, cy] = tool.center;
      const inner = radius - tool.wall;
      return (x, y) => {
        const far = Math.sqrt((x - cx) ** 2 + (y - cy) ** 2);
        return Math.max(far - radius, inner - far);
      };
    }
    case 'path': {
      const away = toPath(tool.path);
      return (x, y) => away(x, y) - radius;
    }
    case 'driven ring': {
      // Somewhere on the way a place lies in the ring if the nearest stand reaches it and the furthest is past it.
      const [near, far] = [toPath(tool.path), furthestOf(tool.path)];
      const inner = radius - tool.wall;
      return (x, y) => Math.max(near(x, y) - radius, inner - far(x, y));
    }
  }
}

/** How deep a cut really goes. */
export function depthOf(cut: CutDocument, thickness: number): number {
  const asked = cut.depth === undefined || cut.depth === 'through' ? thickness : cut.depth;
  return Math.min(asked, thickness, cut.kind === 'annular' ? (cut.reach ?? thickness) : thickness);
}

/** The tool of a cut, standing where it ends. */
export function toolOf(cut: CutDocument): Tool {
  const radius = cut.diameter / 2;
  if (cut.kind === 'swept') return { kind: 'path', path: cut.path?.edges ?? [], radius };
  const center = cut.center as Place;
  return cut.kind === 'bore'
    ? { kind: 'disc', center, radius }
    : { kind: 'ring', center, radius, wall: cut.wall as number };
}

/** Signed distance within the part before any cut, over 0 in metal. */
export function partOf(job: JobDocument): Distance {
  return inShape(loopsOf(job.part.outline));
}

/** How the part lies in a setup; without one as drawn. */
export function lieOf(setup: SetupDocument | undefined): Lie {
  return { flip: setup?.flip ?? null, turn: setup?.turn ?? 0 };
}

/** The gap that a tool comes off a wall by. Default: 0.2 mm or 0.01 inch, as the job format says. */
export function clearanceOf(job: JobDocument, cut: CutDocument): number {
  return cut.clearance ?? (job.units === 'mm' ? 0.2 : 0.01);
}

/** The thickness that holds a body. Default: the web limit, which is 1 mm or 0.04 inch. */
export function holdOf(job: JobDocument): number {
  return job.limits?.hold ?? job.limits?.web ?? (job.units === 'mm' ? 1 : 0.04);
}
