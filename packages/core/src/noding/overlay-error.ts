import { EdgebiteError } from '../geometry/edgebite-error.js';

/** Thrown when an overlay cannot be built or proven; it means a fault of the library, and says so. */
export class OverlayError extends EdgebiteError {
  override readonly name = 'OverlayError';

  constructor(message: string) {
    super(message, { code: 'fault' });
  }
}
