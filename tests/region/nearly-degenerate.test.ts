import { readFileSync } from 'node:fs';
import { area, intersect, perimeter, type Region, subtract, union, xor } from '@edgebite/core';
import { extentOf, regionFaults } from '@edgebite/core/testing';
import { describe, expect, it } from 'vitest';

/*
 * Cases that `npm run exact` found outside the contract once. Areas are by CGAL's arrangements of circle segments, in exact
 * arithmetic (tests/tools/oracle); a result may be off by eight weld tolerances along all edges.
 */

interface Case {
  readonly name: string;
  readonly op: 'union' | 'intersect' | 'subtract' | 'xor';
  readonly weld: number;
  readonly area: number;
  readonly operands: readonly Region[];
}

const WELDS = 8;

const cases = readFileSync('tests/cases/nearly-degenerate.jsonl', 'utf8')
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line) as Case);

const run = ({ op, operands: [first = [], ...others] }: Case): Region => {
  if (op === 'subtract') return subtract(first, others);
  return { union, intersect, xor }[op]([first, ...others]);
};

describe('nearly degenerate operands', () => {
  it.each(cases)('$op: $name', (one) => {
    const got = run(one);
    const length = one.operands.reduce((sum, operand) => sum + perimeter(operand), 0);
    expect(Math.abs(area(got) - one.area)).toBeLessThan(WELDS * one.weld * length);
    const welded = one.weld / 1e-9;
    const extent = Math.max(extentOf(...one.operands), welded);
    expect(regionFaults(got, { extent, welded })).toEqual([]);
  });
});
