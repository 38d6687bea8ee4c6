import { type Point, type Region, type Web, websOf } from '@edgebite/core';
import { extentOf, type Family, windingOf } from '@edgebite/core/testing';
import { Boundary, type SampledNeck, type Spot, type StripSeen } from './neck-sampler.js';
import { gap } from './sampler-edges.js';

/** What a comparison of one section came to. */
export interface WebCheck {
  readonly sampled: number;
  readonly reported: number;
  /** Largest differences, as shares of the extent. */
  readonly thickness: number;
  readonly strip: number;
  readonly flare: number;
  /** Flares that could be measured by walking the boundary. */
  readonly flares: number;
}

/** Differences that the sampler itself makes, as shares of the extent: golden sections stop at about 1e-8. */
const THICKNESS = 1e-9;
const PLACE = 1e-4;
const LENGTH = 1e-5;

/** How far from a foot discs are looked at, in thicknesses. */
const STEPS = Array.from({ length: 15 }, (_, k) => 10 ** (-7 + k / 2));

/** Thinner metal is left out: the sampler does not see what is nearer to a foot than a millionth of the extent. */
const THINNEST = 5e-6;

/**
 * Compares the webs of a section with those that sampling finds, both ways.
 * Throws Error with the first neck that only one of them has, or with a wrong length.
 */
export function checkWebs(section: Region, limit: number): WebCheck {
  const none = { sampled: 0, reported: 0, thickness: 0, strip: 0, flare: 0, flares: 0 };
  if (section.length === 0) return none;
  const boundary = new Boundary(section);
  const { extent } = boundary;
  const webs = websOf(section, limit);
  const necks = boundary.necks(limit, extent / 150);
  let check: WebCheck = { ...none, sampled: necks.length, reported: webs.length };
  for (const neck of necks) {
    if (neck.thickness < THINNEST * extent || Math.abs(neck.thickness - limit) < 1e-7 * extent) continue;
    const web = webs.find((one) => isSame(one, neck, extent));
    if (web === undefined)
      throw new Error(`missing: ${JSON.stringify(neck)}; reported are ${JSON.stringify(webs)}`);
    check = {
      ...check,
      thickness: Math.max(check.thickness, Math.abs(web.thickness - neck.thickness) / extent),
    };
  }
  for (const web of webs) {
    if (web.thickness < THINNEST * extent) continue;
    const { strip, flare, flares } = confirmed(boundary, web, webs, limit);
    check = {
      ...check,
      strip: Math.max(check.strip, strip),
      flare: Math.max(check.flare, flare),
      flares: check.flares + flares,
    };
  }
  return check;
}

function isSame(web: Web, neck: SampledNeck, extent: number): boolean {
  return (
    Math.abs(web.thickness - neck.thickness) <= THICKNESS * extent &&
    gap(web.at, neck.center) <= web.strip / 2 + PLACE * extent
  );
}

/** Looks at a reported web through the sampler: an empty disc, opposite ends, widening to both sides. */
function confirmed(
  boundary: Boundary,
  web: Web,
  webs: readonly Web[],
  limit: number,
): { strip: number; flare: number; flares: number } {
  const { extent } = boundary;
  const radius = web.thickness / 2;
  const say = (what: string) => new Error(`invented: ${what}: ${JSON.stringify(web)}`);
  if (Math.abs(gap(web.ends[0], web.ends[1]) - web.thickness) > 1e-9 * extent)
    throw say('ends not a diameter apart');
  for (const end of web.ends) {
    if (boundary.distance(end) > 4e-9 * extent) throw say('an end is not on the boundary');
    if (Math.abs(gap(end, web.at) - radius) > 1e-9 * extent) throw say('an end is not on the disc');
  }
  if (boundary.distance(web.at) < radius - 4e-9 * extent) throw say('boundary inside the disc');
  const spots = web.ends.map((end) => {
    const normal = { x: (web.at.x - end.x) / radius, y: (web.at.y - end.y) / radius };
    const spot = boundary.locate(end, normal);
    if (spot === null) throw say('no boundary faces that way there');
    return spot;
  }) as [Spot, Spot];
  for (const spot of spots) for (const way of [1, -1] as const) checkWidening(boundary, spot, way, web, say);
  if (!isMetal(boundary.region, web.at)) throw say('not in metal');
  const seen = boundary.stripAt(spots[0].chain, spots[0].t);
  // The sampler steps over a dent that is narrow and next to nothing deep; the dent is a web of its own.
  const dents = webs.filter(
    (one) =>
      one.strip === 0 &&
      Math.abs(one.thickness - web.thickness) < 1e-3 * web.thickness &&
      gap(one.at, web.at) < seen.length,
  );
  if (web.strip > 0 && dents.length > 0) return { strip: 0, flare: 0, flares: 0 };
  const strip = web.strip > 0 ? Math.abs(seen.length - web.strip) / extent : 0;
  if (strip > LENGTH) throw new Error(`strip of ${seen.length}: ${JSON.stringify(web)}`);
  const from = web.strip > 0 ? seen : { length: 0, looped: false, back: web.at, ahead: web.at };
  return { strip, ...flareOf(boundary, spots, from, web, limit) };
}

function isMetal(region: Region, p: Point): boolean {
  return region.some(
    ({ outer, holes }) => windingOf(outer, p) !== 0 && holes.every((hole) => windingOf(hole, p) === 0),
  );
}

/** From the foot on, discs get no smaller; at a neck the first that differs is larger. */
function checkWidening(
  boundary: Boundary,
  { chain, t }: Spot,
  way: 1 | -1,
  web: Web,
  say: (what: string) => Error,
): void {
  const noise = 2 * boundary.rounding;
  for (const share of STEPS) {
    const to = boundary.onward(chain, t, way * share * web.thickness);
    if (to === null) return;
    const growth = boundary.blown(chain, to).radius - web.thickness / 2;
    if (growth > noise) return;
    if (growth < -noise && web.strip === 0) throw say(`thinner by ${-growth} at ${way * share}`);
  }
}

/**
 * Checks the length where it can be told by walking: on each side of the web along the one wall and along the other,
 * to the first disc as thick as the limit, without coming to a tip. Where the metal parts the nearer one counts.
 */
function flareOf(
  boundary: Boundary,
  [one, other]: [Spot, Spot],
  from: StripSeen,
  web: Web,
  limit: number,
): { flare: number; flares: number } {
  // At a limit that the web only just stays under, any rounding ends it.
  if (limit - web.thickness < 1e-6 * boundary.extent) return { flare: 0, flares: 0 };
  let length = from.length;
  for (const way of from.looped ? [] : ([1, -1] as const)) {
    const p = boundary.reachOf(one, limit / 2, way, other);
    const q = boundary.reachOf(other, limit / 2, -way as 1 | -1, one);
    if (p === null || q === null) return { flare: 0, flares: 0 };
    const end = way > 0 ? from.ahead : from.back;
    length += Math.min(gap(p, end), gap(q, end));
  }
  const flare = Math.abs(length - web.length) / boundary.extent;
  if (flare > LENGTH) throw new Error(`length of ${length}: ${JSON.stringify(web)}`);
  return { flare, flares: 1 };
}

/**
 * Families with gaps that the sampler steps over: at the weld tolerance, or dents a thousandth of a wall's length
 * wide.
 */
export function isTooFine({ name, marginal }: Pick<Family, 'name' | 'marginal'>): boolean {
  return marginal || name.startsWith('near-tangent') || name.startsWith('near-coincident');
}

/** Whether a section lies so far from the origin that its rounding shows in the sampler's discs. */
export function isFar(region: Region): boolean {
  const { a } = (region[0] as Region[number]).outer[0] as Region[number]['outer'][number];
  return Math.hypot(a.x, a.y) > 1e3 * extentOf(region);
}
