import { inShape } from '../sim/distance.js';
import { middleOf } from '../sim/grid.js';
import { type Holding, holdingOver } from '../sim/holding.js';
import { KEPT, type Run } from '../sim/run.js';
import type { ToldRegion, ToldReport } from './told.js';
import type { Verdict } from './verdict.js';

/** What surely holds itself and has fewer cells is a speck. */
const SPECK = 4;

/** Bodies that hang after each step: that nothing holds them then, that something did before, and that none is left out. */
export function compareHangs(verdict: Verdict, run: Run, report: ToldReport): void {
  if (run.end === null) return;
  const home = run.end.kept.witness;
  let before: Holding | null = null;
  const known: ToldRegion[] = [];
  let k = -1;
  for (const after of holdingOver(run)) {
    if (before !== null) {
      verdict.at(`step ${k}`);
      for (const one of report.steps[k]?.hangs ?? []) {
        const { view } = one as unknown as { view: ToldRegion };
        known.push(view);
        compareTold(verdict, run, view, before, after, home);
      }
      for (const { view } of report.steps[k]?.frees ?? []) known.push(view);
      compareFound(verdict, run, k, known, after, home);
    }
    before = after;
    k++;
  }
}

/** The cells that lie in a view seen from above. */
function cellsIn(run: Run, view: ToldRegion): number[] {
  const parts = view.map(({ outer, holes }) => inShape([outer, ...holes]));
  const { grid } = run;
  return Array.from({ length: grid.across * grid.along }, (_, cell) => cell).filter((cell) => {
    const [x, y] = middleOf(grid, cell);
    return parts.some((within) => within(x, y) > 0);
  });
}

function compareTold(
  verdict: Verdict,
  run: Run,
  view: ToldRegion,
  before: Holding,
  after: Holding,
  home: number,
): void {
  const all = run.grid.across * run.grid.along;
  const own = cellsIn(run, view).flatMap((cell) => run.slabs.map((_, s) => s * all + cell));
  const held = after.sure[home];
  if (held === -1 || held === undefined) {
    verdict.skip('hangs');
    return;
  }
  // What hangs lies within its view, and its view within what hangs but for what lies over or under it.
  const sure = own.filter((at) => after.sure[at] !== -1);
  const isHeld = sure.length > 0 && sure.every((at) => after.sure[at] === held);
  verdict.check('hangs', !isHeld, () => 'told to hang, and surely held');
  const maybe = own.filter((at) => before.maybe[at] !== -1);
  const wasHeld = maybe.some((at) => before.maybe[at] === before.maybe[home]);
  if (maybe.length === 0) verdict.skip('hangs from then on');
  else
    verdict.check('hangs from then on', wasHeld, () => 'told to hang from a step on, and surely hung before');
}

/** What surely holds itself, and is surely not held by what is kept, is told of by then. */
function compareFound(
  verdict: Verdict,
  run: Run,
  k: number,
  known: readonly ToldRegion[],
  { sure, maybe, above }: Holding,
  home: number,
): void {
  const all = run.grid.across * run.grid.along;
  const { owner } = (run.steps[k] as Run['steps'][number]).after;
  if (maybe[home] === -1) return;
  const lumps = new Map<number, number[]>();
  sure.forEach((label, at) => {
    if (label === -1 || maybe[at] === maybe[home] || owner[at] !== KEPT) return;
    const own = lumps.get(label);
    if (own === undefined) lumps.set(label, [at]);
    else own.push(at);
  });
  for (const own of lumps.values()) {
    // What lies over or under the kept body is joined to it as far as is told: by how much they overlap does not count.
    if (own.length < SPECK || own.some((at) => above[at % all] === above[home % all])) {
      verdict.skip('hangs untold');
      continue;
    }
    const inside = known.some((view) => {
      const parts = view.map(({ outer, holes }) => inShape([outer, ...holes]));
      const [x, y] = middleOf(run.grid, (own[0] as number) % all);
      return parts.some((within) => within(x, y) > 0);
    });
    verdict.check('hangs untold', inside, () => `at ${middleOf(run.grid, (own[0] as number) % all)}`);
  }
}
