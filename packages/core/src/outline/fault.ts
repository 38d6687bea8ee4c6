import { EdgebiteError } from '../geometry/edgebite-error.js';
import type { Point } from '../geometry/point.js';

/** What is wrong with an outline, and where. */
export interface OutlineFault {
  /** Which hole, from 0 in the order given; null for the outer loop. */
  readonly hole: number | null;
  /** Which edge of that loop, from 0 in the order given; null if it is about the whole loop. */
  readonly edge: number | null;
  /** A sentence that names the edges and the place. */
  readonly message: string;
  readonly at: Point | null;
}

/** An outline that cannot be used, with all that is wrong with it. */
export class OutlineError extends EdgebiteError {
  override readonly name = 'OutlineError';

  constructor(readonly faults: readonly OutlineFault[]) {
    super(faults.map((fault) => fault.message).join('\n'), {
      code: 'outline',
      place: pathOfFault(faults[0]),
    });
  }
}

/** How a sentence names a loop. */
export function loopName(hole: number | null): string {
  return hole === null ? 'the outline' : `hole ${hole}`;
}

function pathOfFault(fault: OutlineFault | undefined): string {
  if (fault === undefined) return '';
  return `${loopName(fault.hole)}${fault.edge === null ? '' : `, edge ${fault.edge}`}`;
}
