import { cutOfSource } from '../geometry/source.js';
import type { Caution, Finding, Report, ReportCut } from '../report/report-schema.js';

/** What cautions are made from. */
type Found = Pick<Report, 'cuts' | 'bodies' | 'findings'> & {
  readonly steps: readonly { readonly cut: string }[];
};

/** The caution that holds for all work. */
export const STANDING_CAUTION =
  "This is geometry, not permission. The machine's and the cutter's instructions, the rules where you work and the word of a qualified person come first.";

/**
 * The cautions that a report calls for, in the order of danger: first what can hit, then what burns and cuts, then what
 * goes wrong on the way. One of each kind, naming all that caused it; the standing one comes last. That partial rings
 * hold no slug and load the tool from one side is engineering judgement; the others agree with shop rule books
 * (docs/cutting-numbers.md).
 */
export function cautionsOf(report: Found): Caution[] {
  return [
    ...held(report),
    ...clear(report),
    ...unguarded(report),
    ...loose(report),
    ...hot(report),
    ...hanging(report),
    ...speed(report),
    ...oneSided(report),
    ...staying(report),
    ...feathers(report),
    ...sharp(report),
    ...measuring(report),
    { code: 'instructions-first', message: STANDING_CAUTION, about: [] },
  ];
}

function held(report: Found): Caution[] {
  return caution(
    'part-not-held',
    causes(report, ['grip-lost', 'held-place-cut-away', 'nothing-left']),
    'what holds the part is cut away, and it can come free on a turning cutter. Do not make the cut like that: clamp the part elsewhere, never hold it by hand, or cut in another order.',
  );
}

function clear(report: Found): Caution[] {
  return caution(
    'cutter-meets-clamp',
    causes(report, ['hits-jaw', 'hits-stop', 'hits-parallel', 'hits-clamp']),
    'the cutter runs into what holds the part. Do not start the spindle: clamp the part elsewhere, never hold it by hand, or move the cut.',
  );
}

/** Slugs that come loose in a cut that is open at the side. */
function unguarded(report: Found): Caution[] {
  const open = new Set(report.cuts.filter(({ relation }) => relation === 'breaks out').map(({ id }) => id));
  return caution(
    'slug-unguarded',
    slugs(report).flatMap(({ freedBy, names }) => (open.has(freedBy) ? names : [])),
    'the kerf is open at the side where the slug comes free: nothing keeps it in, and the cutter can throw it. Put a fixed guard on that side, stand clear of it, feed gently at the end.',
  );
}

function loose(report: Found): Caution[] {
  return caution(
    'offcut-loose',
    causes(report, ['loose-offcut']),
    'a piece comes free that nothing holds; the tool can catch and throw it. Clamp it as well, never hold it by hand, or change the cut so that it stays joined.',
  );
}

function hot(report: Found): Caution[] {
  return caution(
    'slug-hot',
    slugs(report).flatMap(({ names }) => names),
    'slug, cutter and part are hot, and the slug may be thrown. Keep out of its way; stop the spindle and let them cool before you touch them.',
  );
}

function hanging(report: Found): Caution[] {
  return caution(
    'slug-can-break-out',
    causes(report, ['hanging-body']),
    'it hangs by thin metal alone and can let go at any time, whatever the estimate of its force says. Clamp it before you work on, never hold it by hand, and stand clear.',
  );
}

function speed(report: Found): Caution[] {
  return caution(
    'speed-limit-unknown',
    causes(report, ['speed-limit-missing']),
    'the boring head runs out of balance, and no speed limit is given. Do not start it without the one of its maker.',
  );
}

function oneSided(report: Found): Caution[] {
  return caution(
    'one-sided-cut',
    causes(report, ['partial-hole']),
    'the tool cuts on one side only and in blows. Clamp against the push, never hold against it by hand; feed gently where teeth enter and leave.',
  );
}

/** A floor holds it for now; taking it off later means working on metal that comes loose. */
function staying(report: Found): Caution[] {
  return caution(
    'slug-stays',
    causes(report, ['held-slug']),
    'the slug stays on the metal under it, and lets go when that is cut or broken. Clamp the part and the slug before you take it off; never hold either by hand.',
  );
}

function feathers(report: Found): Caution[] {
  return caution(
    'feather-edges',
    causes(report, ['knife-edge']),
    'feather edges are left, which cut hands and break off as chips. Do not feel along them: with the spindle stopped and the part clamped, take them off with a file before you handle it.',
  );
}

/** Every cut that comes out through a face leaves a burr there. */
function sharp(report: Found): Caution[] {
  return caution(
    'sharp-break-through',
    report.cuts.flatMap(({ through, removedVolume, source }) =>
      through && removedVolume > 0 ? [source] : [],
    ),
    'sharp edges and burrs are left where it breaks through. With the spindle stopped, brush chips off, never with the hand; deburr before you handle the part.',
  );
}

/** What is measured between passes, or set to size by trial, tempts to reach in while the spindle turns. */
function measuring(report: Found): Caution[] {
  return caution(
    'stop-to-measure',
    report.cuts.flatMap((cut) => (isMeasured(cut) ? [cut.source] : [])),
    'it is measured on the way. Let the spindle stop fully before you measure, wipe or reach in.',
  );
}

function isMeasured({ passes, running }: ReportCut): boolean {
  return (passes?.list.length ?? 0) > 1 || running?.kind === 'boring head';
}

/** The slugs that come loose on the way: the cut that frees each, and its names. */
function slugs({ bodies, steps }: Found): readonly { freedBy: string; names: string[] }[] {
  return bodies.flatMap(({ role, step, pieces }) => {
    const cut = steps[step]?.cut;
    if (role !== 'slug' || cut === undefined) return [];
    return [{ freedBy: cut, names: [...pieces.map((id) => `piece:${id}`), `cut:${cut}`] }];
  });
}

/** Names in the findings with some codes. */
function causes({ findings }: Found, codes: readonly Finding['code'][]): string[] {
  return findings.filter(({ code }) => codes.includes(code)).flatMap(({ about }) => about);
}

/** No caution without a cause, which it begins with. */
function caution(code: Caution['code'], about: readonly string[], message: string): Caution[] {
  if (about.length === 0) return [];
  const names = [...new Set(about)];
  return [{ code, message: `${causeWords(names)}: ${message}`, about: names }];
}

/** Most cuts that a caution names; it has to be read at a glance. */
const NAMED = 3;

/** The cuts among names, for the start of a sentence: `Cuts a, b, c and 2 more`; `The cuts` if none is named. */
function causeWords(names: readonly string[]): string {
  const ids = names.map(cutOfSource).filter((id) => id !== null);
  if (ids.length === 0) return 'The cuts';
  if (ids.length === 1) return `Cut ${ids[0]}`;
  const shown = ids.length > NAMED ? [...ids.slice(0, NAMED), `${ids.length - NAMED} more`] : ids;
  return `Cuts ${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}
