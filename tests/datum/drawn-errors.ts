import { generalTolerance, type JobDocument, type Report } from '@edgebite/core';

/** A place [x, y]. */
export type XY = readonly [number, number];

type SetupDocument = NonNullable<JobDocument['setups']>[number];
type ActionDocument = SetupDocument['zero']['x'][number];

/** Numbers from 0 to 1, the same for the same seed. Source: mulberry32, a public domain generator of 32 bits. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** One draw: for each cause of error a number from -1 to 1, by the cause's name. */
export type Draw = (cause: string) => number;

/**
 * What comes of a job on the machine when things are off by a draw: the operator finds the zero with links of their
 * true lengths, goes to the numbers of the report, and stops up to half a step beside them. Written for the tests, on
 * plain matrices, without the library's own arithmetic.
 */
export function machineOf(job: JobDocument, report: Report) {
  const perInch = job.units === 'mm' ? 25.4 : 1;
  const perMm = job.units === 'mm' ? 1 : 1 / 25.4;
  const inJob = (value: number, units: string) => value * (units === 'inch' ? perInch : perMm);
  const { part } = job;

  const classOf = (length: number): number =>
    part.tolerances === undefined
      ? 0
      : inJob(generalTolerance(Math.abs(length) / perMm, part.tolerances) ?? 0, 'mm');

  /** A length along an axis: what it is, and what it may be off by, to the left or right as the part lies. */
  interface Stretch {
    readonly cause: string;
    readonly length: number;
    readonly off: number;
  }

  /** From the middle of the tip at the touch, which is the zero, to the place on the part. All touches here set 0. */
  const stretches = (setup: SetupDocument, axis: 'x' | 'y'): readonly Stretch[] => {
    const faces = new Map((setup.stops ?? []).map(({ id, face }) => [id, face]));
    const low = (face: string) => face === 'left' || face === 'front';
    const of = (value: number | undefined, units: 'mm' | 'inch' | undefined) =>
      inJob(value ?? 0, units ?? job.units);
    // A stop looks from where it is towards the part: with a left end on it to the right.
    let inwards = 1;
    return setup.zero[axis].flatMap((action: ActionDocument, i): Stretch[] => {
      const cause = 'name' in action && action.name !== undefined ? action.name : `${setup.id} ${axis} ${i}`;
      if ('touch' in action) {
        const stop = faces.get(action.touch);
        // The tip is left of a left face, so that the face lies to its right; of a stop it is the other way round.
        const sign = stop === undefined ? (low(action.touch) ? 1 : -1) : low(stop) ? -1 : 1;
        inwards = stop === undefined ? inwards : -sign;
        const half = of(action.tip, action.units) / 2;
        return [{ cause, length: sign * half, off: sign * of(action.tolerance, action.units) }];
      }
      if (!('bears' in action)) throw new Error('no such action in these jobs');
      const blocks = Array.isArray(action.block) ? action.block : [];
      return [
        ...blocks.map((one, k): Stretch => {
          if (typeof one === 'number' || !('block' in one)) throw new Error('no such block in these jobs');
          const units = one.units ?? action.units;
          return {
            cause: one.name ?? `${cause} block ${k}`,
            length: inwards * of(one.block, units),
            off: inwards * of(one.tolerance, units),
          };
        }),
        { cause, length: 0, off: inwards * of(action.tolerance, action.units) },
      ];
    });
  };

  const setups = (job.setups ?? []).map((setup) => {
    const row = report.setups.find(({ id }) => id === setup.id) as Report['setups'][number];
    const t = ((setup.turn ?? 0) * Math.PI) / 180;
    const [mx, my] = [setup.flip === 'y' ? -1 : 1, setup.flip === 'x' ? -1 : 1];
    const a = [
      [Math.cos(t) * mx, -Math.sin(t) * my],
      [Math.sin(t) * mx, Math.cos(t) * my],
    ] as const;
    // Where the part touches: the zero of the report is a place of the part, and the chain leads from there.
    const [zx, zy] = row.zero.at;
    const at = ([0, 1] as const).map((k) => {
      const axis = k === 0 ? 'x' : 'y';
      return a[k][0] * zx + a[k][1] * zy + inJob(row.zero[axis].at, row.readout.units);
    }) as unknown as XY;
    return { setup, row, a, at, step: inJob(row.readout.resolution, row.readout.units) };
  });

  /** Where the spindle stands for a cut on the part, as measured from the part's faces that its zero is taken from. */
  function centerOf(cut: string, point: number | null, draw: Draw): XY {
    const lay = setups.find(({ setup }) => setup.cuts.includes(cut));
    if (lay === undefined) throw new Error(`cut ${cut} is in no setup`);
    const { setup, row, a, at, step } = lay;
    const target = row.targets.find((one) => one.cut === cut && one.point === point);
    if (target === undefined) throw new Error(`no target for ${cut}`);
    const machine = ([0, 1] as const).map((k) => {
      const axis = k === 0 ? 'x' : 'y';
      const chain = stretches(setup, axis).reduce(
        (sum, { cause, length, off }) => sum + length + off * draw(cause),
        0,
      );
      const shown = inJob(target.readout[k], row.readout.units);
      return at[k] - chain + shown + (step / 2) * draw(`${cut} ${axis}`);
    }) as unknown as XY;
    // The matrix is orthogonal: its inverse is its transpose.
    return [a[0][0] * machine[0] + a[1][0] * machine[1], a[0][1] * machine[0] + a[1][1] * machine[1]];
  }

  /** The corner of the part that a cut's zero is taken from. */
  function datumOf(cut: string): XY {
    const lay = setups.find(({ setup }) => setup.cuts.includes(cut));
    if (lay === undefined) throw new Error(`cut ${cut} is in no setup`);
    const { a, at } = lay;
    return [a[0][0] * at[0] + a[1][0] * at[1], a[0][1] * at[0] + a[1][1] * at[1]];
  }

  /** By how much the part is off between two of its places. */
  function sizeError(from: XY, to: XY, draw: Draw): XY {
    const of = (k: 0 | 1) => {
      const length = Math.abs(to[k] - from[k]);
      return (length < 1e-9 ? 0 : classOf(length)) * draw(`size ${k}`);
    };
    return [of(0), of(1)];
  }

  return { centerOf, datumOf, sizeError };
}

export type Machine = ReturnType<typeof machineOf>;
