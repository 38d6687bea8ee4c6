import type { ReportSetup } from '@edgebite/core';
import { angleText, fixed, sourceText, unitText } from '@edgebite/svg';
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

/** The outermost places of a part as it lies, in words. */
const PLACE: { readonly [place: string]: string | undefined } = {
  left: 'the left end',
  right: 'the right end',
  front: 'the front',
  back: 'the back',
};

/** How the zeros of a setup are found. */
export function zeroOf(setup: ReportSetup): ZeroAxis[] {
  return (['x', 'y'] as const).map((axis) => {
    const { place, at, links, worst } = setup.zero[axis];
    const show = shown(setup);
    return {
      axis,
      result: `with the spindle over ${PLACE[place] ?? sourceText(place)} the readout shows ${show(at)}${plusMinus(worst, setup)}`,
      links: links.map((link) => linkText(link, setup)),
    };
  });
}

function linkText(link: Axis['links'][number], setup: ReportSetup): string {
  const name = link.name === null ? '' : ` (${link.name})`;
  const size = link.length === null ? '' : ` ${Number(link.length.toPrecision(12))} ${unitText(link.units)}`;
  const way = [
    ...(link.from === null ? [] : [`from ${PLACE[link.from] ?? sourceText(link.from)}`]),
    ...(link.to === null ? [] : [`to ${PLACE[link.to] ?? sourceText(link.to)}`]),
  ].join(' ');
  const grows = link.offset === 0 ? '' : `, ${link.offset > 0 ? '+' : ''}${shown(setup)(link.offset)}`;
  const off = link.basis === 'none' ? ', tolerance not given' : plusMinus(link.tolerance, setup);
  return `${link.kind}${size}${name} ${way}${grows}${off}`;
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
