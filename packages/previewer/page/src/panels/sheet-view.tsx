import { drawSheets } from '@edgebite/svg';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { foundRange } from '../state/ranging.js';
import { askDrawing, isCrowd, rested } from '../state/rested.js';
import { drawnOrSaid, elementOf } from './element.js';

/** The sheet as it prints, drawn as soon as the hand rests. */
export function SheetView() {
  const holder = useRef<HTMLDivElement>(null);
  const report = rested.value;
  const range = foundRange.value;
  useLayoutEffect(() => {
    // The last sheet stays, marked as old, so that nothing jumps; the next one takes its place.
    if (report !== null) {
      let lists: readonly string[] = [];
      const drawing = drawnOrSaid(() => {
        const [first = '', ...rest] = drawSheets(report, { idPrefix: 'sheet-', range });
        lists = rest;
        return first;
      });
      holder.current?.replaceChildren(drawing, ...lists.map(elementOf));
    }
  }, [report, range]);
  return (
    <section class="card sheet" aria-labelledby="card-sheet">
      <h2 id="card-sheet">The sheet</h2>
      {report === null && isCrowd.value ? (
        <p class="hint">
          A drawing of so many cuts takes some seconds.{' '}
          <button type="button" onClick={askDrawing}>
            Draw the sheet
          </button>
        </p>
      ) : (
        <p class="hint">{report === null ? 'Being drawn.' : 'As it prints, at the scale that it names.'}</p>
      )}
      <section
        class={`paper${report === null ? ' old' : ''}`}
        ref={holder}
        aria-busy={report === null && !isCrowd.value}
        aria-label="Drawing of every step"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it may scroll sideways, with keys too
        tabIndex={0}
      />
    </section>
  );
}
