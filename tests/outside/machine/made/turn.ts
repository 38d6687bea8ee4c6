import type { CutDocument, JobDocument, KeepOutDocument, SetupDocument } from '../sim/job.js';
import { type Edge, edgesOf, type Place, type ShapeDocument } from '../sim/shapes.js';

/*
 * A job drawn a quarter turn on, with each setup turned back by as much: what lies on the table is the same. A quarter
 * turn exchanges coordinates and changes a sign, so that nothing is rounded.
 */

/** A place of a drawing that is turned counter-clockwise by a quarter. */
function turned([x, y]: Place): Place {
  return [0 - y, x];
}

function turnedEdge(edge: Edge): Edge {
  const [a, b] = [turned(edge.a), turned(edge.b)];
  return edge.kind === 'line' ? { kind: 'line', a, b } : { ...edge, a, b, center: turned(edge.center) };
}

/** The same shape with its edges written out, so that they have the same names however it is turned. */
function written(shape: ShapeDocument): ShapeDocument {
  const { holes } = shape;
  return { edges: edgesOf(shape), ...(holes === undefined ? {} : { holes: holes.map(written) }) };
}

function turnedShape({ edges = [], holes }: ShapeDocument): ShapeDocument {
  return {
    edges: edges.map(turnedEdge),
    ...(holes === undefined ? {} : { holes: holes.map(turnedShape) }),
  };
}

/** The job with all its shapes as edges. */
export function writtenOut(job: JobDocument): JobDocument {
  return {
    ...job,
    part: { ...job.part, outline: written(job.part.outline) },
    ...(job.keepOut === undefined
      ? {}
      : { keepOut: job.keepOut.map((one): KeepOutDocument => ({ ...one, shape: written(one.shape) })) }),
  };
}

/** A job that is written out, drawn a quarter turn on, with its setups turned back. */
export function turnedOn(job: JobDocument): JobDocument {
  const { keep, keepOut, setups } = job;
  return {
    ...job,
    part: { ...job.part, outline: turnedShape(job.part.outline) },
    ...(keep === undefined ? {} : { keep: turned(keep) }),
    ...(setups === undefined ? {} : { setups: setups.map(turnedSetup) }),
    ...(keepOut === undefined
      ? {}
      : { keepOut: keepOut.map((one): KeepOutDocument => ({ ...one, shape: turnedShape(one.shape) })) }),
    cuts: job.cuts.map(turnedCut),
  };
}

/**
 * What is turned by t once it is turned over lies the same turned by t - 90 if it was drawn 90 on. Turned over, the
 * quarter of the drawing runs the other way.
 */
function turnedSetup(setup: SetupDocument): SetupDocument {
  const turn = (setup.turn ?? 0) + (setup.flip === undefined ? -90 : 90);
  return { ...setup, turn: turn > 360 ? turn - 360 : turn < -360 ? turn + 360 : turn };
}

function turnedCut(cut: CutDocument): CutDocument {
  const { center, path, passes } = cut;
  const approach = passes?.approach;
  return {
    ...cut,
    ...(center === undefined ? {} : { center: turned(center) }),
    ...(path === undefined ? {} : { path: { edges: path.edges.map(turnedEdge) } }),
    ...(passes === undefined
      ? {}
      : {
          passes: { ...passes, ...(typeof approach === 'number' ? { approach: quarterOn(approach) } : {}) },
        }),
  };
}

function quarterOn(degrees: number): number {
  const on = degrees + 90;
  return on > 360 ? on - 360 : on;
}
