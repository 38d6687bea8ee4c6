/*
 * Does what a printed sheet says, row by row, with a round tool. It knows the sheet's words and numbers alone: nothing
 * of the report that it is made from.
 */

type Pair = readonly [number, number];

/** One row of a printed sheet: its words, and its numbers as printed. */
export interface PrintedRow {
  readonly cut: string;
  readonly words: string;
  readonly at: Pair;
  readonly size: number;
  readonly depth: string;
}

/** Where the middle of the tool went while it was down, in what the readout shows. */
export interface Track {
  readonly cut: string;
  readonly size: number;
  readonly way: Way;
}

export type Way =
  | { readonly kind: 'stand'; readonly at: Pair }
  | { readonly kind: 'line'; readonly a: Pair; readonly b: Pair }
  /** Off a wall, which is to be left as it is. */
  | { readonly kind: 'off'; readonly a: Pair; readonly b: Pair }
  | {
      readonly kind: 'arc';
      readonly a: Pair;
      readonly b: Pair;
      readonly center: Pair;
      readonly radius: number;
      readonly ccw: boolean;
    };

/** One step of a printed sheet: its rows, and what stands over and under them. */
export interface PrintedStep {
  /** Which block it is in, from 0. */
  readonly block: number;
  readonly rows: readonly PrintedRow[];
  readonly over: readonly string[];
  readonly under: readonly string[];
}

/** Text of HTML without its tags. */
function plain(html: string): string {
  return html
    .replace(/<[^>]*>/g, '')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .trim();
}

/** The rows of all tables of a sheet in HTML. */
export function printedRows(html: string): PrintedRow[] {
  return [...html.matchAll(/<tr><td class="n">.*?<\/tr>/gs)].map(([row]) => {
    const cells = [...row.matchAll(/<td[^>]*>(.*?)<\/td>/gs)].map(([, cell]) => cell as string);
    const [, cut = '', x = '', y = '', , size = '', depth = ''] = cells;
    const [name = '', words = ''] = cut.split('<span>');
    return {
      cut: plain(name),
      words: plain(words),
      at: [Number(plain(x)), Number(plain(y))],
      size: Number(plain(size)),
      depth: plain(depth),
    };
  });
}

/** The steps of a sheet in HTML, in order. */
export function printedSteps(html: string): PrintedStep[] {
  const linesIn = (body: string, name: string) =>
    [...body.matchAll(new RegExp(`<tr class="${name}">(.*?)</tr>`, 'gs'))].map(([, line]) =>
      plain(line as string),
    );
  return html
    .split('<section>')
    .slice(1)
    .flatMap((section, block) =>
      [...section.matchAll(/<tbody>(.*?)<\/tbody>/gs)].map(([, body = '']) => ({
        block,
        rows: printedRows(body),
        over: linesIn(body, 'tool'),
        under: linesIn(body, 'tell'),
      })),
    );
}

const ARC = /(counter-)?clockwise arc there about X (\S+) Y (\S+), radius (\S+)$/;

/**
 * Where the tool goes at depth on following the rows.
 * @throws Error where a row cannot be followed: a move at depth by a lifted tool, or one that is lifted by nobody
 */
export function followed(rows: readonly PrintedRow[]): Track[] {
  const tracks: Track[] = [];
  let down: Pair | null = null;
  // Where a tool stands that goes straight down: it comes up as a matter of course, or backs off first.
  let stood: Pair | null = null;
  rows.forEach(({ cut, words, at, size, depth }, k) => {
    const fail = (what: string) => new Error(`row ${k + 1} (${cut}, ${words}): ${what}`);
    const add = (way: Way) => tracks.push({ cut, size, way });
    if (/lift off the part$/.test(words)) {
      if (down === null || down[0] !== at[0] || down[1] !== at[1] || depth !== 'lifted') {
        throw fail('there is nothing to lift here');
      }
      down = null;
      return;
    }
    if (depth === 'lifted') throw fail('is lifted without a word');
    const arc = ARC.exec(words);
    if (/straight there$/.test(words) || arc !== null) {
      stood = null;
      if (down === null) throw fail('the tool is not down');
      if (arc === null) add({ kind: 'line', a: down, b: at });
      else {
        const center: Pair = [Number(arc[2]), Number(arc[3])];
        add({ kind: 'arc', a: down, b: at, center, radius: Number(arc[4]), ccw: arc[1] !== undefined });
      }
      down = at;
      return;
    }
    if (down !== null) throw fail('the tool is still down');
    if (/back off there at depth, then lift$/.test(words)) {
      if (stood === null || cut !== rows[k - 1]?.cut) throw fail('there is nothing to back off from');
      add({ kind: 'off', a: stood, b: at });
      stood = null;
      return;
    }
    add({ kind: 'stand', at });
    stood = at;
    if (/go there lifted, then down$/.test(words)) down = at;
  });
  if (down !== null) throw new Error('the tool is still down at the end');
  return tracks;
}

/** How far a place is from where the middle of the tool went. */
export function distanceTo(way: Way, [x, y]: Pair): number {
  if (way.kind === 'stand') return Math.hypot(x - way.at[0], y - way.at[1]);
  const [ax, ay] = way.a;
  const [bx, by] = way.b;
  const toEnds = Math.min(Math.hypot(x - ax, y - ay), Math.hypot(x - bx, y - by));
  if (way.kind === 'line' || way.kind === 'off') {
    const long = (bx - ax) ** 2 + (by - ay) ** 2;
    const share = long === 0 ? 0 : ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / long;
    if (share <= 0 || share >= 1) return toEnds;
    return Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay));
  }
  const [cx, cy] = way.center;
  const angle = (px: number, py: number) => Math.atan2(py - cy, px - cx);
  const turned = (to: number) => {
    const turn = (way.ccw ? 1 : -1) * (to - angle(ax, ay));
    return ((turn % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  };
  const isBeside = turned(angle(x, y)) <= turned(angle(bx, by));
  return isBeside ? Math.abs(Math.hypot(x - cx, y - cy) - way.radius) : toEnds;
}
