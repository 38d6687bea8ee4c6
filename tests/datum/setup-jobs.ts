import { examine, parseJob, type Report } from '@edgebite/core';

type Plain = Record<string, unknown>;

/** A tip of 10 mm that touches a face of the part, or a stop, and the readout set to 0. */
export const finder = (touch: string, over: Plain = {}): Plain => ({
  touch,
  tip: 10,
  reads: 0,
  tolerance: 0.02,
  ...over,
});

/** A setup with both zeros 5 outside of the left and the front face. */
export const setup = (cuts: readonly string[], over: Plain = {}): Plain => ({
  id: 's',
  zero: { x: [finder('left')], y: [finder('front')] },
  cuts,
  ...over,
});

export const bore = (
  id: string,
  center: readonly [number, number],
  diameter: number,
  over: Plain = {},
): Plain => ({
  id,
  kind: 'bore',
  center,
  diameter,
  ...over,
});

/** The report on a plate 80 by 40 and 10 thick, at (0, 0). */
export function reportOn(cuts: readonly Plain[], setups: readonly Plain[] | null, over: Plain = {}): Report {
  return examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 40] }, thickness: 10 },
      limits: { web: 1.5, knifeEdge: 30 },
      cuts,
      ...(setups === null ? {} : { setups }),
      ...over,
    }),
  );
}

export const codes = ({ findings }: Report): string[] => findings.map(({ code }) => code);

export const messageOf = ({ findings }: Report, code: string): string | undefined =>
  findings.find((finding) => finding.code === code)?.message;
