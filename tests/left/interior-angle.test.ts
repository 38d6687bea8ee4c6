import { arcEdge, type Edge, lineEdge } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { interiorAngle } from '../../packages/core/src/left/interior-angle.js';

const p = (x: number, y: number) => ({ x, y });
const tip = p(0, 0);

/** An edge of a curvature that leaves the tip at an angle; curved to the left over 0. */
function leaving(angle: number, curvature: number): Edge {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  if (curvature === 0) return lineEdge(tip, p(c, s));
  const r = 1 / curvature;
  const center = p(-s * r, c * r);
  const turn = Math.sign(r) * 0.5;
  const [ux, uy] = [-center.x, -center.y];
  const end = p(
    center.x + ux * Math.cos(turn) - uy * Math.sin(turn),
    center.y + ux * Math.sin(turn) + uy * Math.cos(turn),
  );
  return arcEdge(tip, end, center, curvature > 0);
}

/** The same edge run the other way, so that it arrives. */
function arriving(angle: number, curvature: number): Edge {
  const edge = leaving(angle, curvature);
  return edge.kind === 'line' ? lineEdge(edge.b, edge.a) : arcEdge(edge.b, edge.a, edge.center, !edge.ccw);
}

const FULL = 2 * Math.PI;

describe('the angle through metal, to the left of the edge that leaves', () => {
  it('is that from the one tangent to the other, whatever the curvatures', () => {
    for (const turn of [0, 1, 2.5]) {
      for (const angle of [2e-6, 0.5, Math.PI, 5, FULL - 2e-6]) {
        for (const [one, other] of [
          [0, 0],
          [0.3, -2],
          [-50, 7],
        ] as const) {
          const found = interiorAngle(leaving(turn, one), arriving(turn + angle, other));
          expect(Math.abs(found - angle)).toBeLessThan(1e-14 * 50);
        }
      }
    }
  });

  // Seen from the tip, the edge with the larger curvature to the left lies to the left of the other.
  it.each([
    ['a line and an arc', 0, 0.01],
    ['two arcs to one side', 0.01, 0.02],
    ['two arcs to one side, hardly different', 1, 1 + 1e-8],
    ['two arcs to either side', -3, 2],
    ['a large and a small one', 1e-4, 1e4],
    ['small ones', 1e4, 1e4 + 1],
  ])('of tangent edges is 0 at a tip of metal and a full turn at a slit: %s', (_, less, more) => {
    for (const off of [0, 1e-8, -1e-8]) {
      const atTip = interiorAngle(leaving(0, less), arriving(off, more));
      const atSlit = interiorAngle(leaving(0, more), arriving(off, less));
      expect(atTip).toBeCloseTo(Math.max(0, off), 14);
      expect(atSlit).toBeCloseTo(FULL - Math.max(0, -off), 14);
      // Never less than nothing, never more than all round.
      expect(atTip).toBeGreaterThanOrEqual(0);
      expect(atSlit).toBeLessThanOrEqual(FULL);
    }
  });

  it.each([0, 2, -0.01, 1e5])('of edges with one curvature of %d is told by their tangents', (curvature) => {
    const same = curvature * (1 + 1e-10);
    expect(interiorAngle(leaving(0, curvature), arriving(1e-8, same))).toBeCloseTo(1e-8, 14);
    expect(interiorAngle(leaving(0, same), arriving(1e-8, curvature))).toBeCloseTo(1e-8, 14);
    expect(interiorAngle(leaving(0, curvature), arriving(-1e-8, same))).toBeCloseTo(FULL - 1e-8, 14);
    expect(interiorAngle(leaving(0, same), arriving(-1e-8, curvature))).toBeCloseTo(FULL - 1e-8, 14);
  });
});
