import type { Aim, AimStop } from '../aim/aim.js';
import type { SetupDocument } from '../document/schema.js';
import { HALF_TIP } from '../document/schema-setups.js';

/** A lie of the part, and the cuts that are made so. */
export interface Layout {
  readonly side: 'top' | 'bottom';
  /** Turned round by half a turn, so that its other end bears on the stop. */
  readonly isRound: boolean;
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
  return layouts.map(({ side, isRound, cuts }, k) => ({
    id: String(k + 1),
    name: nameOf(side, isRound),
    ...(side === 'bottom' ? { flip: 'y' as const } : {}),
    ...(isRound ? { turn: 180 } : {}),
    ...(faces.length === 0 ? {} : { stops: faces.map((face) => ({ id: stopName(face), face })) }),
    zero: { x: actions(x, 'left', tip ?? 0), y: actions(y, 'front', tip ?? 0) },
    cuts,
  }));
}

function nameOf(side: Layout['side'], isRound: boolean): string {
  if (side === 'top') return isRound ? 'Turned round' : 'As drawn';
  return isRound ? 'Bottom up, turned round' : 'Bottom up';
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
