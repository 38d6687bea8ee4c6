import { describe, expect, it } from 'vitest';
import { bore, codes, finder, messageOf, reportOn, setup } from '../datum/setup-jobs.js';

/*
 * Tools, lays and parts that are not what they are taken for, each alone, worked by hand on a plate 80 by 40 and 10 thick. What
 * the zero adds is 0.02 of the finder and half a step of 0.005 along each axis.
 */

const ZERO = 0.0225;
const FINE = { limits: { web: 3, knifeEdge: 80 } };

const tool = (kind: string, cuts: readonly string[], over: Record<string, unknown>) => ({
  tools: [{ id: 't', kind, toolMaterial: 'HSS', cuts, ...over }],
});

describe('a tool that is off', () => {
  it('in its diameter moves each wall by half of that', () => {
    // 5 from the front, radius 4: a web of 1, less or more 0.01 of the radius.
    const over = { ...FINE, ...tool('drill', ['a'], { diameterTolerance: 0.02 }) };
    const [web] = reportOn([bore('a', [40, 5], 8)], [setup(['a'])], over).webs;
    expect(web?.interval?.worst[0]).toBeCloseTo(1 - ZERO - 0.01, 9);
    expect(web?.interval?.worst[1]).toBeCloseTo(1 + ZERO + 0.01, 9);
    expect(web?.interval?.rss[0]).toBeCloseTo(1 - Math.hypot(0.02, 0.0025, 0.01), 9);
  });

  it('is off the same in two holes: between them by all of its diameter', () => {
    const cuts = [bore('a', [30, 20], 8), bore('b', [40, 20], 8)];
    const over = { ...FINE, ...tool('drill', ['a', 'b'], { diameterTolerance: 0.02 }) };
    const web = reportOn(cuts, [setup(['a', 'b'])], over).webs.find(
      ({ between }) => between.join() === 'cut:a,cut:b',
    );
    // The zero moves both. What is left is reading, twice, along x; the tool takes 0.01 from both sides.
    expect(web?.interval?.rss[1]).toBeCloseTo(2 + Math.hypot(0.0025, 0.0025, 0.02), 9);
    // Two tools of their own are less likely to be off alike.
    const two = {
      ...FINE,
      tools: ['a', 'b'].map((id) => ({
        id,
        kind: 'drill',
        toolMaterial: 'HSS',
        cuts: [id],
        diameterTolerance: 0.02,
      })),
    };
    const other = reportOn(cuts, [setup(['a', 'b'])], two).webs.find(
      ({ between }) => between.join() === 'cut:a,cut:b',
    );
    expect(other?.interval?.rss[1]).toBeCloseTo(2 + Math.hypot(0.0025, 0.0025, 0.01, 0.01), 9);
    expect(other?.interval?.worst[1]).toBeCloseTo(web?.interval?.worst[1] ?? 0, 9);
  });

  it('that runs out cuts over its size, never under it', () => {
    // An indicator that shows 0.04: the edge stands up to 0.02 further out.
    const over = { ...FINE, ...tool('drill', ['a'], { runOut: 0.04 }) };
    const report = reportOn([bore('a', [40, 5], 8)], [setup(['a'])], over);
    expect(report.webs[0]?.interval?.worst[0]).toBeCloseTo(1 - ZERO - 0.02, 9);
    expect(report.webs[0]?.interval?.worst[1]).toBeCloseTo(1 + ZERO, 9);
  });

  it('and leaves the core of its ring smaller by as much', () => {
    // A ring of 20, its core of 12, over the right end: the core is cut there by the face x = 80, 3 left of the centre.
    const ring = { id: 'r', kind: 'annular', center: [83, 20], diameter: 20, wall: 4 };
    const over = { limits: { web: 3, knifeEdge: 90 }, ...tool('annular cutter', ['r'], { runOut: 0.04 }) };
    const { knifeEdges } = reportOn([ring], [setup(['r'])], over);
    const core = knifeEdges.find(({ piece }) => piece === 'slug-1');
    // cos a = 3 / r: r from 5.98 to 6 and the face from 2.9775 to 3.0225 off.
    const angle = (h: number, r: number) => (Math.acos(h / r) * 180) / Math.PI;
    expect(core?.interval?.worst[0]).toBeCloseTo(angle(3 + ZERO, 5.98), 6);
    expect(core?.interval?.worst[1]).toBeCloseTo(angle(3 - ZERO, 6), 6);
  });

  it('leaves the tip between the legs of one groove as sharp as it is drawn', () => {
    // Both legs are off alike. They rise 15 over 30: the tip between them has twice the angle of that.
    const groove = { id: 'v', kind: 'swept', diameter: 4, path: { svgPath: 'M30 5L60 20L30 35' } };
    const over = { ...FINE, ...tool('end mill', ['v'], { diameterTolerance: 0.02 }) };
    const { knifeEdges } = reportOn([groove], [setup(['v'])], over);
    expect(knifeEdges).toHaveLength(1);
    const angle = (2 * Math.atan2(15, 30) * 180) / Math.PI;
    for (const bound of ['worst', 'rss'] as const) {
      const [low, high] = knifeEdges[0]?.interval?.[bound] ?? [];
      expect(low).toBeCloseTo(angle, 9);
      expect(high).toBeCloseTo(angle, 9);
    }
  });

  it('is a head, set anew for each diameter', () => {
    const cuts = [bore('a', [30, 20], 8), bore('b', [40, 20], 8), bore('c', [50.5, 20], 9)];
    const over = {
      ...FINE,
      ...tool('boring head', ['a', 'b', 'c'], { settingTolerance: 0.02, maxSpeed: 500 }),
    };
    const { webs } = reportOn(cuts, [setup(['a', 'b', 'c'])], over);
    const between = (names: string) => webs.find((web) => web.between.join() === names);
    expect(between('cut:a,cut:b')?.interval?.rss[1]).toBeCloseTo(2 + Math.hypot(0.0025, 0.0025, 0.02), 9);
    expect(between('cut:b,cut:c')?.interval?.rss[1]).toBeCloseTo(
      2 + Math.hypot(0.0025, 0.0025, 0.01, 0.01),
      9,
    );
  });

  it('changes depth, opening and what is left of a bite', () => {
    // Radius 10, its centre 6 outside the front: 4 deep, 36 left.
    const over = tool('drill', ['a'], { diameterTolerance: 0.02 });
    const [bite] = reportOn([bore('a', [40, -6], 20)], [setup(['a'])], over).cuts[0]?.bites ?? [];
    expect(bite?.depthInterval?.worst[1]).toBeCloseTo(4 + ZERO + 0.01, 9);
    expect(bite?.leftInterval?.worst[0]).toBeCloseTo(36 - ZERO - 0.01, 9);
    expect(bite?.openingInterval?.worst[1]).toBeCloseTo(2 * Math.sqrt(10.01 ** 2 - (6 - ZERO) ** 2), 9);
    expect(bite?.openingInterval?.worst[0]).toBeCloseTo(2 * Math.sqrt(9.99 ** 2 - (6 + ZERO) ** 2), 9);
  });
});

describe('a bite over a corner', () => {
  it('may be off along both faces', () => {
    // About (17, -2) with radius 25: it crosses the front at 17 + sqrt(25² - 2²), the left end at -2 + sqrt(25² - 17²).
    const [front, left] = reportOn([bore('a', [17, -2], 50)], [setup(['a'])]).cuts[0]?.bites ?? [];
    const along = (c: number, q: number) => c + Math.sqrt(25 ** 2 - q ** 2);
    expect(left?.face).toBe('outline:3');
    expect(left?.depthInterval?.worst[0]).toBeCloseTo(along(17 - ZERO, 2 + ZERO), 9);
    expect(left?.depthInterval?.worst[1]).toBeCloseTo(along(17 + ZERO, 2 - ZERO), 9);
    expect(left?.openingInterval?.worst[1]).toBeCloseTo(along(-2 + ZERO, 17 - ZERO), 9);
    expect(left?.leftInterval?.worst[0]).toBeCloseTo(80 - along(17 + ZERO, 2 - ZERO), 9);
    expect(front?.depthInterval?.worst[1]).toBeCloseTo(23 + ZERO, 9);
    // By squares: along the front by x, and by y as much as 2 in 24.9.
    const slope = 2 / Math.sqrt(25 ** 2 - 2 ** 2);
    const one = Math.hypot(0.02, 0.0025);
    expect(left?.depthInterval?.rss[1]).toBeCloseTo(along(17, 2) + Math.hypot(one, slope * one), 9);
  });
});

describe('a part that is off', () => {
  it('in its sizes is so between the zero and the far face only', () => {
    const part = { outline: { rectangle: [80, 40] }, thickness: 10, sizeTolerance: 0.05 };
    const far = reportOn([bore('a', [40, 35], 8)], [setup(['a'])], { ...FINE, part }).webs;
    expect(far[0]?.interval?.worst[0]).toBeCloseTo(1 - ZERO - 0.05, 9);
    const near = reportOn([bore('a', [40, 5], 8)], [setup(['a'])], { ...FINE, part }).webs;
    expect(near[0]?.interval?.worst[0]).toBeCloseTo(1 - ZERO, 9);
  });
});

describe('a lay that may be turned', () => {
  const turned = (over: Record<string, unknown> = {}) =>
    setup(['a'], {
      angleTolerance: 0.1,
      zero: {
        x: [{ touch: 'left', tip: 10, tolerance: 0.02, at: [0, 10] }],
        y: [{ touch: 'front', tip: 10, tolerance: 0.02, at: [20, 0] }],
      },
      ...over,
    });
  const arc = (0.1 * Math.PI) / 180;

  it('moves places about where the faces were touched', () => {
    // 5 above the front and 40 right of where that was touched: turned by 0.1° it is 40 sin 0.1° = 0.0698 further off.
    const [web] = reportOn([bore('a', [60, 5], 8)], [turned()], FINE).webs;
    expect(web?.interval?.worst[0]).toBeCloseTo(1 - ZERO - 40 * arc, 3);
    expect(web?.interval?.worst[0]).toBeLessThan(1 - ZERO - 40 * Math.sin(arc));
    expect(web?.interval?.rss[0]).toBeCloseTo(1 - Math.hypot(0.02, 0.0025, 40 * arc), 9);
    // Over the place that was touched it does nothing to speak of.
    const [over] = reportOn([bore('a', [20, 5], 8)], [turned()], FINE).webs;
    expect(over?.interval?.worst[0]).toBeCloseTo(1 - ZERO, 3);
  });

  it('is told of the targets, and of the setup', () => {
    const { setups } = reportOn([bore('a', [60, 30], 8)], [turned()]);
    expect(setups[0]?.angleTolerance).toBeCloseTo(0.1, 12);
    // x by 20 above where the left end was touched, y by 40 beside where the front was.
    expect(setups[0]?.targets[0]?.rss[0]).toBeCloseTo(Math.hypot(0.02, 0.0025, 20 * arc), 9);
    expect(setups[0]?.targets[0]?.rss[1]).toBeCloseTo(Math.hypot(0.02, 0.0025, 40 * arc), 9);
  });

  it('counts all along a face where it does not say where that was touched', () => {
    const zero = {
      x: [{ touch: 'left', tip: 10, tolerance: 0.02 }],
      y: [{ touch: 'front', tip: 10, tolerance: 0.02 }],
    };
    const [web] = reportOn([bore('a', [40, 5], 8)], [turned({ zero })], FINE).webs;
    // The middle of the front, 40 to either side: at worst as far off as at one end, but for squares of the angle.
    expect(web?.interval?.worst[0]).toBeCloseTo(1 - ZERO - 40 * arc, 2);
    expect(web?.interval?.worst[0]).toBeLessThan(1 - ZERO - 40 * Math.sin(arc));
    // A product of two even spreads has a third of the variance of one.
    expect(web?.interval?.rss[0]).toBeCloseTo(1 - Math.hypot(0.02, 0.0025, (40 * arc) / Math.sqrt(3)), 9);
  });

  it('turns what is milled along an edge', () => {
    const groove = { id: 'a', kind: 'swept', diameter: 8, path: { svgPath: 'M30 6H60' } };
    const [web] = reportOn([groove], [turned()], FINE).webs;
    // Thinnest at the far end, 60: 40 beside where the front was touched.
    expect(web?.interval?.worst[0]).toBeLessThan(2 - ZERO - 40 * arc);
    expect(web?.interval?.worst[0]).toBeGreaterThan(2 - ZERO - 0.0025 - 45 * arc);
  });

  it('is refused where it is touched beside the face, or a stop is', () => {
    const beside = { x: [{ touch: 'left', tip: 10, at: [0, 60] }], y: [{ touch: 'front', tip: 10 }] };
    expect(() => reportOn([bore('a', [60, 5], 8)], [turned({ zero: beside })])).toThrow(/not beside left/);
    const stop = {
      x: [
        { touch: 's', tip: 10, at: [0, 6] },
        { bears: 'left', on: 's' },
      ],
      y: [{ touch: 'front', tip: 10 }],
    };
    const stops = [{ id: 's', face: 'left' }];
    expect(() => reportOn([bore('a', [60, 5], 8)], [turned({ zero: stop, stops })])).toThrow(
      /give it in "bears"/,
    );
  });
});

describe('a floor', () => {
  const heights = (z: unknown[], over: Record<string, unknown> = {}) =>
    setup(['a'], {
      zero: { x: [{ touch: 'left', tip: 10 }], y: [{ touch: 'front', tip: 10 }], z },
      ...over,
    });
  const part = { outline: { rectangle: [80, 40] }, thickness: 10, thicknessTolerance: 0.1 };
  const pocket = bore('a', [40, 20], 8, { depth: 9 });

  it('is off by the thickness where the zero is on the other face, else not', () => {
    const top = reportOn([pocket], [heights([{ touch: 'top', tolerance: 0.02 }])], { part });
    expect(top.floors[0]?.interval?.worst).toEqual(
      [1 - 0.1225, 1 + 0.1225].map((one) => expect.closeTo(one, 9)),
    );
    expect(top.floors[0]?.interval?.rss[0]).toBeCloseTo(1 - Math.hypot(0.1, 0.02, 0.0025), 9);
    const bottom = reportOn([pocket], [heights([{ touch: 'bottom', tolerance: 0.02 }])], { part });
    expect(bottom.floors[0]?.interval?.worst[0]).toBeCloseTo(1 - 0.0225, 9);
    // Turned over, what is touched on top is the bottom of the drawing: a cut from there counts from it.
    const below = reportOn(
      [{ ...pocket, from: 'bottom' }],
      [heights([{ touch: 'top', tolerance: 0.02 }], { flip: 'x' })],
      { part },
    );
    expect(below.floors[0]?.interval?.worst[0]).toBeCloseTo(1 - 0.1225, 9);
  });

  it('is not told without a zero in Z', () => {
    expect(reportOn([pocket], [setup(['a'])], { part }).floors[0]?.interval).toBeNull();
  });

  it('that may be cut through, or under the limit, says so', () => {
    const z = [{ touch: 'top', tolerance: 0.02 }];
    const deep = { ...pocket, depth: 9.9 };
    const go = reportOn([deep], [heights(z)], { part });
    expect(messageOf(go, 'floor-may-go')).toMatch(
      /between -0\.02\d mm and 0\.22\d mm at worst, -0\.002 mm and 0\.202 mm by root of squares/,
    );
    expect(go.steps[0]?.findings.map((k) => go.findings[k]?.code)).toContain('floor-may-go');
    const limits = { web: 1, knifeEdge: 30 };
    expect(codes(reportOn([{ ...pocket, depth: 8.95 }], [heights(z)], { part, limits }))).toContain(
      'floor-may-be-thin',
    );
    expect(codes(reportOn([{ ...pocket, depth: 9.05 }], [heights(z)], { part, limits }))).toContain(
      'floor-may-be-enough',
    );
    expect(
      codes(reportOn([{ ...pocket, depth: 8 }], [heights(z)], { part, limits })).filter((code) =>
        code.startsWith('floor'),
      ),
    ).toEqual([]);
  });

  it('that holds a slug says where that may come loose', () => {
    const ring = { id: 'a', kind: 'annular', center: [40, 20], diameter: 20, wall: 4 };
    const z = [{ touch: 'top', tolerance: 0.02 }];
    const limits = { web: 0.2, knifeEdge: 30 };
    const thin = reportOn([{ ...ring, depth: 9.7 }], [heights(z)], { part, limits });
    expect(messageOf(thin, 'slug-may-come-loose')).toContain(
      'it may be under 0.200 mm, and slug-1 may come loose',
    );
    expect(codes(reportOn([{ ...ring, depth: 9 }], [heights(z)], { part, limits }))).not.toContain(
      'slug-may-come-loose',
    );
  });
});

describe('a web that is all that holds a part of the plate', () => {
  // Two grooves 4 wide into the plate at x = 40 leave 1.01 of it between them, from y = 19.495 to 20.505.
  const grooves = (gap: number) => [
    { id: 'a', kind: 'swept', diameter: 4, path: { svgPath: `M40 -5V${20 - gap / 2 - 2}` } },
    { id: 'b', kind: 'swept', diameter: 4, path: { svgPath: `M40 45V${20 + gap / 2 + 2}` } },
  ];
  const limits = { web: 1, knifeEdge: 30 };
  const far = [setup(['a']), setup(['b'], { id: 'o', turn: 180 })];

  it('says that it may come loose', () => {
    expect(codes(reportOn(grooves(1.01), far, { limits }))).toContain('piece-may-come-loose');
    expect(codes(reportOn(grooves(1.2), far, { limits }))).not.toContain('piece-may-come-loose');
  });

  it('does not where metal goes round the other way, or stands below', () => {
    const hole = [bore('a', [40, 5.01], 8)];
    expect(codes(reportOn(hole, [setup(['a'])], { limits }))).not.toContain('piece-may-come-loose');
    const blind = grooves(1.01).map((cut) => ({ ...cut, depth: 6 }));
    expect(codes(reportOn(blind, far, { limits }))).not.toContain('piece-may-come-loose');
  });
});

describe('a bore that is cut from both sides', () => {
  const halves = [bore('a', [40, 20], 8, { depth: 6 }), bore('b', [40, 20], 8, { depth: 5, from: 'bottom' })];
  const zero = {
    x: [{ touch: 'left', tip: 10, tolerance: 0.02 }],
    y: [{ touch: 'front', tip: 10, tolerance: 0.02 }],
  };
  const setups = (over: Record<string, unknown> = {}) => [
    setup(['a'], { id: 's', zero }),
    setup(['b'], { id: 'o', zero, flip: 'x', ...over }),
  ];

  it('may have a step where the halves meet', () => {
    const { seams } = reportOn(halves, setups());
    expect(seams).toMatchObject([{ cuts: ['a', 'b'], center: [40, 20], diameter: 8, from: 4, overlap: 1 }]);
    // x by the finder and the reading of both, 0.045, y as well: aside by the diagonal of both at worst.
    expect(seams[0]?.step?.worst).toBeCloseTo(Math.hypot(0.045, 0.045), 9);
    expect(seams[0]?.step?.rss).toBeCloseTo(Math.hypot(0.02, 0.02, 0.0025, 0.0025), 4);
  });

  it('has none for what both share, and more for heads that are set twice', () => {
    // One stop, touched once: along x both are off by the same. Along y the far face counts, turned over.
    const stop = [
      { touch: 'e', tip: 10, tolerance: 0.02 },
      { bears: 'left', on: 'e' },
    ];
    const stops = [{ id: 'e', face: 'left' }];
    const shared = { x: stop, y: [{ touch: 'front', tip: 10, reads: 0 }] };
    const both = [
      setup(['a'], { id: 's', zero: shared, stops }),
      setup(['b'], { id: 'o', zero: shared, stops, flip: 'x' }),
    ];
    const { seams } = reportOn(halves, both);
    expect(seams[0]?.step?.worst).toBeCloseTo(Math.hypot(0.005, 0.005), 9);
    const head = tool('boring head', ['a', 'b'], { settingTolerance: 0.02, maxSpeed: 500 });
    expect(reportOn(halves, both, head).seams[0]?.step?.worst).toBeCloseTo(
      Math.hypot(0.005, 0.005) + 0.02,
      9,
    );
    const drill = tool('drill', ['a', 'b'], { diameterTolerance: 0.02 });
    expect(reportOn(halves, both, drill).seams[0]?.step?.worst).toBeCloseTo(Math.hypot(0.005, 0.005), 9);
  });

  it('says so, and is none where the two do not meet or are apart', () => {
    expect(messageOf(reportOn(halves, setups()), 'seam-step')).toContain('a step of up to 0.064 mm may stay');
    expect(reportOn([halves[0] ?? {}, { ...halves[1], depth: 3 }], setups()).seams).toEqual([]);
    expect(reportOn([halves[0] ?? {}, { ...halves[1], center: [40.1, 20] }], setups()).seams).toEqual([]);
  });
});

describe('a cut through the part', () => {
  const depthOf = (cut: Record<string, unknown>, kind: string | null, over: Record<string, unknown> = {}) => {
    const zero = { x: [finder('left')], y: [finder('front')], z: [{ touch: 'top', tolerance: 0.1 }] };
    const tools = kind === null ? {} : tool(kind, ['a'], {});
    return reportOn([{ ...bore('a', [40, 20], 10), ...cut }], [setup(['a'], { zero, ...over })], tools);
  };
  // Point of a 118° drill: 10 / (2 tan 59°) = 10 / 3.328559.
  const point = 10 / 3.328559;

  it('goes past the lower face by what is asked for, and by the point of a drill', () => {
    const depths = (report: ReturnType<typeof depthOf>) => {
      const { readout = Number.NaN, below = Number.NaN } = report.setups[0]?.targets[0]?.depth ?? {};
      return [readout, below];
    };
    const near = (...values: number[]) => values.map((value) => expect.closeTo(value, 2));
    expect(depths(depthOf({}, 'end mill'))).toEqual([-10, 0]);
    expect(depths(depthOf({ breakThrough: 0.5 }, 'end mill'))).toEqual(near(-10.5, 0.5));
    expect(depths(depthOf({ breakThrough: 0.5 }, 'drill'))).toEqual(near(-10.5 - point, 0.5 + point));
    // On the scale of a quill, turned over, as far down.
    const quill = { quill: { graduation: 0.01 }, flip: 'x' };
    expect(depths(depthOf({ breakThrough: 0.5 }, 'end mill', quill))).toEqual(near(10.5, 0.5));
    // A blind hole of a drill: its point goes deeper than its full size.
    expect(depths(depthOf({ depth: 4 }, 'drill'))).toEqual(near(-4 - point, 0));
  });

  it('may leave a skin where that is less than the depth may be off', () => {
    expect(messageOf(depthOf({ breakThrough: 0.05 }, 'end mill'), 'may-not-go-through')).toContain(
      'comes out 0.050 mm below the part, and in setup s its depth may be off by 0.103 mm at worst, 0.100 mm by root of squares',
    );
    expect(codes(depthOf({ breakThrough: 0.5 }, 'end mill'))).not.toContain('may-not-go-through');
    const ring = { kind: 'annular', wall: 2, breakThrough: 0.05 };
    expect(messageOf(depthOf(ring, 'annular cutter'), 'may-not-go-through')).toContain(
      'and slug-1 may hang on it',
    );
    // A reach that ends before that goes no further.
    expect(
      depthOf({ ...ring, breakThrough: 3, reach: 11 }, 'annular cutter').setups[0]?.targets[0]?.depth?.below,
    ).toBeCloseTo(1, 9);
  });

  it('is near to what stands under it by that, and blind has none', () => {
    const parallel = {
      id: 'p',
      kind: 'parallel',
      from: -10,
      to: -0.2,
      shape: { rectangle: [10, 10], at: [35, 15] },
    };
    const under = (breakThrough: number) =>
      codes(
        reportOn([{ ...bore('a', [40, 20], 8), breakThrough }], null, {
          keepOut: [parallel],
          ...tool('end mill', ['a'], {}),
        }),
      );
    expect(under(0.5)).toContain('hits-parallel');
    expect(under(0.1)).not.toContain('hits-parallel');
    expect(() => depthOf({ depth: 4, breakThrough: 1 }, 'drill')).toThrow(/this one is blind/);
  });
});

describe('heights on the scale of a quill', () => {
  const quill = { graduation: 0.02 };
  const on = (z: unknown[], over: Record<string, unknown> = {}) =>
    reportOn(
      [bore('a', [40, 20], 8, { depth: 4 })],
      [
        setup(['a'], {
          quill,
          zero: { x: [{ touch: 'left', tip: 10 }], y: [{ touch: 'front', tip: 10 }], z },
          ...over,
        }),
      ],
    ).setups[0];

  it('grow downwards from what was touched', () => {
    // Set to 0 on a feeler of 0.1: the top is 0.1 further down, the floor 4 below that.
    const row = on([{ touch: 'top', feeler: 0.1, reads: 0 }]);
    expect(row?.heights).toEqual({ on: 'quill', units: 'mm', resolution: 0.02 });
    expect(row?.zero.z?.at).toBeCloseTo(0.1, 12);
    expect(row?.targets[0]?.depth).toMatchObject({ readout: 4.1, worst: 0.01 });
    // Down by 1, and 10 set there: the top is at 9.
    expect(on([{ touch: 'top', reads: 0 }, { move: 1 }, { set: 10 }])?.targets[0]?.depth?.readout).toBe(13);
    // From the bottom, 10 - 4 = 6 above it, which is 6 less on the scale.
    expect(on([{ touch: 'bottom', reads: 50 }])?.targets[0]?.depth?.readout).toBe(44);
    expect(
      on([
        { touch: 'bottom', reads: 50 },
        { measured: 10, from: 'bottom', to: 'top' },
      ])?.targets[0]?.depth?.readout,
    ).toBe(44);
  });

  it('are rounded to its graduations', () => {
    expect(on([{ touch: 'top', feeler: 0.05, reads: 0 }])?.targets[0]?.depth?.readout).toBeCloseTo(4.06, 12);
  });
});
