import type { Theme } from '@edgebite/svg';
import { drawViewTree } from '@edgebite/svg/tree';
import { signal } from '@preact/signals';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { drawnOrSaid } from '../panels/element.js';
import { isCrowd, rested } from '../state/rested.js';
import { chosenFinding, shown } from '../state/store.js';
import type { Place } from '../worker/sketch.js';
import type { Size, View } from './view.js';

/** The drawing with its names and dimensions, as it lies on the board. */
export interface Drawn {
  readonly view: View;
  /** Where the numbers of findings stand in it, by the index of the finding; null if it has none. */
  readonly numbers: ReadonlyMap<number, Place> | null;
}

/** What is drawn in full; null while the sketch stands in for it. */
export const drawn = signal<Drawn | null>(null);

/** The page's own colours, so that the drawing follows the page into the dark. */
export const COLOURS: Theme = {
  paper: 'var(--sheet)',
  ink: 'var(--ink)',
  soft: 'var(--soft)',
  kept: 'var(--kept)',
  held: 'var(--held)',
  loose: 'var(--loose)',
  shade: 'var(--shade)',
  kerf: 'var(--kerf)',
  tool: 'var(--blue)',
  warning: 'var(--danger)',
};

/** Pixels for one unit of the drawing, whose lettering is 3.5 high: as large as the page's small print. */
const UNIT = 3.7;

/** With more cuts than this their names would hide the part; the findings' own marks stand in for the numbers. */
const NAMED_CUTS = 40;

/** Under this width, in pixels, dimensions would take the room of the part. */
const NARROW = 560;

/** The full drawing, made as soon as the hand rests. What is in it leads to its finding. */
export function DrawnView({ size }: { size: Size }) {
  const holder = useRef<HTMLDivElement>(null);
  const report = rested.value;
  const { width, height } = size;
  useLayoutEffect(() => {
    const element = holder.current;
    if (element === null) return;
    element.replaceChildren();
    drawn.value = null;
    const [kept] = report?.pieces ?? [];
    if (report === null || kept === undefined || width === 0 || isCrowd.value) return;
    const named = report.cuts.length <= NAMED_CUTS;
    const size: [number, number] = [width / UNIT, height / UNIT];
    const options = {
      theme: COLOURS,
      idPrefix: 'board-',
      labels: named,
      dimensions: width >= NARROW && named,
    };
    element.append(drawnOrSaid(() => drawViewTree(report, { ...options, size }).node));
    const view = viewIn(element, kept.id, kept.bounds);
    if (view === null) element.replaceChildren();
    else drawn.value = { view, numbers: named ? numbersIn(element) : null };
  }, [report, width, height]);
  const about = shown.value?.summary.findings[chosenFinding.value ?? -1]?.about;
  useLayoutEffect(() => {
    for (const part of holder.current?.querySelectorAll<SVGElement>('[data-about]') ?? []) {
      part.classList.toggle('about', about?.includes(part.dataset.about ?? '') === true);
    }
  }, [about, drawn.value]);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the numbered places over it are buttons
    // biome-ignore lint/a11y/noStaticElementInteractions: the same
    <div class={`drawn${drawn.value === null ? ' away' : ''}`} ref={holder} onClick={pointed} />
  );
}

// The scale at which a piece was drawn is told by the picture itself: its box there, and in the report.
function viewIn(holder: Element, id: string, bounds: readonly [number, number, number, number]): View | null {
  const name = CSS.escape(`piece:${id}`);
  const path = holder.querySelector<SVGPathElement>(`path[data-about="${name}"]`);
  if (path === null) return null;
  const box = path.getBBox();
  const [minX, minY, maxX] = bounds;
  const scale = (box.width * UNIT) / (maxX - minX);
  return { scale, zero: [box.x * UNIT - minX * scale, (box.y + box.height) * UNIT + minY * scale] };
}

function numbersIn(holder: Element): ReadonlyMap<number, Place> {
  const marks = holder.querySelectorAll<SVGGraphicsElement>('[data-about^="finding:"]');
  return new Map(
    [...marks].map((mark) => {
      const { x, y, width, height } = mark.getBBox();
      return [
        Number(mark.dataset.about?.slice('finding:'.length)),
        [(x + width / 2) * UNIT, (y + height / 2) * UNIT],
      ];
    }),
  );
}

// A number leads to its finding; anything else to the first finding that is about it.
function pointed({ target }: MouseEvent): void {
  const name = (target as Element).closest<SVGElement>('[data-about]')?.dataset.about;
  if (name === undefined) return;
  const findings = shown.value?.summary.findings ?? [];
  const index = name.startsWith('finding:')
    ? Number(name.slice('finding:'.length))
    : findings.findIndex(({ about }) => about.includes(name));
  if (index < 0) return;
  chosenFinding.value = index;
  document.getElementById(`finding-${index}`)?.scrollIntoView({ block: 'nearest' });
}
