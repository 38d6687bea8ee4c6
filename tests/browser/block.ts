/** A block of our own with five cuts of three kinds, so that no change of an example changes what is tested. */
export const block = {
  edgebite: 1,
  name: 'Block with a bite at either end',
  units: 'mm',
  part: {
    outline: { rectangle: [90, 40], corner: 3 },
    thickness: 16 as number | undefined,
    material: 'mild steel',
  },
  keep: [45, 30],
  limits: { web: 1.5, knifeEdge: 30 },
  cuts: [
    { id: 'seat-ring', kind: 'annular', center: [92, 20], diameter: 36, wall: 4.5, reach: 25 },
    { id: 'rest-ring', kind: 'annular', center: [-4, 20], diameter: 24, wall: 4, reach: 25 },
    { id: 'rest', kind: 'bore', center: [-4, 20], diameter: 26 },
    { id: 'pin', kind: 'bore', center: [60, 5.2], diameter: 8 },
    {
      id: 'oilway',
      kind: 'swept',
      diameter: 5,
      depth: 4,
      path: { svgPath: 'M20 27 L52 27 A8 8 0 0 0 60 19 L60 7' },
    },
  ] as TestCut[],
};

interface TestCut {
  id: string;
  kind: string;
  center?: [number, number];
  diameter: number;
  wall?: number;
  reach?: number;
  depth?: number;
  path?: { svgPath: string };
}
