import type { Point, Vector } from '../geometry/point.js';
import type { Fit } from './fit.js';
import type { Span } from './seat.js';
import type { Circle } from './way.js';

/** The dial of a boring head. */
export interface Dial {
  /** One graduation, in the unit of the part. */
  readonly step: number;
  /** Whether a graduation changes the diameter of the bore, or its radius. */
  readonly on: 'diameter' | 'radius';
}

/** The change of the radius of the bore for one graduation. */
export function radiusStep({ step, on }: Dial): number {
  return on === 'diameter' ? step / 2 : step;
}

/** The correction of a head and a centre after measuring. */
export interface Correction {
  /** Whole graduations to open the head by; 0 where it is on size; null where the radius is not known. */
  readonly graduations: number | null;
  /** What the dial goes on by. */
  readonly turn: number | null;
  /** Between what the radius then is short of the drawn one; below 0 where it is over. */
  readonly short: readonly [number, number] | null;
  /** How far to move the centre, in the drawing; 0 along an axis of which the readings say nothing. */
  readonly move: Vector;
  /** How far the arc already is past the drawn one, at the least, and where; null where it is not for certain. */
  readonly past: { readonly by: number; readonly at: Point } | null;
  readonly state: 'cut on' | 'on size' | 'over size' | 'radius not known';
}

/** Rounding of a quotient counts as nothing. */
const SLACK = 1e-9;

/**
 * The graduations to open a head by and the move of the centre, so that the next cut comes nearer to the drawn arc
 * and never past its radius: the head is opened by whole graduations, by no more than remains if the bore is as wide
 * as the readings allow. Lengths in the unit of the part.
 * @param drawn the arc as it is to be
 * @param spans where the arc is, as seen from its centre
 * @throws RangeError if the graduation is not a finite number over 0.
 */
export function correctionOf(drawn: Circle, spans: readonly Span[], fit: Fit, dial: Dial): Correction {
  if (!(dial.step > 0 && Number.isFinite(dial.step)))
    throw new RangeError(`correctionOf: a graduation is over 0, not ${dial.step}`);
  const { center, radius } = fit;
  const move = {
    dx: fit.x === null ? 0 : drawn.center.x - center.x + 0,
    dy: fit.y === null ? 0 : drawn.center.y - center.y + 0,
  };
  if (radius === null)
    return { graduations: null, turn: null, short: null, move, past: null, state: 'radius not known' };
  const [low, high] = radius.worst;
  const each = radiusStep(dial);
  const graduations = Math.max(0, Math.floor((drawn.radius - high) / each + SLACK));
  const by = graduations * each;
  return {
    graduations,
    turn: graduations * dial.step,
    short: [drawn.radius - high - by, drawn.radius - low - by],
    move,
    past: pastOf(drawn, spans, fit, radius.value - low),
    state: graduations > 0 ? 'cut on' : low > drawn.radius ? 'over size' : 'on size',
  };
}

/** The place of the measured arc that is furthest past the drawn one. */
function pastOf(drawn: Circle, spans: readonly Span[], fit: Fit, slack: number): Correction['past'] {
  const { center } = fit;
  const radius = fit.radius?.value ?? drawn.radius;
  const off = Math.atan2(center.y - drawn.center.y, center.x - drawn.center.x);
  const uncertain = slack + halfOf(fit.x) + halfOf(fit.y);
  const angles = spans.flatMap(({ from, to }) => {
    const turned = off + 2 * Math.PI * Math.ceil((from - off) / (2 * Math.PI));
    return turned <= to ? [from, to, turned] : [from, to];
  });
  let past: Correction['past'] = null;
  for (const angle of angles) {
    const at = { x: center.x + radius * Math.cos(angle), y: center.y + radius * Math.sin(angle) };
    const by = Math.hypot(at.x - drawn.center.x, at.y - drawn.center.y) - drawn.radius - uncertain;
    if (by > 0 && (past === null || by > past.by)) past = { by, at };
  }
  return past;
}

function halfOf(estimate: Fit['x']): number {
  return estimate === null ? 0 : (estimate.worst[1] - estimate.worst[0]) / 2;
}
