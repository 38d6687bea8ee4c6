import type { Report } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { ALL_JOBS, reportOf } from './corpus.js';
import { INCH, inBothUnits } from './other-unit.js';

/*
 * One job written in mm and in inches is one part: every figure of the one report is that of the other, turned into its
 * unit. What a person set or reads on the readout keeps its own unit and stays the same number.
 */

/** Pound of 0.45359237 kg (1959 agreement), standard gravity of 9.80665 (CGPM 1901); both from memory. */
const GRAMS = 453.59237;
const NEWTONS = 0.45359237 * 9.80665;

/** What one of the unit for an inch job is in that for a job in mm; by the path of a figure, the first that fits. */
const UNITS: readonly (readonly [where: RegExp, factor: number])[] = [
  // Numbers that have no unit, or that of the readout, the actions of a zero, or the machine.
  [/^\/edgebite|^\/(batch|bodies|merges).*\/(step|endStep)$/, 1],
  [/\/(slab|horns|findings|pins|point|run|pass|passes|holes|teeth|action)(\[\])?$/, 1],
  [/\/(angle|angles|degrees|drawn|pushDrawn|approach|turn|angleTolerance|knifeEdge)(\[\])?$/, 1],
  [/\/(includedAngle|horn|direction|start|sweep|spans\[\])(\[\])?$/, 1],
  [/knifeEdges\[\]\/interval/, 1],
  [/\/(share|sideLoad|sideLoad\/size|strikes|entries|bites|unevenness|minutes|set|spindle|into)(\[\])?$/, 1],
  [/\/(readout|rounding|exact|roundingError)(\[\])?$|\/line\/readout/, 1],
  [/\/targets\[\](\/depth)?\/(worst|rss)/, 1],
  [/\/arc\/(center|exact)/, 1],
  [/zero\/[xyz]\/|\/readout\/|\/heights\/resolution|\/batch\[\]|checks\[\]\/ways\[\]\/by/, 1],
  // A bore of one square unit, a volume, a weight and the rest.
  [/[aA]rea$/, INCH ** 2],
  [/[vV]olume$|\/volumes\//, INCH ** 3],
  [/mass$/, GRAMS],
  [/force\[\]$/, NEWTONS],
  // N m and lbf in.
  [/moment\[\]$/, (NEWTONS * INCH) / 1000],
  // m/min and ft/min.
  [/surfaceSpeed\[\]$/, (12 * INCH) / 1000],
  [/./, INCH],
];

/**
 * Ways to measure at heights and over pins that are whole numbers of a unit differ. Of places that are alike rounding
 * decides which comes first: the two of one largest bite, corners that a tool does not reach.
 */
const LEFT_OUT =
  /^\/checks\[\]\/(ways|trial|pairs|refused)|\/list\[\]\/bite\/(at|angle)|\/unreached\[\]\/(at|region)|^\/findings\[\]\/at/;

const CLOSE = 1e-8;

/** Webs of one thickness in several slabs come in the order that rounding gives them. */
const bySlab = (report: Report): Report => ({
  ...report,
  webs: [...report.webs].sort((one, other) => one.slab - other.slab || one.thickness - other.thickness),
});

/** Without a setup there is no zero: "readout" numbers are those of the drawing, in the unit of the job. */
const AS_DRAWN = /^\/(steps|bodies).*\/(readout|rounding|exact|roundingError|worst|rss|center)(\[\])*$/;

/** Where two reports differ by more than their units. */
function differences(mm: unknown, inch: unknown, path: string, found: string[], asDrawn = false): string[] {
  if (LEFT_OUT.test(path)) return found;
  if (typeof mm === 'number' && typeof inch === 'number') {
    const factor =
      asDrawn && AS_DRAWN.test(path) ? INCH : (UNITS.find(([where]) => where.test(path))?.[1] as number);
    const off = mm - inch * factor;
    const isTurn =
      /direction|degrees|[aA]ngle|drawn|Drawn/.test(path) && Math.abs(Math.abs(off) - 360) < 1e-6;
    if (!(Math.abs(off) <= CLOSE * Math.max(1, Math.abs(mm))) && !isTurn) {
      found.push(`${path}: ${mm} mm, ${inch} inch`);
    }
  } else if (Array.isArray(mm) && Array.isArray(inch)) {
    if (mm.length !== inch.length) found.push(`${path}: ${mm.length} in mm, ${inch.length} in inches`);
    else for (const [k, one] of mm.entries()) differences(one, inch[k], `${path}[]`, found, asDrawn);
  } else if (typeof mm === 'object' && typeof inch === 'object' && mm !== null && inch !== null) {
    // A cut that is in no setup, beside others that are.
    const isDrawn = asDrawn || ('setup' in mm && String(mm.setup).startsWith('as drawn'));
    for (const [key, one] of Object.entries(mm)) {
      differences(one, (inch as Record<string, unknown>)[key], `${path}/${key}`, found, isDrawn);
    }
  } else if (typeof mm !== typeof inch || (mm === null) !== (inch === null)) {
    found.push(`${path}: ${mm} in mm, ${inch} in inches`);
  }
  return found;
}

/** Numbers within the text of a drawing are not turned. */
const jobs = ALL_JOBS.filter(({ document }) => !JSON.stringify(document).includes('svgPath'));

describe('a job in the other unit', () => {
  it.each(jobs.map(({ name, document }) => [name, document] as const))(
    '%s has the same figures',
    (_, document) => {
      const { own, other } = inBothUnits(document);
      const reports = [own, other].map((one) => bySlab(reportOf(one)));
      if (document.units === 'inch') reports.reverse();
      const [mm, inch] = reports;
      expect(differences(mm, inch, '', [], document.setups === undefined)).toEqual([]);
      expect(mm?.units).toBe('mm');
      expect(inch?.units).toBe('inch');
      expect(mm?.findings.map(({ code }) => code)).toEqual(inch?.findings.map(({ code }) => code));
    },
  );

  it('is seen to differ where a figure does not turn', () => {
    expect(differences({ area: INCH ** 2, depth: INCH }, { area: 1, depth: 1 }, '', [])).toEqual([]);
    expect(differences({ area: INCH, depth: INCH }, { area: 1, depth: 1.001 }, '', [])).toHaveLength(2);
  });
});
