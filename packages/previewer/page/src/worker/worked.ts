import type { Report, ReportCut, ReportEdge } from '@edgebite/core';
import type { Place } from './sketch.js';

/** Of a cut that was worked out, what moving it by hand needs to know. */
export interface Worked {
  /** Where its centre came to; null for a cut along a path. */
  readonly center: Place | null;
  readonly diameter: number;
  /** Where its path starts. */
  readonly start: Place | null;
  /** The edges of the outline that its centre is given by. */
  readonly edges: readonly ReportEdge[];
  /** The passes in which its centre steps in. */
  readonly steps: Steps | null;
  /** Names that the job gives to edges and holes; none by default. */
  readonly names?: Report['names'] | undefined;
}

/** What moving cuts by hand needs to know, by their ids. */
export interface WorkedCuts {
  readonly get: (id: string) => Worked | undefined;
}

/** Passes along a straight approach. */
export interface Steps {
  /** Unit vector of the way in. */
  readonly approach: Place;
  /** Where the centre is at first touch. */
  readonly touch: Place;
  readonly travel: number;
  /** Where the centre stands for each pass but those on the final place. */
  readonly stops: readonly Place[];
  /** How many passes there are in all. */
  readonly made: number;
}

/** Radians in a degree. */
const DEGREE = Math.PI / 180;

/** What moving a cut of a report by hand needs to know. */
export function workedOf({ outline, names }: Report, cut: ReportCut): Worked {
  const { center, diameter, path } = cut;
  const about = cut.placement?.about ?? [];
  return {
    center,
    diameter,
    start: path?.[0]?.a ?? null,
    edges: about.length === 0 ? [] : edgesNamed(outline, about),
    steps: stepsOf(cut),
    names,
  };
}

function edgesNamed(outline: Report['outline'], names: readonly string[]): readonly ReportEdge[] {
  const loops = outline.flatMap(({ outer, holes }) => [outer, ...holes]);
  return loops.flat().filter(({ source }) => source !== undefined && names.includes(source));
}

function stepsOf({ center, passes }: ReportCut): Steps | null {
  if (center === null || passes === null || passes.kind !== 'step in' || passes.approach === null)
    return null;
  const angle = passes.approach * DEGREE;
  const approach: Place = [Math.cos(angle), Math.sin(angle)];
  const { travel, list } = passes;
  return {
    approach,
    touch: [center[0] - travel * approach[0], center[1] - travel * approach[1]],
    travel,
    stops: list.filter(({ role }) => role === 'rough').map((pass) => pass.center),
    made: list.length,
  };
}
