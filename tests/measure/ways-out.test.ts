import {
  area,
  type Edge,
  examine,
  parseJob,
  type Region,
  type Report,
  type ReportWayOut,
  regionFromReport,
  subtract,
} from '@edgebite/core';
import { describe, expect, it } from 'vitest';

type Plain = Record<string, unknown>;

const zero = {
  x: [{ touch: 'left', tip: 10, reads: 0, tolerance: 0.01 }],
  y: [{ touch: 'front', tip: 10, reads: 0, tolerance: 0.01 }],
};

const reportOn = (cuts: readonly Plain[], over: Plain = {}): Report =>
  examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 40] }, thickness: 20 },
      keep: [10, 10],
      cuts,
      ...over,
    }),
  );

/** A seat of radius 15 about (40, 44), 17 deep: a slug of radius 10 in the back edge stands on a floor of 3. */
const SEAT = { id: 'seat', kind: 'annular', center: [40, 44], diameter: 30, wall: 5, reach: 17 };

const waysOf = (report: Report): readonly ReportWayOut[] => report.bodies.flatMap(({ waysOut }) => waysOut);
const wayOf = (report: Report, kind: ReportWayOut['kind']): ReportWayOut => {
  const way = waysOf(report).find((one) => one.kind === kind);
  if (way === undefined) throw new Error(`there is no way ${kind}`);
  return way;
};
const rolesOf = (report: Report) => report.bodies.map(({ role }) => role);

describe('the ways out of a slug on a floor', () => {
  const report = reportOn([SEAT]);

  it('are a saw, the other side, a longer reach and an end mill', () => {
    expect(rolesOf(report)).toEqual(['held slug']);
    expect(waysOf(report).map(({ kind }) => kind)).toEqual(['saw', 'other side', 'longer reach', 'end mill']);
  });

  it('have a line to saw along the open face, as long as the slug is there', () => {
    // By hand: the core of radius 10 has its centre 4 over the face: 2 sqrt(100 - 16) along it, 6 in.
    const { line, length, through, clean } = wayOf(report, 'saw');
    expect(length).toBeCloseTo(2 * Math.sqrt(84), 9);
    expect(through).toBeCloseTo(6, 9);
    const xs = line?.ends.map(([x]) => x).sort((a, b) => a - b) ?? [];
    expect(xs[0]).toBeCloseTo(40 - Math.sqrt(84), 9);
    expect(xs[1]).toBeCloseTo(40 + Math.sqrt(84), 9);
    expect(line?.ends.map(([, y]) => y)).toEqual([40, 40]);
    expect(clean?.height).toBe(3);
  });

  it('are told at the machine, however the part lies', () => {
    // The line goes from right to left on the drawing, and the zero is at the left and front end as the part lies.
    for (const [lie, words, start] of [
      [{}, 'to the left', [40 + Math.sqrt(84) + 5, 45]],
      [{ turn: 180 }, 'to the right', [40 - Math.sqrt(84) + 5, 5]],
      [{ turn: 90 }, 'towards you', [5, 45 + Math.sqrt(84)]],
      [{ flip: 'y' }, 'to the right', [40 - Math.sqrt(84) + 5, 45]],
    ] as const) {
      const from = 'flip' in lie ? { from: 'bottom' } : {};
      const { line } = wayOf(
        reportOn([{ ...SEAT, ...from }], { setups: [{ id: 'a', ...lie, zero, cuts: ['seat'] }] }),
        'saw',
      );
      expect(line?.machine.words).toBe(words);
      expect(line?.readout[0][0]).toBeCloseTo(start[0], 2);
      expect(line?.readout[0][1]).toBeCloseTo(start[1], 2);
    }
  });

  it('set it loose when they are gone', () => {
    const reach = wayOf(report, 'longer reach').size as number;
    expect(rolesOf(reportOn([{ ...SEAT, reach }]))).toEqual(['slug']);
    expect(rolesOf(reportOn([{ ...SEAT, reach: reach - 0.01 }]))).not.toEqual(['slug']);
    const { through } = wayOf(report, 'other side');
    const below = { ...SEAT, id: 'below', from: 'bottom', reach: through };
    expect(rolesOf(reportOn([SEAT, below]))).toEqual(['slug']);
  });

  it.each([4, 5])(
    'have a mill of %d whose way in the kerf sets it loose, and takes nothing past the wall',
    (size) => {
      const tools = [
        { id: 'wide', kind: 'end mill', toolMaterial: 'HSS', diameter: 6, cuts: ['a'] },
        { id: 'fits', kind: 'end mill', toolMaterial: 'HSS', diameter: size, cuts: ['b'] },
      ];
      const grooves = [
        { id: 'a', kind: 'swept', diameter: 6, depth: 1, path: { svgPath: 'M10 5 H20' } },
        { id: 'b', kind: 'swept', diameter: size, depth: 1, path: { svgPath: 'M10 15 H20' } },
      ];
      const own = reportOn([SEAT, ...grooves], { tools });
      const mill = wayOf(own, 'end mill');
      expect([mill.tool, mill.size]).toEqual(['fits', size]);
      const radius = 15 - size / 2;
      // The circle of its centre is in the part where it is under the back edge.
      const half = Math.acos(4 / radius);
      expect(mill.length).toBeCloseTo(2 * half * radius, 9);
      const end = (sign: number) =>
        `${40 + sign * radius * Math.sin(half + 0.3)} ${44 - radius * Math.cos(half + 0.3)}`;
      const along = {
        id: 'along',
        kind: 'swept',
        diameter: size,
        depth: 'through',
        path: { svgPath: `M${end(-1)} A${radius} ${radius} 0 0 1 ${end(1)}` },
      };
      const done = reportOn([SEAT, along]);
      // With a lip of the floor on it, the slug of a narrower mill is not of the ring alone.
      expect(rolesOf(done)).toEqual([size === 5 ? 'slug' : 'offcut']);
      // What is kept is as if the ring had gone through.
      const through = reportOn([{ ...SEAT, reach: 20 }]);
      const volume = (one: Report) => one.pieces.find(({ role }) => role === 'kept')?.volume as number;
      expect(volume(done)).toBeCloseTo(volume(through), 4);
    },
  );

  it('ask for a hole for the saw where the kerf is closed, and have no other side where the cutter is too short', () => {
    const closed = reportOn([{ ...SEAT, center: [40, 20] }]);
    const saw = wayOf(closed, 'saw');
    expect(saw.words).toContain('Drill a hole in the kerf for the blade first');
    expect(saw.length).toBeCloseTo(2 * Math.PI * 10, 9);
    expect(saw.line).toBeNull();
    const short = reportOn([{ ...SEAT, reach: 8 }]);
    expect(waysOf(short).map(({ kind }) => kind)).toEqual(['saw', 'longer reach', 'end mill']);
  });

  it('say how high the seam may be from what both setups may be off', () => {
    const setUp = reportOn([SEAT], { setups: [{ id: 'a', zero, cuts: ['seat'] }] });
    // Half a step of 0.005 beside each tolerance of 0.01, along both axes, from either side.
    expect(wayOf(setUp, 'other side').clean?.width).toBeCloseTo(2 * Math.hypot(0.0125, 0.0125), 12);
    expect(wayOf(report, 'other side').clean).toBeNull();
  });
});

/** A kerf of a saw along a line, so wide. */
function sawn(
  [[ax, ay], [bx, by]]: readonly [readonly [number, number], readonly [number, number]],
  wide: number,
): Region {
  const length = Math.hypot(bx - ax, by - ay);
  const [dx, dy] = [(bx - ax) / length, (by - ay) / length];
  // A little past both ends.
  const corner = (along: number, aside: number) => ({
    x: ax + along * dx - aside * dy,
    y: ay + along * dy + aside * dx,
  });
  const places = [
    corner(-1e-4, -wide),
    corner(length + 1e-4, -wide),
    corner(length + 1e-4, wide),
    corner(-1e-4, wide),
  ];
  const outer = places.map((a, k): Edge => ({ kind: 'line', a, b: places[(k + 1) % 4] as typeof a }));
  return [{ outer, holes: [] }];
}

describe('the ways out of a body that hangs by a neck', () => {
  // Two bites of radius 19.75 in opposite faces leave a neck of 0.5 in the middle.
  const bite = (id: string, y: number, over: Plain = {}) => ({
    id,
    kind: 'bore',
    center: [40, y],
    diameter: 39.5,
    ...over,
  });
  const report = reportOn([bite('front', 0), bite('back', 40)]);

  it('are a saw and a mill across it', () => {
    expect(rolesOf(report)).toEqual(['hanging']);
    expect(waysOf(report).map(({ kind }) => kind)).toEqual(['saw', 'end mill']);
    const saw = wayOf(report, 'saw');
    expect(saw.length).toBeCloseTo(0.5, 9);
    expect(saw.through).toBe(20);
    // Discs of 1 touch both bites where they are 0.5 from them: x² = 20.25² - 20².
    expect(wayOf(report, 'end mill').size).toBeCloseTo(2 * Math.sqrt(20.25 ** 2 - 20 ** 2), 9);
  });

  it('part it from the rest when they are gone', () => {
    const section = report.pieces.flatMap(({ sections }) => regionFromReport(sections[0]?.region ?? []));
    const kerf = sawn(wayOf(report, 'saw').line?.ends as never, 0.001);
    const left = subtract(section, [kerf]).filter((part) => area([part]) > 1);
    expect(left).toHaveLength(2);
  });

  it('go through all heights of the neck, and none but those', () => {
    // Here the back bite is 12 deep: below it the part is whole, so that nothing hangs.
    expect(rolesOf(reportOn([bite('front', 0), bite('back', 40, { depth: 12 })]))).toEqual([]);
    // A pocket over it takes the upper 8 of the neck.
    const pocket = { id: 'pocket', kind: 'bore', center: [40, 20], diameter: 4, depth: 8 };
    expect(wayOf(reportOn([bite('front', 0), bite('back', 40), pocket]), 'saw').through).toBe(12);
  });

  it('are none of a body that comes loose', () => {
    const loose = reportOn([{ ...SEAT, reach: 20 }]);
    expect(rolesOf(loose)).toEqual(['slug']);
    expect(waysOf(loose)).toEqual([]);
  });
});

describe('the ways out of a body that stands on low metal', () => {
  it('are a saw along it and the other side', () => {
    // A groove of 4 right through but for 0.6 parts the right half.
    const groove = { id: 'groove', kind: 'swept', diameter: 4, depth: 19.4, path: { svgPath: 'M40 -5 V45' } };
    const report = reportOn([groove]);
    expect(rolesOf(report)).toEqual(['hanging']);
    expect(waysOf(report).map(({ kind }) => kind)).toEqual(['saw', 'other side']);
    expect(wayOf(report, 'saw').through).toBeCloseTo(0.6, 9);
  });
});

describe('the words of the ways out', () => {
  const said = (report: Report, kind: ReportWayOut['kind']) => {
    const { words, leaves } = wayOf(report, kind);
    return [words, leaves];
  };

  it('of a slug on a floor name each length for what it is', () => {
    const report = reportOn([SEAT]);
    // 17 deep, so that 3 of 20 are left; the face is 2 sqrt(84) = 18.330 long and the core 6 deep in it.
    expect(said(report, 'saw')).toEqual([
      expect.stringMatching(
        /^Saw in from .+, level with the floor, 17\.000 mm under the face that the cut starts from: a line of 18\.330 mm, 6\.000 mm in\.$/,
      ),
      'The floor, 3.000 mm thick, under slug and kerf: mill, bore or file it out.',
    ]);
    expect(said(report, 'other side')).toEqual([
      'Turn the part over and cut seat from the bottom too, about the same centre, over 3.000 mm deep.',
      'A step at the seam, 3.000 mm from the bottom, as high as the two centres are off each other: bore both sides in one setting, or dress it.',
    ]);
    expect(said(report, 'longer reach')[0]).toBe('Cut seat with a cutter that reaches over 20.000 mm.');
    // Along a radius of 15 - 5 / 2 = 12.5, whose centre lies 4 over the face: 2 * 12.5 acos(4 / 12.5) = 31.127.
    expect(said(report, 'end mill')[0]).toBe(
      'Mill along the kerf of seat with an end mill of 5.000 mm or less, its centre 12.500 mm from that of the cut, 20.000 mm deep, 31.127 mm along.',
    );
  });

  it('of one that was cut from below ask for the top', () => {
    const [words, leaves] = said(reportOn([{ ...SEAT, from: 'bottom' }]), 'other side');
    expect(words).toContain('cut seat from the top too');
    expect(leaves).toContain('3.000 mm from the top');
  });

  it('of a slug in a closed kerf go round its core', () => {
    // The core is 20 across: round it 20 pi = 62.832.
    expect(said(reportOn([{ ...SEAT, center: [40, 20] }]), 'saw')).toEqual([
      'Saw along the kerf of seat, 62.832 mm long, through the floor of 3.000 mm. Drill a hole in the kerf for the blade first.',
      'A lip of the floor up to 5.000 mm wide and 3.000 mm high on the wall, along 62.832 mm: mill or file it back to the wall.',
    ]);
  });

  it('of a neck go along what is thin and through all of its height', () => {
    const bite = (id: string, y: number) => ({ id, kind: 'bore', center: [40, y], diameter: 39.5 });
    const report = reportOn([bite('front', 0), bite('back', 40)]);
    // Thin over 2 sqrt(20.25² - 20²) = 6.344, half of which may stay as a stub.
    expect(said(report, 'saw')).toEqual([
      'Saw across the neck, 0.500 mm long and 20.000 mm through.',
      'A stub on the part, up to half of the 6.344 mm in which the neck is thin: file or mill it flush.',
    ]);
    expect(said(report, 'end mill')[0]).toBe(
      'Mill across the neck, 0.500 mm long and 20.000 mm deep: an end mill of 6.344 mm or more takes all of its thin part.',
    );
    expect(wayOf(report, 'saw').clean?.width).toBeCloseTo(Math.sqrt(20.25 ** 2 - 20 ** 2), 9);
  });

  it('of low metal go along it, and are as high as that', () => {
    const groove = { id: 'groove', kind: 'swept', diameter: 4, depth: 19.4, path: { svgPath: 'M40 -5 V45' } };
    const report = reportOn([groove]);
    const { length } = wayOf(report, 'saw');
    // It is joined over the whole of 40 at least, at one side of the groove or at both.
    expect(length).toBeGreaterThanOrEqual(40 - 1e-9);
    const long = (length as number).toFixed(3);
    expect(said(report, 'saw')).toEqual([
      `Saw along the metal that joins it, ${long} mm long and up to 0.600 mm high.`,
      `A lip up to 0.600 mm high along ${long} mm: mill or file it off.`,
    ]);
    expect(said(report, 'other side')[0]).toBe('Turn the part over and mill off the 0.600 mm that join it.');
  });
});
