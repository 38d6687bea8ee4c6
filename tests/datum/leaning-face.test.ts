import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/* How far a named face may lean and still stand square to its axis: 1e-7 of its own length, wherever it lies. */

/** A plate 60 by 40 whose right end and back lean by so much over their length. */
function touched(lean: number, turn: number) {
  const job = {
    edgebite: 1,
    units: 'mm',
    part: {
      outline: {
        edges: [
          { kind: 'line', a: [0, 0], b: [60, 0], name: 'sill' },
          { kind: 'line', a: [60, 0], b: [60 + 40 * lean, 40], name: 'end' },
          { kind: 'line', a: [60 + 40 * lean, 40], b: [0, 40 + (60 + 40 * lean) * lean], name: 'rail' },
          { kind: 'line', a: [0, 40 + (60 + 40 * lean) * lean], b: [0, 0] },
        ],
      },
      thickness: 8,
    },
    setups: [
      {
        id: 's',
        turn,
        zero: {
          x: [{ touch: turn === 0 ? 'end' : 'rail', tip: 10 }],
          y: [{ touch: turn === 0 ? 'rail' : 'end', tip: 10 }],
        },
        cuts: ['eye'],
      },
    ],
    cuts: [{ id: 'eye', kind: 'bore', center: [20, 20], diameter: 6 }],
  };
  return () => examine(parseJob(job)).setups[0]?.zero.at;
}

describe('a face that leans', () => {
  it.each([0, 90])('by less than 1e-7 is touched as if it did not, turned by %i', (turn) => {
    expect(touched(0.9e-7, turn)()).toEqual([expect.any(Number), expect.any(Number)]);
  });

  it.each([0, 90])('by more is refused in both axes, turned by %i', (turn) => {
    expect(touched(1.1e-7, turn)).toThrow(/zero\/x\/0\/touch: is .*, which does not stand square to x/);
    expect(touched(1.1e-7, turn)).toThrow(/zero\/y\/0\/touch: is .*, which does not stand square to y/);
  });
});
