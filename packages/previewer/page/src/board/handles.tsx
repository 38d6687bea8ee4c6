import { computed } from '@preact/signals';
import type { VNode } from 'preact';
import { useLayoutEffect } from 'preact/hooks';
import { isList, valueAt } from '../document/json.js';
import { cutAt, cutNear, type Grip, gripsOf, idAt, inTurn } from '../move/grips.js';
import { held, moveTo, nudge } from '../move/move.js';
import { chosenCut, chosenFinding, dragging, job, readoutStep, seal, worked } from '../state/store.js';
import { CROWD } from '../worker/crowd.js';
import type { Place } from '../worker/sketch.js';
import { dragStep, snapped } from './snap.js';
import { inPart, onScreen, type View } from './view.js';

/** Radius of what a pointer must hit, pixels: 44 across for a finger (WCAG 2.2, 2.5.5). */
const TARGET = matchMedia('(pointer: coarse)').matches ? 22 : 16;

/** Milliseconds between two moves at least: some mice tell a thousand a second. */
const SHORTEST = 4;

/** How many steps a press takes with the shift key held. */
const LONG_STEP = 10;

let before: readonly Grip[] = [];

/** What can be taken hold of in the job as it stands, with what is held just now; the same list while nothing of it differs. */
const grips = computed<readonly Grip[]>(() => {
  const own = gripsOf(job.value, worked.value, chosenCut.value);
  const one = held.value;
  // A pass that is dragged so far that it is one too many stays until it is let go.
  const all = one === null || own.some(({ key }) => key === one.key) ? own : [...own, one];
  if (all.length !== before.length || all.some((grip, k) => grip !== before[k] && !isSame(grip, before[k])))
    before = all;
  return before;
});

function isSame(a: Grip, b: Grip | undefined): boolean {
  return b !== undefined && (Object.keys(a) as (keyof Grip)[]).every((key) => a[key] === b[key]);
}

export function gripsNow(): readonly Grip[] {
  return grips.value;
}

/** The places to drag or to move by the arrow keys: centres, paths, passes. All are one stop for the tab key. */
export function Handles({ view }: { view: View }) {
  const all = gripsNow();
  const stop = all.find(({ id }) => id === chosenCut.value) ?? all[0];
  useLayoutEffect(() => {
    // Where a key took away the pass that it was pressed on, its cut takes over.
    const lost = last !== null && document.activeElement === document.body;
    if (last === null || !lost || all.some(({ key }) => key === last?.key)) return;
    document.getElementById(`handle-${last.index}`)?.focus({ preventScroll: true });
  });
  return (
    // biome-ignore lint/a11y/useSemanticElements: HTML has no group for places in a drawing
    // biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: a group of shapes takes no input of its own
    <g class="handles" role="group" aria-label="Centres of the cuts">
      {all.map((grip) => handleOf({ grip, view, chosen: grip.id === chosenCut.value, stop: grip === stop }))}
    </g>
  );
}

const handles = new WeakMap<Grip, { readonly props: HandleProps; readonly node: VNode }>();

// Of many only what moves is gone through: the others are the same nodes as before.
function handleOf(props: HandleProps): VNode {
  const { grip, view, chosen, stop } = props;
  const known = handles.get(grip);
  const { props: before, node: drawn } = known ?? {};
  if (drawn !== undefined && before?.view === view && before.chosen === chosen && before.stop === stop)
    return drawn;
  const node = <Handle key={grip.key} {...props} />;
  handles.set(grip, { props, node });
  return node;
}

/** The handle that was last under the keys. */
let last: { readonly key: string; readonly index: number } | null = null;

interface HandleProps {
  readonly grip: Grip;
  readonly view: View;
  readonly chosen: boolean;
  readonly stop: boolean;
}

function Handle(props: HandleProps) {
  const { grip, view } = props;
  const { key: name, index, id, diameter, fixed, pass } = grip;
  const [x, y] = onScreen(view, [grip.x, grip.y]);
  const chosen = props.chosen && pass === null;
  return (
    // biome-ignore lint/a11y/useSemanticElements: HTML has no button for a place in a drawing
    <g
      id={name}
      class={`handle${chosen ? ' chosen' : ''}${fixed ? ' fixed' : ''}${pass === null ? '' : ' pass'}`}
      transform={`translate(${x} ${y})`}
      tabindex={props.stop ? 0 : -1}
      role="button"
      aria-pressed={chosen}
      aria-label={grip.label}
      onFocus={() => {
        last = { key: name, index };
        choose(id);
      }}
      onKeyDown={(event) => keyed(event, props)}
      onPointerDown={(event) => grabbed(event, props)}
      onTouchStart={(event) => steady(event, props)}
    >
      {(chosen || pass !== null) && diameter !== null && (
        <circle class="reach" r={(diameter / 2) * view.scale} />
      )}
      <circle class="target" r={TARGET} />
      {pass === null ? <path class="cross" d="M-9 0H9M0 -9V9" /> : null}
      {fixed && <path class="cross" d="M-9 -9H9V9H-9Z" />}
      {pass === null ? <circle class="dot" r={4} /> : <path class="dot" d="M0 -6L6 0L0 6L-6 0Z" />}
    </g>
  );
}

function cutCount(): number {
  const cuts = valueAt(job.value ?? undefined, ['cuts']);
  return isList(cuts) ? cuts.length : 0;
}

function choose(id: string): void {
  chosenCut.value = id;
}

/** Of the grips under the pointer the one that is nearest to it: those of passes lie close to each other. */
function nearest(event: PointerEvent, { grip: { key: name }, view }: HandleProps): Grip | undefined {
  const board = (event.currentTarget as SVGGElement).ownerSVGElement?.getBoundingClientRect();
  const away = ({ x, y }: Grip): number => {
    const [left, top] = onScreen(view, [x, y]);
    return Math.hypot(event.clientX - (board?.left ?? 0) - left, event.clientY - (board?.top ?? 0) - top);
  };
  // Of equals the one that lies on top.
  const own = gripsNow().find(({ key }) => key === name);
  return gripsNow().reduce(
    (best, one) => (best !== undefined && away(one) < away(best) - 1e-6 ? one : best),
    own,
  );
}

function grabbed(event: PointerEvent, props: HandleProps): void {
  if (event.button !== 0) return;
  event.preventDefault();
  event.stopPropagation();
  take(event, nearest(event, props), props.view);
}

/** Takes hold of the cut of a crowd that is under the pointer; its handle is there with the next frame. */
export function crowdGrabbed(event: PointerEvent, view: View): void {
  const found = event.button === 0 ? crowdAt(event, view) : null;
  if (found === null) return;
  event.preventDefault();
  choose(found.id);
  requestAnimationFrame(() => {
    const grip = gripsNow().find(({ key }) => key === `handle-${found.index}`);
    take(event, grip, view);
  });
}

/** Keeps the page still under a finger on a cut of a crowd. */
export function crowdSteadied(event: TouchEvent, view: View): void {
  const [touch] = event.touches;
  if (touch !== undefined && event.touches.length === 1 && crowdAt(touch, view) !== null)
    event.preventDefault();
}

function crowdAt({ clientX, clientY }: { readonly clientX: number; readonly clientY: number }, view: View) {
  const board = document.getElementById('board')?.getBoundingClientRect();
  const at = inPart(view, [clientX - (board?.left ?? 0), clientY - (board?.top ?? 0)]);
  return cutNear(job.value, worked.value, at, TARGET / view.scale);
}

// The pointer keeps its distance from the place, so that taking hold moves nothing.
function take(event: PointerEvent, grip: Grip | undefined, view: View): void {
  const handle = document.getElementById(grip?.key ?? '');
  if (grip === undefined || handle === null) return;
  handle.focus({ preventScroll: true });
  choose(grip.id);
  chosenFinding.value = null;
  if (grip.fixed) return;
  handle.setPointerCapture(event.pointerId);
  const [x, y] = onScreen(view, [grip.x, grip.y]);
  const off: Place = [event.clientX - x, event.clientY - y];
  const step = dragStep(readoutStep(), 1 / view.scale);
  let before: Place = [grip.x, grip.y];
  const follow = (moved: PointerEvent): void => {
    const place = inPart(view, [moved.clientX - off[0], moved.clientY - off[1]]);
    const at: Place = [snapped(place[0], step), snapped(place[1], step)];
    if (at[0] === before[0] && at[1] === before[1]) return;
    before = at;
    dragging.value = true;
    held.value = grip;
    moveTo(grip, place, step);
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
    held.value = null;
    seal();
  };
  handle.addEventListener('pointerrawupdate', early, { signal });
  handle.addEventListener('pointermove', follow, { signal });
  handle.addEventListener('pointerup', release, { signal });
  handle.addEventListener('pointercancel', release, { signal });
}

// Browsers do not keep to `touch-action` for what is inside a drawing: after a few pixels the page would be scrolled, and
// the drag called off.
function steady(event: TouchEvent, { grip }: HandleProps): void {
  if (!grip.fixed) event.preventDefault();
}

const WAYS: Readonly<Record<string, Place>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

function keyed(event: KeyboardEvent, props: HandleProps): void {
  const way = WAYS[event.key];
  if (way !== undefined) {
    event.preventDefault();
    nudge(props.grip, way, event.shiftKey ? LONG_STEP : 1);
  } else if (event.key === 'PageDown' || event.key === 'PageUp') {
    event.preventDefault();
    const grips = inTurn(gripsNow());
    const by = event.key === 'PageDown' ? 1 : -1;
    const here = grips.findIndex(({ key }) => key === props.grip.key) + by;
    const [next, count] = [grips[here], cutCount()];
    if (next !== undefined || count <= CROWD) {
      document.getElementById((next ?? grips[(here + grips.length) % grips.length])?.key ?? '')?.focus();
      return;
    }
    const index = (props.grip.index + by + count) % count;
    choose(idAt(cutAt(job.value, index) ?? {}, index));
    requestAnimationFrame(() => document.getElementById(`handle-${index}`)?.focus());
  }
}
