import { describe, expect, it } from 'vitest';
import type { CutDocument } from '../../outside/machine/sim/job.js';
import { findingsOf, plate, told } from './told.js';

const HSS = { toolMaterial: 'HSS' };

describe('a tool and its place', () => {
  it('are a danger where a drill stands with its centre off the metal', () => {
    const eye: CutDocument = { id: 'eye', kind: 'bore', center: [40, -2], diameter: 10 };
    const tools = [{ id: 'drill', kind: 'drill', ...HSS, diameter: 10, cuts: ['eye'] }];
    const dangers = findingsOf(told(plate([eye], { tools })), 0).filter(({ level }) => level === 'danger');
    expect(dangers.some(({ message }) => /2\.000 mm off the metal/.test(message))).toBe(true);
  });

  it('have the feed of a plunge where an end mill goes straight down', () => {
    // A plunge of 12 and a slot 12 long with the same mill: the plunge has a quarter to a half of the feed (common
    // practice, no source), so it takes twice the least and four times the most.
    const hole: CutDocument = { id: 'hole', kind: 'bore', center: [60, 15], diameter: 8 };
    const slot: CutDocument = {
      id: 'slot',
      kind: 'swept',
      diameter: 8,
      depth: 2,
      path: { edges: [{ kind: 'line', a: [20, 15], b: [32, 15] }] },
    };
    const tools = [
      { id: 'mill', kind: 'end mill', ...HSS, diameter: 8, teeth: 2, maxSpeed: 800, cuts: ['hole', 'slot'] },
    ];
    const part = { outline: { rectangle: [80, 30] }, thickness: 12, material: 'mild steel' };
    const report = told(plate([hole, slot], { part, tools }));
    const [plunge, along] = report.steps.map(
      (step) => (step as unknown as { minutes: [number, number] | null }).minutes,
    );
    expect(along?.[0]).toBeGreaterThan(0);
    expect(plunge?.[0]).toBeCloseTo(2 * (along?.[0] as number), 9);
    expect(plunge?.[1]).toBeCloseTo(4 * (along?.[1] as number), 9);
    // Whether it cuts to its centre is not said, and matters.
    expect(findingsOf(report, 0).some(({ message }) => /cuts? to its centre/.test(message))).toBe(true);
  });

  it.each([
    // A mill of 10 that does not cut to its centre goes down at the start of its path, left of the plate: 5.1 off it in
    // the air, 4.9 off with its teeth over the edge, and 5.1 inside it with its middle on metal.
    [-5.1, null],
    [-4.9, /centre .*4\.900 mm off the metal/],
    [5.1, /cuts? to its centre/],
  ])('are looked at where a path starts, at %f', (x, words) => {
    const slot: CutDocument = {
      id: 'slot',
      kind: 'swept',
      diameter: 10,
      depth: 2,
      path: { edges: [{ kind: 'line', a: [x, 15], b: [40, 15] }] },
    };
    const mill = { id: 'mill', kind: 'end mill', ...HSS, diameter: 10, teeth: 2, centerCutting: false };
    const found = findingsOf(told(plate([slot], { tools: [{ ...mill, cuts: ['slot'] }] })), 0);
    const placed = found.filter(({ message }) => /centre/.test(message));
    expect(placed.map(({ message }) => message)).toEqual(
      words === null ? [] : [expect.stringMatching(words)],
    );
  });

  it('are told of where a drill can grab in brass', () => {
    const eye: CutDocument = { id: 'eye', kind: 'bore', center: [40, 15], diameter: 10 };
    const tools = [{ id: 'drill', kind: 'drill', ...HSS, diameter: 10, cuts: ['eye'] }];
    const part = { outline: { rectangle: [80, 30] }, thickness: 12, material: 'brass' };
    const report = told(plate([eye], { part, tools }));
    expect(findingsOf(report, 0).some(({ message }) => /grab/.test(message))).toBe(true);
  });
});
