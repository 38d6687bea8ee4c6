/** An annular cut of 30 with a wall of 5 in the middle of a plate of 100 by 60. */
export const ring = (id: string, more: object = {}) => ({
  id,
  kind: 'annular',
  center: [50, 30],
  diameter: 30,
  wall: 5,
  ...more,
});
