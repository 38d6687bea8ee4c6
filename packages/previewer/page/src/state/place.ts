import { isList, isObject, type Json, valueAt } from './json.js';

/** A cut of the job as it stands in the forms, whose centre is a place that can be moved. */
export interface MovableCut {
  readonly index: number;
  readonly id: string;
  readonly center: readonly [number, number];
  readonly diameter: number | null;
}

/** Millimetres in an inch, by definition (international yard and pound agreement, 1959). */
const INCH = 25.4;

/** The step of the readout in the job's unit: its own resolution where the job gives one, else that of the job. */
export function stepOf(job: Json | null, resolution: number): number {
  const units = valueAt(job ?? undefined, ['units']);
  const own = valueAt(job ?? undefined, ['readout', 'resolution']);
  if (typeof own !== 'number' || own <= 0) return resolution;
  const shown = valueAt(job ?? undefined, ['readout', 'units']) ?? units;
  if (shown === units) return own;
  return shown === 'inch' ? own * INCH : own / INCH;
}

/** The cuts whose centre is given as a place. */
export function movableCuts(job: Json | null): readonly MovableCut[] {
  const cuts = valueAt(job ?? undefined, ['cuts']);
  if (!isList(cuts)) return [];
  return cuts.flatMap((cut, index): MovableCut[] => {
    if (!isObject(cut) || !isList(cut.center)) return [];
    const [x, y] = cut.center;
    if (typeof x !== 'number' || typeof y !== 'number') return [];
    const diameter = typeof cut.diameter === 'number' && cut.diameter > 0 ? cut.diameter : null;
    return [{ index, id: String(cut.id ?? index + 1), center: [x, y], diameter }];
  });
}
