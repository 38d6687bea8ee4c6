import type { Bounds, Report, ReportRegion, ReportStep } from '@edgebite/core';
import { type Fills, shadeOf } from '../pen/fills.js';
import { lined } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { regionPath } from '../pen/path.js';
import type { Pen } from '../pen/pen.js';
import { clean } from '../pen/text.js';
import { SMALL } from '../plan/metal.js';
import type { Picture } from '../sheet/pictures.js';
import type { Place } from '../view/edges.js';
import { boundsOfRegion, placeInside, stretchesAt } from '../view/scan.js';
import type { View } from '../view/view.js';

/** A body that is told apart in a picture: where it is, as seen from the top. */
export interface ShownBody {
  readonly id: string;
  readonly role: 'slug' | 'offcut' | 'held slug' | 'hanging';
  /** Its plan view when it let go, or of what is left of it in the end. */
  readonly view: ReportRegion;
  /** The box that it cannot leave: of one on a floor the core of the cut. */
  readonly within: Bounds | null;
}

/** The bodies of a picture. */
export interface ShownBodies {
  /** Loose since one of its steps. */
  readonly freed: readonly ShownBody[];
  /** Loose before, and in the way of one of its steps: they stand in the picture as they stood before it. */
  readonly met: readonly ShownBody[];
  /** Loose before: taken to be lifted out. */
  readonly gone: readonly ShownBody[];
  readonly held: readonly ShownBody[];
  /** Joined by thin metal alone. */
  readonly hanging: readonly ShownBody[];
}

/** What is told apart of the metal in a picture. */
export function bodiesIn(report: Report, { steps }: Picture): ShownBodies {
  const [first, last] = [steps[0] as number, steps.at(-1) as number];
  const roles = new Map(report.bodies.map(({ id, role }) => [id, role]));
  const until = report.steps.slice(0, last + 1);
  const freed = new Set(until.flatMap(({ frees }) => frees.map(({ body }) => body)));
  const met = new Set(steps.flatMap((k) => (report.steps[k] as ReportStep).meets.map(({ body }) => body)));
  const loose = until.flatMap(({ frees }, k) =>
    frees.map(({ body, view }) => ({
      id: body,
      role: roles.get(body) === 'slug' ? ('slug' as const) : ('offcut' as const),
      view,
      within: boundsOfRegion(view),
      since: k,
    })),
  );
  const before = loose.filter(({ since }) => since < first);
  return {
    freed: loose.filter(({ since }) => since >= first),
    met: before.filter(({ id }) => met.has(id)),
    gone: before.filter(({ id }) => !met.has(id)),
    held: report.bodies
      .filter(({ role, step }) => role === 'held slug' && step <= last)
      .flatMap(({ id, pieces, step }) =>
        report.pieces
          .filter((piece) => pieces.includes(piece.id))
          .map(({ view }) => ({
            id,
            role: 'held slug' as const,
            view,
            within: coreOf(report.steps[step] as ReportStep),
          })),
      ),
    hanging: until.flatMap(({ hangs }) =>
      hangs
        .filter(({ body }) => !freed.has(body))
        .map(({ body, view }) => ({ id: body, role: 'hanging' as const, view, within: null })),
    ),
  };
}

/** The box round what an annular cutter goes round. */
function coreOf({ center, diameter, wall }: ReportStep): Bounds | null {
  if (center === null) return null;
  const radius = diameter / 2 - (wall ?? 0);
  const [x, y] = center;
  return { minX: x - radius, minY: y - radius, maxX: x + radius, maxY: y + radius };
}

/**
 * Draws the metal after a picture's steps, seen from the face that lies up: slab after slab from below, so that what a
 * higher one covers is hidden, as it is on the part. The deeper a face lies the darker it is. What the steps take is
 * dotted, and so are places that they deepen. What is loose, held by a floor or hangs is strewn with its own sign.
 */
export function drawStepMetal(
  parent: SvgNode,
  report: Report,
  picture: Picture,
  bodies: ShownBodies,
  view: View,
  pen: Pen,
  fills: Fills,
  id: string,
): void {
  const group = parent.group().attr('id', `${pen.prefix}${id}metal`);
  const [first, last] = [picture.steps[0] as number, picture.steps.at(-1) as number];
  const { before, up } = report.steps[first] as ReportStep;
  const { after } = report.steps[last] as ReportStep;
  if (before === null || after === null) return;
  const face = (d: string, role: 'kept' | ShownBody['role'], depth: number, about?: string): void => {
    if (d === '') return;
    const fill = fills.face(role, true);
    if (depth > 0) group.path(d).attr({ fill, 'fill-rule': 'evenodd' });
    const path = lined(group.path(d), SMALL.edge);
    path
      .attr(depth > 0 ? shadeOf(pen.theme, depth) : { fill })
      .attr({ 'fill-rule': 'evenodd', 'data-role': role });
    if (about !== undefined) path.attr('data-about', clean(`body:${about}`));
  };
  const loose = [...bodies.freed, ...bodies.met];
  const near = report.resolution;
  const layers = after.map(({ region, from, to }, s) => {
    const own = before[s]?.region ?? [];
    const standing = partsOf(region, [...loose, ...bodies.gone], bodies.held, near);
    const met = bodies.met.length === 0 ? null : partsOf(own, bodies.met, [], near);
    return {
      depth: (up === 'top' ? report.thickness - to : from) / report.thickness,
      metal: regionPath(standing.rest, view),
      bodies: [...loose, ...bodies.held].map((body) => ({
        body,
        d: regionPath((bodies.met.includes(body) ? met : standing)?.of.get(body) ?? [], view),
      })),
      // Where only one of the two is, something was taken: what stands after is a part of what stood before.
      taken: own === region ? '' : takenPath(regionPath(own, view), regionPath(region, view)),
    };
  });
  const upwards = up === 'top' ? layers : layers.reverse();
  upwards.forEach(({ depth, metal, bodies: own, taken }, k) => {
    const over = upwards[k + 1];
    if (metal !== over?.metal) face(metal, 'kept', depth);
    if (taken !== '' && taken !== over?.taken) {
      const path = group.path(taken).attr({ fill: fills.taken(), stroke: 'none' });
      path.attr({ 'fill-rule': 'evenodd', 'data-role': 'taken' });
    }
    own.forEach(({ body, d }, i) => {
      if (d !== over?.bodies[i]?.d) face(d, body.role, depth, body.id);
    });
  });
  drawHanging(group, after, bodies.hanging, view, pen, fills, id);
}

function takenPath(before: string, after: string): string {
  return before === after ? '' : before + after;
}

/** A body that hangs is of one piece with the rest in some slab: its plan view is hatched where there is metal. */
function drawHanging(
  group: SvgNode,
  after: NonNullable<ReportStep['after']>,
  hanging: readonly ShownBody[],
  view: View,
  { prefix }: Pen,
  fills: Fills,
  id: string,
): void {
  if (hanging.length === 0) return;
  const clip = `${prefix}${id}hanging-clip`;
  const d = after.map(({ region }) => regionPath(region, view)).join('');
  group.clip().attr('id', clip).path(d);
  const inside = group.group().attr('clip-path', `url(#${clip})`);
  for (const body of hanging) {
    const path = lined(inside.path(regionPath(body.view, view)), SMALL.edge);
    path.attr({ fill: fills.face('hanging', true), 'data-role': 'hanging' });
    path.attr('data-about', clean(`body:${body.id}`));
  }
}

interface Parts {
  readonly of: ReadonlyMap<ShownBody, ReportRegion>;
  readonly rest: ReportRegion;
}

/**
 * The parts of a section by the body that they belong to. No cut works under metal that stands, so over one place there
 * is one body only: a place inside a part says whose it is.
 */
function partsOf(
  region: ReportRegion,
  loose: readonly ShownBody[],
  held: readonly ShownBody[],
  near: number,
): Parts {
  const of = new Map<ShownBody, ReportRegion[number][]>();
  if (loose.length === 0 && held.length === 0) return { of, rest: region };
  const rest: ReportRegion[number][] = [];
  for (const part of region) {
    const owner = ownerOf([part], loose, held, near);
    if (owner === undefined) rest.push(part);
    else of.set(owner, [...(of.get(owner) ?? []), part]);
  }
  return { of, rest };
}

function ownerOf(
  part: ReportRegion,
  loose: readonly ShownBody[],
  held: readonly ShownBody[],
  near: number,
): ShownBody | undefined {
  const box = boundsOfRegion(part);
  const isAt = ({ within }: ShownBody): boolean => box !== null && within !== null && lies(box, within, near);
  const possible = loose.filter(isAt);
  const inside = possible.length === 0 ? null : placeInside(part);
  const free = inside === null ? undefined : possible.find(({ view }) => isIn(view, inside));
  // What a floor holds is known as it is in the end, when a later cut may have taken some of it: a place of it decides.
  return free ?? held.find((body) => isAt(body) && isIn(part, placeInside(body.view) ?? [0, 0]));
}

/** Whether a box lies in another, or out of it by no more than so much. */
function lies(a: Bounds, b: Bounds, near: number): boolean {
  return (
    a.minX >= b.minX - near && a.maxX <= b.maxX + near && a.minY >= b.minY - near && a.maxY <= b.maxY + near
  );
}

function isIn(region: ReportRegion, [x, y]: Place): boolean {
  return stretchesAt(region, y).some(([from, to]) => from < x && x < to);
}
