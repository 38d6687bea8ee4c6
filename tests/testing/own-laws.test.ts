import { intersect, type Region, union, xor } from '@edgebite/core';
import { toFlatten } from '@edgebite/core/flatten';
import { areaOf, type CutCase, cutRegions } from '@edgebite/core/testing';
import Flatten from '@flatten-js/core';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

describe('examples/own-laws', () => {
  beforeEach(() => {
    vi.spyOn(console, 'log').mockImplementation(() => undefined);
  });
  afterEach(() => {
    vi.restoreAllMocks();
  });

  it('finds a fault in the booleans of @flatten-js/core 1.6.15, and prints it', async () => {
    const { faults: found, told } = await import('../../examples/own-laws/laws.js');
    expect(found).not.toEqual([]);
    const printed = vi.mocked(console.log).mock.calls.map(([text]) => text);
    expect(printed).toEqual(found.map(told));

    // The fault is real. Of the smallest case the library's union and common part are right, as the kernel's areas
    // confirm; but the common part lies wholly inside the union, and taking it away takes nothing.
    const [fault] = found;
    expect(fault?.law).toBe('countsOnce');
    const outline = fault?.smallest.outline as Region;
    const [disc = []] = cutRegions(fault?.smallest as CutCase);
    const { unify, intersect: common, subtract } = Flatten.BooleanOperations;
    const whole = unify(toFlatten(outline), toFlatten(disc));
    const shared = common(toFlatten(outline), toFlatten(disc));
    const expected = areaOf(union([outline, disc])) - areaOf(intersect([outline, disc]));
    expect(whole.area() - shared.area()).toBeCloseTo(expected, 6);
    expect(Math.abs(subtract(whole, shared).area() - expected)).toBeGreaterThan(1);
    expect(areaOf(xor([outline, disc]))).toBeCloseTo(expected, 6);
  });
});
