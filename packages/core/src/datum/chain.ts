import { generalTolerance, type ToleranceClass } from './general-tolerance.js';
import { inUnit, type LengthUnit } from './length-unit.js';

/** What is done, or lies between, in a link of a chain. */
export type LinkKind = 'touch' | 'dial in' | 'set' | 'move' | 'block' | 'measured' | 'bears';

/** A side of the part or of a stop, as the part lies. */
export type SideName = 'left' | 'right' | 'front' | 'back';

/** One link of the chain that an axis' zero comes to, in the order in which it is done. */
export interface Link {
  readonly kind: LinkKind;
  /** Which action of the list it belongs to, from 0. */
  readonly action: number;
  /** Links of one name are one thing; null for a thing of its own. */
  readonly name: string | null;
  /** What is reached by it: a face of the part, `stop ID`, a hole; null for a block and for what the spindle does. */
  readonly of: string | null;
  /** The side of what is touched that the tip stands on; null for other links. */
  readonly side: SideName | null;
  /**
   * In `units`: of a touch the diameter, of a set what the readout is set to, of a move its signed length. Null where
   * there is none.
   */
  readonly length: number | null;
  /** By how much the reading over what is reached grows by it, in `units`. */
  readonly by: number;
  readonly units: LengthUnit;
  /** Whether that reading grows (+1) or falls (-1) when the link is longer than it is taken for. */
  readonly way: 1 | -1;
  /** To either side, in `units`; null if it is not given. */
  readonly tolerance: number | null;
}

/** A link with what it comes to. */
export interface LinkSize {
  /** By how much the reading over what is reached grows by it, in the readout's unit. */
  readonly offset: number;
  /** To either side, in the readout's unit. */
  readonly tolerance: number;
  /** Whether the tolerance is given, the general one of the part's class, or taken as 0 as there is none. */
  readonly basis: 'given' | 'general' | 'none';
}

/**
 * What a link comes to in the unit of the readout. A measured length without a tolerance has the general one of the
 * class, if there is one.
 *
 * Source: ISO 2768-1.
 */
export function sizeOfLink(link: Link, readout: LengthUnit, grade: ToleranceClass | null): LinkSize {
  const { kind, units, tolerance } = link;
  const offset = inUnit(link.by, units, readout) + 0;
  if (tolerance !== null) return { offset, tolerance: inUnit(tolerance, units, readout), basis: 'given' };
  if (kind === 'measured' && grade !== null && link.length !== null) {
    const general = generalTolerance(inUnit(link.length, units, 'mm'), grade);
    if (general !== null) return { offset, tolerance: inUnit(general, 'mm', readout), basis: 'general' };
  }
  return { offset, tolerance: 0, basis: 'none' };
}
