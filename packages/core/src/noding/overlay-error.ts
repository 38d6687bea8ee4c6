/** Thrown when an overlay cannot be built or proven; it means a fault of the library, and says so. */
export class OverlayError extends Error {
  override readonly name = 'OverlayError';
}
