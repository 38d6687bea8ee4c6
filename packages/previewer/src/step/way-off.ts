import type { Report, ReportStep } from '@edgebite/core';
import { lengthText } from '@edgebite/svg';
import { directionText } from './names.js';
import { placeText, type Shown } from './readout.js';

/** How the tool comes off its wall before it is lifted, or why it cannot; nothing of a path, which ends in a lift. */
export function wayOffLines({ units }: Report, { backOff, load }: ReportStep, shown: Shown): string[] {
  if (load === null) return [];
  const { by, machine, readout, gap, why } = backOff;
  if (by === null) return why === null ? [] : [why];
  if (machine === null || readout === null) return ['It stands at no wall: lift the tool as it stands.'];
  const clear = gap === null ? '' : `, ${lengthText(gap, units)} clear of the wall`;
  return [
    `Before you lift, back off ${directionText(machine)} by ${lengthText(by, units)}, to ${placeText(readout, shown)}${clear}.`,
  ];
}
