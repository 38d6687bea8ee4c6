import type { JobDocument } from '@edgebite/core';

/** Of the 1959 agreement on the yard and the pound. */
export const INCH = 25.4;

type Plain = Record<string, unknown>;

/** Numbers of a job that are no lengths. */
const NO_LENGTHS = new Set([
  'edgebite',
  'count',
  'teeth',
  'turn',
  'angleTolerance',
  'angle',
  'knifeEdge',
  'rpm',
  'speeds',
  'maxSpeed',
  'slowest',
  'fastest',
  'approach',
]);

/** What a number of a zero is written in: said with the action, or the readout's own. */
const OWN_UNIT = new Set(['zero', 'readout', 'quill', 'batch']);

function scaled(value: unknown, by: number): unknown {
  if (typeof value === 'number') return value * by;
  if (Array.isArray(value)) return value.map((one) => scaled(one, by));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [
      key,
      NO_LENGTHS.has(key) || OWN_UNIT.has(key) ? one : scaled(one, by),
    ]),
  );
}

/** The unit of each action said, so that it does not change with that of the job. */
function unitsSaid(action: Plain, units: string): Plain {
  const said = ['touch', 'bears', 'measured', 'dial in'].some((key) => key in action)
    ? { units, ...action }
    : action;
  const places = 'at' in said || 'block' in said;
  if (!places || !Array.isArray(said.block)) return said;
  return {
    ...said,
    block: said.block.map((one) => (typeof one === 'number' ? { block: one, units } : { units, ...one })),
  };
}

/** What a job takes for granted in its own unit, written out. */
function spelledOut(document: JobDocument): Plain {
  const { units } = document;
  const isMetric = units === 'mm';
  const resolution = document.resolution ?? (isMetric ? 0.005 : 0.0002);
  const readout = { units, resolution, ...document.readout };
  const least = isMetric ? 1 : 0.04;
  const web = document.limits?.web ?? least;
  return {
    ...document,
    resolution,
    readout,
    limits: { knifeEdge: 30, web, hold: web, breakThrough: least, ...document.limits },
    gauges: { pins: [6, 12.5], balls: [8, 15], feet: [7, 12], ...document.gauges },
    setups: document.setups?.map((setup) => ({
      ...setup,
      readout: { ...readout, ...setup.readout },
      zero: Object.fromEntries(
        Object.entries(setup.zero).map(([axis, actions]) => [
          axis,
          (actions as unknown as Plain[]).map((action) => unitsSaid(action, units)),
        ]),
      ),
    })),
    cuts: document.cuts.map((cut) =>
      cut.kind === 'swept' ? cut : { clearance: isMetric ? 0.2 : 0.01, ...cut },
    ),
  };
}

/** Places on the part in a zero are in the unit of the job. */
function placesScaled(value: unknown, by: number): unknown {
  if (Array.isArray(value)) return value.map((one) => placesScaled(one, by));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [
      key,
      (key === 'at' || key === 'dial in') && Array.isArray(one) ? scaled(one, by) : placesScaled(one, by),
    ]),
  );
}

/** One job, written in its unit and in the other. */
export function inBothUnits(document: JobDocument): {
  readonly own: JobDocument;
  readonly other: JobDocument;
  readonly by: number;
} {
  const by = document.units === 'mm' ? 1 / INCH : INCH;
  const own = spelledOut(document);
  const other = scaled(own, by) as Plain;
  other.units = document.units === 'mm' ? 'inch' : 'mm';
  other.setups = (other.setups as Plain[] | undefined)?.map((setup) => ({
    ...setup,
    zero: placesScaled(setup.zero, by),
  }));
  return { own, other, by } as unknown as ReturnType<typeof inBothUnits>;
}
