import type { AlongDocument, CutDocument, JobDocument, OutlineDocument } from '../document/schema.js';
import type { Job } from '../job/job.js';
import type { JobCut } from '../job/plan.js';
import { type MirroredNames, mirroredFace, mirroredSetup } from './mirrored-setup.js';
import { type Mirror, mirroredNumber, mirroredPoint, mirroredShapes } from './mirrored-shape.js';
import { plainCut } from './plain-cut.js';
import { mirrorInMiddle } from './read-motions.js';

/**
 * The job of the mirrored part, as it would be written: its part, its cuts one by one with their centres as places, its setups
 * and what must be kept clear of. The spindle turns the same way, so what is milled conventionally is so again.
 */
export function twinDocument(job: Job, twin: NonNullable<JobDocument['twin']>): JobDocument {
  const { twin: _, ...plain } = job.plain;
  const mirror = mirrorInMiddle(job.outline, twin.swaps === 'left and right' ? 'x' : 'y') as Mirror;
  const outline = mirroredOutline(plain.part.outline, mirror);
  const names: MirroredNames = { mirror, edge: (name) => edgeIn(name, plain.part.outline, mirror) };
  const { keep, setups, keepOut } = plain;
  return {
    ...plain,
    name: twin.name ?? (job.name === '' ? 'mirrored' : `${job.name}, mirrored`),
    part: { ...plain.part, outline },
    ...(keep === undefined ? {} : { keep: mirroredPoint(keep, mirror) }),
    ...(setups === undefined ? {} : { setups: setups.map((one) => mirroredSetup(one, names)) }),
    ...(keepOut === undefined
      ? {}
      : {
          keepOut: keepOut.map((one) => ({
            ...one,
            shape: mirroredShapes(one.shape, mirror)[0] ?? one.shape,
          })),
        }),
    cuts: plain.cuts.map((cut, k) => mirroredCut(cut, job.cuts[k] as JobCut, names)),
  } as JobDocument;
}

/** The outline with its holes. Those that it is drawn with come first, as they do in the numbers of holes. */
function mirroredOutline(outline: OutlineDocument, mirror: Mirror): OutlineDocument {
  const [own, ...inner] = mirroredShapes(outline, mirror);
  const holes = [...inner, ...(outline.holes ?? []).flatMap((hole) => mirroredShapes(hole, mirror))];
  return { ...own, ...(holes.length === 0 ? {} : { holes }) } as OutlineDocument;
}

/** The name by number that an edge has in the mirrored part; any other name stays. */
function edgeIn(name: string, outline: OutlineDocument, mirror: Mirror): string {
  const [, owner, hole, number] = /^(outline|hole:(\d+)):(\d+)$/.exec(name) ?? [];
  if (owner === undefined || number === undefined) return name;
  const inner = mirroredShapes(outline, mirror).length - 1;
  const shape = hole === undefined ? outline : outline.holes?.[Number(hole) - inner];
  return shape === undefined ? name : `${owner}:${mirroredNumber(shape, Number(number), mirror)}`;
}

function mirroredCut(written: CutDocument, read: JobCut, names: MirroredNames): CutDocument {
  if (written.kind !== 'swept' || !('along' in written.path)) {
    return plainCut(written, read, written.id, [names.mirror]);
  }
  return { ...written, path: { along: mirroredAlong(written.path.along, names) } };
}

/** Loops run the same way round on the mirrored part, so a stretch of one begins where it ended. */
function mirroredAlong(along: AlongDocument, names: MirroredNames): AlongDocument {
  const { mirror } = names;
  const { from, to, start, ...same } = along;
  const place = (given: NonNullable<AlongDocument['from']>): NonNullable<AlongDocument['from']> => {
    if (!('edge' in given)) return mirroredPoint(given, mirror);
    return { ...given, edge: mirroredFace(given.edge, names), end: given.end === 'end' ? 'start' : 'end' };
  };
  return {
    ...same,
    ...(to === undefined ? {} : { from: place(to) }),
    ...(from === undefined ? {} : { to: place(from) }),
    ...(start === undefined ? {} : { start: mirroredPoint(start, mirror) }),
  };
}
