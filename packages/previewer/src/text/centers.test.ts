import { examine, parseJob } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import { COLUMNS } from '../columns/wrap.js';
import { textReport } from './report.js';

type Plain = Record<string, unknown>;

const PART = { outline: { svgPath: 'M0 0 H80 V30 H10 V50 H0 Z' }, thickness: 12 };

function textOf(cuts: readonly Plain[], units = 'mm'): string {
  return textReport(examine(parseJob({ edgebite: 1, units, part: PART, cuts })), { all: true });
}

/** The lines of a section, its head included. */
function section(text: string, head: string): string[] {
  const block = text.split('\n\n').find((one) => one.startsWith(head));
  return (block ?? '').split('\n');
}

const SEAT = { id: 'seat', kind: 'bore', diameter: 20, center: { on: 'outline:1', along: 15, depth: 10 } };
const HOLE = { id: 'hole', kind: 'bore', diameter: 8, center: [30, 15] };
const AWAY = { id: 'away', kind: 'bore', diameter: 8, center: [200, 15] };

describe('the text on where tools stand', () => {
  it('says nothing of it where there is nothing to say', () => {
    const text = textOf([{ id: 'a', kind: 'swept', diameter: 4, path: { svgPath: 'M20 5 H40' } }]);
    for (const head of ['BITES', 'PLACED', 'PASSES', 'PATH']) expect(text).not.toContain(`\n${head}`);
  });

  // Half a circle of radius 10: opening 20, arc 10 pi, square corners, side load 2 / pi (elementary).
  it('gives a placed hole with all its dimensions', () => {
    const text = textOf([SEAT, HOLE]);
    expect(section(text, 'PLACED')).toEqual([
      'PLACED by what the drawing gives; x and y as drawn',
      'cut   given by  on',
      'seat  depth     the right end',
    ]);
    // The part is 80 wide: 70 are left behind a bite of 10.
    expect(section(text, 'BITES')).toEqual([
      'BITES: each face that a cut opens, as drawn',
      'cut   from             deep   opens  leaves  to            arc °  arc long',
      'seat  the right end  10.000  20.000  70.000  the left end  180.0    31.416',
    ]);
    expect(section(text, 'cut   teeth in')).toEqual([
      'cut   teeth in: x      y  corner °  out: x       y  corner °',
      'seat       80.000  5.000      90.0  80.000  25.000      90.0',
    ]);
  });

  // A clockwise tooth comes up through the metal at the left of the circle: it pushes away from the person.
  it('gives the load of each step, and the way off its wall', () => {
    const lines = section(textOf([{ ...SEAT, clearance: 0.5 }, HOLE, AWAY]), 'STEPS');
    expect(lines).toEqual([
      'STEPS: 3, each as the part lies and stands then',
      'As drawn',
      '  1. seat: 20.000 mm across, through, at X 80.000 Y 15.000; takes 1885 mm³.',
      '     Pushes the part away from you (90°), side load 0.64, in metal 50.0 % of a',
      '     turn, 1 strike a turn. Goes 10.000 mm deep from the right end, opens 20.000',
      '     mm of it, leaves 70.000 mm to the left end as drawn. Comes out 6.009 mm',
      // On the left a clockwise tooth goes away from you: it leaves at the back end, 10 from the centre. Below, pi 10.
      '     below the part if drilled. Burrs: where teeth leave, at X 80.000 Y 25.000;',
      '     and below, along 31.416 mm of rim. Before you lift, back off to the right',
      // sqrt(10.5^2 - 10^2), Pythagoras.
      '     (0°) by 3.202 mm, to X 83.200 Y 15.000, 0.500 mm clear of the wall.',
      '  2. hole: 8.000 mm across, through, at X 30.000 Y 15.000; takes 603 mm³.',
      '     In metal all round, no push to one side. Comes out 2.403 mm below the part',
      '     if drilled. Burrs: below, along 25.133 mm of rim. There is no way off the',
      '     wall: it goes all the way round. Stop the spindle before you lift it',
      '     straight up, or it marks the wall.',
      '  3. away: 8.000 mm across, through, at X 200.000 Y 15.000; takes 0 mm³.',
      '     Meets no metal. Comes out 2.403 mm below the part if drilled. It stands at',
      '     no wall: lift the tool as it stands.',
      'Right is X+, away from you is Y+; degrees go counter-clockwise from X+, seen',
      'from above. Pushes are for a spindle that turns clockwise. Side load: 0 if teeth',
      'push evenly all round, 1 if all push one way.',
    ]);
  });

  it('gives each pass with its place, bite, strikes and time', () => {
    const passes = {
      kind: 'step in',
      bite: 4,
      finish: 1,
      approach: 180,
      spring: true,
      feed: { perTurn: 0.1, rpm: 300 },
    };
    const lines = section(textOf([{ ...SEAT, passes }]), 'PASSES of cut seat: step in');
    expect(lines.slice(1, 3).join(' ')).toMatch(
      /^The centre moves towards 180\.0°, 10\.000 mm from first touch; 5 passes; .* 2\.00 min in the cut\./,
    );
    expect(lines.slice(3).map((line) => line.split(/ {2,}/))).toEqual([
      ['pass', 'centre x', 'centre y', 'diameter', 'bite', 'strikes', 'side load', 'min'],
      ['1 rough', '87.000', '15.000', '20.000', '3.000', '1', expect.any(String), '0.40'],
      ['2 rough', '84.000', '15.000', '20.000', '3.000', '1', expect.any(String), '0.40'],
      ['3 rough', '81.000', '15.000', '20.000', '3.000', '1', expect.any(String), '0.40'],
      ['4 finish', '80.000', '15.000', '20.000', '1.000', '1', expect.any(String), '0.40'],
      ['5 spring', '80.000', '15.000', '20.000', '-', '0', '0', '0.40'],
    ]);
  });

  it('gives a path move by move, and what it leaves', () => {
    const path = {
      along: {
        from: { edge: 'outline:2', distance: 60 },
        to: { edge: 'outline:3', distance: 10 },
        side: 'outside',
        lead: 'none',
      },
    };
    const text = textOf([{ id: 'edge', kind: 'swept', diameter: 6, path }]);
    expect(section(text, 'PATH')).toEqual([
      "PATH of the tool's centre in cut edge, as drawn",
      'Runs outside of the outline, touching it; conventional milling; tool 6.000 mm',
      'across.',
      'pass  move       to x       y  centre x  y  beside',
      '1     down at  20.000  33.000         -  -  -',
      '      line     13.000  33.000         -  -  outline edge 2',
      '      line     13.000  40.000         -  -  outline edge 3',
      '      lift at  13.000  40.000         -  -  -',
      'not reached    area       x       y  largest tool',
      'sharp corner  1.931  10.000  30.000          none',
    ]);
  });

  it('keeps to 80 columns, in inches too', () => {
    const cuts = [
      {
        ...SEAT,
        id: 'seat-of-the-shaft',
        passes: { kind: 'open out', bite: 3, feed: { perTurn: 0.1, rpm: 300 } },
      },
      { id: 'rim', kind: 'swept', diameter: 4, path: { along: { side: 'outside', lead: 2 } } },
    ];
    for (const units of ['mm', 'inch']) {
      const heads = ['PLACED', 'cut                teeth', 'STEPS', 'PASSES', 'PATH'];
      const lines = heads.flatMap((head) => section(textOf(cuts, units), head));
      expect(lines.length).toBeGreaterThan(20);
      for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(COLUMNS);
    }
  });
});
