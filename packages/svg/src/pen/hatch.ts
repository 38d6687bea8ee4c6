import type { Report, ReportPiece } from '@edgebite/core';
import { NARROW } from './lines.js';
import type { SvgNode } from './node.js';
import { toMicron } from './numbers.js';
import type { Pen } from './pen.js';
import type { Theme } from './theme.js';

type Role = ReportPiece['role'];

/** How a role is hatched: its direction, its pitch in mm, and where its lines lie within the pitch, as shares. */
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

/** A face under the top one is hatched this many times as wide. */
const LOWER = 2;

/** On a small picture of the part, so many times as close. */
const SMALL = 0.6;

/** The roles in the order of a legend. */
export const ROLES: readonly Role[] = ['kept', 'slug', 'held slug', 'hanging', 'offcut'];

/** A face as it is hatched: at the top, under the top one, or in a small picture. */
export type FaceKind = 'top' | 'lower' | 'small';

/** Hands out the fills of faces, and makes each pattern when it is first wanted, under a stable id. */
export interface Hatching {
  fill(role: Role, turn: number, kind: FaceKind): string;
  /** Of what a step takes: dots. */
  taken(): string;
}

/** Hatching of a drawing; patterns are added to `sheet`. */
export function hatchingIn(sheet: SvgNode, { prefix, theme }: Pen): Hatching {
  const made = new Set<string>();
  const home = sheet.defs();
  return {
    fill: (role, turn, kind) => {
      const id = `${prefix}hatch-${role.replace(' ', '-')}-${turn}${kind === 'top' ? '' : `-${kind}`}`;
      if (!made.has(id)) addHatch(home, id, turned(HATCHES[role], turn), kind, colours(theme, role));
      made.add(id);
      return `url(#${id})`;
    },
    taken: () => {
      const id = `${prefix}taken`;
      if (!made.has(id)) addDots(home, id, theme);
      made.add(id);
      return `url(#${id})`;
    },
  };
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

function turned(hatch: Hatch, turn: number): Hatch {
  const angle = turn % 2 === 0 ? hatch.angle : hatch.angle === 45 ? -45 : 45;
  return { ...hatch, angle, pitch: hatch.pitch * (TURNS[turn] as number) };
}

function colours(theme: Theme, role: Role): { readonly wash: string; readonly line: string } {
  const { kept, loose, held } = theme;
  const wash = { kept, slug: loose, 'held slug': held, hanging: loose, offcut: loose }[role];
  return { wash, line: theme.soft };
}

function addHatch(
  home: SvgNode,
  id: string,
  hatch: Hatch,
  kind: FaceKind,
  { wash, line }: { readonly wash: string; readonly line: string },
): void {
  const pitch = toMicron(hatch.pitch * (kind === 'lower' ? LOWER : kind === 'small' ? SMALL : 1));
  home
    .pattern(pitch, pitch, (tile) => {
      tile.rect(pitch, pitch).attr('fill', wash);
      for (const share of hatch.lines) {
        const x = toMicron(share * pitch);
        const drawn = tile.line(x, 0, x, hatch.dashed ? toMicron(pitch * 0.6) : pitch);
        drawn.attr({ stroke: line, 'stroke-width': kind === 'small' ? NARROW * 0.6 : NARROW * 0.72 });
      }
    })
    .attr({ id, patternTransform: `rotate(${hatch.angle})` });
}
