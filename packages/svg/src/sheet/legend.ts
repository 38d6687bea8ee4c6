import type { RangeReport, Report } from '@edgebite/core';
import { type Fills, ROLES, shadeOf } from '../pen/fills.js';
import { drawSafe } from '../pen/hatch-range.js';
import { arrowhead, RING } from '../pen/label.js';
import { CHAIN, DOUBLE_DASH_CHAIN, HIDDEN, lined, NARROW, tinted, WIDE } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import type { Pen } from '../pen/pen.js';
import { fitted, TYPE, textWidth, write } from '../pen/text.js';
import type { Box } from '../view/view.js';
import { hasSections } from './pictures.js';

/** Height of a row of entries, and the size of a sample, mm. */
const ENTRY = 5;
const SWATCH = { width: 10, height: 3.2 } as const;

/** Between a sample and its words, and between two entries, mm. */
const BESIDE = 1.8;
const APART = 4.5;

interface Entry {
  readonly text: string;
  readonly draw: (parent: SvgNode, box: Box, pen: Pen, fills: Fills) => void;
}

/** A strip of safe intervals, and whether there is room for it. */
export interface StripOf {
  readonly of: RangeReport;
  readonly drawn: boolean;
}

/** How high the legend of a report gets in a width, mm; with a range, enough to say that there is no room for it. */
export function legendHeight(report: Report, width: number, range?: RangeReport): number {
  const strip = range === undefined ? null : { of: range, drawn: false };
  return rowsOf(entriesFor(report, strip), width).length * ENTRY + 2;
}

/** Draws what the signs of this drawing mean, only those that it uses, in rows. */
export function drawLegend(
  parent: SvgNode,
  report: Report,
  { x, y, width }: Box,
  strip: StripOf | null,
  pen: Pen,
  fills: Fills,
): void {
  const group = parent.group().attr({ id: `${pen.prefix}legend`, role: 'group', 'aria-label': 'Legend' });
  rowsOf(entriesFor(report, strip), width).forEach((row, r) => {
    let left = x;
    for (const entry of row) {
      const box = { x: left, y: y + 1.5 + r * ENTRY, ...SWATCH };
      entry.draw(group, box, pen, fills);
      write(group, entry.text, left + SWATCH.width + BESIDE, box.y + 2.6, { size: TYPE.small });
      left += entryWidth(entry) + APART;
    }
  });
}

function rowsOf(entries: readonly Entry[], width: number): readonly (readonly Entry[])[] {
  const rows: Entry[][] = [];
  let left = Number.POSITIVE_INFINITY;
  for (const entry of entries) {
    const own = entryWidth(entry);
    if (left + own > width) {
      rows.push([]);
      left = 0;
    }
    rows[rows.length - 1]?.push(entry);
    left += own + APART;
  }
  return rows;
}

function entryWidth({ text }: Entry): number {
  return SWATCH.width + BESIDE + textWidth(text, TYPE.small);
}

function entriesFor(report: Report, strip: StripOf | null): readonly Entry[] {
  const names = {
    kept: 'kept',
    slug: 'loose slug',
    'held slug': 'slug on a floor',
    hanging: 'hanging by thin metal',
    offcut: 'loose offcut',
  };
  const roles = ROLES.filter(
    (role) =>
      report.pieces.some((piece) => piece.role === role) ||
      report.bodies.some((body) => body.role === role) ||
      (role === 'hanging' && report.steps.some(({ hangs }) => hangs.length > 0)),
  );
  const some = (has: boolean, text: string, draw: Entry['draw']): Entry[] => (has ? [{ text, draw }] : []);
  const lower = report.cuts.some((c) => !c.through && c.from === 'top' && c.removedVolume > 0);
  const passes = report.cuts.some((c) => (c.passes?.list.length ?? 0) > 1);
  const drawn = hasSections(report);
  const loads = report.steps.some(({ load }) => (load?.worst?.push ?? null) !== null);
  const ways = report.steps.some(({ backOff }) => backOff.machine !== null);
  const below = report.cuts.some((c) => c.from === 'bottom' && !c.through);
  return [
    ...roles.map((role) => ({ text: names[role], draw: face((f) => f.face(role, false)) })),
    ...some(lower, 'lower face', lowerFace),
    ...some(
      report.slabs.length > 1,
      'section',
      face((f) => f.cut('kept', 0)),
    ),
    { text: 'part before', draw: rule(DOUBLE_DASH_CHAIN, 'ink') },
    ...some(report.cuts.length > 0, 'rim of a cut', rule([], 'tool')),
    ...some(below, 'rim of a cut from below', rule(HIDDEN, 'tool')),
    ...some(report.cuts.length > 0, 'centre, tool path', rule(CHAIN, 'tool')),
    ...some(passes, 'pass, and its bite', passSign),
    ...some(
      drawn,
      'taken in a step',
      face((f) => f.taken()),
    ),
    ...some(loads && drawn, 'push on the part', arrowSign('ink')),
    ...some(ways, 'way off the wall', arrowSign('tool')),
    ...some(
      report.keepOut.some(({ kind }) => kind !== 'parallel'),
      'jaw, stop, clamp',
      rule(DOUBLE_DASH_CHAIN, 'soft'),
    ),
    ...some(report.webs.length > 0, 'W web', webSign),
    ...some(report.knifeEdges.length > 0, 'K knife edge', knifeSign),
    ...some(report.findings.length > 0, 'finding, as numbered', findingSign),
    ...(strip === null ? [] : [stripEntry(strip)]),
    ...some(report.steps.length > 0 && !drawn, NO_PICTURES, () => {}),
  ];
}

/** What is said where the sections of the steps are not in the report. */
const NO_PICTURES = 'too many steps for pictures: the finished part alone is drawn';

/** Longest name of a cut in the legend, mm. */
const NAME = 24;

// Of two texts the one that needs no more room takes the place of the other.
function stripEntry({ of, drawn }: StripOf): Entry {
  const cut = fitted(of.cut, NAME, TYPE.small);
  return drawn
    ? {
        text: 'safe, of the strip',
        draw: (parent, box, { prefix }) => drawSafe(parent, box, 'lies', prefix),
      }
    : { text: `no room here for the safe values of ${cut}: left out`, draw: () => {} };
}

function face(fill: (fills: Fills) => string): Entry['draw'] {
  return (parent, { x, y, width, height }, _, fills) => {
    lined(parent.rect(width, height), WIDE).attr({ x, y, fill: fill(fills) });
  };
}

function lowerFace(parent: SvgNode, { x, y, width, height }: Box, { theme }: Pen, fills: Fills): void {
  parent.rect(width, height).attr({ x, y, fill: fills.face('kept', false) });
  lined(parent.rect(width, height), WIDE).attr({ x, y, ...shadeOf(theme, 0.5) });
}

function rule(dashes: readonly number[], colour: 'ink' | 'tool' | 'soft'): Entry['draw'] {
  return (parent, { x, y, width, height }, { theme }) => {
    const group = tinted(parent.group(), theme[colour]);
    lined(group.line(x, y + height / 2, x + width, y + height / 2), NARROW, dashes);
  };
}

function passSign(parent: SvgNode, { x, y, width, height }: Box, { theme }: Pen): void {
  const group = tinted(parent.group(), theme.tool);
  const middle = y + height / 2;
  lined(group.line(x, middle, x + width, middle), NARROW * 0.8, HIDDEN);
  lined(group.line(x + width / 2, middle, x + width / 2, y + height), NARROW * 2);
}

function arrowSign(colour: 'ink' | 'tool'): Entry['draw'] {
  return (parent, { x, y, width, height }, { theme }) => {
    const group = tinted(parent.group(), theme[colour]);
    const middle = y + height / 2;
    lined(group.line(x, middle, x + width, middle), NARROW * 1.6);
    arrowhead(group, [x + width, middle], [x, middle]);
  };
}

function webSign(parent: SvgNode, { x, y, width, height }: Box, { theme }: Pen): void {
  const group = tinted(parent.group(), theme.warning);
  const middle = y + height / 2;
  arrowhead(group, [x + width / 2 - 1, middle], [x, middle]);
  arrowhead(group, [x + width / 2 + 1, middle], [x + width, middle]);
}

function knifeSign(parent: SvgNode, { x, y, width, height }: Box, { theme }: Pen): void {
  const group = tinted(parent.group(), theme.warning);
  const middle = y + height / 2;
  lined(group.line(x, middle, x + width - 1, middle), NARROW);
  arrowhead(group, [x + width - 1, middle], [x, middle]);
}

function findingSign(parent: SvgNode, { x, y, width, height }: Box): void {
  const size = Math.min(RING, height);
  lined(parent.circle(size), NARROW).attr({ cx: x + width - size / 2, cy: y + height / 2 });
}
