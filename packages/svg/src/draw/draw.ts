import type { RangeReport, Report } from '@edgebite/core';
import { fillsIn } from '../pen/fills.js';
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
import { drawLists, type ListSheet, listSheets } from '../sheet/lists.js';
import { frameOf, type SheetSize, sheetSize } from '../sheet/sheet.js';
import { drawSide, sideText } from '../sheet/side.js';
import { drawSteps } from '../steps/step-strip.js';
import { emptyRoom, INK, type Room } from '../view/room.js';
import { factorOf, scaleText } from '../view/scale.js';
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
 * The sheets of a drawing: the drawing itself, and lists of what it points at and has no room for.
 * @throws EdgebiteError if the range is not one of the report.
 */
export function sheetsOf(report: Report, options: DrawOptions): readonly SvgNode[] {
  const job = jobOf(report, options);
  const drawing = drawingOf(job, 'drawSheets');
  return [drawing.root, ...drawnLists(job, drawing)];
}

/**
 * The drawing itself, without its lists.
 * @throws EdgebiteError if the range is not one of the report.
 */
export function sheetOf(report: Report, options: DrawOptions, name = 'draw'): SvgNode {
  return drawingOf(jobOf(report, options), name).root;
}

function jobOf(report: Report, options: DrawOptions): Drawn {
  const { sheet = 'A4', upright = false, theme = 'light', idPrefix = 'edgebite-', range } = options;
  return {
    report,
    range,
    sheet,
    size: sheetSize(sheet, upright),
    pen: { theme: themeOf(theme), prefix: idPrefix },
  };
}

function drawingOf(job: Drawn, name: string): Drawing {
  const { report, range, pen } = job;
  if (range !== undefined) checkRange(name, range, report);
  const frame = frameOf(job.size);
  const first = drawnSheet(job, layOut(report, frame, pen.prefix, range), null);
  if (range === undefined || first.told === eventsTold(range)) return first;
  const banded = bandedLayout(report, frame, pen.prefix, range);
  const kept = factorOf(banded.layout.scale) / factorOf(first.layout.scale);
  const better = first.told === null ? kept >= ONE_STEP : kept === 1 && banded.events > first.told;
  return better ? drawnSheet(job, banded.layout, banded.events) : first;
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

/** A drawing, where everything is on it, and what goes on sheets of lists. */
interface Drawing {
  readonly root: SvgNode;
  readonly layout: Layout;
  readonly lists: readonly ListSheet[];
  /** How many events of the range are told in words; null if it has no strip. */
  readonly told: number | null;
}

function drawnSheet(
  { report, range, sheet, size, pen }: Drawn,
  layout: Layout,
  inBand: number | null,
): Drawing {
  const { prefix } = pen;
  const root = emptySheet(size, { title: titleOf(report), description: descriptionOf(report, range) }, pen);
  const fills = fillsIn(root, pen);
  const side = layout.side === null ? null : sideText(report, layout.side);
  const { frame, heading, footing, legend: foot, tables, band } = layout;
  const tablesTop = Math.min(band?.y ?? foot.y, ...tables.map(({ y }) => y - 3));
  const lists = listSheets(report, side, tables, listBody(layout), prefix);
  const count = 1 + lists.length;
  const scale = `SCALE ${scaleText(layout.scale)}`;
  const words = [scale, sheet, `lengths in ${report.units}`, ...(count > 1 ? [`sheet 1 of ${count}`] : [])];
  drawFrame(
    root,
    report,
    { frame, heading, footing, rules: [foot.y, tablesTop], words: words.join(' · ') },
    pen,
  );
  if (layout.steps !== null) drawSteps(root, report, layout.steps, pen, fills);
  const { plan, section, view } = layout;
  const area = section === null ? plan : { ...plan, height: plan.height + section.height };
  const room = inkedRoom(report, area, view);
  const group = root.group().attr({ id: `${prefix}plan`, role: 'group', 'aria-label': 'Plan' });
  const labels = drawTop(group, report, { plan, view }, pen, fills);
  // Under the figures of the dimensions, which break a leader that begins among them.
  const names = group.group();
  drawMeasures(group, report, { plan, view }, room, pen);
  drawCuttingLine(group, report, layout, room, pen);
  drawSection(root, report, layout, room, pen, fills);
  const rest =
    layout.side === null || side === null
      ? []
      : [spareUnder(layout.side, drawSide(root, report, layout.side, side, pen))];
  const small = sheet === 'A4' || sheet === 'Letter';
  const most = small ? DETAILS.small : DETAILS.large;
  drawDetails(root, report, view, most, [room, ...rest], pen, fills);
  setLabels(names, labels, { plan, view }, room, pen);
  for (const { table, x, y } of tables) drawTable(root, table, x, y);
  const told =
    range === undefined
      ? null
      : layout.band === null || inBand === null
        ? drawRangeBlock(root, range, view.at, [room, besideTables(layout), ...rest], pen)
        : drawRangeBand(root, range, inBand, layout.band, pen);
  const strip = range === undefined ? null : { of: range, drawn: told !== null };
  const legend = { ...layout.legend, x: layout.legend.x + 3, width: layout.legend.width - 6 };
  drawLegend(root, report, legend, strip, pen, fills);
  return { root, layout, lists, told };
}

function emptySheet(
  size: readonly [number, number],
  words: Parameters<typeof rootOf>[1],
  { prefix, theme }: Pen,
): SvgNode {
  const root = rootOf(size, words, prefix, theme);
  root.rect(size[0], size[1]).attr('fill', theme.paper);
  return root;
}

/** Between the heading and the foot of a sheet of lists. */
function listBody({ frame, heading, footing }: Layout): Box {
  const y = heading.y + heading.height;
  return { ...frame, y, height: footing.y - y };
}

function drawnLists(
  { report, sheet, size, pen }: Drawn,
  { layout: { frame, heading, footing }, lists }: Drawing,
): readonly SvgNode[] {
  return lists.map((list, i) => {
    // Ids of its own, so that all sheets can be in one page.
    const own: Pen = { ...pen, prefix: `${pen.prefix}${i + 2}-` };
    const number = `sheet ${i + 2} of ${lists.length + 1}`;
    const title = `${titleOf(report)}, ${number}`;
    const root = emptySheet(size, { title, description: 'Lists of what the drawing has no room for.' }, own);
    const words = ['LISTS', sheet, `lengths in ${report.units}`, number].join(' · ');
    drawFrame(root, report, { frame, heading, footing, rules: [], words }, own);
    drawLists(root, list, own);
    return root;
  });
}
