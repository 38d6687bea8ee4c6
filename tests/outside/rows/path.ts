import {
  arcEdge,
  centerPath,
  edgesOfPass,
  examine,
  isoWords,
  outlineRegion,
  parseJob,
  rangeOf,
  rectangle,
  slot,
  travelOfPass,
  unreached,
} from '@edgebite/core';
import { geosMeasures } from '../../tools/geos-measure.js';
import { exact, type Pair, type Reference, same, toShare } from '../reference.js';

const at = (x: number, y: number) => ({ x, y });

/** Travel along paths with leads round a plate and inside of a slot, against the length of fine chords. */
async function travelsByGeos(): Promise<Pair[]> {
  const geos = await geosMeasures();
  const outlines = [
    outlineRegion(rectangle(60, 40, { corner: 6 })),
    outlineRegion(slot(60, 24, { angle: 0.4 })),
  ];
  return outlines.flatMap((outline) =>
    (['outside', 'inside'] as const).flatMap((side) =>
      ([3, 'none'] as const).flatMap((lead) =>
        centerPath(outline, { side, radius: 4, lead }).passes.map((pass) => {
          const edges = edgesOfPass(pass);
          return toShare(travelOfPass({ doing: 'mills along', edges }), geos.length(edges, 1e-7), 1e-6);
        }),
      ),
    ),
  );
}

/** Values at which something comes or goes while a hole of radius 8 moves over the edge of a plate. */
function eventsOverAnEdge(): readonly number[] {
  const job = parseJob({
    edgebite: 1,
    units: 'mm',
    part: { outline: { rectangle: [80, 40] }, thickness: 10 },
    limits: { web: 2, knifeEdge: 30 },
    cuts: [{ id: 'a', kind: 'bore', center: [40, 35], diameter: 16 }],
  });
  return rangeOf(job, { cut: 'a', along: 'y', from: 29, to: 36 }).events.map(({ at: value }) => 40 - value);
}

/** Paths of tools, numeric words, safe intervals. */
export const pathReferences: readonly Reference[] = [
  {
    quantity: 'travel along a path',
    source: 'geos-wasm',
    kind: 'library',
    checks: 'leads and cut round a plate and along a slot, from outside and inside, as fine chords',
    pairs: travelsByGeos,
  },
  {
    quantity: 'what a tool does not reach',
    source: 'r^2 (cot(a / 2) - (pi - a) / 2)',
    kind: 'closed form of our own',
    checks: 'in a square corner and one of 60 degrees',
    pairs: () => {
      const square = unreached(outlineRegion(rectangle(60, 40)), 5, { side: 'inside' });
      const side = 60;
      const triangle = examine(
        parseJob({
          edgebite: 1,
          units: 'mm',
          part: {
            outline: { svgPath: `M0 0H${side}L${side / 2} ${(side * Math.sqrt(3)) / 2}Z` },
            thickness: 5,
          },
          cuts: [{ id: 'in', kind: 'swept', diameter: 6, path: { along: { side: 'inside' } } }],
        }),
      ).cuts[0]?.toolPath?.unreached;
      return [
        ...square.map(({ area }) => exact(area, 25 * (1 - Math.PI / 4))),
        ...(triangle ?? []).map(({ area }) => exact(area, 9 * (Math.sqrt(3) - Math.PI / 3))),
      ];
    },
  },
  {
    quantity: 'numeric words',
    source:
      'ISO 6983-1: I and J from the start of an arc to its centre, G02 clockwise (parts of it from memory)',
    kind: 'standard',
    checks: 'a quarter turn about the zero from (50, 0) to (0, 50), and back',
    agrees: true,
    pairs: () => {
      const words = (ccw: boolean) => {
        const [a, b] = ccw ? [at(50, 0), at(0, 50)] : [at(0, 50), at(50, 0)];
        return isoWords([[arcEdge(a, b, at(0, 0), ccw)]], { units: 'mm' }).blocks.at(-1);
      };
      return [same(words(true) === 'G03 X0 Y50 I-50 J0'), same(words(false) === 'G02 X50 Y0 I0 J-50')];
    },
  },
  {
    quantity: 'safe interval',
    source:
      'a hole of radius 8 with webs under 2 and knife edges under 30 degrees thin: 8 cos 30, 8, 10 from the face',
    kind: 'closed form of our own',
    checks: 'the values at which something changes as its centre moves out over the face',
    pairs: () => {
      const events = eventsOverAnEdge();
      // The range is searched to a ten thousand millionth of its length, 7.
      return [10, 8, 8 * Math.cos(Math.PI / 6)].map((wanted) => {
        const nearest = events.reduce((best, one) =>
          Math.abs(one - wanted) < Math.abs(best - wanted) ? one : best,
        );
        return { got: nearest, wanted, within: 1e-8 };
      });
    },
  },
];
