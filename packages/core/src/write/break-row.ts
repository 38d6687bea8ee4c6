import { DEGREE } from '../geometry/angle.js';
import type { Edge } from '../geometry/edge.js';
import { cutOfSource } from '../geometry/source.js';
import { isLeavingFirst, type ZonedKnifeEdge } from '../left/knife-edges.js';
import { chamferOf, roundingOf } from '../measure/breaks.js';
import type { Report } from '../report/report-schema.js';

type Row = Report['knifeEdges'][number]['break'];

/** A disc may miss an edge that it rests on by so many tolerances of the overlay. */
const MISS = 1e3;

/** How to break a knife edge so that no metal thinner than the web limit is left. */
export function breakRow(
  { wedge, disc }: Pick<ZonedKnifeEdge, 'wedge' | 'disc'>,
  web: number,
  tolerance: number,
): Row {
  const chamfer = chamferOf(wedge, web);
  const round = roundingOf(wedge, disc, web, MISS * tolerance);
  const inOrder = <T>([leaving, arriving]: readonly [T, T]): [T, T] =>
    isLeavingFirst(wedge) ? [leaving, arriving] : [arriving, leaving];
  const edges = inOrder<Edge>([wedge.leaving, wedge.arriving]);
  const legs = round === null ? null : inOrder<number>(round.legs);
  return {
    chamfer:
      chamfer === null
        ? null
        : {
            flat: chamfer.flat,
            leg: chamfer.leg,
            angles: inOrder<number>([chamfer.angles[0] / DEGREE, chamfer.angles[1] / DEGREE]),
          },
    radius: round === null || legs === null ? null : { radius: round.radius, back: round.back, legs },
    opens: opensOf(edges, chamfer?.leg ?? null, legs),
  };
}

/** What it does to the opening of a cut in a straight face: there the leg on the face is what it grows by. */
function opensOf(
  edges: readonly [Edge, Edge],
  leg: number | null,
  legs: readonly [number, number] | null,
): Row['opens'] {
  const face = edges.findIndex(({ kind, source }) => kind === 'line' && isOutline(source));
  const cut = cutOfSource(edges[1 - face]?.source ?? '');
  const line = edges[face];
  if (line === undefined || cut === null) return null;
  return { cut, face: line.source ?? '', chamfer: leg, radius: legs?.[face as 0 | 1] ?? null };
}

function isOutline(source: string | undefined): boolean {
  return source !== undefined && cutOfSource(source) === null;
}
