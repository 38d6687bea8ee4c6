import { offset } from '../combine/offset.js';
import type { Cells } from '../left/cells.js';
import type { KeptCells } from '../left/pieces.js';
import { lengthOf } from '../overlay/faces.js';
import { joinedTo, Members } from './members.js';
import { regionOfFaces } from './metal.js';
import { holdingSquare, type Necks } from './necks.js';
import { Stacks } from './stacks.js';
import { eachBeside, momentsBackwards, NEVER, type Timeline } from './timeline.js';

/** A body that from some moment on is joined to the kept one by thin metal only. */
export interface HangingBody {
  readonly moment: number;
  readonly cells: readonly number[];
  /** Of the thickest metal that joins it. */
  readonly thickness: number;
  /** Length of the walls along which it is joined, and their area. */
  readonly length: number;
  readonly area: number;
}

/**
 * The bodies that only thin metal joins to the kept one, in the order in which that comes about. Metal counts as thin
 * where it stands less than `hold` high, or than the part is thick if that is less; two stacks of metal hold each
 * other where they share a wall that high. Metal narrower in plan than `hold` is a neck, and taken as cut. Moments are
 * taken back one by one, as for bodies that come loose.
 * @param kept the kept body in the end, of which a cell that is thick enough stands for it, where it is held if one is
 */
export function hangingBodies(
  timeline: Timeline,
  kept: KeptCells,
  hold: number,
  necks: Necks,
): HangingBody[] {
  const { cells } = timeline;
  const { momentOf } = necks;
  const present = Uint8Array.from(momentOf, (moment) => (moment === NEVER ? 1 : 0));
  const groups = new Members(present.length);
  const stacks = new Stacks(cells, present, hold);
  for (const [a, b] of stacks.jointsOf(stacks.facesOf(present.keys()))) groups.join(a, b);
  let home = standFor(stacks, kept);
  const bodies: HangingBody[] = [];
  for (const { moment, cells: back } of momentsBackwards({ ...timeline, momentOf })) {
    for (const cell of back) present[cell] = 1;
    const joints = stacks.jointsOf(stacks.facesOf(back));
    for (const own of joinedTo(groups, joints, home, (i) => stacks.thick[i] === 1 && !stacks.fresh.has(i))) {
      const joint = thinJoint(timeline, necks, moment, own);
      if (joint === null || (joint.isByNeck && !hasRoom(timeline, own, hold))) continue;
      const { isByNeck: _, ...thin } = joint;
      bodies.push({ moment, cells: own, ...thin });
    }
    if (home < 0) home = standFor(stacks, kept);
  }
  return bodies.reverse();
}

/**
 * The bodies that hang in the end, each without the layers in which thin metal joins it: there it is one with the rest, as
 * a slug that a floor holds is with its floor. Hangs on nothing but what stands in the end.
 */
export function hangingInTheEnd({ cells, stepOf }: Timeline, kept: KeptCells, hold: number): number[][] {
  const present = Uint8Array.from(stepOf, (step) => (step === NEVER ? 1 : 0));
  const groups = new Members(present.length);
  const stacks = new Stacks(cells, present, hold);
  for (const [a, b] of stacks.jointsOf(stacks.facesOf(present.keys()))) groups.join(a, b);
  const home = standFor(stacks, kept);
  if (home < 0) return [];
  const bodies = new Map<number, number[]>();
  for (const cell of kept.cells) {
    const leader = groups.leader(cell);
    if (stacks.thick[cell] !== 1 || leader === groups.leader(home)) continue;
    const own = bodies.get(leader);
    if (own === undefined) bodies.set(leader, [cell]);
    else own.push(cell);
  }
  return [...bodies.values()]
    .map((own) => overJoints(cells, present, own))
    .filter(({ length }) => length > 0);
}

function overJoints(cells: Cells, present: Uint8Array, own: readonly number[]): number[] {
  const n = cells.slabs.length;
  const isOwn = new Set(own);
  const joined = new Set<number>();
  for (const cell of own) {
    eachBeside(cells, cell, (other) => {
      if (present[other] === 1 && !isOwn.has(other)) joined.add(cell % n);
    });
  }
  return own.filter((cell) => !joined.has(cell % n));
}

function standFor(stacks: Stacks, { cells, place }: KeptCells): number {
  const atPlace = thickestOf(stacks, place);
  return atPlace >= 0 ? atPlace : thickestOf(stacks, cells);
}

/** A cell of a body where it stands highest; -1 where it is thin all over. */
function thickestOf(stacks: Stacks, body: readonly number[]): number {
  let best = -1;
  let most = 0;
  for (const cell of body) {
    if (stacks.thick[cell] !== 1) continue;
    const size = stacks.cells.faceArea[Math.floor(cell / stacks.cells.slabs.length)] as number;
    if (best >= 0 && size <= most) continue;
    best = cell;
    most = size;
  }
  return best;
}

/** The walls and necks by which a body is joined to other metal after a moment; null where there are none. */
function thinJoint(
  timeline: Timeline,
  necks: Necks,
  moment: number,
  own: readonly number[],
): (Pick<HangingBody, 'thickness' | 'length' | 'area'> & { readonly isByNeck: boolean }) | null {
  const { cells, momentOf } = timeline;
  const n = cells.slabs.length;
  const isOwn = new Set(own);
  const stands = (cell: number) => momentOf[cell] === NEVER || (momentOf[cell] as number) > moment;
  const isCut = (cell: number) =>
    necks.momentOf[cell] !== NEVER && (necks.momentOf[cell] as number) <= moment;
  /** By wall: how high it stands. */
  const heights = new Map<number, number>();
  const across = new Set<number>();
  for (const cell of own) {
    const { from, to } = cells.slabs[cell % n] as Cells['slabs'][number];
    eachBeside(cells, cell, (other, edge) => {
      if (!stands(other) || isOwn.has(other)) return;
      if (!isCut(other)) heights.set(edge, (heights.get(edge) ?? 0) + to - from);
      else for (const k of necks.ofFace.get(Math.floor(other / n)) ?? []) across.add(k);
    });
  }
  if (heights.size === 0 && across.size === 0) return null;
  let thickness = 0;
  let length = 0;
  let area = 0;
  for (const [edge, height] of heights) {
    const along = lengthOf(cells.subdivision, edge);
    thickness = Math.max(thickness, height);
    length += along;
    area += along * height;
  }
  const slabHeights = cells.slabs.map(({ from, to }) => to - from);
  for (const k of across) {
    const widths = (necks.list[k] as Necks['list'][number]).widthsAfter(moment);
    thickness = Math.max(thickness, holdingSquare(widths, slabHeights));
    length += Math.max(...widths);
    area += widths.reduce((sum, width, s) => sum + width * (slabHeights[s] as number), 0);
  }
  return { thickness, length, area, isByNeck: across.size > 0 };
}

/** Whether a disc as wide as holds has room in a body in some slab: what is narrower all over is thin metal itself. */
function hasRoom(timeline: Timeline, own: readonly number[], hold: number): boolean {
  const n = timeline.cells.slabs.length;
  for (let s = 0; s < n; s++) {
    const faces = own.filter((cell) => cell % n === s).map((cell) => Math.floor(cell / n));
    if (faces.length === 0) continue;
    if (
      offset(
        regionOfFaces(timeline, faces, () => false),
        -hold / 2,
      ).length > 0
    )
      return true;
  }
  return false;
}
