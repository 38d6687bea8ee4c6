import type { Region } from '@edgebite/core';
import { coincident } from './families-coincident.js';
import { pencils } from './families-pencil.js';
import { scales } from './families-scale.js';
import { shortEdges } from './families-short.js';
import { tangent } from './families-tangent.js';
import type { Draw } from './random.js';

/** A kind of input; a case is its operands, of a size of about 1, with something `gap` apart. */
export interface OracleFamily {
  readonly name: string;
  readonly operands: (draw: Draw, gap: number) => readonly Region[];
}

/** All families of nearly coincident, tangent and concentric input, mixed scales, pencils and short edges. */
export const oracleFamilies: readonly OracleFamily[] = [
  ...coincident,
  ...tangent,
  ...scales,
  ...pencils,
  ...shortEdges,
];
