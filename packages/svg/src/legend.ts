import type { Report } from '@edgebite/core';
import type { Container } from '@svgdotjs/svg.js';
import { hatchFill, ROLES } from './hatch.js';
import { arrowhead } from './label.js';
import { CHAIN, DOUBLE_DASH_CHAIN, HIDDEN, lined, NARROW, WIDE } from './lines.js';
import { TYPE, write } from './text.js';
import type { Box } from './view.js';

/** Height of a legend entry, mm. */
const ENTRY = 5.4;

const SWATCH = { width: 13, height: 3.9 } as const;

interface Entry {
  readonly text: string;
  readonly draw: (parent: Container, box: Box) => void;
}

/** Draws what the signs of this drawing mean, only those that it uses; returns its height, mm. */
export function drawLegend(parent: Container, report: Report, x: number, y: number, prefix: string): number {
  const group = parent.group().attr('id', `${prefix}legend`);
  write(group, 'Legend', x, y + 3, { size: TYPE.small, bold: true });
  const entries = entriesFor(report, prefix);
  entries.forEach((entry, i) => {
    const box = { x, y: y + 5 + i * ENTRY, ...SWATCH };
    entry.draw(group, box);
    write(group, entry.text, x + SWATCH.width + 2.5, box.y + 2.95, { size: TYPE.small });
  });
  return 5 + entries.length * ENTRY;
}

function entriesFor(report: Report, prefix: string): readonly Entry[] {
  const names = {
    kept: 'kept metal',
    slug: 'loose slug',
    'held slug': 'slug held by a floor',
    offcut: 'loose offcut',
  };
  const roles = ROLES.filter((role) => report.pieces.some((piece) => piece.role === role));
  const some = (has: boolean, text: string, draw: Entry['draw']): Entry[] => (has ? [{ text, draw }] : []);
  const lower = report.cuts.some((c) => !c.through && c.from === 'top' && c.removedVolume > 0);
  return [
    ...roles.map((role) => ({ text: names[role], draw: face(hatchFill(prefix, role, false), WIDE) })),
    ...some(lower, 'a face under the top one', face(hatchFill(prefix, 'kept', true), WIDE)),
    ...some(report.removedVolume > 0, 'removed: no hatching', face('#fff', NARROW, DOUBLE_DASH_CHAIN)),
    { text: 'the part before cutting', draw: rule(DOUBLE_DASH_CHAIN) },
    ...some(report.cuts.length > 0, 'rim of a cut', rule([])),
    ...some(
      report.cuts.some((c) => c.from === 'bottom' && !c.through),
      'rim of a cut from below',
      rule(HIDDEN),
    ),
    ...some(report.cuts.length > 0, 'centre, path of the tool', rule(CHAIN)),
    ...some(report.webs.length > 0, 'W: thin web', webSign),
    ...some(report.knifeEdges.length > 0, 'K: knife edge', knifeSign),
  ];
}

function face(fill: string, width: number, dashes: readonly number[] = []): Entry['draw'] {
  return (parent, { x, y, width: w, height }) => {
    lined(parent.rect(w, height), width, dashes).attr({ x, y, fill });
  };
}

function rule(dashes: readonly number[]): Entry['draw'] {
  return (parent, { x, y, width, height }) => {
    lined(parent.line(x, y + height / 2, x + width, y + height / 2), NARROW, dashes);
  };
}

function webSign(parent: Container, { x, y, width, height }: Box): void {
  const middle = y + height / 2;
  arrowhead(parent, [x + width / 2 - 1, middle], [x, middle]);
  arrowhead(parent, [x + width / 2 + 1, middle], [x + width, middle]);
}

function knifeSign(parent: Container, { x, y, width, height }: Box): void {
  const middle = y + height / 2;
  lined(parent.line(x, middle, x + width - 1, middle), NARROW);
  arrowhead(parent, [x + width - 1, middle], [x, middle]);
}
