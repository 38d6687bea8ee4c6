import { CAPITALS, textWidth } from '../../packages/svg/src/pen/text.js';

/** A box on a drawing, mm from its upper left corner, and the words in it. */
export interface Lettering {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** How far letters go under their base line, as a share of their size: those of the usual sans serif faces. */
const DESCENT = 0.21;

type Turn = readonly [number, number, number];

/**
 * The boxes of all lettering of a drawing, read from its text: elements `text`, and the quarter turns of the groups that
 * they stand in. Any other transformation of a group that holds lettering is an error.
 */
export function letteringOf(svg: string): readonly Lettering[] {
  const found: Lettering[] = [];
  const groups: (Turn | null)[] = [];
  for (const [tag, closing, name, attributes = '', , text = ''] of svg.matchAll(TAGS)) {
    if (name === 'g' && closing !== '/') groups.push(tag.endsWith('/>') ? null : turnOf(attributes));
    if (name === 'g' && (closing === '/' || tag.endsWith('/>'))) groups.pop();
    if (name === 'text' && closing !== '/') found.push(boxOf(attributes, entities(text), groups));
  }
  return found;
}

const TAGS = /<(\/?)(g|text)((?:\s[^>]*?)?)(\/?)>([^<]*)/g;

function boxOf(attributes: string, text: string, groups: readonly (Turn | null)[]): Lettering {
  const number = (name: string): number => Number(new RegExp(` ${name}="([^"]*)"`).exec(attributes)?.[1]);
  const [x, y, size] = [number('x'), number('y'), number('font-size')];
  if (![x, y, size].every(Number.isFinite)) throw new Error(`text without place or size: ${attributes}`);
  const width = textWidth(text, size, / font-weight="bold"/.test(attributes));
  const anchor = / text-anchor="(\w+)"/.exec(attributes)?.[1] ?? 'start';
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  const corners: readonly (readonly [number, number])[] = [
    [left, y - CAPITALS * size],
    [left + width, y + DESCENT * size],
  ];
  const turned = corners.map((corner) => groups.reduceRight(quarter, corner));
  const xs = turned.map(([cx]) => cx);
  const ys = turned.map(([, cy]) => cy);
  return {
    text,
    left: Math.min(...xs),
    right: Math.max(...xs),
    top: Math.min(...ys),
    bottom: Math.max(...ys),
  };
}

/** A quarter turn against the clock, as SVG has it with y down: (x, y) about c goes to (cx + y - cy, cy - x + cx). */
function quarter([x, y]: readonly [number, number], turn: Turn | null): readonly [number, number] {
  if (turn === null) return [x, y];
  const [, cx, cy] = turn;
  return [cx + (y - cy), cy - (x - cx)];
}

function turnOf(attributes: string): Turn | null {
  const transform = / transform="([^"]*)"/.exec(attributes)?.[1];
  if (transform === undefined) return null;
  const [, angle, x, y] = /^rotate\((-?[\d.]+) (-?[\d.]+) (-?[\d.]+)\)$/.exec(transform) ?? [];
  if (Number(angle) !== -90) throw new Error(`a group is transformed by ${transform}`);
  return [-90, Number(x), Number(y)];
}

function entities(text: string): string {
  return text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');
}

/** Pairs of lettering that overlap, by more than a hundredth of a millimetre both ways. */
export function overlaps(all: readonly Lettering[]): readonly (readonly [Lettering, Lettering])[] {
  const sorted = [...all].sort((a, b) => a.left - b.left);
  return sorted.flatMap((a, i) =>
    sorted
      .slice(i + 1)
      .filter((b) => b.left < a.right - 0.01 && b.top < a.bottom - 0.01 && a.top < b.bottom - 0.01)
      .map((b) => [a, b] as const),
  );
}

/** Lettering that is not wholly on a sheet of a width and height. */
export function offSheet(all: readonly Lettering[], width: number, height: number): readonly Lettering[] {
  return all.filter(
    ({ left, right, top, bottom }) => left < 0 || top < 0 || right > width || bottom > height,
  );
}
