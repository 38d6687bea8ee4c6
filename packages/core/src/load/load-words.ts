import type { Doing } from '../cutting/doing.js';
import type { Metal } from '../cutting/material.js';
import type { BadFooting, PlaceFact } from './tool-place.js';
import type { Underneath } from './underneath.js';
import type { NoWay } from './way-off.js';

/** Codes of what there is to tell of a tool in its place, and how bad each is. */
export const LOAD_LEVELS = {
  'tool-enters-badly': 'danger',
  'tool-comes-into-void': 'danger',
  'plunges-on-center': 'danger',
  'cuts-to-center-unknown': 'check',
  'bores-without-hole': 'danger',
  'drill-grabs': 'check',
  'tool-meets-underneath': 'danger',
  'near-underneath': 'check',
} as const satisfies Record<string, 'danger' | 'check' | 'note'>;

/** A code of what there is to tell of a tool in its place. */
export type LoadCode = keyof typeof LOAD_LEVELS;

/** What there is to tell of a tool in its place. */
export interface LoadRemark {
  readonly level: (typeof LOAD_LEVELS)[LoadCode];
  readonly code: LoadCode;
  readonly message: string;
}

/** How things are named in sentences. */
export interface LoadNames {
  /** The tool, as at the start of a sentence: `Drill d8`. */
  readonly tool: string;
  /** The cut, within one: `cut eye`, `pass 2 of cut eye`. */
  readonly cut: string;
  /** A length with its unit. */
  readonly length: (value: number) => string;
  /** A thing that is in the way, by its id: `parallel p1`. */
  readonly thing: (id: string) => string;
}

function remark(code: LoadCode, message: string): LoadRemark {
  return { level: LOAD_LEVELS[code], code, message };
}

/** What to say of a fact of a tool in its place. */
export function placeRemark(fact: PlaceFact, names: LoadNames): LoadRemark {
  const { tool, cut, length } = names;
  switch (fact.kind) {
    case 'enters badly':
      return remark(
        'tool-enters-badly',
        `${tool} starts ${cut} ${footingWords(fact.footing, fact.away, names)}${depthWords(fact.atDepth, names)}. ${LED} Mill or bore it instead, or drill it before the edge is cut.`,
      );
    case 'comes into a void':
      return remark(
        'tool-comes-into-void',
        `${tool} comes into a void at a depth of ${length(fact.atDepth)} in ${cut}: from there on it stands ${footingWords(fact.footing, fact.away, names)}. ${LED} Drill it before that is cut, or mill or bore it.`,
      );
    case 'plunges on its center':
      return fact.known
        ? remark(
            'plunges-on-center',
            `${tool} does not cut to its centre, but goes straight down on metal in ${cut}${depthWords(fact.atDepth, names)}: what stands under its middle stops it, and it breaks or tears loose. Drill a hole there first, or take a tool that cuts to its centre.`,
          )
        : remark(
            'cuts-to-center-unknown',
            `${tool} goes straight down on metal in ${cut}${depthWords(fact.atDepth, names)}. Make sure that it cuts to its centre, and say so in the job; else drill a hole there first.`,
          );
    case 'bores without a hole':
      return remark(
        'bores-without-hole',
        `${tool} is set down on metal at its centre in ${cut}${depthWords(fact.atDepth, names)}: a boring bar cuts at its tip only and runs into what stands there. Drill or mill a hole first, wider than the bar.`,
      );
    case 'grabs':
      return remark('drill-grabs', grabWords(fact.metal, fact.opensOut, names));
  }
}

/** Why metal under a tool matters. */
const LED = 'Nothing leads it there: it is pushed aside, bends and can break or tear the part loose.';

function footingWords(footing: BadFooting, away: number, { length }: LoadNames): string {
  switch (footing) {
    case 'center in air':
      return `with its centre ${length(away)} off the metal`;
    case 'over an edge':
      return 'with a part of it over an edge';
    case 'over a hole':
      return 'with a hole under it that is not in its middle';
  }
}

/** Of what is so from the top on, no depth is said. */
function depthWords(atDepth: number, { length }: LoadNames): string {
  return atDepth === 0 ? '' : `, at a depth of ${length(atDepth)}`;
}

function grabWords(metal: Metal, opensOut: boolean, { tool, cut }: LoadNames): string {
  const when = opensOut
    ? 'all the more in a hole that is there already, and where it breaks through'
    : 'most where it breaks through';
  return `${tool} can grab in ${metal} in ${cut}, ${when}: it is drawn in and lifts or spins the part. Take a drill with flattened lips for it, feed gently, and clamp the part down against a stop.`;
}

/**
 * Why no way leads off a wall, and what to do, as sentences; the person is to know before the tool is down.
 * @param doing what the tool does; null where the job names no tool
 */
export function noWayWords(
  why: NoWay,
  doing: Doing | null,
  { length, thing }: Pick<LoadNames, 'length' | 'thing'>,
): string {
  const none = 'There is no way off the wall';
  switch (why.reason) {
    case 'walled in':
      return why.share === 1
        ? `${none}: it goes all the way round. ${liftWords(doing)}`
        : `${none}: from a depth of ${length(why.from)} to ${length(why.to)} it goes round by more than half a turn. ${liftWords(doing)}`;
    case 'core stands':
      return `${none}: a core stands inside of the cutter. ${liftWords(doing)}`;
    case 'no room':
      return `${none}: within ${length(why.within)} no place is ${length(why.clearance)} clear of all metal. ${liftWords(doing)}`;
    case 'keep-out': {
      const [is, it] = why.ids.length > 1 ? ['are', 'them'] : ['is', 'it'];
      return `${none}: ${listed(why.ids.map(thing))} ${is} in the way. Move ${it}, or do without. ${liftWords(doing)}`;
    }
  }
}

/** How a tool comes up along a wall. Common practice, no source. */
function liftWords(doing: Doing | null): string {
  switch (doing) {
    case 'drills':
    case 'rings':
    case 'plunges':
      return 'Lift it straight up while it turns.';
    case 'mills round':
      return 'Move the mill off the wall, towards the middle of the bore, before you lift it.';
    case 'bores':
    case 'mills along':
    case null:
      return 'Stop the spindle before you lift it straight up, or it marks the wall.';
  }
}

/** Names in a row. */
export function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** What to say of what lies under a tool that comes out below; null where all is well. */
export function underneathRemark(
  { below, over, margin }: Underneath,
  least: number,
  { tool, cut, length, thing }: LoadNames,
): LoadRemark | null {
  if (over === null || margin === null || margin >= least) return null;
  const out =
    below === 0
      ? `${tool} comes through in ${cut}`
      : `${tool} comes out ${length(below)} below the part in ${cut}`;
  if (margin <= 0) {
    const how = margin === 0 ? 'touches' : `goes ${length(-margin)} into`;
    return remark(
      'tool-meets-underneath',
      `${out} and ${how} ${thing(over)}. Move ${thing(over)}, or raise the part.`,
    );
  }
  return remark(
    'near-underneath',
    `${out}, ${length(margin)} over ${thing(over)}; the least is ${length(least)}. Move ${thing(over)}, or raise the part.`,
  );
}
