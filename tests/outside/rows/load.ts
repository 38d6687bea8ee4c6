import {
  biteAlong,
  circleLoop,
  disc,
  engagementOf,
  openOut,
  type Region,
  rectangle,
  ringEngagementOf,
  sideLoadOf,
  stepIn,
  subtract,
  underneath,
  type WayOff,
  wayOff,
} from '@edgebite/core';
import { boxRegion } from '@edgebite/core/testing';
import { seeded } from '../../datum/drawn-errors.js';
import { geosMeasures } from '../../tools/geos-measure.js';
import { exact, loosely, type Pair, printed, type Reference, toShare } from '../reference.js';

const DEGREES = 180 / Math.PI;
const at = (x: number, y: number) => ({ x, y });
const HALF = boxRegion(-200, -200, 200, 0);

/** How near chords stay to their arcs. */
const SAGITTA = 1e-5;

/** Parts with a hole, and a tool that stands over an edge of each: the same ones every time. */
function stood(count: number): { metal: Region; center: ReturnType<typeof at>; radius: number }[] {
  const next = seeded(21);
  const between = (low: number, high: number) => low + (high - low) * next();
  return Array.from({ length: count }, () => {
    const radius = between(5, 15);
    const hole = disc(at(between(25, 35), between(15, 25)), between(3, 9));
    const metal = subtract([{ outer: rectangle(60, 40), holes: [] }], [hole]);
    return { metal, radius, center: at(between(0, 60), between(-0.6, 0.6) * radius) };
  });
}

async function sharesByGeos(): Promise<Pair[]> {
  const geos = await geosMeasures();
  return stood(20).map(({ metal, center, radius }) => {
    const inMetal = geos.inside(circleLoop(center, radius), metal, SAGITTA);
    return loosely(engagementOf(metal, center, radius).share, inMetal / (2 * Math.PI * radius), 1e-5);
  });
}

/** Ways off are looked at at so many places. */
const PLACES = 8;

/** Parts that ways off are looked for in. */
const WAYS = 12;

function wayOffIn(metal: Region, center: ReturnType<typeof at>, radius: number): WayOff {
  const layers = [{ from: 0, to: 5, metal }];
  return wayOff({ tool: { kind: 'circle', center, radius }, layers, clearance: 0.5, keepOuts: [] });
}

/** The gap at the end of each way, and that the tool cuts nothing on it, by GEOS on fine polygons. */
async function waysByGeos(): Promise<Pair[]> {
  const geos = await geosMeasures();
  return stood(WAYS).flatMap(({ metal, center, radius }): Pair[] => {
    const way = wayOffIn(metal, center, radius);
    if (way.kind !== 'way') return [];
    const left = subtract(metal, [disc(center, radius)]);
    const overlaps = Array.from({ length: PLACES }, (_, k) => {
      const by = (way.by * k) / PLACES;
      const tool = disc(at(center.x + by * way.direction.dx, center.y + by * way.direction.dy), radius);
      return geos.common(left, tool, SAGITTA);
    });
    const gap = geos.distance(left, disc(way.to, radius), SAGITTA);
    return [
      loosely(way.gap ?? Number.NaN, gap, 4 * SAGITTA),
      // Chords of the wall and of the tool cross in slivers as high as they are.
      loosely(Math.max(...overlaps), 0, 2 * Math.PI * radius * 2 * SAGITTA),
    ];
  });
}

/** What each pass of a circle of radius 1 takes that goes half its radius into a straight face. */
function passAreas(bite: number): number[] {
  const plan = stepIn({ metal: HALF, center: at(0, 0.5), radius: 1, bite, approach: { dx: 0, dy: -1 } });
  return plan.passes.map(({ area }) => area);
}

const through = { depth: 10, through: true, reach: null } as const;
const pointBelow = (diameter: number): number =>
  underneath({ cut: 'bore', tool: 'drill', diameter, ...through }, disc(at(0, 0), diameter / 2), 10, [])
    .below;

/** What tools meet: engagement, side load, backing off, passes, what comes out below. */
export const loadReferences: readonly Reference[] = [
  {
    quantity: 'share of a turn in metal, bite',
    source: 'Fundamentals of Machining Processes, p. 174',
    kind: 'closed form of our own',
    checks:
      'cos(phi) = 1 - ae / r with a cutter of 10 and a width of cut of 1: 36.8699 degrees; bite ae straight ahead',
    pairs: () => {
      const metal = boxRegion(-100, -100, -4, 100);
      return [
        printed((engagementOf(metal, at(0, 0), 5).angle / 2) * DEGREES, 36.8699, 4),
        exact(biteAlong(metal, at(0, 0), 5, Math.PI), 1),
      ];
    },
  },
  {
    quantity: 'share of a turn in metal, side load',
    source: "Machinery's Handbook, 31st ed., p. 50",
    kind: 'printed value',
    checks:
      'circle of 12 that is 2 deep in a face: arc 14.06 of the turn; side load is chord over arc, 13.27 / 14.06',
    pairs: () => {
      const { share, sideLoad } = engagementOf(HALF, at(0, 10), 12);
      return [
        loosely(share * 2 * Math.PI * 12, 14.06, 0.005),
        // Half a unit of the last digit of each: 0.005 / 14.06 of the quotient, twice.
        loosely(sideLoad.size, 13.27 / 14.06, (2 * 0.005) / 14.06),
      ];
    },
  },
  {
    quantity: 'share of a turn in metal',
    source: 'geos-wasm',
    kind: 'library',
    checks: 'length of the tool circle in 20 generated parts with a hole, as chords a hundred thousandth off',
    pairs: sharesByGeos,
  },
  {
    quantity: 'side load',
    source: 'integral of the definition',
    kind: 'closed form of our own',
    checks: 'half a turn, and half a ring of teeth: 2 / pi; a quarter of a ring: 2 sqrt(2) / pi',
    pairs: () => [
      exact(sideLoadOf([{ start: 0, sweep: Math.PI }]).size, 2 / Math.PI),
      exact(ringEngagementOf(HALF, at(0, 0), 16, 11.5).sideLoad.size, 2 / Math.PI),
      exact(
        ringEngagementOf(boxRegion(0, 0, 100, 100), at(0, 0), 16, 11.5).sideLoad.size,
        (2 * Math.SQRT2) / Math.PI,
      ),
    ],
  },
  {
    quantity: 'backing off',
    source: 'law of cosines',
    kind: 'closed form of our own',
    checks: 'straight out of a face: the ends of the wall clear by 0.5, r 10, centre 6 over it and on it',
    pairs: () =>
      [6, 0].map((over) => {
        const way = wayOffIn(HALF, at(0, over), 10);
        const half = Math.sqrt(100 - over * over);
        return exact(way.kind === 'way' ? way.by : Number.NaN, Math.sqrt(10.5 ** 2 - half * half) - over);
      }),
  },
  {
    quantity: 'backing off',
    source: 'geos-wasm',
    kind: 'library',
    checks: `gap at the end of each way in ${WAYS} generated parts, and what the tool cuts at ${PLACES} places on it: nothing`,
    pairs: waysByGeos,
  },
  {
    quantity: 'passes stepped in',
    source: 'J. Burkardt, output of the circle_segment test programs',
    kind: 'printed value',
    checks:
      'radius 1, half of it deep, bites of 1/2, 1/4, 1/8: what each pass takes is the difference of two segments',
    pairs: () => {
      const quarters = passAreas(1 / 4);
      const eighths = passAreas(1 / 8);
      return [
        printed(passAreas(1 / 2)[0] ?? Number.NaN, 0.614185, 6),
        printed(quarters[0] ?? Number.NaN, 0.226656, 6),
        // Two printed values, half a unit of the last digit each.
        loosely(quarters[1] ?? Number.NaN, 0.614185 - 0.226656, 1e-6),
        printed(eighths[0] ?? Number.NaN, 0.081753, 6),
        loosely(eighths[1] ?? Number.NaN, 0.226656 - 0.081753, 1e-6),
      ];
    },
  },
  {
    quantity: 'passes opened out',
    source: "Machinery's Handbook, 31st ed., p. 79",
    kind: 'printed value',
    checks: 'a hole of 8 opened to 12 in one bite of 2: a ring of 62.83',
    pairs: () => {
      const metal = subtract(HALF, [disc(at(0, -50), 4)]);
      const { passes, travel } = openOut({ metal, center: at(0, -50), radius: 6, bite: 2 });
      return [printed(passes[0]?.area ?? Number.NaN, 62.83, 2), exact(travel, 2)];
    },
  },
  {
    quantity: 'how far a drill comes out below',
    source:
      "table of tangents, tan 59 = 1.664279; Machinery's Handbook on points of 118 degrees, 0.30 D; both from memory",
    kind: 'closed form of our own',
    checks: 'point of 118 degrees, half its diameter over tan 59',
    pairs: () => [
      toShare(pointBelow(10), 5 / 1.664279, 1e-6),
      loosely(pointBelow(1), 0.3, 0.005),
      toShare(pointBelow(6.8), 3.4 / 1.664279, 1e-6),
    ],
  },
];
