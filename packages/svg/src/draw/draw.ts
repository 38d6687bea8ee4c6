import type { RangeReport, Report } from '@edgebite/core';
import { hatchingIn } from '../pen/hatch.js';
import type { SvgNode } from '../pen/node.js';
import type { Pen } from '../pen/pen.js';
import { rootOf } from '../pen/root.js';
import { drawTable, tableHeight, tableWidth } from '../pen/table.js';
import { type Theme, type ThemeName, themeOf } from '../pen/theme.js';
import { drawDetails } from '../plan/details.js';
import { drawMeasures, drawTop, setLabels } from '../plan/plan.js';
import { bandedLayout, drawRangeBand } from '../range/range-band.js';
import { checkRange, drawRangeBlock, eventsTold } from '../range/range-block.js';
import { drawCuttingLine, drawSection } from '../section/section.js';
import { drawFrame } from '../sheet/frame.js';
import { type Layout, layOut } from '../sheet/layout.js';
import { drawLegend } from '../sheet/legend.js';
import { frameOf, type SheetSize, sheetSize } from '../sheet/sheet.js';
import { drawSide } from '../sheet/side.js';
import { drawSteps } from '../steps/step-strip.js';
import { emptyRoom, INK, type Room } from '../view/room.js';
import { factorOf } from '../view/scale.js';
import { type Box, shrunk } from '../view/view.js';
import { descriptionOf, titleOf } from './describe.js';
import { inkedRoom } from './ink.js';

/** How a report is drawn. */
export interface DrawOptions {
  /** Sheet of the ISO A series, or `Letter`; `A4` without it. */
  readonly sheet?: SheetSize | undefined;
  /** Stands the sheet upright; it lies without it. */
  readonly upright?: boolean | undefined;
  /** A theme that is ready, or colours of your own; `light` without it. */
  readonly theme?: ThemeName | Theme | undefined;
  /** Put before every id in the drawing, so that several can be in one page; `edgebite-` without it. */
  readonly idPrefix?: string | undefined;
  /**
   * What `rangeOf` says of a number of one of the cuts: drawn as a strip with its safe intervals, where the sheet has room
   * beside the rest, or else in a band over the legend, for which the drawing may be a scale smaller.
   */
  readonly range?: RangeReport | undefined;
}

/** The room that a column has left under a height. */
function spareUnder(column: Box, y: number): Room {
  return emptyRoom(shrunk({ ...column, y, height: column.y + column.height - y }, 3));
}

/** The room that the tables at the foot of the sheet leave beside them. */
function besideTables({ frame, legend, tables }: Layout): Room {
  const top = Math.min(legend.y, ...tables.map(({ y }) => y));
  const room = emptyRoom(shrunk({ ...frame, y: top, height: legend.y - top }, 1));
  for (const { table, x, y } of tables) {
    room.markBox({ x: x - 3, y, width: tableWidth(table) + 6, height: tableHeight(table) }, INK.taken);
  }
  return room;
}

/** Details that a sheet has at most: on a small one, and on a larger one. */
const DETAILS = { small: 3, large: 8 } as const;

/**
 * The drawing of a report.
 * @throws EdgebiteError if the range is not one of the report.
 */
export function sheetOf(report: Report, options: DrawOptions, name = 'draw'): SvgNode {
  const { sheet = 'A4', upright = false, theme = 'light', idPrefix = 'edgebite-', range } = options;
  if (range !== undefined) checkRange(name, range, report);
  const pen: Pen = { theme: themeOf(theme), prefix: idPrefix };
  const size = sheetSize(sheet, upright);
  const frame = frameOf(size);
  const job: Drawn = { report, range, sheet, size, pen };
  const layout = layOut(report, frame, idPrefix, range);
  const first = drawnSheet(job, layout, null);
  if (range === undefined || first.told === eventsTold(range)) return first.root;
  const banded = bandedLayout(report, frame, idPrefix, range);
  const kept = factorOf(banded.layout.scale) / factorOf(layout.scale);
  const better = first.told === null ? kept >= ONE_STEP : kept === 1 && banded.events > first.told;
  return better ? drawnSheet(job, banded.layout, banded.events).root : first.root;
}

/** What is left of a scale of ISO 5455 one step on: half, or two fifths from 1:2 to 1:5; with room for rounding. */
const ONE_STEP = 0.399;

/** What is drawn, and on what. */
interface Drawn {
  readonly report: Report;
  readonly range: RangeReport | undefined;
  readonly sheet: SheetSize;
  readonly size: readonly [number, number];
  readonly pen: Pen;
}

/** Draws a sheet. Returns its tree, and how many events of the range are told in words; null if it has no strip. */
function drawnSheet(
  { report, range, sheet, size, pen }: Drawn,
  layout: Layout,
  inBand: number | null,
): { readonly root: SvgNode; readonly told: number | null } {
  const { prefix } = pen;
  const words = { title: titleOf(report), description: descriptionOf(report, range) };
  const root = rootOf(size, words, prefix, pen.theme);
  root.rect(size[0], size[1]).attr('fill', pen.theme.paper);
  const hatching = hatchingIn(root, pen);
  drawFrame(root, report, layout, sheet, pen);
  if (layout.steps !== null) drawSteps(root, report, layout.steps, pen, hatching);
  const { plan, section, view } = layout;
  const area = section === null ? plan : { ...plan, height: plan.height + section.height };
  const room = inkedRoom(report, area, view);
  const group = root.group().attr({ id: `${prefix}plan`, role: 'group', 'aria-label': 'Plan' });
  const labels = drawTop(group, report, { plan, view }, pen, hatching);
  drawMeasures(group, report, { plan, view }, room, pen);
  drawCuttingLine(group, report, layout, room, pen);
  drawSection(root, report, layout, room, pen, hatching);
  const rest =
    layout.side === null ? [] : [spareUnder(layout.side, drawSide(root, report, layout.side, pen))];
  const small = sheet === 'A4' || sheet === 'Letter';
  const most = small ? DETAILS.small : DETAILS.large;
  drawDetails(root, report, view, most, [room, ...rest], pen, hatching);
  setLabels(group, labels, { plan, view }, room, pen);
  for (const { table, x, y } of layout.tables) drawTable(root, table, x, y);
  const told =
    range === undefined
      ? null
      : layout.band === null || inBand === null
        ? drawRangeBlock(root, range, view.at, [room, besideTables(layout), ...rest], pen)
        : drawRangeBand(root, range, inBand, layout.band, pen);
  const strip = range === undefined ? null : { of: range, drawn: told !== null };
  const legend = { ...layout.legend, x: layout.legend.x + 3, width: layout.legend.width - 6 };
  drawLegend(root, report, legend, strip, pen, hatching);
  return { root, told };
}
