import { generalTolerance, type JobDocument, type Report } from '@edgebite/core';

/** A place [x, y]. */
export type XY = readonly [number, number];

type SetupDocument = NonNullable<JobDocument['setups']>[number];
type LinkDocument = SetupDocument['zero']['x'][number];

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

  const half = (link: LinkDocument): number => {
    if ('length' in link) return inJob(link.length, link.units ?? job.units);
    return 'diameter' in link ? inJob(link.diameter ?? 0, link.units ?? job.units) / 2 : 0;
  };
  const off = (link: LinkDocument): number => {
    if (link.tolerance !== undefined) return inJob(link.tolerance, link.units ?? job.units);
    return link.kind === 'measured' ? classOf(half(link)) : 0;
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
      const forward = setup.zero[axis][0]?.from === 'zero';
      const chain = setup.zero[axis].reduce((sum, link, i) => {
        const cause = link.name ?? `${setup.id} ${axis} ${i}`;
        const way = 'way' in link ? (link.way === '+' ? 1 : -1) * (forward ? 1 : -1) : 1;
        return sum + way * (half(link) + off(link) * draw(cause));
      }, 0);
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
