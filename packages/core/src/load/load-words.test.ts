import { describe, expect, it } from 'vitest';
import { listed, noWayWords, placeRemark, underneathRemark } from './load-words.js';

/* What a person reads before a tool goes down, in full: a word the wrong way round here is followed by a hand. */

const names = {
  tool: 'Drill d8',
  cut: 'cut eye',
  length: (value: number) => `${value} mm`,
  thing: (id: string) => `parallel ${id}`,
};

const place = (fact: Parameters<typeof placeRemark>[0]) => placeRemark(fact, names).message;

const LED = 'Nothing leads it there: it is pushed aside, bends and can break or tear the part loose.';

describe('what is said of a tool in its place', () => {
  it('that starts beside metal, over an edge or over a hole', () => {
    const enters = (footing: 'center in air' | 'over an edge' | 'over a hole', atDepth = 0) =>
      place({ kind: 'enters badly', footing, away: 2, atDepth });
    const what = 'Mill or bore it instead, or drill it before the edge is cut.';
    expect(enters('center in air')).toBe(
      `Drill d8 starts cut eye with its centre 2 mm off the metal. ${LED} ${what}`,
    );
    expect(enters('over an edge', 3)).toBe(
      `Drill d8 starts cut eye with a part of it over an edge, at a depth of 3 mm. ${LED} ${what}`,
    );
    expect(enters('over a hole')).toBe(
      `Drill d8 starts cut eye with a hole under it that is not in its middle. ${LED} ${what}`,
    );
    expect(place({ kind: 'comes into a void', footing: 'over an edge', away: 0, atDepth: 4 })).toBe(
      `Drill d8 comes into a void at a depth of 4 mm in cut eye: from there on it stands with a part of it over an edge. ${LED} Drill it before that is cut, or mill or bore it.`,
    );
  });

  it('that goes straight down on metal', () => {
    expect(place({ kind: 'plunges on its center', known: true, atDepth: 0 })).toBe(
      'Drill d8 does not cut to its centre, but goes straight down on metal in cut eye: what stands under its middle stops it, and it breaks or tears loose. Drill a hole there first, or take a tool that cuts to its centre.',
    );
    expect(place({ kind: 'plunges on its center', known: false, atDepth: 1 })).toBe(
      'Drill d8 goes straight down on metal in cut eye, at a depth of 1 mm. Make sure that it cuts to its centre, and say so in the job; else drill a hole there first.',
    );
    // A bar goes into a hole: that has to be the wider of the two.
    expect(place({ kind: 'bores without a hole', atDepth: 0 })).toBe(
      'Drill d8 is set down on metal at its centre in cut eye: a boring bar cuts at its tip only and runs into what stands there. Drill or mill a hole first, wider than the bar.',
    );
  });

  it('that grabs', () => {
    const grabs = (opensOut: boolean) =>
      place({ kind: 'grabs', metal: 'brass', opensOut, atDepth: 0 } as never);
    const what =
      'it is drawn in and lifts or spins the part. Take a drill with flattened lips for it, feed gently, and clamp the part down against a stop.';
    expect(grabs(false)).toBe(`Drill d8 can grab in brass in cut eye, most where it breaks through: ${what}`);
    expect(grabs(true)).toBe(
      `Drill d8 can grab in brass in cut eye, all the more in a hole that is there already, and where it breaks through: ${what}`,
    );
  });
});

describe('what is said where no way leads off a wall', () => {
  const none = 'There is no way off the wall';

  it('says why, and how to come up', () => {
    const say = (why: Parameters<typeof noWayWords>[0], doing: Parameters<typeof noWayWords>[1]) =>
      noWayWords(why, doing, names);
    expect(say({ reason: 'walled in', share: 1, from: 0, to: 9 }, 'drills')).toBe(
      `${none}: it goes all the way round. Lift it straight up while it turns.`,
    );
    expect(say({ reason: 'walled in', share: 0.6, from: 2, to: 9 }, 'mills round')).toBe(
      `${none}: from a depth of 2 mm to 9 mm it goes round by more than half a turn. Move the mill off the wall, towards the middle of the bore, before you lift it.`,
    );
    expect(say({ reason: 'no room', within: 12, clearance: 0.2 } as never, 'bores')).toBe(
      `${none}: within 12 mm no place is 0.2 mm clear of all metal. Stop the spindle before you lift it straight up, or it marks the wall.`,
    );
    expect(say({ reason: 'core stands' } as never, 'rings')).toBe(
      `${none}: a core stands inside of the cutter. Lift it straight up while it turns.`,
    );
    expect(say({ reason: 'keep-out', ids: ['p', 'q'] } as never, null)).toBe(
      `${none}: parallel p and parallel q are in the way. Move them, or do without. Stop the spindle before you lift it straight up, or it marks the wall.`,
    );
  });
});

it('what lies under a tool is gone into, touched, or nearer than it may be', () => {
  const under = (below: number, margin: number | null) =>
    underneathRemark({ below, over: 'p', margin } as never, 1, names);
  expect(under(3, -0.5)?.message).toBe(
    'Drill d8 comes out 3 mm below the part in cut eye and goes 0.5 mm into parallel p. Move parallel p, or raise the part.',
  );
  expect(under(3, -0.5)?.level).toBe('danger');
  expect(under(0, 0)?.message).toBe(
    'Drill d8 comes through in cut eye and touches parallel p. Move parallel p, or raise the part.',
  );
  expect(under(3, 0.4)?.message).toBe(
    'Drill d8 comes out 3 mm below the part in cut eye, 0.4 mm over parallel p; the least is 1 mm. Move parallel p, or raise the part.',
  );
  expect([under(3, 1), under(3, null)]).toEqual([null, null]);
});

it('names stand in a row, with "and" before the last', () => {
  expect([listed([]), listed(['a']), listed(['a', 'b']), listed(['a', 'b', 'c'])]).toEqual([
    '',
    'a',
    'a and b',
    'a, b and c',
  ]);
});
