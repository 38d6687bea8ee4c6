import type { LengthUnit } from '../datum/length-unit.js';
import type { Range } from './range.js';
import { scaled } from './range.js';
import { MPA_PER_KSI, type Strength } from './strength.js';

/**
 * Force to shear through a face of metal: F = tau A, in N for mm² and MPa (Machinery's Handbook, punching, from memory; a
 * textbook problem that is worked so is in docs/cutting-numbers.md).
 */
export function shearForce(shear: Range, area: number): Range {
  return scaled(shear, area);
}

/**
 * Moment at which a rectangle of metal is bent through all its thickness: Mp = s b t²/4, in N mm for mm and MPa (plastic
 * section modulus of a rectangle; any textbook of strength of materials).
 */
export function plasticMoment(stress: number, width: number, thickness: number): number {
  return (stress * width * thickness ** 2) / 4;
}

/** Moment at which its outermost fibre reaches a stress: M = s b t²/6, two thirds of the plastic moment. */
export function elasticMoment(stress: number, width: number, thickness: number): number {
  return (stress * width * thickness ** 2) / 6;
}

/**
 * From where metal begins to give to where it surely breaks: from the moment at which all of the softest grade bends
 * to that with the tensile strength of the hardest. A brittle metal breaks when its outermost fibre does.
 */
export function breakingMoment(strength: Strength, width: number, thickness: number): Range {
  const least =
    strength.yield === null
      ? elasticMoment(strength.tensile[0], width, thickness)
      : plasticMoment(strength.yield, width, thickness);
  return [least, plasticMoment(strength.tensile[1], width, thickness)];
}

/** Pounds-force per square inch in a MPa. */
const PSI_PER_MPA = 1000 / MPA_PER_KSI;

/** What it takes to break thin metal, in N and N m, or in lbf and lbf in. */
export interface BreakOffEstimate {
  readonly force: Range;
  readonly forceUnit: 'N' | 'lbf';
  readonly moment: Range;
  readonly momentUnit: 'N m' | 'lbf in';
}

/**
 * About what it takes to break metal of some thickness along a line: the force to shear it, and the moment to bend it
 * over. An estimate only: how the load comes, notches and grade change it by more than the range says.
 * @param width how long the line is, in `units`
 */
export function breakOffOf(
  strength: Strength,
  width: number,
  thickness: number,
  units: LengthUnit,
): BreakOffEstimate {
  const area = width * thickness;
  if (units === 'mm') {
    return {
      force: shearForce(strength.shear, area),
      forceUnit: 'N',
      moment: scaled(breakingMoment(strength, width, thickness), 1e-3),
      momentUnit: 'N m',
    };
  }
  return {
    force: scaled(shearForce(strength.shear, area), PSI_PER_MPA),
    forceUnit: 'lbf',
    moment: scaled(breakingMoment(strength, width, thickness), PSI_PER_MPA),
    momentUnit: 'lbf in',
  };
}
