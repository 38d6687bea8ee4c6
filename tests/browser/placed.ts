import { block } from './block.js';

/** The block with a centre of each kind, a path of each kind, and passes. */
export const placed = {
  ...block,
  name: 'Block with placed centres',
  cuts: [
    {
      id: 'rest',
      kind: 'bore',
      diameter: 26,
      center: { on: 'outline:4', along: 30, depth: 6 },
      passes: { kind: 'step in', approach: -90, bite: 2 },
    },
    { id: 'corner', kind: 'bore', diameter: 8, center: { tangent: ['outline:0', 'outline:2'] } },
    {
      id: 'pin',
      kind: 'bore',
      diameter: 6,
      center: {
        distances: [
          { edge: 'outline:0', distance: 12 },
          { edge: 'outline:6', distance: 20 },
        ],
      },
    },
    {
      id: 'oilway',
      kind: 'swept',
      diameter: 5,
      depth: 4,
      path: { svgPath: 'M30 12 L52 12 A4 4 0 0 1 56 16' },
    },
    {
      id: 'felt',
      kind: 'swept',
      diameter: 3,
      depth: 2,
      path: { along: { from: [20, 0], to: [70, 0], side: 'inside', allowance: 2 } },
    },
  ],
};

/** The block in mm, with a readout in inch and a setup that gives the step of that readout. */
export const shownInInch = {
  ...block,
  name: 'Block with a readout in inch',
  readout: { units: 'inch', resolution: 0.0005 },
  setups: [
    {
      id: 'as-drawn',
      readout: { resolution: 0.0002 },
      zero: {
        x: [{ touch: 'left', tip: 10, then: 'move half the tip and set 0', units: 'mm' }],
        y: [{ touch: 'front', tip: 10, then: 'move half the tip and set 0', units: 'mm' }],
      },
      cuts: ['pin'],
    },
  ],
};
