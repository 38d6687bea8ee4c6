/*
 * Room: interchange: SVG path data, curve WKT, JSON, flatten-js, polylines.
 * In: text or plain data.
 * Out: regions and edges, and the same data written again; curves that are not lines or arcs are refused with their
 * place.
 */

import { type Edge, lineEdge } from '../geometry/edge.js';
import { type Point, samePoint } from '../geometry/point.js';
import { type Chain, closedChain, openChain } from '../outline/chain.js';
import { svgArc } from './svg-arc.js';
import { SvgScanner } from './svg-scan.js';
import { TextError } from './text-error.js';

/** The commands that draw lines and circular arcs, and those that draw curves. */
const COMMANDS = new Set('MLHVAZ');
const CURVES = new Set('CSQT');

/**
 * Reads SVG path data as chains of lines and circular arcs, one for each stretch drawn without a move. The numbers
 * are the part's own coordinates with y up, so sweep flag 1 runs counter-clockwise; path data drawn for a screen,
 * where y goes down, comes out mirrored. Edges without length are left out. Source: W3C SVG 2, chapter 9 and appendix
 * B.2.
 * @throws TextError with the position of a fault, of a Bézier curve, or of an arc with two radii.
 */
export function parseSvgPath(text: string): Chain[] {
  return new PathReader(text).read();
}

class PathReader {
  private readonly scan: SvgScanner;
  private readonly chains: Chain[] = [];
  private edges: Edge[] = [];
  private start: Point = { x: 0, y: 0 };
  private pen: Point = { x: 0, y: 0 };

  constructor(text: string) {
    this.scan = new SvgScanner(text);
  }

  read(): Chain[] {
    for (let first = true; this.scan.more(); first = false) this.command(first);
    this.finish(false);
    return this.chains;
  }

  private command(first: boolean): void {
    const at = this.scan.position;
    const letter = this.scan.take();
    const name = letter.toUpperCase();
    if (CURVES.has(name)) {
      throw new TextError(
        at,
        `"${letter}" draws a Bézier curve; only lines and circular arcs (M L H V A Z) are read`,
      );
    }
    if (!COMMANDS.has(name)) throw new TextError(at, `"${letter}" is not one of the commands M L H V A Z`);
    if (first && name !== 'M')
      throw new TextError(at, `"${letter}" comes before a start is set; begin with M`);
    if (name === 'Z') this.finish(true);
    else this.stretch(name, letter !== name);
  }

  /** One command with all the groups of numbers that follow it. */
  private stretch(name: string, relative: boolean): void {
    let what = name;
    this.scan.more();
    const at = this.scan.position;
    if (this.scan.comma()) throw new TextError(at, 'no comma may follow a command');
    do {
      this.group(what, relative ? this.pen : { x: 0, y: 0 });
      if (what === 'M') what = 'L';
    } while (this.goesOn());
  }

  private goesOn(): boolean {
    const comma = this.scan.comma();
    if (this.scan.atNumber()) return true;
    if (comma) throw new TextError(this.scan.position, 'a number must follow the comma');
    return false;
  }

  private group(name: string, from: Point): void {
    if (name === 'A') this.arc(from);
    else this.straight(name, from);
  }

  private straight(name: string, from: Point): void {
    const at = this.scan.position;
    const x = name === 'V' ? this.pen.x : from.x + this.scan.number('x');
    const y = name === 'H' ? this.pen.y : from.y + this.scan.number('y');
    const to = this.placed(x, y, at);
    if (name === 'M') this.move(to);
    else this.line(to);
  }

  private move(to: Point): void {
    this.finish(false);
    this.start = to;
    this.pen = to;
  }

  private line(to: Point): void {
    if (!samePoint(this.pen, to)) this.edges.push(lineEdge(this.pen, to));
    this.pen = to;
  }

  private arc(from: Point): void {
    this.scan.comma();
    const at = this.scan.position;
    const rx = Math.abs(this.scan.number('the x radius'));
    const ry = Math.abs(this.scan.number('the y radius'));
    this.scan.number('the rotation');
    const large = this.scan.flag('the large-arc flag');
    const sweep = this.scan.flag('the sweep flag');
    const end = this.scan.position;
    const x = from.x + this.scan.number('x');
    const to = this.placed(x, from.y + this.scan.number('y'), end);
    if (samePoint(this.pen, to) || rx === 0 || ry === 0) {
      this.line(to);
      return;
    }
    if (rx !== ry) {
      throw new TextError(at, `the arc has two radii, ${rx} and ${ry}; only circular arcs are read`);
    }
    this.edges.push(this.circular(to, rx, large, sweep, at));
    this.pen = to;
  }

  private circular(to: Point, radius: number, large: boolean, sweep: boolean, at: number): Edge {
    try {
      return svgArc(this.pen, to, radius, large, sweep);
    } catch (error) {
      if (error instanceof RangeError) throw new TextError(at, 'the arc is too large to work out');
      throw error;
    }
  }

  private placed(x: number, y: number, at: number): Point {
    if (Number.isFinite(x) && Number.isFinite(y)) return { x, y };
    throw new TextError(at, 'the place lies too far out for a finite number');
  }

  private finish(close: boolean): void {
    if (this.edges.length > 0) this.chains.push(close ? closedChain(this.edges) : openChain(this.edges));
    this.edges = [];
    if (close) this.pen = this.start;
  }
}
