import paper from 'paper/dist/paper-core';
import type { Lettering } from './lettering.js';

type Places = readonly (readonly [number, number])[];

/** A line as it is drawn: where in the text of the drawing, and its places one after the other, mm of the sheet. */
export interface Stroke {
  readonly index: number;
  readonly places: Places;
}

const scope = new paper.PaperScope();
scope.setup(new scope.Size(1, 1));

/** How far the chords of a stroke leave its curve at most, mm. */
const FLAT = 0.02;

const TAGS = /<(\/?)(g|defs|line|circle|path|rect)((?:\s[^>]*?)?)(\/?)>/g;

/**
 * All lines of a part of a drawing that has a stroke, patterns and clips left out, as chords. Path data is read by paper.js, so that
 * no code of the drawing has a say in it. Lines of turned groups are left out: they are dimensions, which are parallel to their text.
 */
export function strokesOf(svg: string): readonly Stroke[] {
  const found: Stroke[] = [];
  let hidden = 0;
  for (const { 1: closing, 2: name = '', 3: attributes = '', 4: empty, index } of svg.matchAll(TAGS)) {
    if (name === 'defs' || (name === 'g' && (hidden > 0 || / transform=/.test(attributes)))) {
      if (empty !== '/') hidden += closing === '/' ? -1 : 1;
      continue;
    }
    const stroke = / stroke="([^"]*)"/.exec(attributes)?.[1] ?? 'none';
    if (closing === '/' || name === 'g' || hidden > 0 || stroke === 'none') continue;
    const number = (key: string): number =>
      Number(new RegExp(` ${key}="([^"]*)"`).exec(attributes)?.[1] ?? 0);
    const add = (places: Places): unknown => found.push({ index, places });
    if (name === 'line') {
      add([
        [number('x1'), number('y1')],
        [number('x2'), number('y2')],
      ]);
    } else if (name === 'circle') {
      add(round([number('cx'), number('cy')], number('r')));
    } else if (name === 'rect') {
      const [x, y, w, h] = [number('x'), number('y'), number('width'), number('height')];
      add([
        [x, y],
        [x + w, y],
        [x + w, y + h],
        [x, y + h],
        [x, y],
      ]);
    } else chordsOf(/ d="([^"]*)"/.exec(attributes)?.[1] ?? '').forEach(add);
  }
  return found;
}

function round([cx, cy]: readonly [number, number], radius: number): Places {
  const steps = Math.max(8, Math.ceil(Math.PI / Math.acos(Math.max(1 - FLAT / radius, 0))));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / steps;
    return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)] as const;
  });
}

function chordsOf(d: string): readonly Places[] {
  const whole = new scope.CompoundPath(d);
  // Else the project of paper.js keeps every path that it ever read.
  whole.remove();
  const paths = whole.children as paper.Path[];
  return paths.map((path) => {
    path.flatten(FLAT);
    const places = path.segments.map(({ point }) => [point.x, point.y] as const);
    return path.closed && places[0] !== undefined ? [...places, places[0]] : places;
  });
}

/** How far a line may reach into the box of a text, mm: half the width of a narrow line. */
const TOUCH = 0.125;

/** Texts that a line runs through. */
export function struck(texts: readonly Lettering[], strokes: readonly Stroke[]): readonly Lettering[] {
  return texts.filter(({ left, right, top, bottom }) => {
    const box = { left: left + TOUCH, right: right - TOUCH, top: top + TOUCH, bottom: bottom - TOUCH };
    return strokes.some(({ places }) => places.some((b, i) => i > 0 && crosses(places[i - 1] ?? b, b, box)));
  });
}

type Box = Pick<Lettering, 'left' | 'right' | 'top' | 'bottom'>;

/** Whether a chord has a part in a box: what is left of it after each side has cut off what is beyond (Liang and Barsky, 1984). */
function crosses(
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
  box: Box,
): boolean {
  let [from, to] = [0, 1];
  const sides: readonly (readonly [number, number])[] = [
    [ax - bx, ax - box.left],
    [bx - ax, box.right - ax],
    [ay - by, ay - box.top],
    [by - ay, box.bottom - ay],
  ];
  for (const [way, room] of sides) {
    if (way === 0 && room < 0) return false;
    if (way < 0) from = Math.max(from, room / way);
    if (way > 0) to = Math.min(to, room / way);
  }
  return from < to;
}
