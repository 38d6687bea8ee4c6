import { expect, it } from 'vitest';
import { setupsOf } from './layout.js';

const setupsWith = (aim: Parameters<typeof setupsOf>[0]) =>
  setupsOf(aim, [
    { side: 'top', turn: 0, cuts: ['a'] },
    { side: 'top', turn: 90, cuts: ['b'] },
    { side: 'top', turn: 180, cuts: ['c'] },
    { side: 'top', turn: 270, cuts: ['d'] },
    { side: 'bottom', turn: 0, cuts: ['e'] },
    { side: 'bottom', turn: 90, cuts: ['f'] },
    { side: 'bottom', turn: 270, cuts: ['g'] },
  ]);

it('a lie is called by how a hand lays it: turns are counter-clockwise from above, 270 of them are 90 back', () => {
  const named = setupsWith({ stops: [], tip: 6 }).map(({ name, flip, turn }) => [name, flip, turn]);
  expect(named).toEqual([
    ['As drawn', undefined, undefined],
    ['A quarter turn counter-clockwise', undefined, 90],
    ['Turned round', undefined, 180],
    ['A quarter turn clockwise', undefined, 270],
    ['Bottom up', 'y', undefined],
    ['Bottom up, a quarter turn counter-clockwise', 'y', 90],
    ['Bottom up, a quarter turn clockwise', 'y', 270],
  ]);
});

it('the part bears on the stops that the aim has; each axis without one is touched', () => {
  const [setup] = setupsWith({ stops: ['right', 'back'], tip: 6 });
  expect(setup?.stops).toEqual([
    { id: 'A', face: 'right' },
    { id: 'B', face: 'back' },
  ]);
  const text = JSON.stringify(setup?.zero);
  expect(text).toContain('"bears":"right","on":"A"');
  expect(text).toContain('"bears":"back","on":"B"');
  const [free] = setupsWith({ stops: ['back'], tip: 6 });
  expect(free?.stops).toEqual([{ id: 'B', face: 'back' }]);
  expect(JSON.stringify(free?.zero.x)).toContain('"touch":"left"');
  expect(JSON.stringify(setupsWith({ stops: [], tip: 6 })[0]?.zero.y)).toContain('"touch":"front"');
});
