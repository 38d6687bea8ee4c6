import type { Report } from '@edgebite/core';
import { arrowhead } from '../pen/label.js';
import { lined, NARROW, tinted } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { dimensionText, toMicron } from '../pen/numbers.js';
import type { Pen } from '../pen/pen.js';
import { haloed, TYPE, textWidth, write } from '../pen/text.js';
import { type Stretch, stretchesAt } from '../view/scan.js';
import type { Box } from '../view/view.js';
import type { Axes } from './beyond-lines.js';
import { type Heights, sectionIn } from './section-in.js';

/** From an arrow to its figure, and from that to where the metal ends, mm. */
const BESIDE = 1;
const CLEAR = 0.7;

/** Draws how thick the metal is that a cut leaves under or over it, where the section goes through that cut. */
export function drawFloors(
  parent: SvgNode,
  report: Report,
  level: number,
  { across, up }: Axes,
  { theme }: Pen,
): void {
  const drawn: Box[] = [];
  report.floors.forEach((floor, i) => {
    const cut = report.cuts.find(({ id }) => id === floor.under);
    const slab = report.slabs[floor.slab];
    const stretch = widestOf(
      stretchesAt(cut?.footprint ?? [], level),
      slab === undefined ? [] : metalAt(report, slab, level),
    );
    if (cut === undefined || stretch === null) return;
    const [low, high] =
      cut.from === 'top' ? [0, report.thickness - cut.depth] : [cut.depth, report.thickness];
    const text = dimensionText(floor.thickness, report.units);
    const size = TYPE.small;
    // A floor over another cut's is not where it would be drawn; one thinner than its figure stands beside it.
    if (Math.abs(high - low - floor.thickness) > report.resolution || up(low) - up(high) < size) return;
    const onSheet = ([from, to]: Stretch): Stretch => [across(from), across(to)];
    const metal = report.slabs
      .filter(({ from, to }) => from < high && to > low)
      .map((own) => metalAt(report, own, level).map(onSheet));
    const own = placed(onSheet(stretch), metal, textWidth(text, size));
    if (own === null) return;
    const y = (up(low) + up(high)) / 2;
    const { x, words } = own;
    const box = {
      x: words - BESIDE,
      y: y - size,
      width: textWidth(text, size) + 2 * BESIDE,
      height: 2 * size,
    };
    // Floors that lie over each other in the picture: the first is shown, and the table of cuts has all depths.
    if (drawn.some((other) => meets(other, box))) return;
    drawn.push(box);
    const group = tinted(parent.group(), theme.ink).attr('data-about', `floor:${i}`);
    lined(group.line(toMicron(x), toMicron(up(high)), toMicron(x), toMicron(up(low))), NARROW);
    arrowhead(group, [x, up(high)], [x, up(low)]);
    arrowhead(group, [x, up(low)], [x, up(high)]);
    haloed(write(group, text, words, y + size * 0.36, { size }), theme);
  });
}

/**
 * Where the arrow of a floor stands, and where its figure begins: in the middle of the floor with the figure right or
 * left of it in metal, else off the middle; null where the figure would run over an edge of the metal.
 * @param metal of every slab over which the floor goes
 */
function placed(
  [left, right]: Stretch,
  metal: readonly (readonly Stretch[])[],
  width: number,
): { readonly x: number; readonly words: number } | null {
  const middle = (left + right) / 2;
  const places = [middle, left + (right - left) / 5, right - (right - left) / 5].flatMap((x) => [
    { x, words: x + BESIDE },
    { x, words: x - BESIDE - width },
  ]);
  const isFree = ({ words }: { words: number }): boolean =>
    metal.every((row) => row.some(([from, to]) => words - CLEAR >= from && words + width + CLEAR <= to));
  return places.find(isFree) ?? null;
}

function meets(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** Where metal is left in a slab, at a level. */
function metalAt(report: Report, slab: Heights, level: number): readonly Stretch[] {
  return report.pieces.flatMap((piece) => stretchesAt(sectionIn(piece, slab), level));
}

// The widest part of a cut that lies over metal.
function widestOf(cuts: readonly Stretch[], part: readonly Stretch[]): Stretch | null {
  let best: Stretch | null = null;
  for (const [a, b] of cuts) {
    for (const [c, d] of part) {
      const common: Stretch = [Math.max(a, c), Math.min(b, d)];
      if (common[1] > common[0] && (best === null || common[1] - common[0] > best[1] - best[0]))
        best = common;
    }
  }
  return best;
}
