import { kept } from '../form/kept.js';
import { type MovableCut, movableCuts } from '../state/place.js';
import { chosenCut, chosenFinding, dragging, job, put, readoutStep, seal } from '../state/store.js';
import type { Place } from '../worker/sketch.js';
import { dragStep, snapped } from './snap.js';
import { inPart, onScreen, type View } from './view.js';

/** Radius of what a finger must hit, pixels. */
const TARGET = 16;

/** Milliseconds between two moves at least: some mice tell a thousand a second. */
const SHORTEST = 4;

/** How many steps a press takes with the shift key held. */
const LONG_STEP = 10;

/** The centres of the cuts, to drag or to move by the arrow keys. All are one stop for the tab key. */
export function Handles({ view, cuts }: { view: View; cuts: readonly MovableCut[] }) {
  const stop = cuts.find(({ id }) => id === chosenCut.value) ?? cuts[0];
  return (
    // biome-ignore lint/a11y/useSemanticElements: HTML has no group for places in a drawing
    // biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: a group of shapes takes no input of its own
    <g class="handles" role="group" aria-label="Centres of the cuts">
      {cuts.map((cut) => (
        <Handle
          key={cut.index}
          index={cut.index}
          id={cut.id}
          x={cut.center[0]}
          y={cut.center[1]}
          diameter={cut.diameter}
          view={view}
          chosen={cut.id === chosenCut.value}
          stop={cut === stop}
        />
      ))}
    </g>
  );
}

interface HandleProps {
  readonly index: number;
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly diameter: number | null;
  readonly view: View;
  readonly chosen: boolean;
  readonly stop: boolean;
}

const Handle = kept((props: HandleProps) => {
  const { index, id, view, diameter } = props;
  const center: Place = [props.x, props.y];
  const [x, y] = onScreen(view, center);
  return (
    // biome-ignore lint/a11y/useSemanticElements: HTML has no button for a place in a drawing
    <g
      id={`handle-${index}`}
      class={`handle${props.chosen ? ' chosen' : ''}`}
      transform={`translate(${x} ${y})`}
      tabindex={props.stop ? 0 : -1}
      role="button"
      aria-pressed={props.chosen}
      aria-label={`Centre of ${id}: x ${center[0]}, y ${center[1]}. Arrow keys move it, page keys go to the next.`}
      onFocus={() => choose(id)}
      onKeyDown={(event) => keyed(event, props)}
      onPointerDown={(event) => grabbed(event, index, id, center, view)}
    >
      {props.chosen && diameter !== null && <circle class="reach" r={(diameter / 2) * view.scale} />}
      <circle class="target" r={TARGET} />
      <path class="cross" d="M-9 0H9M0 -9V9" />
      <circle class="dot" r={4} />
    </g>
  );
});

function choose(id: string): void {
  chosenCut.value = id;
}

function move(index: number, [x, y]: Place): void {
  put(['cuts', index, 'center'], [x, y]);
}

// The pointer keeps its distance from the centre, so that taking hold moves nothing.
function grabbed(event: PointerEvent, index: number, id: string, center: Place, view: View): void {
  if (event.button !== 0) return;
  event.preventDefault();
  const handle = event.currentTarget as SVGGElement;
  handle.focus({ preventScroll: true });
  handle.setPointerCapture(event.pointerId);
  choose(id);
  chosenFinding.value = null;
  const [x, y] = onScreen(view, center);
  const off: Place = [event.clientX - x, event.clientY - y];
  const step = dragStep(readoutStep(), 1 / view.scale);
  let last = center;
  const follow = (moved: PointerEvent): void => {
    const [px, py] = inPart(view, [moved.clientX - off[0], moved.clientY - off[1]]);
    const at: Place = [snapped(px, step), snapped(py, step)];
    if (at[0] === last[0] && at[1] === last[1]) return;
    last = at;
    dragging.value = true;
    move(index, at);
  };
  let heard = 0;
  // Moves that come between two frames: the sooner one is worked out, the sooner a frame can show it.
  const early = (moved: Event): void => {
    if (moved.timeStamp - heard < SHORTEST) return;
    heard = moved.timeStamp;
    follow(moved as PointerEvent);
  };
  const stop = new AbortController();
  const { signal } = stop;
  const release = (): void => {
    stop.abort();
    dragging.value = false;
    seal();
  };
  handle.addEventListener('pointerrawupdate', early, { signal });
  handle.addEventListener('pointermove', follow, { signal });
  handle.addEventListener('pointerup', release, { signal });
  handle.addEventListener('pointercancel', release, { signal });
}

const WAYS: Readonly<Record<string, Place>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

function keyed(event: KeyboardEvent, { index, x, y }: HandleProps): void {
  const way = WAYS[event.key];
  if (way !== undefined) {
    event.preventDefault();
    nudge(index, [x, y], way, event.shiftKey ? LONG_STEP : 1);
  } else if (event.key === 'PageDown' || event.key === 'PageUp') {
    event.preventDefault();
    const cuts = movableCuts(job.value);
    const here = cuts.findIndex((cut) => cut.index === index);
    const next = cuts[(here + (event.key === 'PageDown' ? 1 : -1) + cuts.length) % cuts.length];
    if (next !== undefined) document.getElementById(`handle-${next.index}`)?.focus();
  }
}

/** Moves a cut's centre by so many steps of the readout along one of its axes. */
export function nudge(index: number, [x, y]: Place, [dx, dy]: Place, steps: number): void {
  const step = readoutStep();
  const by = (from: number, way: number): number =>
    way === 0 ? from : snapped(from + way * step * steps, step);
  move(index, [by(x, dx), by(y, dy)]);
}
