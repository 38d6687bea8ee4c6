/** Radians in a degree: jobs and reports have degrees, all else has radians. */
export const DEGREE = Math.PI / 180;

/** Radians in a whole turn. */
export const TURN = 2 * Math.PI;

/** An angle brought to between 0 and a whole turn. */
export function withinTurn(angle: number): number {
  const rest = angle % TURN;
  return rest < 0 ? rest + TURN : rest;
}
