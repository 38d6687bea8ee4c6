import type { Point } from '../geometry/point.js';
import { generalTolerance, type ToleranceClass } from './general-tolerance.js';
import { inUnit, type LengthUnit } from './length-unit.js';

/** What a link of a chain is. */
export type LinkKind = 'stop' | 'block' | 'measured' | 'edge finder' | 'tool' | 'offset';

/** A place that a link starts or ends at: by name, or on the part as drawn. */
export type ChainPlace = string | Point;

/** One link between the readout's zero and the part, along one axis, as it is written down. */
export interface Link {
  readonly kind: LinkKind;
  /** Links of one name are one thing; null for a thing of its own. */
  readonly name: string | null;
  readonly from: ChainPlace | null;
  readonly to: ChainPlace | null;
  /** In `units`; of an edge finder or a tool its diameter. Null for a stop, and where a diameter is missing. */
  readonly length: number | null;
  readonly units: LengthUnit;
  /** Whether the axis grows (+1) or falls (-1) from `from` to `to`; 0 for a stop. */
  readonly way: 1 | -1 | 0;
  /** To either side, in `units`; null if it is not given. */
  readonly tolerance: number | null;
}

/** A link with what it comes to. */
export interface LinkSize {
  /** By how much the readout grows along it, in the readout's unit. */
  readonly offset: number;
  /** To either side, in the readout's unit. */
  readonly tolerance: number;
  /** Whether the tolerance is given, the general one of the part's class, or taken as 0 as there is none. */
  readonly basis: 'given' | 'general' | 'none';
}

/**
 * What a link comes to in the unit of the readout. Half the diameter of an edge finder or tool lies between the
 * spindle and what it touches; one whose diameter is missing counts as 0. A measured length without a tolerance has
 * the general one of the class, if there is one.
 *
 * Source: half the tip, http://clough42.com/2017/11/30/making-split-cylinder-edge-finding-tool; ISO 2768-1.
 */
export function sizeOfLink(link: Link, readout: LengthUnit, grade: ToleranceClass | null): LinkSize {
  const { kind, units, way, tolerance } = link;
  const written = link.length ?? 0;
  const length = kind === 'edge finder' || kind === 'tool' ? written / 2 : written;
  const offset = way * inUnit(length, units, readout) + 0;
  if (tolerance !== null) return { offset, tolerance: inUnit(tolerance, units, readout), basis: 'given' };
  if (kind === 'measured' && grade !== null) {
    const general = generalTolerance(inUnit(length, units, 'mm'), grade);
    if (general !== null) return { offset, tolerance: inUnit(general, 'mm', readout), basis: 'general' };
  }
  return { offset, tolerance: 0, basis: 'none' };
}
