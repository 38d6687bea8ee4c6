import { generalTolerance } from '../datum/general-tolerance.js';
import { inUnit } from '../datum/length-unit.js';
import { pointToJson } from '../format/json.js';
import { DEGREE } from '../geometry/angle.js';
import type { Job } from '../job/job.js';
import { type Check, checksIn, type Taken } from '../measure/checks.js';
import type { Seat } from '../measure/seat.js';
import { type Circle, insideOf, readingOf, slopesOf, type Way } from '../measure/way.js';
import type { Report, ReportCheck, ReportWay } from '../report/report-schema.js';
import { lengthWords, sourceText } from '../report/words.js';
import type { Result } from '../step/result.js';
import { trialRow } from './trial-row.js';

/** How to measure each hollow arc that a cut leaves in the kept piece, in the order of the cuts. */
export function checksOf({ job, left }: Pick<Result, 'job' | 'left'>): Check[] {
  const kept = left.pieces.pieces.find(({ role }) => role === 'kept');
  const numberOf = new Map(job.cuts.map(({ id }, k) => [id, k]));
  return checksIn(kept?.sections ?? [], job.gauges).sort(
    (a, b) => (numberOf.get(a.seat.cut) as number) - (numberOf.get(b.seat.cut) as number),
  );
}

/** Writes down how to measure each hollow arc. */
export function checkRows(result: Result): Report['checks'] {
  return checksOf(result).map((check) => checkRow(result, check));
}

/** The row of one arc. */
export function checkRow({ job, set }: Pick<Result, 'job' | 'set'>, check: Check): ReportCheck {
  const { seat, from, to, pairs, refused, ways } = check;
  return {
    cut: seat.cut,
    from,
    to,
    center: pointToJson(seat.center),
    radius: seat.radius,
    spans: seat.spans.map((span) => [span.from / DEGREE, span.to / DEGREE]),
    pairs: pairs === null ? null : [pairs[0], pairs[1]],
    refused: refused.map((one) => ({ ...one, words: refusedWords(one, job) })),
    ways: ways.map((way) => wayRow(job, set.names, seat, way)),
    trial: trialRow(job, set.lays, check),
  };
}

/** Why pins do not serve, for people. */
function refusedWords({ pin, pins, why }: Check['refused'][number], { units }: Job): string {
  const size = lengthWords(pin, units);
  const what = pins === 1 ? `A pin of ${size}` : `Two pins of ${size} side by side`;
  const [is, lie] = pins === 1 ? ['is', 'lies'] : ['are', 'lie'];
  switch (why) {
    case 'too large':
      return `${what} ${is} too large: once the bore is under size, ${pins === 1 ? 'it' : 'they'} would lie on its horns or not go in.`;
    case 'too small':
      return `${what} ${is} too small: ${pins === 1 ? 'it tells' : 'they tell'} no more than one pin does.`;
    case 'touches a horn':
      return `${what} ${pins === 1 ? 'touches' : 'touch'} the horns once the bore is under size: burrs and broken edges falsify the reading.`;
    case 'off the arc':
      return `${what} ${lie} beside the arc: there is none in the direction in which it is read.`;
  }
}

function wayRow(
  job: Job,
  names: Result['set']['names'],
  seat: Seat,
  { way, from, to, reading, byRadius, byPlace, horns }: Taken,
): ReportWay {
  return {
    kind: way.kind,
    words: `${wayWords(way, job.units, names)}${touchWords(way, from, job)}`,
    face:
      'face' in way
        ? {
            source: way.face.source,
            at: pointToJson(way.face.at),
            into: [way.face.into.dx + 0, way.face.into.dy + 0],
          }
        : null,
    cut: way.kind === 'wall' ? way.cut : null,
    round: way.kind === 'round' ? way.source : null,
    pin: 'pin' in way ? way.pin : null,
    ball: 'pin' in way && way.ball === true,
    pins: 'pins' in way ? way.pins : null,
    under: way.kind === 'opening' ? way.under : null,
    along: way.kind === 'across' ? [way.along.dx + 0, way.along.dy + 0] : null,
    chord: way.kind === 'height' ? way.chord : null,
    from,
    to,
    reading,
    allowed: allowedOf(job, seat, way),
    byRadius,
    byPlace,
    horn: horns === null ? null : Math.min(...horns) / DEGREE,
  };
}

/** How high balls touch the arc; nothing of other ways. */
function touchWords(way: Way, height: number, { units }: Job): string {
  if (!('pin' in way) || way.ball !== true) return '';
  return `, ${way.pins === 1 ? 'touching' : 'both touching'} ${lengthWords(height, units)} over the bottom`;
}

/** What to measure, for people. */
function wayWords(way: Way, units: Job['units'], names: Result['set']['names']): string {
  const length = (value: number) => lengthWords(value, units);
  const pins = (one: Extract<Way, { pin: number }>) => {
    const name = one.ball === true ? 'ball' : 'pin';
    return one.pins === 1
      ? `a ${name} of ${length(one.pin)}`
      : `two ${name}s of ${length(one.pin)} side by side`;
  };
  switch (way.kind) {
    case 'depth':
      return `from ${sourceText(way.face.source, names)} down to the deepest place of the arc`;
    case 'left':
      return `what is left between the arc and ${sourceText(way.face.source, names)}`;
    case 'to pins':
      return `from ${sourceText(way.face.source, names)} down to ${pins(way)} in the arc`;
    case 'pins out':
      return `how far ${pins(way)} in the arc ${way.pins === 1 ? 'stands' : 'stand'} out of ${sourceText(way.face.source, names)}`;
    case 'over pins':
      return `over ${pins(way)} in the arc to ${sourceText(way.face.source, names)}`;
    case 'opening':
      return way.under === 0
        ? `across the opening from horn to horn, on ${sourceText(way.face.source, names)}`
        : `across the arc, ${length(way.under)} under ${sourceText(way.face.source, names)}`;
    case 'across':
      return 'across the arc at its widest, which is its diameter';
    case 'height':
      return `how deep the arc is in the middle of a chord of ${length(way.chord)}`;
    case 'round':
      return `what is left between the arc and the round of ${sourceText(way.source, names)}, straight through both middles`;
    case 'wall':
      return `the wall to cut ${way.cut}`;
  }
}

/** What a way may read with radius and place each at an end of what the drawing allows; null where it says nothing. */
function allowedOf(job: Job, seat: Circle & Pick<Seat, 'cut'>, way: Way): ReportWay['allowed'] {
  const own = job.plain.cuts.find(({ id }) => id === seat.cut)?.drawing;
  const { place } = slopesOf(way, seat);
  const steep = Math.hypot(place.dx, place.dy);
  const radius = own?.radius ?? generalFor(job, seat.radius);
  const by = steep === 0 ? 0 : (own?.place ?? generalFor(job, distanceOf(way, seat)));
  if (radius === null || by === null) return null;
  const ends = [-1, 1].flatMap((r) =>
    [-1, 1].map((p) => {
      const move = steep === 0 ? 0 : (p * by) / steep;
      const center = { x: seat.center.x + move * place.dx, y: seat.center.y + move * place.dy };
      return readingOf(way, { center, radius: seat.radius + r * radius });
    }),
  );
  return ends.every(Number.isFinite) ? [Math.min(...ends), Math.max(...ends)] : null;
}

/** The length that places the centre: to the face, or to the centre of the other arc. */
function distanceOf(way: Way, { center }: Circle): number {
  if (way.kind === 'wall' || way.kind === 'round')
    return Math.hypot(way.center.x - center.x, way.center.y - center.y);
  if (way.kind === 'height' || way.kind === 'across') return 0;
  return Math.abs(insideOf(way.face, center));
}

function generalFor({ tolerances, units }: Job, length: number): number | null {
  if (tolerances === null) return null;
  const mm = generalTolerance(inUnit(length, units, 'mm'), tolerances);
  return mm === null ? null : inUnit(mm, 'mm', units);
}
