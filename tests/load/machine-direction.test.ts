import { axesOf, DIRECTION_WORDS, type Lie, machineDirection, type Vector } from '@edgebite/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenly } from '../tools/evenly.js';

const V = (dx: number, dy: number): Vector => ({ dx, dy });
const AS_DRAWN: Lie = { flip: null, turn: 0 };

describe('machineDirection', () => {
  // Worked out by laying a drawing on the table: turned over like a page (about its y axis), right is left; turned a
  // quarter to the left, its right side points away.
  it.each<[Lie, Vector, string, number]>([
    [AS_DRAWN, V(3, 0), 'to the right', 0],
    [AS_DRAWN, V(0, 2), 'away from you', 90],
    [AS_DRAWN, V(-1, -1), 'to the left and towards you', 225],
    [{ flip: null, turn: 180 }, V(0, 1), 'towards you', 270],
    [{ flip: null, turn: 90 }, V(1, 0), 'away from you', 90],
    [{ flip: null, turn: -90 }, V(1, 0), 'towards you', 270],
    [{ flip: 'y', turn: 0 }, V(1, 0), 'to the left', 180],
    [{ flip: 'y', turn: 0 }, V(0, 1), 'away from you', 90],
    [{ flip: 'x', turn: 0 }, V(0, 1), 'towards you', 270],
    // Over first: right becomes left; then a quarter to the left: left becomes towards the person.
    [{ flip: 'y', turn: 90 }, V(1, 0), 'towards you', 270],
    [{ flip: 'x', turn: 90 }, V(1, 1), 'to the right and away from you', 45],
    [{ flip: null, turn: 45 }, V(1, 0), 'to the right and away from you', 45],
  ])('of a part that lies %o, %o is %s', (lie, drawn, words, degrees) => {
    expect(machineDirection(axesOf(lie), drawn)).toEqual({ words, degrees });
    const heading = (Math.atan2(drawn.dy, drawn.dx) * 180) / Math.PI;
    expect(machineDirection(axesOf(lie), heading)).toEqual({ words, degrees });
  });

  it('is the nearest of eight; halfway the one further counter-clockwise, whatever the rounding', () => {
    const axes = axesOf(AS_DRAWN);
    DIRECTION_WORDS.forEach((words, k) => {
      for (const off of [-22.5, -22.4999995, -10, 0, 22.499999]) {
        expect(machineDirection(axes, 45 * k + off).words, `${45 * k} ${off}`).toBe(words);
      }
      for (const noise of [-1e-13, 0, 1e-13]) {
        expect(machineDirection(axes, 45 * k + 22.5 + noise)).toEqual({
          words: DIRECTION_WORDS[(k + 1) % 8],
          degrees: (45 * k + 22.5) % 360,
        });
      }
    });
    expect(machineDirection(axes, -1e-12)).toEqual({ words: 'to the right', degrees: 0 });
    expect(machineDirection(axes, 359.9999999)).toEqual({ words: 'to the right', degrees: 0 });
    expect(Object.is(machineDirection(axes, -0).degrees, 0)).toBe(true);
  });

  it('is the same to the last bit when the drawing is turned a quarter and the setup back', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(null, 'x' as const, 'y' as const),
        evenly(-720, 720),
        evenly(-Math.PI, Math.PI),
        (flip, turn, heading) => {
          const vector = V(Math.cos(heading), Math.sin(heading));
          const degrees = (heading * 180) / Math.PI;
          const axes = axesOf({ flip, turn });
          // Turned over, the drawing's quarter goes the other way round.
          const back = axesOf({ flip, turn: flip === null ? turn - 90 : turn + 90 });
          const turned = V(-vector.dy, vector.dx);
          expect(machineDirection(back, turned)).toEqual(machineDirection(axes, vector));
          const [one, other] = [machineDirection(axes, degrees), machineDirection(back, degrees + 90)];
          expect(other.words).toBe(one.words);
          expect(Math.abs(other.degrees - one.degrees)).toBeLessThanOrEqual(1.000001e-6);
          expect(
            Math.abs(((one.degrees - machineDirection(axes, vector).degrees + 180) % 360) - 180),
          ).toBeLessThan(1.1e-6);
        },
      ),
    );
  });

  it('refuses what is no direction', () => {
    const axes = axesOf(AS_DRAWN);
    expect(() => machineDirection(axes, V(0, 0))).toThrow('machineDirection: drawn is (0, 0)');
    expect(() => machineDirection(axes, V(Number.NaN, 1))).toThrow('machineDirection: drawn is (NaN, 1)');
    expect(() => machineDirection(axes, Number.POSITIVE_INFINITY)).toThrow(
      'machineDirection: drawn is Infinity',
    );
  });
});
