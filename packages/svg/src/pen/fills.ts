import type { Report, ReportPiece } from '@edgebite/core';
import { NARROW } from './lines.js';
import type { SvgNode } from './node.js';
import { toMicron } from './numbers.js';
import type { Pen } from './pen.js';
import type { Theme } from './theme.js';

type Role = ReportPiece['role'];

/** How metal that is cut through is hatched: direction, pitch in mm, and where its lines lie within the pitch, as shares. */
interface Hatch {
  readonly angle: 45 | -45;
  readonly pitch: number;
  readonly lines: readonly number[];
  readonly dashed: boolean;
}

/** Each role has its own rhythm, so that a bad black and white copy still tells them apart. */
const HATCHES: { readonly [R in Role]: Hatch } = {
  kept: { angle: 45, pitch: 3, lines: [0.5], dashed: false },
  slug: { angle: -45, pitch: 1.5, lines: [0.5], dashed: false },
  'held slug': { angle: -45, pitch: 4, lines: [0.36, 0.64], dashed: false },
  hanging: { angle: -45, pitch: 3, lines: [0.3, 0.5, 0.7], dashed: false },
  offcut: { angle: 45, pitch: 1.8, lines: [0.5], dashed: true },
};

/** Pieces of one role in turn have a pitch so many times their role's, and lean the other way every second time. */
const TURNS = [1, 1.3, 0.8, 1.6, 1.15, 0.9, 1.45];

/** What a face that does not stay with the part is strewn with: which sign, how far apart, how large, mm. */
interface Strewn {
  readonly sign: 'cross' | 'plus' | 'ring';
  readonly pitch: number;
  readonly size: number;
}

// A face is not cut through, so it has no hatching (ISO 128-50 has it for cuts and sections alone).
const STREWN: { readonly [R in Role]: Strewn | null } = {
  kept: null,
  slug: { sign: 'cross', pitch: 3.2, size: 1.1 },
  'held slug': { sign: 'ring', pitch: 3.6, size: 1.1 },
  hanging: { sign: 'plus', pitch: 3.2, size: 1.3 },
  offcut: { sign: 'cross', pitch: 4.4, size: 1.1 },
};

/** On a small picture of the part, so many times as close and as large. */
const SMALL = 0.6;

/** The roles in the order of a legend. */
export const ROLES: readonly Role[] = ['kept', 'slug', 'held slug', 'hanging', 'offcut'];

/** Hands out the fills of metal, and makes each pattern when it is first wanted, under a stable id. */
export interface Fills {
  /** Of metal that is cut through; pieces of one role in turn differ. */
  cut(role: Role, turn: number): string;
  /** Of a face that is looked at, at the scale of the drawing or in a small picture. */
  face(role: Role, small: boolean): string;
  /** Of what a step takes: dots. */
  taken(): string;
}

/** Fills of a drawing; patterns are added to `sheet`. */
export function fillsIn(sheet: SvgNode, { prefix, theme }: Pen): Fills {
  const made = new Set<string>();
  const home = sheet.defs();
  const once = (name: string, add: (id: string) => void): string => {
    const id = `${prefix}${name}`;
    if (!made.has(id)) add(id);
    made.add(id);
    return `url(#${id})`;
  };
  return {
    cut: (role, turn) =>
      once(`hatch-${nameOf(role)}-${turn}`, (id) =>
        addHatch(home, id, turned(HATCHES[role], turn), washOf(theme, role), theme.soft),
      ),
    face: (role, small) => {
      const strewn = STREWN[role];
      if (strewn === null) return washOf(theme, role);
      return once(`face-${nameOf(role)}${small ? '-small' : ''}`, (id) =>
        addStrewn(home, id, strewn, small ? SMALL : 1, washOf(theme, role), theme.soft),
      );
    },
    taken: () => once('taken', (id) => addDots(home, id, theme)),
  };
}

/** How much of the shade is laid over a face just under the top one, and over one at the very bottom. */
const SHADES = { least: 0.07, most: 0.25 } as const;

/** What is laid over the fill of a face that lies so far under the top, as a share of the thickness: the deeper the darker. */
export function shadeOf(
  { shade }: Theme,
  depth: number,
): { readonly fill: string; readonly 'fill-opacity': number } {
  return { fill: shade, 'fill-opacity': toMicron(SHADES.least + (SHADES.most - SHADES.least) * depth) };
}

/** From dot to dot, and the size of one, mm. */
const DOTS = { pitch: 1.2, size: 0.36 } as const;

function addDots(home: SvgNode, id: string, { kerf, soft }: Theme): void {
  const { pitch, size } = DOTS;
  home
    .pattern(pitch, pitch, (tile) => {
      tile.rect(pitch, pitch).attr('fill', kerf);
      tile.circle(size).attr({ cx: pitch / 2, cy: pitch / 2, fill: soft });
    })
    .attr({ id, patternTransform: 'rotate(45)' });
}

/** Which of its role's pieces each piece is, counted from 0; those beyond the last turn begin anew. */
export function turnsOf(pieces: Report['pieces']): readonly number[] {
  const seen = new Map<Role, number>();
  return pieces.map(({ role }) => {
    const turn = seen.get(role) ?? 0;
    seen.set(role, turn + 1);
    return turn % TURNS.length;
  });
}

function nameOf(role: Role): string {
  return role.replace(' ', '-');
}

function turned(hatch: Hatch, turn: number): Hatch {
  const angle = turn % 2 === 0 ? hatch.angle : hatch.angle === 45 ? -45 : 45;
  return { ...hatch, angle, pitch: hatch.pitch * (TURNS[turn] as number) };
}

function washOf({ kept, loose, held }: Theme, role: Role): string {
  return { kept, slug: loose, 'held slug': held, hanging: loose, offcut: loose }[role];
}

function addHatch(home: SvgNode, id: string, hatch: Hatch, wash: string, line: string): void {
  const pitch = toMicron(hatch.pitch);
  home
    .pattern(pitch, pitch, (tile) => {
      tile.rect(pitch, pitch).attr('fill', wash);
      for (const share of hatch.lines) {
        const x = toMicron(share * pitch);
        const drawn = tile.line(x, 0, x, hatch.dashed ? toMicron(pitch * 0.6) : pitch);
        drawn.attr({ stroke: line, 'stroke-width': NARROW * 0.72 });
      }
    })
    .attr({ id, patternTransform: `rotate(${hatch.angle})` });
}

function addStrewn(
  home: SvgNode,
  id: string,
  strewn: Strewn,
  scale: number,
  wash: string,
  line: string,
): void {
  const [pitch, size] = [toMicron(strewn.pitch * scale), toMicron(strewn.size * scale)];
  const [middle, arm] = [pitch / 2, size / 2];
  home
    .pattern(pitch, pitch, (tile) => {
      tile.rect(pitch, pitch).attr('fill', wash);
      const sign =
        strewn.sign === 'ring'
          ? tile.circle(size).attr({ cx: middle, cy: middle })
          : tile.path(
              `M${toMicron(middle - arm)} ${middle}h${size}M${middle} ${toMicron(middle - arm)}v${size}`,
            );
      sign.attr({ fill: 'none', stroke: line, 'stroke-width': toMicron(NARROW * 0.72 * scale) });
    })
    .attr({ id, patternTransform: `rotate(${strewn.sign === 'cross' ? 45 : 0})` });
}
