import type { Report } from '@edgebite/core';
import { type DrawOptions, drawIn } from './draw.js';

/**
 * The same `draw` as on Node, in the DOM of the page that it runs in.
 * @throws RangeError if `idPrefix` cannot begin an id.
 */
export function draw(report: Report, options: DrawOptions = {}): string {
  return drawIn(window, report, options);
}

export * from './shared.js';
