import { type Json, valueAt } from './json.js';

/** Millimetres in an inch, by definition (international yard and pound agreement, 1959). */
export const INCH = 25.4;

/** The step of the readout in the job's unit: its own resolution where the job gives one, else that of the job. */
export function stepOf(job: Json | null, resolution: number): number {
  const units = valueAt(job ?? undefined, ['units']);
  const own = valueAt(job ?? undefined, ['readout', 'resolution']);
  if (typeof own !== 'number' || own <= 0) return resolution;
  const shown = valueAt(job ?? undefined, ['readout', 'units']) ?? units;
  if (shown === units) return own;
  return shown === 'inch' ? own * INCH : own / INCH;
}

/**
 * The unit of the length at a pointer: that of the nearest object round it that says one, such as a readout. The
 * readout of a setup that says none is as that of the job. What the readout is set to or moved by is in its own unit.
 */
export function unitIn(job: Json | null, pointer: string): 'mm' | 'inch' {
  const own = pointer.split('/').slice(1);
  const shown = own[2] === 'zero' && ['reads', 'move', 'set'].includes(own.at(-1) ?? '');
  const steps = shown ? [...own.slice(0, 2), 'readout', 'resolution'] : own;
  const round = steps.slice(0, -1).map((_, k) => steps.slice(0, steps.length - 1 - k));
  const ofJob = steps[0] === 'setups' && steps[2] === 'readout' ? [['readout']] : [];
  const [owner] = [...round.slice(0, 1), ...ofJob, ...round.slice(1), []].flatMap(
    (path): ('mm' | 'inch')[] => {
      const keys = path.map((step) => (/^\d+$/.test(step) ? Number(step) : step));
      const said = valueAt(job ?? undefined, [...keys, 'units']);
      return said === 'mm' || said === 'inch' ? [said] : [];
    },
  );
  return owner ?? 'mm';
}
