import {
  type Check,
  count,
  flag,
  type Kind,
  type Kinds,
  must,
  number,
  ROLES,
  text,
  UNITS,
  wholeReport,
} from '@edgebite/core/door';
import { FRAMES_WIDTHS } from '../pen/frames.js';
import { COLOUR, THEME_NAMES, THEMES } from '../pen/theme.js';
import { RANGE_WIDTHS } from '../range/range-strip.js';
import { SHEET_SIZES } from '../sheet/sheet.js';

/* What arguments of the public functions must be. */

const list: Kind = { listOf: () => null };
/** How many pieces there are of each role. */
const counts: Kind = { has: Object.fromEntries(ROLES.map((role) => [role, count])) };

export const units: Kind = UNITS;

/** A report, as far as a drawing of it goes by it. */
export const report: Check = wholeReport;

/** What `rangeOf` gives. */
export const range: Kind = {
  has: {
    cut: text,
    along: ['x', 'y', 'diameter'],
    units: UNITS,
    from: number,
    to: number,
    now: number,
    intervals: list,
    events: list,
  },
};

/** A number from a least to a most. */
export function between(least: number, most: number, of = ''): Check {
  return (value) =>
    typeof value === 'number' && value >= least && value <= most
      ? null
      : must(value, `be from ${least} to ${most}${of}`);
}

/** What an id may start with, so that references to it need no quoting. */
const ID_PREFIX = /^[A-Za-z][A-Za-z0-9_-]*$/;

export const idPrefix: Check = (value) =>
  typeof value === 'string' && ID_PREFIX.test(value)
    ? null
    : must(value, 'be a letter, then letters, digits, - or _');

/** A side of a picture for a screen. */
const side = between(40, 2000);

export const size: Check = (value) => {
  const sides = Array.isArray(value) && value.length === 2 ? value : null;
  return sides?.every((one) => side(one) === null)
    ? null
    : {
        ...must(value, 'be a width and a height'),
        what: `is ${shownSize(value)}; each side must be from 40 to 2000`,
      };
};

function shownSize(value: unknown): string {
  return Array.isArray(value) ? value.map(String).join(' by ') : String(value);
}

/** A theme that is ready, or the colours of one. */
export const theme: Check = (value) => {
  if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
    for (const key of Object.keys(THEMES.light)) {
      const colour = (value as Readonly<Record<string, unknown>>)[key];
      if (typeof colour === 'string' && COLOUR.test(colour)) continue;
      return { ...must(colour, 'be #rgb, #rrggbb, a name or var(--name)'), at: `.${key}` };
    }
    return null;
  }
  const isName = THEME_NAMES.includes(value as (typeof THEME_NAMES)[number]);
  return isName ? null : must(value, `be one of ${THEME_NAMES.join(', ')}, or the colours of a theme`);
};

const look: Kinds = { theme: { maybe: theme }, idPrefix: { maybe: idPrefix } };

export const drawOptions: Kind = {
  maybe: {
    only: { ...look, sheet: { maybe: SHEET_SIZES }, upright: { maybe: flag }, range: { maybe: range } },
  },
};

export const viewOptions: Kind = {
  maybe: { only: { ...look, size: { maybe: size }, dimensions: { maybe: flag }, labels: { maybe: flag } } },
};

export const stepOptions: Kind = { maybe: { only: { ...look, size: { maybe: size } } } };

export const zeroOptions: Kind = {
  maybe: { only: { ...look, setup: { maybe: text }, width: { maybe: between(...FRAMES_WIDTHS, ' mm') } } },
};

export const checkOptions: Kind = {
  maybe: {
    only: { ...look, ways: { maybe: { listOf: count } }, width: { maybe: between(...FRAMES_WIDTHS, ' mm') } },
  },
};

export const rangeOptions: Kind = {
  maybe: { only: { idPrefix: { maybe: idPrefix }, width: { maybe: between(...RANGE_WIDTHS, ' mm') } } },
};

/** Names that a job gives to edges. */
export const names: Kind = { maybe: { listOf: { has: { of: text, name: text } } } };

/** Indexes of slabs. */
export const slabs: Kind = { listOf: count };

export const interval: Kind = { has: { outcome: { has: { relation: text, pieces: counts } }, adds: list } };

export const changes: Kind = {
  listOf: { has: { what: ['relation', 'pieces', 'web', 'knife edge', 'finding'] } },
};

export const link: Kind = {
  has: {
    kind: ['touch', 'dial in', 'set', 'move', 'block', 'measured', 'bears'],
    of: { orNull: text },
    name: { orNull: text },
    side: { orNull: ['left', 'right', 'front', 'back'] },
    length: { orNull: number },
    units: UNITS,
  },
};

export const scale: Kind = { has: { words: ['the readout', 'the quill'], resolution: number } };

const zero: Kind = { has: { links: list } };

export const setup: Kind = {
  has: {
    zero: { has: { x: zero, y: zero, z: { orNull: zero } } },
    readout: { has: { resolution: number } },
    heights: { has: { on: ['readout', 'quill'], resolution: number } },
  },
};

export const findings: Kind = { has: { findings: list } };

export const along: Kind = { has: { along: ['x', 'y', 'diameter'] } };

/** As many as a number can be told to (ECMAScript, Number.prototype.toFixed). */
export const decimals: Check = (value) =>
  Number.isSafeInteger(value) ? between(0, 100)(value) : must(value, 'be a whole number from 0 to 100');

export const slabbed: Kind = {
  has: { slabs: { listOf: { has: { from: number, to: number } } }, thickness: number, units: UNITS },
};

export const deep: Kind = { has: { through: flag, depth: number, from: ['top', 'bottom'] } };

export const roles: Kind = ROLES;
