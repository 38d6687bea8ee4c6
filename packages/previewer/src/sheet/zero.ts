import type { ReportSetup } from '@edgebite/core';
import { angleText, fixed } from '@edgebite/svg';
import { axesOf, doneText, reachedText } from '../step/zero-words.js';
import { decimalsOf } from '../text/decimals.js';
import type { ZeroAxis } from './model.js';

type Axis = ReportSetup['zero']['x'];

/** How the part lies in a setup. */
export function lieText({ flip, turn, up }: Pick<ReportSetup, 'flip' | 'turn' | 'up'>): string {
  const over = flip === null ? [] : [`turned over about its ${flip} axis`];
  const round = turn === 0 ? [] : [`turned ${Number(angleText(turn))}° counter-clockwise`];
  const moves = [...over, ...round];
  return `The part ${moves.length === 0 ? 'as drawn' : moves.join(', then ')}, ${up} face up.`;
}

/** How the zeros of a setup are found. */
export function zeroOf(setup: ReportSetup): ZeroAxis[] {
  return axesOf(setup).map(({ axis, found }) => {
    const { place, at, links, worst } = found;
    const over = axis === 'z' ? 'the end of the tool on' : 'the spindle over';
    const show = shown(setup);
    return {
      axis,
      result: `with ${over} ${reachedText(place)} the readout shows ${show(at)}${plusMinus(worst, setup)}`,
      links: links.map((link) => linkText(link, setup)),
    };
  });
}

function linkText(link: Axis['links'][number], setup: ReportSetup): string {
  const show = shown(setup);
  const stands = link.at === null ? '' : `: ${reachedIn(link)} ${show(link.at)}`;
  const off =
    link.kind === 'set' || (link.kind === 'move' && link.basis === 'none')
      ? ''
      : link.basis === 'none'
        ? ', tolerance not given'
        : plusMinus(link.tolerance, setup);
  return `${doneText(link, show)}${off}${stands}`;
}

/** What stands where, once a link is done. */
function reachedIn({ kind, of }: Axis['links'][number]): string {
  if (of === null) return 'its end is at';
  return kind === 'bears' ? 'that is at' : `${reachedText(of)} is then at`;
}

function shown({ readout }: ReportSetup): (value: number) => string {
  const decimals = decimalsOf(readout.resolution);
  // What the readout shows: all its decimals, of a zero too.
  return (value) => (value + 0).toFixed(decimals);
}

/** What is under a step needs a decimal more. */
function plusMinus(value: number, { readout }: ReportSetup): string {
  return value === 0 ? '' : ` ±${fixed(value, decimalsOf(readout.resolution) + 1)}`;
}
