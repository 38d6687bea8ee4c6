import type { Report, Running } from '@edgebite/core';
import { blocksOf } from './blocks.js';

/** What goes on a sheet to take to the machine. */
export interface Sheet {
  readonly name: string;
  /** Short facts on the whole job: thickness, material, units. */
  readonly facts: readonly string[];
  readonly units: Report['units'];
  /** In the order in which they are cut. */
  readonly blocks: readonly SheetBlock[];
  /** The caution that holds for all work. */
  readonly standing: string;
}

/** One setup, or the part as drawn where the job has none. */
export interface SheetBlock {
  /** id of the setup; null for cuts that are in none. */
  readonly setup: string | null;
  readonly title: string;
  /** How the part lies. */
  readonly lies: string;
  /** The face of the drawn part that lies up. */
  readonly up: 'top' | 'bottom';
  /** Unit and step of the readout. */
  readonly units: Report['units'];
  readonly decimals: number;
  /** How the zero of each axis is found, one line each. */
  readonly zero: readonly ZeroAxis[];
  readonly steps: readonly SheetStep[];
  /** What comes off, one line each. */
  readonly falls: readonly string[];
  /** What to watch, the gravest first, one line each; the last may say how many more there are. */
  readonly watch: readonly string[];
}

/** How the zero of an axis is found. */
export interface ZeroAxis {
  readonly axis: 'x' | 'y';
  /** What is true once it is found. */
  readonly result: string;
  readonly links: readonly string[];
}

/** One thing to do: a cut, one of its passes, a place along its path, or a lift there. */
export interface SheetStep {
  readonly number: number;
  readonly cut: string;
  readonly kind: Report['cuts'][number]['kind'];
  /** `1 of 4, rough`; null without passes. */
  readonly pass: PassPlace | null;
  /** How the tool comes to a place along a path, or that it is lifted there; null for others. */
  readonly move: PathMove | null;
  /** What the readout is to show. */
  readonly target: readonly [number, number];
  /** How far the spindle may be off it at worst; null where that is not known. */
  readonly off: readonly [number, number] | null;
  /** In the unit of the report. */
  readonly diameter: number;
  readonly depth: number;
  readonly through: boolean;
  /** The face of the drawn part that the cut starts from. */
  readonly from: 'top' | 'bottom';
  /** null without a tool or figures for it. */
  readonly running: Running | null;
  /** Ids of the pieces that this cut frees. */
  readonly frees: readonly string[];
}

/** A move along a path. Runs are counted from 1: the tool goes down where one starts and is lifted where it ends. */
export interface PathMove {
  readonly kind: 'down' | 'line' | 'arc' | 'lift';
  readonly run: number;
  readonly runs: number;
  /** Of a move along an arc; else null. */
  readonly arc: MoveArc | null;
}

/** The arc that the middle of the tool goes along. */
export interface MoveArc {
  /** What the readout would show at its centre. */
  readonly center: readonly [number, number];
  /** In the unit of the report. */
  readonly radius: number;
  /** Counter-clockwise, seen from above as the part lies. */
  readonly ccw: boolean;
}

/** Which pass of how many, and what it is for. */
export interface PassPlace {
  readonly number: number;
  readonly count: number;
  readonly role: string;
}

/** Digits of a length as it was written; further ones are of arithmetic. */
const DIGITS = 12;

/** The sheet of a report: a block for each setup, in the order of the job, and one for cuts in none. */
export function sheetOf(report: Report): Sheet {
  const { name, units, thickness, material } = report;
  const unit = units === 'mm' ? 'mm' : 'in';
  return {
    name: name === '' ? 'Job without a name' : name,
    facts: [
      `thickness ${Number(thickness.toPrecision(DIGITS))} ${unit}`,
      ...(material === null ? ['material not given'] : [material]),
      `sizes and depths in ${units === 'mm' ? 'mm' : 'inches'}`,
    ],
    units,
    blocks: blocksOf(report),
    standing: report.cautions.at(-1)?.message ?? '',
  };
}
