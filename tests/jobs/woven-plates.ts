import type { JobDocument } from '@edgebite/core';
import fc from 'fast-check';

type CutDocument = JobDocument['cuts'][number];

/** A change to one cut of a job. */
export interface Step {
  readonly cut: string;
  readonly change: Readonly<Record<string, unknown>>;
}

/** Distance between the holes of a plate, in mm. */
const PITCH = 10;

/** Small numbers that a hole is made from. */
const holePlan = fc.record({
  kind: fc.constantFrom('bore', 'bore', 'bore', 'bore', 'annular', 'slot', 'pair', 'nothing'),
  radius: fc.integer({ min: 4, max: 16 }),
  off: fc.tuple(fc.integer({ min: -8, max: 8 }), fc.integer({ min: -8, max: 8 })),
  depth: fc.nat(5),
});

type HolePlan = typeof holePlan extends fc.Arbitrary<infer T> ? T : never;

/**
 * Plates of 6 by 5 holes of all kinds and sizes, most alone, some in pairs, some in the edge; with a saw cut through
 * some of them, so that there is more than one piece; and some changes to them.
 */
export const wovenPlates = fc
  .record({
    plans: fc.array(holePlan, { minLength: 30, maxLength: 30 }),
    round: fc.boolean(),
    deep: fc.boolean(),
    sawn: fc.nat(3),
    web: fc.constantFrom(1.017, 2.513, 4.031),
    keep: fc.boolean(),
  })
  .map(({ plans, round, deep, sawn, web, keep }): JobDocument => {
    const cuts = plans.flatMap((plan, k) => cutsAt(plan, k, deep));
    const saw: CutDocument = {
      id: 'saw',
      kind: 'swept',
      diameter: 1.5,
      path: { svgPath: 'M44.9 -5 L45.1 70' },
    };
    return {
      edgebite: 1,
      units: 'mm',
      part: {
        outline: round ? { circle: 90, at: [35, 30] } : { rectangle: [70, 60], corner: 3 },
        thickness: 6,
        material: 'mild steel',
      },
      ...(keep ? { keep: [35, 4.1] } : {}),
      limits: { web, knifeEdge: 45.7 },
      cuts: sawn === 0 ? [...cuts, saw] : cuts,
    };
  })
  .chain((document) => fc.record({ document: fc.constant(document), steps: stepsFor(document) }));

function cutsAt({ kind, radius, off, depth }: HolePlan, k: number, deep: boolean): CutDocument[] {
  const center: [number, number] = [
    PITCH * (k % 6) + PITCH + off[0] / 8,
    PITCH * Math.floor(k / 6) + PITCH + off[1] / 8,
  ];
  const every = { id: `c${k}`, ...(deep && depth < 3 ? { depth: 2 * depth + 1 } : {}) };
  const diameter = radius / 2;
  if (kind === 'nothing') return [];
  if (kind === 'annular') return [{ ...every, kind, center, diameter, wall: diameter / 5 }];
  if (kind === 'slot') {
    const [x, y] = center;
    return [
      {
        ...every,
        kind: 'swept',
        diameter: 2,
        path: { svgPath: `M${x} ${y} l${off[0] / 4 + 2.5} ${off[1] / 4}` },
      },
    ];
  }
  const bore: CutDocument = { ...every, kind: 'bore', center, diameter };
  const beside: [number, number] = [center[0] + diameter / 3, center[1] + 0.7];
  return kind === 'bore' ? [bore] : [bore, { ...bore, id: `d${k}`, center: beside }];
}

/** Changes to a job: small and large moves, onto another cut, other sizes. */
export function stepsFor({ cuts }: JobDocument): fc.Arbitrary<Step[]> {
  const round = cuts.filter((cut): cut is Exclude<CutDocument, { kind: 'swept' }> => cut.kind !== 'swept');
  if (round.length === 0) return fc.constant([]);
  const step = fc.record({
    which: fc.nat(round.length - 1),
    way: fc.nat(9),
    by: fc.tuple(fc.integer({ min: -16, max: 16 }), fc.integer({ min: -16, max: 16 })),
    other: fc.nat(round.length - 1),
  });
  return fc.array(step, { minLength: 1, maxLength: 4 }).map((plans) =>
    plans.flatMap(({ which, way, by, other }): Step[] => {
      const cut = round[which] as (typeof round)[number];
      const centerOf = (one: typeof cut): [number, number] =>
        Array.isArray(one.center) ? [one.center[0], one.center[1]] : [20, 20];
      const [x, y] = centerOf(cut);
      const moved = (from: readonly [number, number], share: number): Step[] => [
        { cut: cut.id, change: { center: [from[0] + by[0] * share, from[1] + by[1] * share] } },
      ];
      if (way < 5) return moved([x, y], 1 / 16);
      if (way < 7) return moved([x, y], 1);
      if (way === 7) return moved(centerOf(round[other] as typeof cut), 1 / 8);
      const diameter = cut.diameter ?? 4;
      return [{ cut: cut.id, change: { diameter: diameter * (1 + by[0] / 40) } }];
    }),
  );
}
