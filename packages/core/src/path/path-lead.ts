import { type ArcEdge, arcEdge, type Edge } from '../geometry/edge.js';
import type { NearEdges } from '../geometry/edge-gap.js';
import { EdgebiteError } from '../geometry/edgebite-error.js';
import { directionAtEnd, directionAtStart } from '../geometry/measure.js';
import { reversed } from '../geometry/parts.js';
import { moved, type Point, type Vector } from '../geometry/point.js';
import { shownNumber, shownPoint } from '../geometry/shown.js';

/**
 * How the tool comes to the outline and leaves it: on tangent arcs of a radius, on the largest that make sense
 * there, or not at all (straight down on the outline).
 */
export type Lead = number | 'largest' | 'none';

/** What the leads of a path have to heed. */
export interface LeadRoom {
  readonly outline: NearEdges;
  /** Least distance of the centre from the outline: tool radius and allowance. */
  readonly distance: number;
  readonly toolRadius: number;
  /** Whether the free side is the left of the direction of travel. */
  readonly freeLeft: boolean;
  readonly slack: number;
}

/** The leads of one pass. */
export interface Leads {
  readonly leadIn: ArcEdge;
  readonly leadOut: ArcEdge;
  /** How far the nearer of the two far ends comes away from the outline, beyond the distance of the path. */
  readonly away: number;
  /** Whether both are as large as asked for, or as makes sense. */
  readonly full: boolean;
}

/** Thrown where no lead fits; the message says which lead, where, and what would. */
export class LeadError extends EdgebiteError {
  override readonly name = 'LeadError';

  constructor(
    message: string,
    /** Where the lead would have met the path. */
    readonly at: Point,
  ) {
    super(message, { code: 'lead', place: shownPoint(at) });
  }
}

/** Turns of a lead arc that are tried, degrees: a quarter turn comes away square, less where there is no room. */
const TURNS = [90, 75, 60, 45, 30];

/** The largest lead that makes sense, in tool radii: a longer one only takes time. Common practice, no source. */
const LARGEST = 2;

/** Each radius tried is this share of the one before it. */
const STEP = 0.9;

/** So many radii are tried: down to about a fiftieth of the largest. */
const TRIED = 38;

/** A lead that comes away by less than this share of its radius rubs along the wall; it is none. */
const LEAST_AWAY = 0.05;

/**
 * The leads that fit at the start and the end of some cut; null where one of the two does not.
 */
export function leadsFor(cut: readonly Edge[], lead: number | 'largest', room: LeadRoom): Leads | null {
  const first = cut[0] as Edge;
  const last = cut[cut.length - 1] as Edge;
  const heading = directionAtStart(first);
  // A lead-in is a lead-out run backwards, with the free side on the other hand.
  const into = bestArc(first.a, { dx: -heading.dx, dy: -heading.dy }, !room.freeLeft, lead, room);
  const out = bestArc(last.b, directionAtEnd(last), room.freeLeft, lead, room);
  if (into === null || out === null) return null;
  const away = Math.min(into.away, out.away);
  const most = lead === 'largest' ? LARGEST * room.toolRadius : lead;
  return { leadIn: reversed(into.arc) as ArcEdge, leadOut: out.arc, away, full: away >= FULL * most };
}

/** Says that no lead fits at the start or the end of some cut. */
export function noLead(
  where: string,
  cut: readonly Edge[],
  lead: number | 'largest',
  room: LeadRoom,
): LeadError {
  const first = cut[0] as Edge;
  const last = cut[cut.length - 1] as Edge;
  const { dx, dy } = directionAtStart(first);
  const into = (size: number | 'largest') =>
    bestArc(first.a, { dx: -dx, dy: -dy }, !room.freeLeft, size, room);
  const out = (size: number | 'largest') => bestArc(last.b, directionAtEnd(last), room.freeLeft, size, room);
  const isIn = into(lead) === null;
  const at = isIn ? first.a : last.b;
  const fits = isIn ? into('largest') : out('largest');
  const which = isIn ? 'lead-in' : 'lead-out';
  const beside = (isIn ? first : last).source;
  const size = lead === 'largest' ? 'of any radius' : `of radius ${shownNumber(lead)}`;
  const advice =
    fits === null || lead === 'largest'
      ? 'start elsewhere, take a smaller tool, or go without leads'
      : `one of ${shownNumber(fits.arc.radius)} does; or start elsewhere`;
  return new LeadError(
    `${where}: no ${which} ${size} fits at ${shownPoint(at)}${beside === undefined ? '' : ` beside ${beside}`}: ${advice}`,
    at,
  );
}

/** A quarter turn from a straight wall comes away by the whole radius, but for rounding. */
const FULL = 1 - 1e-6;

interface Found {
  readonly arc: ArcEdge;
  readonly away: number;
}

function bestArc(
  from: Point,
  heading: Vector,
  toLeft: boolean,
  lead: number | 'largest',
  room: LeadRoom,
): Found | null {
  if (lead !== 'largest') {
    for (const turn of TURNS) {
      const found = tried(from, heading, toLeft, lead, turn, room);
      if (found !== null) return found;
    }
    return null;
  }
  let best: Found | null = null;
  let radius = LARGEST * room.toolRadius;
  for (let k = 0; k < TRIED; k++, radius *= STEP) {
    // No arc comes away further than its radius.
    if (best !== null && best.away >= radius) break;
    const found = tried(from, heading, toLeft, radius, 90, room);
    if (found !== null && (best === null || found.away > best.away)) best = found;
  }
  return best;
}

/** An arc that leaves the path, if it keeps its distance from the outline all along and comes away in the end. */
function tried(
  from: Point,
  heading: Vector,
  toLeft: boolean,
  radius: number,
  degrees: number,
  { outline, distance, slack }: LeadRoom,
): Found | null {
  const arc = arcFrom(from, heading, toLeft, radius, (degrees * Math.PI) / 180);
  const away = outline.distanceFrom(arc.b) - distance;
  if (!(away > Math.max(slack, LEAST_AWAY * radius))) return null;
  return outline.nearestTo(arc, distance - slack, slack) === null ? { arc, away } : null;
}

function arcFrom(from: Point, { dx, dy }: Vector, toLeft: boolean, radius: number, turn: number): ArcEdge {
  const side = toLeft ? 1 : -1;
  const inward = { dx: -dy * side, dy: dx * side };
  const center = moved(from, inward, radius);
  // Seen from the centre the start lies outward, and the arc turns towards the heading.
  const end = moved(moved(center, inward, -radius * Math.cos(turn)), { dx, dy }, radius * Math.sin(turn));
  return arcEdge(from, end, center, toLeft) as ArcEdge;
}
