/** A rail with a seat of radius 15 whose centre lies 4 over its back edge, and the head that cuts it. */
export const rail = (over: Record<string, unknown> = {}) => ({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [80, 40] }, thickness: 20 },
  gauges: { pins: [8, 12] },
  tools: [
    {
      id: 'head',
      kind: 'boring head',
      toolMaterial: 'HSS',
      maxSpeed: 500,
      dial: { step: 0.02, on: 'diameter' },
      cuts: ['seat'],
    },
  ],
  cuts: [{ id: 'seat', kind: 'bore', center: [40, 44], diameter: 30 }],
  ...over,
});
