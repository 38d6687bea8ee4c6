import type { Report, ReportStep } from '@edgebite/core';
import { lengthText } from '@edgebite/svg';
import { placeText, type Shown } from './readout.js';

/** Where to lower the tool before its first pass, or why it cannot be tried clear; nothing of other steps. */
export function clearLines({ units, cuts }: Report, { clear, cut }: ReportStep, shown: Shown): string[] {
  if (clear === null) return [];
  const { readout, diameter, gap, why } = clear;
  if (why !== null) return [why];
  if (readout === null || diameter === null) return [];
  const isOpened = cuts.find(({ id }) => id === cut)?.passes?.kind === 'open out';
  const where = isOpened
    ? `set the tool to ${lengthText(diameter, units)}`
    : `stand at ${placeText(readout, shown)}`;
  const free = gap === null ? 'clear of all metal' : `${lengthText(gap, units)} clear of all metal`;
  return [
    `Before the first pass ${where}, ${free}: lower it there with the spindle stopped, and see that it touches nothing.`,
  ];
}
