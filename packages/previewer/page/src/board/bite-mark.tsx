import { biteShown, biting, bitten, faceAt } from '../state/biting.js';
import type { Place } from '../worker/sketch.js';
import { inPart, onScreen, type View } from './view.js';

/** How far off a face a click may be, pixels. */
const NEAR = 24;

/** Picks the face that was clicked on, while one is wanted. */
export function facePicked(event: MouseEvent, view: View): void {
  const { target, currentTarget } = event;
  if (!biting.value || !(currentTarget instanceof Element)) return;
  // A centre or the mark of a finding was meant.
  if (target instanceof Element && target.closest('.handles, .pins, [data-about^="finding:"]') !== null)
    return;
  const { left, top } = currentTarget.getBoundingClientRect();
  const place: Place = [event.clientX - left, event.clientY - top];
  const face = faceAt(inPart(view, place), NEAR / view.scale);
  if (face !== null) bitten.value = face;
}

/** The circle of the bite that is being written. */
export function BiteMark({ view }: { view: View }) {
  const bite = biteShown.value;
  if (!biting.value || bite === null) return null;
  const [cx, cy] = onScreen(view, bite.center);
  return <circle class="bite-mark" cx={cx} cy={cy} r={bite.radius * view.scale} />;
}
