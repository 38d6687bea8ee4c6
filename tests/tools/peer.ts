import { edgesOf, extentOf, transformed, UNMOVED } from '@edgebite/core/testing';
import type { Region } from '../region/kernel.js';

/** What another library makes of a cut, as far as it can be compared. */
export interface PeerAnswer {
  readonly area: number;
  readonly pieces: number;
  readonly holes: number;
}

/** Another library: `from` less `cuts`. May throw whatever the library throws. */
export interface Peer {
  readonly name: string;
  readonly subtract: (from: Region, cuts: readonly Region[]) => PeerAnswer;
  /** How far its area may be off for reasons of its method, given the operands (in their unit, squared). */
  readonly areaSlack: (operands: readonly Region[]) => number;
  /** Pieces and holes of a mean thickness up to this share of the extent are not counted. */
  readonly thin: number;
}

/** Extent to which operands are brought before a peer sees them: its tolerances are made for millimetres. */
const PEER_EXTENT = 100;

/** Operands moved to the origin and scaled to an extent of 100, and the factor that takes areas back. */
export function nearOrigin(operands: readonly Region[]): { moved: Region[]; areaFactor: number } {
  const scale = PEER_EXTENT / (extentOf(...operands) || 1);
  const origin = edgesOf(operands.flat())[0]?.a ?? { x: 0, y: 0 };
  const home = operands.map((r) => transformed(r, { ...UNMOVED, shift: [-origin.x, -origin.y] }));
  const moved = home.map((r) => transformed(r, { ...UNMOVED, scale }));
  return { moved, areaFactor: 1 / (scale * scale) };
}

/** Counts loops by the sign of their area, thin ones left out. */
export function countLoops(
  loops: readonly { readonly signedArea: number; readonly perimeter: number }[],
  thin: number,
): { pieces: number; holes: number } {
  const thick = loops.filter((l) => (2 * Math.abs(l.signedArea)) / l.perimeter > thin * PEER_EXTENT);
  return {
    pieces: thick.filter((l) => l.signedArea > 0).length,
    holes: thick.filter((l) => l.signedArea < 0).length,
  };
}
