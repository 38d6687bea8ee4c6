import { knifeMarks, type Report, webMarks } from '@edgebite/core';
import type { Fills } from '../pen/fills.js';
import { arrowhead } from '../pen/label.js';
import { lined, NARROW, tinted } from '../pen/lines.js';
import type { SvgNode } from '../pen/node.js';
import { millimetres, toMicron } from '../pen/numbers.js';
import type { Pen } from '../pen/pen.js';
import { fitted, TYPE, textWidth, write } from '../pen/text.js';
import type { Place } from '../view/edges.js';
import { INK, type Room } from '../view/room.js';
import { factorOf, largestScale, type Scale, scaleText } from '../view/scale.js';
import { boundsOfRegion } from '../view/scan.js';
import { type Box, onSheet, type View } from '../view/view.js';
import { directionAt } from './directions.js';
import { drawMetal } from './metal.js';
import { drawNeck, knifeLines, webLines } from './pointers.js';

/** A web that is at least so thick on the sheet, mm, can be read without a detail; and so can a feather this long. */
const READABLE = { web: 2.2, feather: 12 } as const;

/** How thick a web becomes in a detail, and how long a feather, at most, as shares of the circle. */
const ENLARGED = { web: 0.2, feather: 0.4 } as const;

/** Diameters of the circle that are tried, the widest lines under it, and from one to the next, mm. */
const DIAMETERS = [30, 25, 20];
const CAPTION = 33;
const LINE = 3.4;

/** The largest scale of a detail. */
const LARGEST = 50;

/** A detail must be so many times as large as the plan, or it would show nothing new. */
const LEAST_GAIN = 2;

/** About how many times as large a tip is shown that is too long to be shown whole. */
const TIP_GAIN = 6;

/** Something that the plan hides by its smallness, and the scale at which it shows. */
interface Subject {
  readonly id: string;
  readonly about: string;
  readonly at: Place;
  readonly lines: readonly string[];
  readonly scale: (diameter: number) => Scale;
  readonly draw: (group: SvgNode, view: View) => void;
}

/**
 * Draws circles that enlarge the worst webs and tips, at most so many, in clear room nearest to them; each with its
 * mark, its scale of ISO 5455 and its measure, and a ring on the plan about what it shows.
 */
export function drawDetails(
  parent: SvgNode,
  report: Report,
  view: View,
  most: number,
  rooms: readonly Room[],
  pen: Pen,
  fills: Fills,
): void {
  const group = parent.group().attr({ id: `${pen.prefix}details`, role: 'group', 'aria-label': 'Details' });
  for (const subject of subjectsOf(report, view).slice(0, most)) {
    const found = spotFor(subject, onSheet(view, subject.at), rooms);
    if (found === null) continue;
    drawDetail(group, report, subject, view, found.diameter, found.box, pen, fills);
    const [x, y] = onSheet(view, subject.at);
    const ring = ringOf(subject, found.diameter, report, view) / 2;
    rooms[0]?.markBox({ x: x - ring, y: y - ring, width: 2 * ring, height: 2 * ring }, INK.line);
  }
}

/** Diameter on the sheet of the ring about what a detail shows. */
function ringOf({ scale }: Subject, diameter: number, report: Report, view: View): number {
  const factor = factorOf(scale(diameter)) * millimetres(report.units);
  return Math.max((diameter * view.factor) / factor, 2.4);
}

/** Room for a detail, the largest circle first, in the first of the rooms that has it. */
function spotFor(
  { id, lines }: Subject,
  at: Place,
  rooms: readonly Room[],
): { readonly diameter: number; readonly box: Box } | null {
  const head = textWidth(`50:1 · ${id}`, TYPE.small, true);
  const caption = Math.min(Math.max(head, ...lines.map((line) => textWidth(line, TYPE.small))), CAPTION);
  const under = LINE * (lines.length + 1) + 1.4;
  for (const diameter of DIAMETERS) {
    for (const room of rooms) {
      const width = Math.max(diameter, caption) + 3;
      const box = room.clearing(at, width, diameter + under + 3);
      if (box === null) continue;
      room.markBox(box, INK.taken);
      return { diameter, box };
    }
  }
  return null;
}

function subjectsOf(report: Report, view: View): readonly Subject[] {
  const millimetre = millimetres(report.units);
  const gains = ({ scale }: Subject): boolean =>
    factorOf(scale(DIAMETERS[DIAMETERS.length - 1] as number)) * millimetre >= LEAST_GAIN * view.factor;
  const webs = webMarks(report)
    .filter(({ web }) => web.thickness * view.factor < READABLE.web)
    .map(
      ({ id, web, members }): Subject => ({
        id,
        about: `web:${members[0]}`,
        at: web.at,
        lines: webLines(web, report),
        scale: (diameter) =>
          largestScale((f) => web.thickness * f * millimetre <= ENLARGED.web * diameter && f <= LARGEST),
        draw: (group, own) => drawNeck(group, onSheet(own, web.ends[0]), onSheet(own, web.ends[1])),
      }),
    );
  const knives = knifeMarks(report)
    .filter(({ knifeEdge }) => (knifeEdge.feather ?? report.limits.web) * view.factor < READABLE.feather)
    .map(({ id, knifeEdge, members }): Subject => {
      const long = Math.max(knifeEdge.feather ?? report.limits.web, report.resolution);
      return {
        id,
        about: `knifeEdge:${members[0]}`,
        at: knifeEdge.at,
        lines: knifeLines(report, knifeEdge),
        scale: (diameter) => {
          const whole = largestScale(
            (f) => long * f * millimetre <= ENLARGED.feather * diameter && f <= LARGEST,
          );
          // A long feather does not fit: then its tip is shown, several times as large as on the plan.
          const tip = largestScale((f) => f * millimetre <= TIP_GAIN * view.factor && f <= LARGEST);
          return factorOf(whole) * millimetre >= LEAST_GAIN * view.factor ? whole : tip;
        },
        draw: (group, own) => drawAngle(group, report, knifeEdge, own),
      };
    });
  // Webs and tips in turn: the worst of both are seen.
  const mixed = Array.from({ length: Math.max(webs.length, knives.length) }, (_, i) => [webs[i], knives[i]]);
  const all = mixed
    .flat()
    .filter((subject) => subject !== undefined)
    .filter(gains);
  // What lies in one place shows in one circle.
  const near = (a: Subject, b: Subject): boolean =>
    Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) * view.factor < 0.5;
  return all
    .filter((one, i) => !all.slice(0, i).some((before) => near(before, one)))
    .map((one) => ({
      ...one,
      id: all
        .filter((other) => near(one, other))
        .map(({ id }) => id)
        .join(', '),
    }));
}

function drawDetail(
  parent: SvgNode,
  report: Report,
  subject: Subject,
  view: View,
  diameter: number,
  box: Box,
  pen: Pen,
  fills: Fills,
): void {
  const { id, about, at, lines } = subject;
  const scale = subject.scale(diameter);
  const key = id.replaceAll(', ', '-');
  const group = parent.group().attr({ id: `${pen.prefix}detail-${key}`, 'data-about': about });
  const [cx, cy] = [toMicron(box.x + box.width / 2), toMicron(box.y + 1.5 + diameter / 2)];
  const clip = `${pen.prefix}detail-${key}-clip`;
  group.clip().attr('id', clip).circle(diameter).attr({ cx, cy });
  const factor = factorOf(scale) * millimetres(report.units);
  const own: View = { middle: at, at: [cx, cy], factor };
  const inside = group.group().attr('clip-path', `url(#${clip})`);
  const reach = diameter / factor;
  drawMetal(inside, nearby(report, at, reach), own, pen, fills, undefined, `detail-${key}-`);
  subject.draw(tinted(inside.group(), pen.theme.warning), own);
  lined(group.circle(diameter), NARROW).attr({ cx, cy });
  const ring = ringOf(subject, diameter, report, view);
  const [rx, ry] = onSheet(view, at);
  const spot = tinted(group.group(), pen.theme.soft);
  lined(spot.circle(toMicron(ring)), NARROW).attr({ cx: toMicron(rx), cy: toMicron(ry) });
  const under = cy + diameter / 2 + 3.6;
  const head = fitted(`${scaleText(scale)} · ${id}`, CAPTION, TYPE.small, true);
  write(group, head, cx, under, { size: TYPE.small, bold: true, anchor: 'middle' });
  lines.forEach((line, i) => {
    const words = fitted(line, CAPTION, TYPE.small);
    write(group, words, cx, under + LINE * (i + 1), { size: TYPE.small, anchor: 'middle' });
  });
}

// Pieces that reach into the circle; the others would only make the drawing long.
function nearby(report: Report, [x, y]: Place, reach: number): Report {
  const near = report.pieces.filter(({ bounds: [minX, minY, maxX, maxY] }) => {
    return x >= minX - reach && x <= maxX + reach && y >= minY - reach && y <= maxY + reach;
  });
  return { ...report, pieces: near };
}

/** Draws the arc of a knife edge's angle between its two sides, if both are found, with an arrowhead at each end. */
function drawAngle(
  group: SvgNode,
  report: Report,
  knifeEdge: Report['knifeEdges'][number],
  view: View,
): void {
  const sides = sidesOf(report, knifeEdge);
  const [x, y] = onSheet(view, knifeEdge.at);
  lined(group.circle(1.2), NARROW).attr({ cx: toMicron(x), cy: toMicron(y) });
  if (sides === null) return;
  const radius = 9;
  const [a, b] = sides.map(([dx, dy]): Place => [x + radius * dx, y - radius * dy]) as [Place, Place];
  lined(group.path(`M${point(a)}L${point([x, y])}L${point(b)}`), NARROW * 0.8);
  const gap = Math.hypot(a[0] - b[0], a[1] - b[1]);
  if (gap < 0.4) return;
  const turn = (a[0] - x) * (b[1] - y) - (a[1] - y) * (b[0] - x);
  lined(group.path(`M${point(a)}A${radius} ${radius} 0 0 ${turn > 0 ? 1 : 0} ${point(b)}`), NARROW);
  if (gap > 3) {
    arrowhead(group, a, b);
    arrowhead(group, b, a);
  } else {
    arrowhead(group, a, [2 * a[0] - b[0], 2 * a[1] - b[1]]);
    arrowhead(group, b, [2 * b[0] - a[0], 2 * b[1] - a[1]]);
  }
}

/** The directions in which the two edges leave a tip; null where the section's edges do not show them. */
function sidesOf(
  report: Report,
  { at, piece, slab, angle }: Report['knifeEdges'][number],
): [Place, Place] | null {
  const height = report.slabs[slab];
  const section = report.pieces
    .find(({ id }) => id === piece)
    ?.sections.find(({ from, to }) => height !== undefined && from <= height.from && to >= height.to);
  if (section === undefined || boundsOfRegion(section.region) === null) return null;
  const here = ([x, y]: Place): boolean => Math.hypot(x - at[0], y - at[1]) <= report.resolution / 100;
  const edges = section.region.flatMap(({ outer, holes }) => [outer, ...holes].flat());
  const out = edges.filter((edge) => here(edge.a)).map((edge) => directionAt(edge, 'start'));
  const into = edges.filter((edge) => here(edge.b)).map((edge) => directionAt(edge, 'end'));
  // Several loops may meet in one place. Metal lies at the left of an edge, so the tip is from one that leaves
  // counter-clockwise to one that comes in: that pair between which its angle lies.
  const off = ([a, b]: [Place, Place]): number => Math.abs(degreesBetween(a, b) - angle);
  const pairs = out.flatMap((a) => into.map((b): [Place, Place] => [a, b]));
  return pairs.sort((a, b) => off(a) - off(b))[0] ?? null;
}

/** From one direction counter-clockwise to another, 0 to 360 degrees. */
function degreesBetween([ax, ay]: Place, [bx, by]: Place): number {
  const degrees = (Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * 180) / Math.PI;
  // A hair under a full turn is a tip of angle 0 that rounding has turned inside out.
  return degrees < -1e-6 ? degrees + 360 : Math.max(degrees, 0);
}

function point([x, y]: Place): string {
  return `${toMicron(x)} ${toMicron(y)}`;
}
