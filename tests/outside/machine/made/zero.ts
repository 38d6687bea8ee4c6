/** Tip of the edge finder that all generated setups are zeroed with. */
export const TIP = 10;

/**
 * A zero for a setup: the tip touches the left face and the front face of the part as it lies, from outside, and the
 * readout is set to 0 at both. So a place over the left face reads half a tip in X.
 */
export function zeroByTouching(): unknown {
  const touch = (face: string) => [{ touch: face, tip: TIP, reads: 0, tolerance: 0.01 }];
  return { x: touch('left'), y: touch('front') };
}
