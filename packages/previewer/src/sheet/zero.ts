import type { ReportSetup } from '@edgebite/core';
import { angleText, doneText, fixed, reachedText, type ZeroScale, zeroAxes } from '@edgebite/svg';
import { decimalsOf } from '../columns/decimals.js';
import type { ZeroAxis } from './sheet.js';

type Axis = ReportSetup['zero']['x'];

/** How the part lies in a setup. */
export function lieText({
  flip,
  turn,
  up,
  angleTolerance = 0,
}: Pick<ReportSetup, 'flip' | 'turn' | 'up'> & Partial<Pick<ReportSetup, 'angleTolerance'>>): string {
  const over = flip === null ? [] : [`turned over about its ${flip} axis`];
  const round = turn === 0 ? [] : [`turned ${Number(angleText(turn))}° counter-clockwise`];
  const moves = [...over, ...round];
  const off = angleTolerance === 0 ? '' : ` Square it up to ±${Number(angleTolerance.toPrecision(6))}°.`;
  return `The part ${moves.length === 0 ? 'as drawn' : moves.join(', then ')}, ${up} face up.${off}`;
}

/** How the zeros of a setup are found. */
export function zeroOf(setup: ReportSetup): ZeroAxis[] {
  return zeroAxes(setup).map(({ axis, found, scale }) => {
    const { place, at, links, worst } = found;
    const over = axis === 'z' ? 'the end of the tool on' : 'the spindle over';
    return {
      axis,
      result: `with ${over} ${reachedText(place)} ${scale.words} shows ${shown(at, scale)}${plusMinus(worst, scale)}`,
      links: links.map((link) => linkText(link, scale)),
    };
  });
}

function linkText(link: Axis['links'][number], scale: ZeroScale): string {
  const stands = link.at === null ? '' : `: ${reachedIn(link)} ${shown(link.at, scale)}`;
  const off =
    link.kind === 'set' || (link.kind === 'move' && link.basis === 'none')
      ? ''
      : link.basis === 'none'
        ? ', tolerance not given'
        : plusMinus(link.tolerance, scale);
  return `${doneText(link, (value) => shown(value, scale), scale)}${off}${stands}`;
}

/** What stands where, once a link is done. */
function reachedIn({ kind, of }: Axis['links'][number]): string {
  if (of === null) return 'its end is at';
  return kind === 'bears' ? 'that is at' : `${reachedText(of)} is then at`;
}

/** What is read: all its decimals, of a zero too. */
function shown(value: number, { resolution }: ZeroScale): string {
  return (value + 0).toFixed(decimalsOf(resolution));
}

/** What is under a step needs a decimal more. */
function plusMinus(value: number, { resolution }: ZeroScale): string {
  return value === 0 ? '' : ` ±${fixed(value, decimalsOf(resolution) + 1)}`;
}
