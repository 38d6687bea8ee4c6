import { examine, parseJob, type Report } from '@edgebite/core';

type Plain = Record<string, unknown>;

/** An edge finder of 10 mm that touches a place of the part from below its coordinate. */
export const finder = (to: string, over: Plain = {}): Plain => ({
  kind: 'edge finder',
  from: 'zero',
  to,
  diameter: 10,
  way: '+',
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
