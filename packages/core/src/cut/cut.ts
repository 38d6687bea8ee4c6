/*
 * Room: the kinds of cut: bore, annular cut, swept cut.
 * In: sizes and places.
 * Out: footprint and core of a cut, as regions.
 */

import type { Edge } from '../geometry/edge.js';
import type { Point } from '../geometry/point.js';

/** The side of the part that a cut starts from. */
export type Side = 'top' | 'bottom';

/** What every cut has. */
export interface EveryCut {
  /** Its own name, unlike any other cut's; its edges are named `cut:ID`. */
  readonly id: string;
  readonly from: Side;
  /** How deep it really goes, from its side: the thickness of the part if `through`. */
  readonly depth: number;
  readonly through: boolean;
  /** How far it is to go below the part where it goes through; by default as far as its tool goes anyway. */
  readonly breakThrough?: number;
}

/** A disc: drilled, bored, or milled to a round. */
export interface BoreCut extends EveryCut {
  readonly kind: 'bore';
  readonly center: Point;
  readonly diameter: number;
}

/** A ring cut by a hollow cutter; its core remains standing. */
export interface AnnularCut extends EveryCut {
  readonly kind: 'annular';
  readonly center: Point;
  /** Outside diameter. */
  readonly diameter: number;
  /** Width of the ring that the teeth cut, under half the diameter. */
  readonly wall: number;
  /** How deep the cutter can go; null for any depth. */
  readonly reach: number | null;
}

/** A round tool driven along a path. */
export interface SweptCut extends EveryCut {
  readonly kind: 'swept';
  /** Of the tool. */
  readonly diameter: number;
  /** The path of the tool's centre: each edge starts where the one before ends. */
  readonly path: readonly Edge[];
}

/** A cut in a part. */
export type Cut = BoreCut | AnnularCut | SweptCut;
