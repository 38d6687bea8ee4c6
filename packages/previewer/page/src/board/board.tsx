/*
 * Room: the drawing that can be touched.
 * In: a sketch or a report.
 * Out: the picture, its handles and pins.
 */

import { lengthText } from '@edgebite/svg';
import { computed, useSignal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { biting } from '../state/biting.js';
import { isMarked } from '../state/marked.js';
import { chosenFinding, jumped, shown } from '../state/store.js';
import type { Box } from '../worker/sketch.js';
import { BiteMark, facePicked } from './bite-mark.js';
import { DrawnView, drawn } from './drawn.js';
import { FindingPins } from './finding-pins.js';
import { crowdGrabbed, crowdSteadied, Handles } from './handles.js';
import { LiveMarks, LiveWords } from './live-marks.js';
import { Loupe } from './loupe.js';
import { Metal } from './metal.js';
import { Patterns } from './patterns.js';
import { Thin } from './thin.js';
import { fitted, matrixOf, type Size, type View } from './view.js';

/** The drawing that one can take hold of: metal, tools, centres to drag, and a numbered mark for each finding. */
export function Board() {
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame);
  const view = useRef<View | null>(null);
  const full = drawn.value;
  const within = (act: (view: View) => void): void => {
    if (view.current !== null) act(view.current);
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: a face is chosen by keys in the panel
    // biome-ignore lint/a11y/noStaticElementInteractions: the same
    <div
      class={`board${biting.value ? ' biting' : ''}${isMarked.value ? ' outdated' : ''}${full === null ? '' : ' full'}${(full?.numbers ?? null) === null ? '' : ' numbered'}`}
      ref={frame}
      id="board"
      onPointerDown={(event) => within((now) => crowdGrabbed(event, now))}
      onTouchStart={(event) => within((now) => crowdSteadied(event, now))}
      onClick={(event) => within((now) => facePicked(event, now))}
    >
      <Pictures size={size} now={view} />
    </div>
  );
}

// By itself, so that none of it is gone through for a sign on the board alone.
function Pictures({ size, now }: { size: Size; now: { current: View | null } }) {
  const box = `0 0 ${size.width} ${size.height}`;
  const view = useView(around.value, size);
  now.current = view;
  return (
    <>
      <DrawnView size={size} />
      {view !== null && (
        <>
          {/* Two pictures, so that a centre that moves over the metal does not have the metal painted anew. */}
          <svg class="ground" width={size.width} height={size.height} viewBox={box} aria-hidden="true">
            <Patterns scale={view.scale} />
            <g id="metal" transform={matrixOf(view)}>
              <Ground />
            </g>
            <Thin view={view} />
          </svg>
          {/* biome-ignore lint/a11y/useSemanticElements: HTML has no group for a drawing */}
          <svg
            width={size.width}
            height={size.height}
            viewBox={box}
            role="group"
            aria-label="Drawing of the part from above, with the centres of its cuts and its findings"
          >
            <BiteMark view={view} />
            <Handles view={view} />
            <FindingPins view={view} size={size} />
            <LiveMarks view={view} size={size} />
            <Detail view={view} size={size} />
          </svg>
          <LiveWords />
        </>
      )}
    </>
  );
}

/** The box round the part: it stays the same while no cut goes beyond it. */
const around = computed(() => shown.value?.sketch.around ?? null);

// What a move changes, by itself, so that the rest of the picture is not gone through for it.
function Ground() {
  const result = shown.value;
  const finding = chosenFinding.value === null ? undefined : result?.summary.findings[chosenFinding.value];
  const about = useMemo(() => new Set(finding?.about ?? []), [finding]);
  return result === null ? null : <Metal sketch={result.sketch} about={about} />;
}

function useSize(frame: { current: HTMLDivElement | null }): Size {
  const size = useSignal<Size>({ width: 0, height: 0 });
  useEffect(() => {
    const element = frame.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => {
      size.value = { width: element.clientWidth, height: element.clientHeight };
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return size.value;
}

// The view is that of the full drawing, and keeps still until there is another: while a centre is dragged, else the part
// would slip away under the hand.
function useView(around: Box | null, size: Size): View | null {
  const last = useRef<{ readonly view: View; readonly size: Size } | null>(null);
  if (around === null || size.width === 0) return null;
  const full = drawn.value;
  if (full !== null) last.current = { view: full.view, size };
  else if (last.current === null || last.current.size !== size || jumped.value) {
    last.current = { view: fitted(around, size), size };
  }
  return last.current.view;
}

// Only what is too small to see is enlarged: webs and knife edges.
function Detail({ view, size }: { view: View; size: Size }) {
  const result = chosenFinding.value === null ? null : shown.value;
  const finding = result?.summary.findings[chosenFinding.value ?? -1];
  const name = finding?.about.find((about) => /^(web|knifeEdge):/.test(about));
  if (result === null || finding?.at == null || name === undefined) return null;
  const web = name.startsWith('web:') ? result.summary.webs[Number(name.slice(4))] : undefined;
  const under =
    web === undefined
      ? null
      : { ends: web.ends, thickness: web.thickness, words: lengthText(web.thickness, result.summary.units) };
  return <Loupe place={finding.at} web={under} view={view} size={size} sketch={result.sketch} />;
}
