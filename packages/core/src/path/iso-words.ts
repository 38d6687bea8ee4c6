import { checkFinite, checkOverZero } from '../geometry/checks.js';
import type { Edge } from '../geometry/edge.js';
import { type Point, samePoint } from '../geometry/point.js';
import { shownNumber, shownPoint } from '../geometry/shown.js';
import { type Grid, gridOf, type Move, movesFor, onGrid } from './iso-moves.js';

/** How paths are numberWord in words of ISO 6983. */
export interface IsoOptions {
  readonly units: 'mm' | 'inch';
  /** Which words name the units: G20 for inches and G21 for millimetres, or G70 and G71. The former unless given. */
  readonly unitWords?: 'G20/G21' | 'G70/G71' | undefined;
  /** Whether X and Y give places (G90) or steps (G91) along the path. Places unless given. */
  readonly coordinates?: 'absolute' | 'incremental' | undefined;
  /** Decimals of every number, 0 to 8; 3 for millimetres and 4 for inches unless given. */
  readonly decimals?: number | undefined;
  /** Whether whole numbers get a decimal point too, for readers that count them in their smallest step without one. */
  readonly alwaysPoint?: boolean | undefined;
  /** Whether an arc over half a turn is numberWord as two. */
  readonly splitOverHalfTurn?: boolean | undefined;
  /** How far both ends of a numberWord arc may differ in their distance from its centre; one step of the last decimal
   * unless given. */
  readonly tolerance?: number | undefined;
  /** Feed in units a minute: an F word in the first block that cuts. */
  readonly feed?: number | undefined;
  /** Heights above zero; without them no Z is numberWord, and there may be one path only. */
  readonly heights?: IsoHeights | undefined;
}

/** Heights (Z) of the tool's end. */
export interface IsoHeights {
  /** Where it can go anywhere without touching. */
  readonly clear: number;
  readonly cut: number;
}

/** Paths in words of ISO 6983. */
export interface IsoWords {
  /** One block each, without block numbers. */
  readonly blocks: readonly string[];
  /** The largest difference between the distances of the two ends of a numberWord arc from its centre. */
  readonly radiusError: number;
}

/** More decimals than these a coordinate of a metre does not have. */
const MOST_DECIMALS = 8;

/**
 * Paths of a tool's centre in words of ISO 6983-1, which any reader of that standard takes, whatever the control:
 * a block each of G00 (to the start of a path), G01 (line), G02 (clockwise arc) or G03 (counter-clockwise) in the
 * plane G17, X and Y for the end, and for arcs I and J for the steps from the start to the centre. The first block
 * names plane, units and absolute coordinates. No word starts the spindle or ends the program.
 *
 * Numbers are rounded to places of a grid, so that in steps too the path stays chained and comes back to its start;
 * each centre is put where both ends are as nearly as possible equally far away. An arc that has no length on the
 * grid is left out, since without one it would be a full circle; a shallow one that the grid turns askew is numberWord
 * as the line that it is on the grid.
 * @param paths chains of edges, each without a gap
 * @throws RangeError if a number is out of range, a chain has a gap, there are several without heights, or an arc
 *   cannot be numberWord as exactly as asked for.
 */
export function isoWords(paths: readonly (readonly Edge[])[], options: IsoOptions): IsoWords {
  const grid = checked(paths, options);
  const { heights, feed, units, unitWords = 'G20/G21', coordinates = 'absolute' } = options;
  const inSteps = coordinates === 'incremental';
  const number = (steps: number) => numberWord(steps, grid, options.alwaysPoint === true);
  const height = (value: number) => number(onGrid(value, grid));
  const blocks = [`G17 ${unitWord(units, unitWords)} G90`];
  let radiusError = 0;
  let feedWord = feed === undefined ? '' : ` F${height(feed)}`;
  for (const [k, path] of paths.entries()) {
    const { start, moves } = movesFor(path, grid, options.splitOverHalfTurn === true, `path ${k}`);
    if (heights !== undefined) blocks.push(`G00 Z${height(heights.clear)}`);
    blocks.push(`G00 X${number(start.x)} Y${number(start.y)}`);
    if (heights !== undefined) {
      blocks.push(`G01 Z${height(heights.cut)}${feedWord}`);
      feedWord = '';
    }
    if (inSteps) blocks.push('G91');
    let from = start;
    for (const move of moves) {
      blocks.push(`${block(move, inSteps ? from : { x: 0, y: 0 }, number)}${feedWord}`);
      feedWord = '';
      radiusError = Math.max(radiusError, move.kind === 'arc' ? move.error / grid.perUnit : 0);
      from = move.to;
    }
    if (inSteps) blocks.push('G90');
  }
  if (heights !== undefined) blocks.push(`G00 Z${height(heights.clear)}`);
  return { blocks, radiusError };
}

function block(move: Move, origin: Point, number: (steps: number) => string): string {
  const end = `X${number(move.to.x - origin.x)} Y${number(move.to.y - origin.y)}`;
  if (move.kind === 'line') return `G01 ${end}`;
  return `${move.ccw ? 'G03' : 'G02'} ${end} I${number(move.i)} J${number(move.j)}`;
}

function unitWord(units: 'mm' | 'inch', words: 'G20/G21' | 'G70/G71'): string {
  if (words === 'G20/G21') return units === 'inch' ? 'G20' : 'G21';
  return units === 'inch' ? 'G70' : 'G71';
}

/** A whole number of steps as a decimal number, without zeros at its end. */
function numberWord(steps: number, { decimals }: Grid, alwaysPoint: boolean): string {
  const digits = String(Math.abs(steps)).padStart(decimals + 1, '0');
  const whole = digits.slice(0, digits.length - decimals);
  const rest = digits.slice(digits.length - decimals).replace(/0+$/, '');
  const point = rest !== '' || alwaysPoint ? '.' : '';
  return `${steps < 0 ? '-' : ''}${whole}${point}${rest}`;
}

function checked(paths: readonly (readonly Edge[])[], options: IsoOptions): Grid {
  const { units, decimals = units === 'inch' ? 4 : 3, heights, feed } = options;
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > MOST_DECIMALS) {
    throw new RangeError(
      `isoWords: decimals is ${decimals}; it must be a whole number from 0 to ${MOST_DECIMALS}`,
    );
  }
  if (options.tolerance !== undefined) checkOverZero('isoWords', 'tolerance', options.tolerance);
  if (feed !== undefined) checkOverZero('isoWords', 'feed', feed);
  if (heights !== undefined) {
    checkFinite('isoWords', 'heights.cut', heights.cut);
    checkFinite('isoWords', 'heights.clear', heights.clear);
    if (!(heights.clear > heights.cut)) {
      throw new RangeError(
        `isoWords: heights.clear is ${shownNumber(heights.clear)}, not over heights.cut, ${shownNumber(heights.cut)}`,
      );
    }
  } else if (paths.length > 1) {
    throw new RangeError(
      `isoWords: there are ${paths.length} paths and no heights: the tool would go from one to the next through ` +
        'whatever is between; give heights, or write each path on its own',
    );
  }
  for (const [k, path] of paths.entries()) checkChain(path, k);
  return gridOf(decimals, options.tolerance);
}

function checkChain(path: readonly Edge[], k: number): void {
  if (path.length === 0) throw new RangeError(`isoWords: path ${k} has no edges`);
  for (const [i, edge] of path.entries()) {
    const before = path[i - 1];
    if (before === undefined || samePoint(before.b, edge.a)) continue;
    throw new RangeError(
      `isoWords: path ${k}: edge ${i} starts at ${shownPoint(edge.a)}, but the one before ends at ${shownPoint(before.b)}`,
    );
  }
}
