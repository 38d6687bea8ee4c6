import { area, type Loop, type Region, subtract } from '@edgebite/core';
import { boxRegion, validateRegion } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';
import { Joints, touching } from '../../packages/core/src/region/joints.js';
import { closed, p } from './shapes.js';

/* Which loops touch in joints; plain to see. */

/** A hole on its corner, 4 high and 2 wide, clockwise. */
const diamond = (x: number, y: number): Loop =>
  closed(p(x, y), p(x - 1, y + 2), p(x, y + 4), p(x + 1, y + 2));

describe('loops that touch', () => {
  // A column of three, joints at one x, one that hangs on its side, and one at the height of a joint but beside it.
  const loops = [diamond(0, 4), diamond(0, 0), diamond(0, 8), diamond(2, 4), diamond(9, 4)];

  it('share a joint with what was added before', () => {
    const joints = new Joints();
    expect(joints.touch(loops[0] as Loop)).toBe(false);
    joints.add(loops[1] as Loop);
    expect(loops.map((loop) => joints.touch(loop))).toEqual([true, true, false, false, false]);
    joints.add(loops[3] as Loop);
    expect(loops.map((loop) => joints.touch(loop))).toEqual([true, true, false, true, false]);
  });

  it('are one group, by way of others too', () => {
    const groups = touching(loops);
    const leaders = loops.map((_, k) => groups.leader(k));
    expect(leaders).toEqual([0, 0, 0, 0, 4]);
  });
});

it('a long column of touching holes parts a plate where a cut opens both of its ends', () => {
  const count = 400;
  const top = 4 * count;
  const plate: Region = [
    {
      outer: boxRegion(-10, -10, 10, top + 10)[0]?.outer as Loop,
      holes: Array.from({ length: count }, (_, k) => diamond(0, 4 * k)),
    },
  ];
  const below = boxRegion(-0.25, -11, 0.25, 1);
  const above = boxRegion(-0.25, top - 1, 0.25, top + 11);
  const whole = 20 * (top + 20) - 4 * count;
  // A slot of 0.5 by 10.5 and the two corners beside the tip of the hole.
  const slot = 0.5 * 10.5 - 2 * ((0.5 * 0.25) / 2);
  for (const cuts of [[below], [below, above]]) {
    const rest = subtract(plate, cuts);
    validateRegion(rest, { extent: top + 20 });
    expect(rest).toHaveLength(cuts.length);
    expect(area(rest)).toBeCloseTo(whole - cuts.length * slot, 6);
  }
});
