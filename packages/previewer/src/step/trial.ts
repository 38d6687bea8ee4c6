import type { Report, ReportCheck } from '@edgebite/core';
import { lengthText, numberText, unitText } from '@edgebite/svg';

/** A trial cut for people: what to do, and the next setting as a table. */
export interface TrialTold {
  readonly cut: string;
  /** What to do first, and how to read the table; one line each. */
  readonly lines: readonly string[];
  readonly heads: readonly string[];
  /** Cells by line, numbers all of them. */
  readonly rows: readonly (readonly string[])[];
}

/** The trial cut of an arc, in words; null where there is none. */
export function trialTold({ cut, trial, ways }: ReportCheck, units: Report['units']): TrialTold | null {
  const way = trial === null ? undefined : ways[trial.way];
  if (trial === null || way === undefined) return null;
  const { tool, dial, diameter, leaves, reading, uncertain, good, place, rows } = trial;
  const number = (value: number) => numberText(value, units);
  const length = (value: number) => lengthText(value, units);
  const unit = unitText(units);
  const centre = place === 0 ? 'with the centre as drawn' : `the centre to ${length(place)}`;
  return {
    cut,
    lines: [
      `Set ${tool} to ${length(diameter)}, ${length(leaves)} short in radius, and cut. Stop the spindle. Measure ${way.words}: it reads ${number(reading)} if the head cuts what it is set to.`,
      `Open the head by the line of what it reads; between two lines by the later one, which is less. The radius is then told to ${length(uncertain)}: the reading is good to ${length(good)}, ${centre}. Come to the setting from below, as the head's instructions say.`,
    ],
    heads: [`reads ${unit}`, `radius ${unit}`, 'open by', `dial (${dial.on}) ${unit}`, `then left ${unit}`],
    rows: rows.map((row) => [
      number(row.reading),
      number(row.radius),
      row.graduations === 0 ? 'leave it' : String(row.graduations),
      row.graduations === 0 ? '-' : number(row.turn),
      `${number(row.short[0])} to ${number(row.short[1])}`,
    ]),
  };
}
