import type { Report } from '@edgebite/core';
import { fillsIn } from '../pen/fills.js';
import type { SvgNode } from '../pen/node.js';
import type { Pen } from '../pen/pen.js';
import { rootOf } from '../pen/root.js';
import { type Theme, type ThemeName, themeOf } from '../pen/theme.js';
import { drawMeasures, drawTop, setLabels } from '../plan/plan.js';
import { middleOf, rimBounds, shownBounds } from '../sheet/layout.js';
import type { Place } from '../view/edges.js';
import { INK } from '../view/room.js';
import { type Box, onSheet, type View } from '../view/view.js';
import { descriptionOf, titleOf } from './describe.js';
import { inkedRoom } from './ink.js';

/** How a report is drawn for a screen. */
export interface ViewOptions {
  /** Width and height of the picture's own coordinates, in which lettering is 3.5 high: 200 by 130 without it. */
  readonly size?: readonly [number, number] | undefined;
  /** A theme that is ready, or colours of your own, which may be `var(--name)`; `light` without it. */
  readonly theme?: ThemeName | Theme | undefined;
  /** Put before every id in the drawing, so that several can be in one page; `edgebite-view-` without it. */
  readonly idPrefix?: string | undefined;
  /** Whether sizes and places from the zero are drawn; they are without it. */
  readonly dimensions?: boolean | undefined;
  /** Whether names and numbers are set; they are without it. */
  readonly labels?: boolean | undefined;
}

/** The room round the part: with dimensions, and without. */
const ROUND = {
  dimensioned: { left: 31, right: 18, top: 18, bottom: 27 },
  bare: { left: 8, right: 8, top: 8, bottom: 8 },
};

/** The surroundings of the centre of a pass. */
function around([x, y]: Place): Box {
  return { x: x - 2, y: y - 2, width: 4, height: 4 };
}

/** From the rims of cuts to the edge of the picture. */
const RIM = 2;

/** The plan alone, without a sheet. */
export function viewOf(report: Report, options: ViewOptions): SvgNode {
  const { size = [200, 130], theme = 'light', idPrefix = 'edgebite-view-' } = options;
  const { dimensions = true, labels = true } = options;
  const pen: Pen = { theme: themeOf(theme), prefix: idPrefix };
  const words = { title: titleOf(report), description: descriptionOf(report) };
  const root = rootOf(size, words, idPrefix, pen.theme);
  // As large as its place in the page.
  root.attr({ width: '100%', height: '100%', preserveAspectRatio: 'xMidYMid meet' });
  const plan = { x: 0, y: 0, width: size[0], height: size[1] };
  const place = { plan, view: fitting(report, size, dimensions ? ROUND.dimensioned : ROUND.bare) };
  const group = root.group().attr({ id: `${idPrefix}plan`, role: 'group', 'aria-label': 'Plan' });
  const named = drawTop(group, report, place, pen, fillsIn(root, pen));
  if (!dimensions && !labels) return root;
  const room = inkedRoom(report, plan, place.view);
  const names = group.group();
  if (dimensions) drawMeasures(group, report, place, room, pen);
  // On a screen a pass can be taken hold of where its centre stands.
  for (const { passes } of report.cuts) {
    for (const { center } of passes?.list ?? []) room.markBox(around(onSheet(place.view, center)), INK.named);
  }
  if (labels) setLabels(names, named, place, room, pen);
  return root;
}

/**
 * The view in which the part, and the centres beside it, fill a picture but for the room round them. The rims of the
 * cuts may reach into that room, and are whole.
 */
function fitting(
  report: Report,
  [width, height]: readonly [number, number],
  round: (typeof ROUND)['bare'],
): View {
  const box = shownBounds(report);
  const rims = rimBounds(report);
  const middle = middleOf(box);
  // From the middle to the left, to the right, up and down: as long as the part, and as what stands out from it.
  const across = [
    { room: round.left, part: middle[0] - box.minX, rim: middle[0] - rims.minX },
    { room: round.right, part: box.maxX - middle[0], rim: rims.maxX - middle[0] },
  ] as const;
  const along = [
    { room: round.top, part: box.maxY - middle[1], rim: rims.maxY - middle[1] },
    { room: round.bottom, part: middle[1] - box.minY, rim: middle[1] - rims.minY },
  ] as const;
  const factor = Math.min(factorFor(width, across), factorFor(height, along));
  return { middle, at: [placeFor(width, across, factor), placeFor(height, along, factor)], factor };
}

/** What lies on one side of the middle: the room beside the part, how far the part goes, how far the rims of cuts do. */
interface Reach {
  readonly room: number;
  readonly part: number;
  readonly rim: number;
}

/** The largest factor with which neither the rooms at both sides nor the rims there run out of a length. */
function factorFor(length: number, [before, after]: readonly [Reach, Reach]): number {
  const ways = ({ room, part, rim }: Reach) => [
    { taken: room, long: part },
    { taken: RIM, long: rim },
  ];
  return Math.min(
    ...ways(before).flatMap((a) =>
      ways(after).map((b) => Math.max(length - a.taken - b.taken, 1) / (a.long + b.long)),
    ),
  );
}

/** Where the middle comes to lie: halfway between the nearest and the farthest place that it can have. */
function placeFor(length: number, [before, after]: readonly [Reach, Reach], factor: number): number {
  const need = ({ room, part, rim }: Reach): number => Math.max(room + part * factor, RIM + rim * factor);
  return (need(before) + length - need(after)) / 2;
}
