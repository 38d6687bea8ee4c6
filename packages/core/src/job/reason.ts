import { OverlayError } from '../noding/overlay-error.js';

/** The reason that a function of the library gives for refusing its input, without its own name before it. */
export function plainReason(error: unknown): string {
  // A fault of the library is none of the job.
  if (!(error instanceof RangeError) || error instanceof OverlayError) throw error;
  return error.message.replace(/^\w+: /, '').replace(/; (see unreached|use centerPath).*$/, '');
}
