import { nearestOnEdge } from '../geometry/distance.js';
import { distance, type Point } from '../geometry/point.js';
import type { Slab } from '../left/cells.js';
import type { ReportWayOut } from '../report/report-schema.js';
import { lengthWords } from '../report/words.js';
import type { Body } from '../state/bodies.js';
import { KERF } from '../state/narrow-places.js';
import type { Result } from '../step/result.js';
import { edgesIn, type Lay, lineRow } from './way-out-line.js';

/** The ways to free a body that hangs by thin metal: across each neck, or along the low metal that joins it. */
export function waysOutOfThin(result: Result, body: Body, lay: Lay): ReportWayOut[] {
  const hangs = body.hangs as NonNullable<Body['hangs']>;
  const { units, limits } = result.job;
  const length = (value: number) => lengthWords(value, units);
  const slack = 4 * KERF * limits.hold;
  const edges = edgesIn(hangs.plan);
  const necks = result.left.webs.filter(
    (web) =>
      web.thickness < limits.hold && edges.some((edge) => nearestOnEdge(edge, web.at).distance <= slack),
  );
  const seen: Point[] = [];
  const ways = necks.flatMap((web): ReportWayOut[] => {
    // The same neck in another slab is sawn with it.
    if (seen.some((p) => distance(p, web.at) <= slack)) return [];
    seen.push(web.at);
    const high = necks
      .filter((one) => distance(one.at, web.at) <= slack)
      .reduce((sum, { slab }) => sum + heightOf(result.left.cells.slabs[slab] as Slab), 0);
    const line = web.thickness > 0 ? lineRow(lay, web.ends[0], web.ends[1]) : null;
    const clean = { width: web.length, height: high, length: web.thickness };
    return [
      {
        kind: 'saw',
        words: `Saw across the neck, ${length(web.thickness)} long and ${length(high)} through.`,
        line,
        length: web.thickness,
        through: high,
        size: null,
        tool: null,
        leaves: `A stub on the part, up to half of the ${length(web.length)} in which the neck is thin: file or mill it flush.`,
        clean: { ...clean, width: web.length / 2 },
      },
      {
        kind: 'end mill',
        words: `Mill across the neck, ${length(web.thickness)} long and ${length(high)} deep: an end mill of ${length(web.length)} or more takes all of its thin part.`,
        line,
        length: web.thickness,
        through: high,
        size: web.length,
        tool: null,
        leaves: 'A hollow on the part as wide as the mill where it goes in past the neck.',
        clean,
      },
    ];
  });
  if (ways.length > 0) return ways;
  return [
    {
      kind: 'saw',
      words: `Saw along the metal that joins it, ${length(hangs.length)} long and up to ${length(hangs.thickness)} high.`,
      line: null,
      length: hangs.length,
      through: hangs.thickness,
      size: null,
      tool: null,
      leaves: `A lip up to ${length(hangs.thickness)} high along ${length(hangs.length)}: mill or file it off.`,
      clean: { width: 0, height: hangs.thickness, length: hangs.length },
    },
    {
      kind: 'other side',
      words: `Turn the part over and mill off the ${length(hangs.thickness)} that join it.`,
      line: null,
      length: hangs.length,
      through: hangs.thickness,
      size: null,
      tool: null,
      leaves: 'The burr along what was joined.',
      clean: null,
    },
  ];
}

const heightOf = ({ from, to }: Slab): number => to - from;
