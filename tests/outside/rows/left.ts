import { examine, massOf, parseJob, type Report } from '@edgebite/core';
import { exact, printed, type Reference } from '../reference.js';

const DEGREES = 180 / Math.PI;

const reportOn = (over: Record<string, unknown>): Report =>
  examine(parseJob({ edgebite: 1, units: 'mm', ...over } as Parameters<typeof parseJob>[0]));

/** The thinnest web of a round of radius R with a bore of radius r, off its middle by e. */
function eccentricWeb(R: number, r: number, e: number): number {
  const { webs } = reportOn({
    part: { outline: { circle: 2 * R }, thickness: 1 },
    limits: { web: R - r },
    cuts: [{ id: 'bore', kind: 'bore', center: [e, 0], diameter: 2 * r }],
  });
  return webs[0]?.thickness ?? Number.NaN;
}

/** Knife edges of a bite of radius r in a straight face, its centre e inside, with webs under t thin. */
function horns(r: number, e: number, t: number): Report['knifeEdges'] {
  const { knifeEdges } = reportOn({
    part: { outline: { rectangle: [20 * r, 10 * r] }, thickness: 12 },
    limits: { web: t, knifeEdge: 89 },
    cuts: [{ id: 'bite', kind: 'bore', center: [10 * r, 10 * r - e], diameter: 2 * r }],
  });
  return knifeEdges;
}

/**
 * Feather of such a horn: the middle of the disc of diameter t lies t/2 under the face and r + t/2 from the bore's
 * centre, by Pythagoras; the tip lies on the face.
 */
function featherOf(r: number, e: number, t: number): number {
  const tip = Math.sqrt(r * r - e * e);
  const middle = Math.sqrt((r + t / 2) ** 2 - (e - t / 2) ** 2);
  return Math.hypot(middle - tip, t / 2);
}

/** Held slug of a ring cut with a core of radius 12 that stands 2 inside of the part, 4 over the bottom. */
function heldSlug(): Report {
  return reportOn({
    part: { outline: { rectangle: [80, 40] }, thickness: 10, material: 'mild steel' },
    keep: [5, 5],
    cuts: [{ id: 'ring', kind: 'annular', center: [40, 50], diameter: 32, wall: 4, depth: 6 }],
  });
}

/** What cuts leave: webs, knife edges, floors, bodies. */
export const leftReferences: readonly Reference[] = [
  {
    quantity: 'web thickness',
    letters: 'DM',
    source: 'Ask Dr. Math 62899, eccentric tube',
    kind: 'closed form of our own',
    checks: 'thinnest web of a bore off the middle of a round: R - r - e',
    pairs: () => [
      exact(eccentricWeb(20, 12, 3), 5),
      exact(eccentricWeb(50, 49, 0.25), 0.75),
      exact(eccentricWeb(10, 4.5, 5), 0.5),
    ],
  },
  {
    quantity: 'knife edge angle',
    source: 'Euclid, Elements I.47 and III.20',
    kind: 'closed form of our own',
    checks: 'a bite with its centre 8 inside, radius 10: acos(8 / 10)',
    pairs: () => horns(10, 8, 0.1).map(({ angle }) => exact(angle, Math.acos(0.8) * DEGREES)),
  },
  {
    quantity: 'feather',
    source: 'Pythagoras, and sine in a right triangle',
    kind: 'closed form of our own',
    checks: 'between a bore and a face; at a sharp corner of two faces (t / 2) / sin(w / 2)',
    pairs: () => {
      const bites = [
        [10, 8, 1],
        [10, 9.5, 1],
        [6, 2, 0.5],
      ] as const;
      const corner = reportOn({
        part: { outline: { svgPath: 'M0 0H60V20Z' }, thickness: 5 },
        limits: { web: 1, knifeEdge: 30 },
        cuts: [{ id: 'far', kind: 'bore', center: [50, 6], diameter: 3 }],
      }).knifeEdges.find(({ at }) => at[0] === 0);
      return [
        ...bites.flatMap(([r, e, t]) =>
          horns(r, e, t).map(({ feather }) => exact(feather ?? Number.NaN, featherOf(r, e, t))),
        ),
        exact(corner?.feather ?? Number.NaN, 0.5 / Math.sin(Math.atan(1 / 3) / 2)),
      ];
    },
  },
  {
    quantity: 'floor, kerf length, volume of a slug',
    source: "Machinery's Handbook, 31st ed., p. 50",
    kind: 'printed value',
    checks:
      'a core of 12 that stands 2 in the part: arc 14.06, area 18.01, which is 6 high; floor 4 by subtraction',
    pairs: () => {
      const { floors, pieces } = heldSlug();
      const slug = pieces.find(({ role }) => role === 'held slug');
      const floor = floors.find(({ holds }) => holds !== null && holds === slug?.id);
      return [
        printed(floor?.kerfLength ?? Number.NaN, 14.06, 2),
        printed((slug?.volume ?? Number.NaN) / 6, 18.01, 2),
        exact(floor?.thickness ?? Number.NaN, 4),
      ];
    },
  },
  {
    quantity: 'mass',
    source: 'pound of 0.45359237 kg and inch of 25.4 mm (1959 agreement, from memory)',
    kind: 'standard',
    checks: 'mass of a volume in both units: 25.4^3 mm3 in a cubic inch. The density itself has no source',
    pairs: () => [
      exact(massOf(1e6, 7.85, 'mm'), 7850),
      exact((massOf(1, 7.85, 'inch') * 453.59237) / massOf(25.4 ** 3, 7.85, 'mm'), 1),
    ],
  },
];
