import { type ReportSetup, sourceText } from '@edgebite/core';
import { unitText } from './numbers.js';

/** One thing that is done to find a zero, or that lies between. */
export type ZeroLink = ReportSetup['zero']['x']['links'][number];

/** The outermost places of a part as it lies, in words. */
const PLACE: { readonly [place: string]: string | undefined } = {
  left: 'the left end',
  right: 'the right end',
  front: 'the front',
  back: 'the back',
  top: 'the top',
  bottom: 'the bottom',
};

const FROM = { left: 'the left', right: 'the right', front: 'the front', back: 'the back' } as const;

/** Digits of a length as it was written; further ones are of arithmetic. */
const WRITTEN = 12;

/** What a zero comes to, in words: a side of the part, an edge, a stop, or a middle. */
export function reachedText(of: string): string {
  return PLACE[of] ?? (of.startsWith('stop:') ? `stop ${of.slice('stop:'.length)}` : sourceText(of));
}

/** What is done in a link, short: `touch stop s from the right, 10 mm across`. */
export function doneText(link: ZeroLink, shown: (value: number) => string, scale: ZeroScale): string {
  const { kind, of, side, length, units } = link;
  const size = length === null ? '' : `${Number(length.toPrecision(WRITTEN))} ${unitText(units)}`;
  const what = of === null ? '' : reachedText(of);
  const name = link.name === null || link.name === of ? '' : ` (${link.name})`;
  switch (kind) {
    case 'touch':
      // Of what looks up the end of the tool has no side.
      if (side === null) return `touch ${what}${length === null ? '' : ` over a feeler of ${size}`}${name}`;
      // A side of the part is touched from where it looks.
      return `touch ${what}${side === of ? '' : ` from ${FROM[side]}`}, ${size} across${name}`;
    case 'dial in':
      return `dial in the ${what}${name}`.replace('the (', '(');
    case 'set':
      return `set ${scale.words} to ${shown(length ?? 0)}`;
    case 'move':
      return `move by ${(length ?? 0) > 0 ? '+' : ''}${size}${name}`;
    case 'block':
      return `a block of ${size}${name} between`;
    case 'measured':
      return `measured ${size}${name}${of === null ? ' between' : `, on to ${what}`}`;
    case 'bears':
      return `${what} bears${name}`;
  }
}

/** What an axis is read on: in words, and its smallest step. */
export interface ZeroScale {
  readonly words: 'the readout' | 'the quill';
  readonly resolution: number;
}

/** The axes of a setup's zero that the job says how to find, in order, and what each is read on. */
export function zeroAxes({ zero, readout, heights }: ReportSetup): {
  readonly axis: 'x' | 'y' | 'z';
  readonly found: ReportSetup['zero']['x'];
  readonly scale: ZeroScale;
}[] {
  return (['x', 'y', 'z'] as const).flatMap((axis) => {
    const found = zero[axis];
    const isQuill = axis === 'z' && heights.on === 'quill';
    const { resolution } = axis === 'z' ? heights : readout;
    const scale: ZeroScale = { words: isQuill ? 'the quill' : 'the readout', resolution };
    return found === null ? [] : [{ axis, found, scale }];
  });
}
