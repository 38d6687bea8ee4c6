import type { Job } from '../job/job.js';
import type { ReportBody } from '../report/report-schema.js';
import type { Body } from '../state/bodies.js';
import type { Result } from '../step/result.js';
import type { Step } from '../step/step.js';
import { massIn } from './step-rows.js';
import { forceOf } from './tearing.js';
import { waysOutOfFloor } from './ways-out.js';
import { waysOutOfThin } from './ways-out-thin.js';

/** The bodies of a report: those that come loose or hang, and the slugs that a floor holds. */
export function bodyRows(result: Result): ReportBody[] {
  const all = [...looseRows(result), ...heldRows(result)];
  return all.sort((a, b) => a.step - b.step);
}

/** A slug that a floor holds is held from when its cut is made. */
function heldRows(result: Result): ReportBody[] {
  const { left, timeline, job } = result;
  return left.pieces.pieces.flatMap((piece, number): ReportBody[] => {
    if (piece.role !== 'held slug' || piece.freedBy === null) return [];
    const floors = left.floors.filter(({ holds }) => holds === number);
    const [floor] = floors;
    const step = timeline.stepsOf[piece.freedBy]?.at(-1) ?? 0;
    const { lay } = (result.steps[step] as Step).approach;
    return [
      {
        id: piece.id,
        role: 'held slug',
        step,
        atDepth: (job.cuts[piece.freedBy] as Job['cuts'][number]).depth,
        volume: piece.volume,
        mass: massIn(result, piece.volume),
        held:
          floor === undefined
            ? null
            : {
                thickness: floor.thickness,
                ...forceOf(job, floor.thickness * (floor.kerfLength ?? 0)),
              },
        end: 'left',
        endStep: null,
        pieces: [piece.id],
        waysOut: waysOutOfFloor(result, { plan: piece.plan, area: piece.area, floors, lay }),
      },
    ];
  });
}

function looseRows(result: Result): ReportBody[] {
  return result.bodies.map((body, k) => {
    const { hangs, frees, coreOf, cutBy } = body;
    const first = (hangs ?? frees) as NonNullable<Body['frees']>;
    const [cut] = cutBy;
    return {
      id: result.bodyIds[k] as string,
      role: frees === null ? 'hanging' : coreOf === null ? 'offcut' : 'slug',
      step: first.step,
      atDepth: first.depth,
      volume: first.volume,
      mass: massIn(result, first.volume),
      held: null,
      end: frees === null ? 'left' : cut === undefined ? 'lifted out' : 'cut into',
      endStep: cut?.step ?? null,
      pieces: result.piecesOfBody[k] as string[],
      waysOut: frees === null ? waysOutOfHanging(result, k) : [],
    };
  });
}

/** Of a body that hangs in the end: what a floor holds is freed as a held slug is, all else across its necks. */
function waysOutOfHanging(result: Result, k: number): ReportBody['waysOut'] {
  const { left, steps } = result;
  const body = result.bodies[k] as Body;
  const { lay } = (steps[body.hangs?.step ?? 0] as Step).approach;
  const ids = new Set(result.piecesOfBody[k]);
  const number = left.pieces.pieces.findIndex(({ id, role }) => role === 'hanging' && ids.has(id));
  const piece = left.pieces.pieces[number];
  const floors = left.floors.filter(({ holds }) => holds === number);
  return piece === undefined || floors.length === 0
    ? waysOutOfThin(result, body, lay)
    : waysOutOfFloor(result, { plan: piece.plan, area: piece.area, floors, lay });
}
