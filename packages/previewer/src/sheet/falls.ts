import type { BreakOff, Report, ReportFloor, ReportPiece } from '@edgebite/core';
import { lengthText, roleText } from '@edgebite/svg';
import { figureText, roughText } from '../text/figures.js';

/** What comes off in some cuts, or may: one line each. */
export function fallsOf(report: Report, cuts: readonly string[]): string[] {
  const own = new Set(cuts);
  const lines = [
    ...report.bodies.flatMap(({ id, step, mass, pieces }) => {
      const cut = report.steps[step]?.cut;
      return cut !== undefined && own.has(cut) && pieces.length === 0
        ? [
            `${id} comes loose with cut ${cut}${massText(report, mass)}; a later cut would take it. Stop the spindle, let it cool and lift it out first.`,
          ]
        : [];
    }),
    ...report.pieces.flatMap((piece) =>
      piece.freedBy !== null && own.has(piece.freedBy) ? [pieceText(report, piece)] : [],
    ),
  ];
  return lines.length === 0 ? ['Nothing comes loose.'] : lines;
}

function pieceText(report: Report, piece: ReportPiece): string {
  const { id, role, freedBy, mass } = piece;
  if (role !== 'held slug') {
    return `${id}, ${roleText(role)}, comes free with cut ${freedBy}${massText(report, mass)}. Stop the spindle and let it cool before you touch it.`;
  }
  const floors = report.floors.filter(({ holds }) => holds === id);
  const stays = `${id}, held slug, stays after cut ${freedBy}`;
  if (floors.length === 0) return `${stays}.`;
  const broken = floors.flatMap(({ breakOff }) => (breakOff === null ? [] : [breakOff]));
  return [
    `${stays} on ${floorsText(report, floors)}.`,
    ...(broken.length === floors.length ? [breakText(broken)] : []),
    `It can let go at any time. A saw cut through it, the part clamped, is ${lengthText(total(floors.map(({ kerfLength }) => kerfLength ?? 0)), report.units)} long.`,
  ].join(' ');
}

function floorsText({ units }: Report, floors: readonly ReportFloor[]): string {
  const thick = floors.map(({ thickness }) => thickness).sort((a, b) => a - b);
  const [least = 0, most = least] = [thick[0], thick.at(-1)];
  if (floors.length === 1) return `a floor ${lengthText(least, units)} thick`;
  return `${floors.length} floors, ${lengthText(least, units)} to ${lengthText(most, units)} thick`;
}

/** To break all floors of a slug at once. */
function breakText(all: readonly BreakOff[]): string {
  const [{ forceUnit, momentUnit }] = all as readonly [BreakOff];
  const sum = (key: 'force' | 'moment'): [number, number] => [
    total(all.map((one) => one[key][0])),
    total(all.map((one) => one[key][1])),
  ];
  return `To shear it about ${roughText(sum('force'))} ${forceUnit}, to bend it over about ${roughText(sum('moment'))} ${momentUnit}: an estimate.`;
}

function total(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function massText({ massUnit }: Report, mass: number | null): string {
  return mass === null || massUnit === null ? '' : `, about ${figureText(mass)} ${massUnit}`;
}
