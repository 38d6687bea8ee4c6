import type { ReportPiece } from '@edgebite/core';
import type { Container } from '@svgdotjs/svg.js';
import { NARROW } from './lines.js';

type Role = ReportPiece['role'];

interface Hatch {
  /** Degrees by which upright lines are turned clockwise: 45 leans them like a slash. */
  readonly angle: number;
  /** Length after which the hatching repeats, mm. */
  readonly pitch: number;
  /** Where its lines lie within the pitch, as shares of it. */
  readonly lines: readonly number[];
}

/** Each role has its own direction, pitch and rhythm, so that a bad black and white copy still tells them apart. */
const HATCHES: { readonly [R in Role]: Hatch } = {
  kept: { angle: 45, pitch: 3, lines: [0.5] },
  slug: { angle: -45, pitch: 1.6, lines: [0.5] },
  'held slug': { angle: -45, pitch: 4.4, lines: [0.36, 0.64] },
  offcut: { angle: 0, pitch: 2.2, lines: [0.5] },
};

/** A face under the top one is hatched this many times as wide. */
const LOWER = 2;

/** The roles in the order of a legend. */
export const ROLES: readonly Role[] = ['kept', 'slug', 'held slug', 'offcut'];

/** Adds the pattern of every role, for faces at the top and for lower ones, under stable ids. */
export function addHatches(sheet: Container, prefix: string): void {
  for (const role of ROLES) {
    addHatch(sheet, hatchId(prefix, role, false), HATCHES[role], 1);
    addHatch(sheet, hatchId(prefix, role, true), HATCHES[role], LOWER);
  }
}

/** The fill that refers to a role's pattern. */
export function hatchFill(prefix: string, role: Role, lower: boolean): string {
  return `url(#${hatchId(prefix, role, lower)})`;
}

function hatchId(prefix: string, role: Role, lower: boolean): string {
  return `${prefix}hatch-${role.replace(' ', '-')}${lower ? '-lower' : ''}`;
}

function addHatch(sheet: Container, id: string, hatch: Hatch, times: number): void {
  const pitch = hatch.pitch * times;
  sheet
    .pattern(pitch, pitch, (tile) => {
      for (const share of hatch.lines) {
        const x = Number((share * pitch).toFixed(3));
        tile.line(x, 0, x, pitch).attr({ stroke: '#000', 'stroke-width': NARROW });
      }
    })
    .attr({ id, patternTransform: `rotate(${hatch.angle})` });
}
