import { type Axes, axesOf, type Bounds, type Lie, type Report, type ReportStep } from '@edgebite/core';
import { asItLies } from '../view/view.js';

/** How the part lies in a step: as its setup has it; without one as drawn, or turned over about y to be cut from below. */
export function lieOf(report: Report, { setup, up }: ReportStep): Lie {
  const own = report.setups.find(({ id }) => id === setup);
  return own ?? { flip: up === 'bottom' ? 'y' : null, turn: 0 };
}

/** The machine's axes on the part as it lies in a step. */
export function axesOfStep(report: Report, step: ReportStep): Axes {
  return axesOf(lieOf(report, step));
}

/** How a part lies, in a few words: `turned over, turned 90°`; empty for one that lies as drawn. */
export function lieText({ flip, turn }: Lie): string {
  const turned = ((turn % 360) + 360) % 360;
  return [
    ...(flip === null ? [] : [`turned over about ${flip}`]),
    ...(turned === 0 ? [] : [`turned ${Number(turned.toFixed(2))}°`]),
  ].join(', ');
}

/** The box round a box as it lies. */
export function boundsAsLies({ minX, minY, maxX, maxY }: Bounds, axes: Axes): Bounds {
  const corners = [
    asItLies(axes, [minX, minY]),
    asItLies(axes, [maxX, minY]),
    asItLies(axes, [maxX, maxY]),
    asItLies(axes, [minX, maxY]),
  ];
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}
