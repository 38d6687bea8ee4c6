import { examine, measured, parseJob, type Report, type ReportCheck, type ReportWay } from '@edgebite/core';
import { describe, expect, it } from 'vitest';

type Plain = Record<string, unknown>;

const reportOn = (cuts: readonly Plain[], over: Plain = {}): Report =>
  examine(
    parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 40] }, thickness: 20 },
      gauges: { balls: [6, 10, 12, 30] },
      cuts,
      ...over,
    }),
  );

const SEAT = { id: 'seat', kind: 'bore', center: [40, 44], diameter: 30 };

const ballsOf = ({ ways }: ReportCheck): readonly ReportWay[] => ways.filter(({ ball }) => ball);

/**
 * The top of a ball that is pushed into a seat in the back edge, by its points: the wall as points in space, from one height to another,
 * the ball on what is under it. It is pushed along -y from the middle of the bore until it touches one.
 */
function backOfBall(
  radius: number,
  center: { x: number; y: number },
  from: number,
  to: number,
  ball: number,
) {
  const r = ball / 2;
  const z = from + r;
  const points: { x: number; y: number; z: number }[] = [];
  for (let k = 0; k <= 2000; k++) {
    const angle = Math.PI + (Math.PI * k) / 2000;
    for (let n = 0; n <= 40; n++) {
      points.push({
        x: center.x + radius * Math.cos(angle),
        y: center.y + radius * Math.sin(angle),
        z: from + ((to - from) * n) / 40,
      });
    }
  }
  let [free, met] = [center.y, center.y - radius];
  for (let k = 0; k < 50; k++) {
    const y = (free + met) / 2;
    const hits = points.some((p) => (p.x - center.x) ** 2 + (p.y - y) ** 2 + (p.z - z) ** 2 < r * r);
    if (hits) met = y;
    else free = y;
  }
  return free + r;
}

describe('a ball in a seat', () => {
  it('reads as its contact in space does', () => {
    const [check] = reportOn([SEAT]).checks as [ReportCheck];
    const own = ballsOf(check).filter(({ pins }) => pins === 1);
    expect(own.map(({ kind, pin }) => [kind, pin])).toEqual([
      ['over pins', 12],
      ['pins out', 12],
    ]);
    const back = backOfBall(15, { x: 40, y: 44 }, 0, 20, 12);
    // Points of the wall are 0.5 apart in height and less along it: a ball of radius 6 sinks in between by 0.005.
    expect(Math.abs((own[0]?.reading ?? 0) - back)).toBeLessThan(0.006);
    expect(Math.abs((own[1]?.reading ?? 0) - (back - 40))).toBeLessThan(0.006);
    // On the table, it touches as high as its middle.
    expect(own.map(({ from, to }) => [from, to])).toEqual([
      [6, 6],
      [6, 6],
    ]);
    expect(own[0]?.words).toContain('over a ball of 12.000 mm in the arc to the front, touching 6.000 mm');
  });

  it('lies on the ledge of the height over it, and is none where that is too low for it', () => {
    // Opened to 50 in its upper 5: there a ball of 10 just touches under the top, and one of 12 does not.
    const upper = { id: 'upper', kind: 'bore', center: [40, 44], diameter: 50, depth: 5 };
    const { checks } = reportOn([SEAT, upper]);
    const [low, high] = ['seat', 'upper'].map((id) => checks.find(({ cut }) => cut === id) as ReportCheck);
    expect(ballsOf(low as ReportCheck).map(({ pin, from }) => [pin, from])).toContainEqual([12, 6]);
    const over = ballsOf(high as ReportCheck);
    expect(new Set(over.map(({ pin, from }) => `${pin} at ${from}`))).toEqual(new Set(['10 at 20']));
    const higher = reportOn([SEAT, { ...upper, depth: 4.9 }]).checks.find(({ cut }) => cut === 'upper');
    expect(new Set(ballsOf(higher as ReportCheck).map(({ pin }) => pin))).toEqual(new Set([6]));
  });

  it('is none where it would fall through', () => {
    // The ledge of the upper height is 1 wide: under the middle of the ball there is nothing.
    const upper = { id: 'upper', kind: 'bore', center: [40, 44], diameter: 32, depth: 10 };
    const high = reportOn([SEAT, upper]).checks.find(({ cut }) => cut === 'upper') as ReportCheck;
    expect(high.from).toBe(10);
    expect(ballsOf(high)).toEqual([]);
  });

  it('stands as high in a part that is cut from the bottom', () => {
    const [check] = reportOn([{ ...SEAT, from: 'bottom', depth: 14 }]).checks as [ReportCheck];
    expect([check.from, check.to]).toEqual([0, 14]);
    expect(new Set(ballsOf(check).map(({ from }) => from))).toEqual(new Set([6]));
  });

  it('put back in, gives the place back', () => {
    const job = parseJob({
      edgebite: 1,
      units: 'mm',
      part: { outline: { rectangle: [80, 40] }, thickness: 20 },
      gauges: { balls: [12] },
      cuts: [SEAT],
    });
    const { ways } = examine(job).checks[0] as ReportCheck;
    const made = { x: 40, y: 44.06 };
    const readings = ways.flatMap(({ ball, pins, kind, chord }, way) => {
      if (ball && pins === 1 && kind === 'over pins')
        return [{ way, value: backOfBall(14.9, made, 0, 20, 12), tolerance: 0.01 }];
      if (kind === 'height')
        return [{ way, value: 14.9 - Math.sqrt(14.9 ** 2 - ((chord ?? 0) / 2) ** 2), tolerance: 1e-4 }];
      return [];
    });
    expect(readings).toHaveLength(2);
    const { fit } = measured(job, { cut: 'seat', readings });
    expect(Math.abs((fit.radius?.value ?? 0) - 14.9)).toBeLessThan(1e-6);
    expect(Math.abs((fit.y?.value ?? 0) - made.y)).toBeLessThan(0.006);
  });
});

describe('an arc in a round part', () => {
  it('is measured to the round across it, as its points are', () => {
    // A disc of radius 30 with a bite of radius 12 in its right side, off the middle.
    const center = { x: 34, y: 6 };
    const report = reportOn([{ id: 'seat', kind: 'bore', center: [34, 6], diameter: 24 }], {
      part: { outline: { circle: 60 }, thickness: 10 },
    });
    const way = report.checks[0]?.ways.find(({ kind }) => kind === 'round') as ReportWay;
    // By points: the least, over the places of the arc, of how far the round goes across from there.
    const round = (r: number, { x, y }: { x: number; y: number }) =>
      Array.from({ length: 1440 }, (_, k) => ({
        x: x + r * Math.cos((Math.PI * k) / 720),
        y: y + r * Math.sin((Math.PI * k) / 720),
      }));
    const far = round(30, { x: 0, y: 0 });
    const across = round(12, center)
      .filter(({ x, y }) => Math.hypot(x, y) < 30)
      .map((p) => Math.max(...far.map((q) => Math.hypot(p.x - q.x, p.y - q.y))));
    expect(Math.abs(way.reading - Math.min(...across))).toBeLessThan(1e-3);
    const straight = 30 + Math.hypot(34, 6) - 12;
    expect(way.reading).toBeCloseTo(straight, 12);
    expect(way.byRadius).toBe(-1);
    expect(way.byPlace).toBeCloseTo(1, 12);
    expect(way.words).toContain('straight through both middles');
  });

  it('is not measured to a round that lies on its own side, or through the air', () => {
    const slot = reportOn([{ id: 'seat', kind: 'bore', center: [50, 0], diameter: 24 }], {
      part: { outline: { slot: [100, 44] }, thickness: 10 },
    });
    const rounds = slot.checks[0]?.ways.filter(({ kind }) => kind === 'round') ?? [];
    expect(rounds.map(({ round }) => round)).toEqual(['outline:3']);
    // The far end of the slot: 100 over all, the seat 12 in.
    expect(rounds[0]?.reading).toBeCloseTo(100 - 12, 9);
    const between = { id: 'between', kind: 'bore', center: [0, 0], diameter: 20 };
    const cut = reportOn([between, { id: 'seat', kind: 'bore', center: [50, 0], diameter: 24 }], {
      part: { outline: { slot: [100, 44] }, thickness: 10 },
    });
    const own = cut.checks.find(({ cut: id }) => id === 'seat');
    expect(own?.ways.filter(({ kind }) => kind === 'round')).toEqual([]);
  });
});

describe('arcs of a swept cut', () => {
  it('are listed, each with what can be measured of it', () => {
    // A slot of 16 from the back edge down to (40, 15) ends in half a round of radius 8; a bend leaves one of 5 to its side.
    const { checks } = reportOn([
      { id: 'slot', kind: 'swept', diameter: 16, path: { svgPath: 'M40 60 V15' } },
      { id: 'bend', kind: 'swept', diameter: 10, depth: 6, path: { svgPath: 'M-10 8 H12 V-10' } },
    ]);
    const slot = checks.find(({ cut }) => cut === 'slot') as ReportCheck;
    expect([slot.radius, slot.center]).toEqual([8, [40, 15]]);
    expect(slot.ways.map(({ kind }) => kind)).toContain('left');
    // By hand: 15 - 8 over the front edge.
    expect(slot.ways.find(({ kind }) => kind === 'left')?.reading).toBeCloseTo(7, 12);
    expect(slot.ways.map(({ kind }) => kind)).toContain('height');
    expect(slot.trial).toBeNull();
  });
});
