/*
 * Room: from the part to the paper.
 * In: a report, a box of the sheet.
 * Out: scale, axes as the part lies, room that is free, edges in view.
 */

import type { Axes } from '@edgebite/core';
import type { Place } from './edges.js';

/** A box on the sheet, in millimetres from its upper left corner; y runs down. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How places of the part come to the sheet. */
export interface View {
  /** The place of the part that lies at `at`. */
  readonly middle: Place;
  /** Where it lies on the sheet. */
  readonly at: Place;
  /** Millimetres on the sheet for one unit of the part. */
  readonly factor: number;
  /** The machine's axes on the part, for one that lies turned or turned over; it lies as drawn without them. */
  readonly axes?: Axes;
}

/** A place of the part on the sheet: y is up in the part and down on the sheet. */
export function onSheet(view: View, [x, y]: Place): Place {
  const [right, away] = asItLies(view.axes, [x - view.middle[0], y - view.middle[1]]);
  return [view.at[0] + right * view.factor, view.at[1] - away * view.factor];
}

/** A length on the part along each axis of the machine: to the right, and away from the person. */
export function asItLies(axes: Axes | undefined, [x, y]: Place): Place {
  if (axes === undefined) return [x, y];
  return [x * axes.x.dx + y * axes.x.dy, x * axes.y.dx + y * axes.y.dy];
}

/** Whether a view shows the part turned over: then arcs run the other way round. */
export function isTurnedOver({ axes }: View): boolean {
  return axes !== undefined && axes.x.dx * axes.y.dy - axes.x.dy * axes.y.dx < 0;
}

/** Whether a place of the sheet lies in a box. */
export function holds(box: Box, [x, y]: Place): boolean {
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
}

/** The box with so much taken off (or, under 0, put on) at every side. */
export function shrunk(box: Box, by: number): Box {
  return { x: box.x + by, y: box.y + by, width: box.width - 2 * by, height: box.height - 2 * by };
}
