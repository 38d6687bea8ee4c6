import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { sheetOf } from '../../../packages/previewer/src/sheet/model.js';
import { sheetText } from '../../../packages/previewer/src/sheet/text.js';
import type { CutDocument } from '../../outside/machine/sim/job.js';
import { plate, setup, stepOf, told } from './told.js';

/*
 * Half a bore of radius 10 over the front edge, y = 0, of the plate as drawn. There metal lies behind the centre: teeth
 * from 0 to 180 degrees, going clockwise, move along (sin a, -cos a), (2 / pi, 0) on average: the part is pushed to the
 * right. The way off the wall is straight to the front, s with sqrt(10^2 + s^2) - 10 = 0.2 at the ends of the wall,
 * which lie square to it: s = sqrt(0.2 * 20.2) = 2.00998.
 */

const HALF: CutDocument = { id: 'half', kind: 'bore', center: [40, 0], diameter: 20 };
const OFF = Math.sqrt(0.2 * 20.2);

const lying = (lie: { flip?: 'x' | 'y'; turn?: number }) =>
  plate([HALF], { setups: [setup('lie', ['half'], lie)] });

describe('the push on a part, and the way off a wall', () => {
  it.each([
    // Turned round, metal lies before the centre: everything is the other way.
    [{ turn: 180 }, 'to the left', 'away from you'],
    // A quarter counter-clockwise puts the front edge to the right and metal to the left of the centre.
    [{ turn: 90 }, 'away from you', 'to the right'],
    // Turned over about x the front edge comes to lie at the back; metal lies before the centre.
    [{ flip: 'x' }, 'to the left', 'away from you'],
    // Turned over about y it stays in front.
    [{ flip: 'y' }, 'to the right', 'towards you'],
    [{}, 'to the right', 'towards you'],
  ] as const)('%j: pushed %s, backed off %s', (lie, push, way) => {
    const { load, backOff } = stepOf(told(lying(lie)), 0);
    expect(load?.entry?.push?.words).toBe(push);
    expect(load?.entry?.sideLoad).toBeCloseTo(2 / Math.PI, 9);
    expect(backOff.machine?.words).toBe(way);
    expect(backOff.by).toBeCloseTo(OFF, 9);
  });

  it.each([
    // The same at the left end, x = 0, where metal lies to the right of the centre: teeth are in it from 270 to 90, and
    // going clockwise move along (0, -1) on average: towards the person. The way off is to the left.
    [{}, 'towards you', 'to the left'],
    [{ turn: 180 }, 'away from you', 'to the right'],
    // Turned over about x the left end stays at the left, about y it comes to the right.
    [{ flip: 'x' }, 'towards you', 'to the left'],
    [{ flip: 'y' }, 'away from you', 'to the right'],
    [{ flip: 'x', turn: 90 }, 'to the right', 'towards you'],
  ] as const)('%j, at the left end: pushed %s, backed off %s', (lie, push, way) => {
    const cut: CutDocument = { id: 'half', kind: 'bore', center: [0, 15], diameter: 20 };
    const { load, backOff } = stepOf(told(plate([cut], { setups: [setup('lie', ['half'], lie)] })), 0);
    expect(load?.entry?.push?.words).toBe(push);
    expect(backOff.machine?.words).toBe(way);
  });

  it('keeps the drawing beside it: the push by the cutter, which runs the other way round from below', () => {
    // As drawn seen from above: to the right, 0 degrees. Turned over about x the same tooth runs counter-clockwise on
    // the drawing, so that the part is pushed towards 180 there. The way off is to the front of the drawing always.
    const plain = stepOf(told(lying({ turn: 180 })), 0);
    expect(plain.load?.entry?.pushDrawn).toBeCloseTo(0, 6);
    expect(plain.backOff.drawn).toBeCloseTo(270, 6);
    const over = stepOf(told(lying({ flip: 'x' })), 0);
    expect(over.load?.entry?.pushDrawn).toBeCloseTo(180, 6);
    expect(over.backOff.drawn).toBeCloseTo(270, 6);
  });

  it('reaches the sheet, with what the readout shows when the tool is clear', () => {
    // Turned by 180 the centre is 40 right of the left face and 30 behind the front one, each and half a tip of 10:
    // 45 and 35. Backed off away from the person it reads 37.01 in Y, to the step of 0.005.
    const job = lying({ turn: 180 });
    const { backOff, stands } = stepOf(told(job), 0);
    expect(stands.map(({ what }) => what)).toEqual(['center', 'back off']);
    expect(stands[0]?.readout).toEqual([45, 35]);
    expect(backOff.readout).toEqual([45, 37.01]);
    const sheet = sheetText(sheetOf(examine(parseJob(job))));
    expect(sheet).toMatch(/to the left/);
    expect(sheet).toMatch(/away from you/);
    expect(sheet).toMatch(/37\.010/);
  });
});
