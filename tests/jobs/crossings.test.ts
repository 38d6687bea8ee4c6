import { JobError, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

/** A plate with bores; each is a place and a diameter. */
const plateWith = (bores: readonly (readonly [number, number, number])[]) => ({
  edgebite: 1,
  units: 'mm',
  part: { outline: { rectangle: [400, 400] }, thickness: 10 },
  cuts: bores.map(([x, y, diameter], k) => ({ id: `c${k}`, kind: 'bore', center: [x, y], diameter })),
});

const times = <T>(count: number, make: (k: number) => T): T[] =>
  Array.from({ length: count }, (_, k) => make(k));

describe('cuts on top of each other', () => {
  // n circles that all cross make n (n - 1) places: 141 make 19,740 and 142 make 20,022.
  const heap = (count: number) => plateWith(times(count, (k) => [100 + k / 50, 100 + (k % 7) / 50, 60]));

  it('are taken up to twenty thousand places', () => {
    expect(parseJob(heap(141)).cuts).toHaveLength(141);
  });

  it('are refused beyond', () => {
    expect(() => parseJob(heap(142))).toThrow(JobError);
    expect(() => parseJob(heap(142))).toThrow(
      /\/cuts: the edges of cuts cross each other in more than 20000 places; .* leave out/,
    );
  });

  it('do not count where they are the same, one in another, or apart', () => {
    expect(parseJob(plateWith(times(300, () => [100, 100, 60]))).cuts).toHaveLength(300);
    expect(parseJob(plateWith(times(300, (k) => [200, 200, 20 + k]))).cuts).toHaveLength(300);
    expect(
      parseJob(plateWith(times(900, (k) => [10 + 12 * (k % 30), 10 + 12 * Math.floor(k / 30), 8]))).cuts,
    ).toHaveLength(900);
  });

  // Slots through one point cross each other with both of their sides: 4 places a pair.
  const star = (count: number) => ({
    ...plateWith([]),
    cuts: times(count, (k) => {
      const [x, y] = [150 * Math.cos((Math.PI * k) / count), 150 * Math.sin((Math.PI * k) / count)];
      const path = { svgPath: `M ${200 - x} ${200 - y} L ${200 + x} ${200 + y}` };
      return { id: `s${k}`, kind: 'swept', diameter: 1, path };
    }),
  });

  it('count if they are swept: 100 slots through one point make 19,800 places, 101 make 20,200', () => {
    expect(parseJob(star(100)).cuts).toHaveLength(100);
    expect(() => parseJob(star(101))).toThrow(/more than 20000 places/);
  });

  it('count if it is one swept cut that crosses itself', () => {
    // To and fro along rows, then along columns: 4 places for each row and column.
    const woven = (count: number) => {
      const rows = times(count, (k) => `H ${k % 2 === 0 ? 390 : 10} V ${22 + 2 * k}`).join(' ');
      const columns = times(
        count,
        (k) => `V ${k % 2 === 0 ? 10 : 390} H ${count % 2 === 0 ? 12 + 2 * k : 388 - 2 * k}`,
      );
      const path = { svgPath: `M 10 20 ${rows} ${columns.join(' ')}` };
      return { ...plateWith([]), cuts: [{ id: 'w', kind: 'swept', diameter: 1, path }] };
    };
    expect(parseJob(woven(60)).cuts).toHaveLength(1);
    expect(() => parseJob(woven(74))).toThrow(/more than 20000 places/);
  });

  it('do not count where one goes round a bend, or beside another', () => {
    const bend = times(400, (k) => {
      const angle = (Math.PI * k) / 400;
      return `${k === 0 ? 'M' : 'L'} ${200 - 100 * Math.cos(angle)} ${200 + 100 * Math.sin(angle)}`;
    }).join(' ');
    const cuts = [{ id: 'b', kind: 'swept', diameter: 8, path: { svgPath: bend } }];
    expect(parseJob({ ...plateWith([]), cuts }).cuts).toHaveLength(1);
  });

  it('are refused where thousands lie in one place, though none crosses another', () => {
    const nest = plateWith(times(2000, (k) => [200, 200, 1 + k / 50]));
    expect(() => parseJob(nest)).toThrow(/on top of each other/);
  });
});
