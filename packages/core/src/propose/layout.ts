import type { Aim, AimStop } from '../aim/aim.js';
import type { SetupDocument } from '../document/schema.js';
import { HALF_TIP } from '../document/schema-setups.js';

/** Degrees by which a part is turned counter-clockwise, seen from above, so that another of its sides bears on a stop. */
export const QUARTERS = [0, 180, 90, 270] as const;
export type Quarter = (typeof QUARTERS)[number];

/** A lie of the part, and the cuts that are made so. */
export interface Layout {
  readonly side: 'top' | 'bottom';
  readonly turn: Quarter;
  readonly cuts: string[];
}

/** Setups in which the part is put against the stops of an aim, and what has no stop is touched with the tip. */
export function setupsOf(
  { stops, tip }: Pick<Aim, 'stops' | 'tip'>,
  layouts: readonly Layout[],
): readonly SetupDocument[] {
  const x = stops.find((side) => side === 'left' || side === 'right');
  const y = stops.find((side) => side === 'front' || side === 'back');
  const faces = [x, y].filter((side) => side !== undefined);
  return layouts.map(({ side, turn, cuts }, k) => ({
    id: String(k + 1),
    name: nameOf(side, turn),
    ...(side === 'bottom' ? { flip: 'y' as const } : {}),
    ...(turn === 0 ? {} : { turn }),
    ...(faces.length === 0 ? {} : { stops: faces.map((face) => ({ id: stopName(face), face })) }),
    zero: { x: actions(x, 'left', tip ?? 0), y: actions(y, 'front', tip ?? 0) },
    cuts,
  }));
}

const TURNED: Readonly<Record<Exclude<Quarter, 0>, string>> = {
  90: 'a quarter turn counter-clockwise',
  180: 'turned round',
  270: 'a quarter turn clockwise',
};

function nameOf(side: Layout['side'], turn: Quarter): string {
  if (turn === 0) return side === 'top' ? 'As drawn' : 'Bottom up';
  const turned = TURNED[turn];
  return side === 'top' ? turned.charAt(0).toUpperCase() + turned.slice(1) : `Bottom up, ${turned}`;
}

/** Stops have letters, as on the bench. */
function stopName(side: AimStop): string {
  return side === 'left' || side === 'right' ? 'A' : 'B';
}

function actions(stop: AimStop | undefined, face: AimStop, tip: number): SetupDocument['zero']['x'] {
  if (stop === undefined) return [{ touch: face, tip, reads: 0, then: HALF_TIP }];
  const id = stopName(stop);
  return [
    { touch: id, tip, reads: 0, then: HALF_TIP },
    { bears: stop, on: id },
  ];
}
