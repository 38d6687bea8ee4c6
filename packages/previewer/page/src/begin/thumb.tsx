import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { Metal } from '../board/metal.js';
import { fitted, matrixOf } from '../board/view.js';
import type { Json } from '../document/json.js';
import { solver } from '../state/store.js';
import { type Sketch, sketchOf } from '../worker/sketch.js';

/** Size of a small picture in pixels. */
const SIZE = { width: 132, height: 84 };

const NOTHING: ReadonlySet<string> = new Set();

/** A small picture of what a job leaves. */
export function Thumb({ job }: { job: Json }) {
  const sketch = useSignal<Sketch | null>(null);
  useEffect(() => {
    void solver.report(job).then((report) => {
      sketch.value = report === null ? null : sketchOf(report);
    });
  }, [job]);
  return <Picture sketch={sketch.value} />;
}

/** A small picture of shapes that are known; empty before. */
export function Picture({ sketch, size = SIZE }: { sketch: Sketch | null; size?: typeof SIZE }) {
  const { width, height } = size;
  return (
    <svg class="thumb" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {sketch !== null && (
        <g transform={matrixOf(fitted(sketch.around, size))}>
          <Metal sketch={sketch} about={NOTHING} />
        </g>
      )}
    </svg>
  );
}
