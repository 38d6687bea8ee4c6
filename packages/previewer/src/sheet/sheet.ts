import type { Report, ReportStep, Running } from '@edgebite/core';
import type { Shown } from '../step/readout.js';
import type { TrialTold } from '../step/trial.js';

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

/** Steps that follow each other in one setup, or with the part as drawn. */
export interface SheetBlock extends Shown {
  /** id of the setup; `as drawn` or `as drawn, turned over` for cuts that are in none. */
  readonly setup: string;
  readonly title: string;
  /** How the part lies. */
  readonly lies: string;
  /** The face of the drawn part that lies up. */
  readonly up: 'top' | 'bottom';
  /** How the zero of each axis is found, one line each. */
  readonly zero: readonly ZeroAxis[];
  readonly steps: readonly SheetStep[];
  /** Parts of a batch, whose numbers differ from those of the steps; none where there is no batch. */
  readonly parts: readonly SheetPart[];
  /** What comes off, one line each. */
  readonly falls: readonly string[];
  /** Trial cuts, with the next setting by what they read. */
  readonly trials: readonly TrialTold[];
  /** What to measure once all is cut, one line each, with room for the reading. */
  readonly measure: readonly string[];
  /** How to free what is held, to break what is sharp, and where burrs are; one line each. */
  readonly finish: readonly string[];
  /** What to watch, the gravest first, one line each; the last may say how many more there are. */
  readonly watch: readonly string[];
}

/** A part of a batch: where the readout is to stand for it in the steps of a block. */
export interface SheetPart {
  readonly name: string;
  /** Its measured lengths in words. */
  readonly measured: string;
  /** What stands over the column of depths, and their decimals: of the readout, or of the scale of the quill. */
  readonly depths: { readonly head: string; readonly decimals: number };
  /** One for each stand of each step of the block, in their order. */
  readonly rows: readonly SheetPartRow[];
}

/** A place to go to with a part of a batch. */
export interface SheetPartRow {
  /** Of the step, and of the stand in it, from 1; null where the step has one only. */
  readonly step: number;
  readonly stand: number | null;
  readonly cut: string;
  readonly what: SheetStand['what'];
  /** What the readout is to show, and what Z is to show when the tool is as deep as it goes; null without a zero there. */
  readonly target: readonly [number, number];
  readonly depth: number | null;
}

/** How the zero of an axis is found. */
export interface ZeroAxis {
  readonly axis: 'x' | 'y' | 'z';
  /** What is true once it is found. */
  readonly result: string;
  readonly links: readonly string[];
}

/** One approach of one tool: a cut, or one of its passes. */
export interface SheetStep {
  /** Its place among the steps of the report, from 1. */
  readonly number: number;
  readonly cut: string;
  readonly kind: Report['cuts'][number]['kind'];
  /** null where the cut has one pass only. */
  readonly pass: PassPlace | null;
  /** Of this pass, in the unit of the report. */
  readonly diameter: number;
  readonly depth: number;
  readonly through: boolean;
  /** The face of the drawn part that the cut starts from. */
  readonly from: 'top' | 'bottom';
  /** null without a tool or figures for it. */
  readonly running: Running | null;
  /** From least to most, in the cut alone; null where that is not known. */
  readonly minutes: readonly [number, number] | null;
  /** Every place where the tool is while it is down, in order. */
  readonly stands: readonly SheetStand[];
  /** What to do first, with the spindle stopped; one line each. */
  readonly before: readonly string[];
  /** What the tool meets, what comes off, how it comes away: one line each. */
  readonly tells: readonly string[];
}

/** A place where the tool is while it is down. */
export interface SheetStand {
  readonly what: ReportStep['stands'][number]['what'];
  /** What the readout is to show. */
  readonly target: readonly [number, number];
  /** How far the spindle may be off it at worst; null where that is not known. */
  readonly off: readonly [number, number] | null;
  /** The arc along which it comes there, centre in readout numbers; null for a straight way. */
  readonly arc: ReportStep['stands'][number]['arc'];
  /** Whether the tool is lifted before it goes there. */
  readonly lifted: boolean;
}

/** Which pass of how many, and what it is for, if that is said. */
export interface PassPlace {
  readonly number: number;
  readonly count: number;
  readonly role: string | null;
}
