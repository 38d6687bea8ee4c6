import { shown } from '../state/store.js';
import { onScreen, type View } from './view.js';

/** So many are marked at most, the thinnest and the sharpest. */
const MOST = 300;

/** Webs as a bar across them, knife edges as a dot at their tip. */
export function Thin({ view }: { view: View }) {
  const summary = shown.value?.summary;
  if (summary === undefined) return null;
  return (
    <g class="thin">
      {summary.webs.slice(0, MOST).map(({ ends, slab }) => {
        const [[x1, y1], [x2, y2]] = [onScreen(view, ends[0]), onScreen(view, ends[1])];
        return <line key={`${ends.join()},${slab}`} x1={x1} y1={y1} x2={x2} y2={y2} />;
      })}
      {summary.knifeEdges.slice(0, MOST).map(({ at, slab }) => {
        const [cx, cy] = onScreen(view, at);
        return <circle key={`${at.join()},${slab}`} cx={cx} cy={cy} r={3} />;
      })}
    </g>
  );
}
