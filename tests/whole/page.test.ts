import { jobJsonSchema, parseJob, rangeOf } from '@edgebite/core';
import { describe, expect, it } from 'vitest';
import type { Json, JsonObject } from '../../packages/previewer/page/src/document/json.js';
import { pointerOf } from '../../packages/previewer/page/src/document/json.js';
import { stepOf, unitIn } from '../../packages/previewer/page/src/document/place.js';
import { lengthsOf } from '../../packages/previewer/page/src/form/lengths.js';
import { blankOf, shapeOf } from '../../packages/previewer/page/src/form/shape.js';
import { called, headed, oneOf, withArticle } from '../../packages/previewer/page/src/form/words.js';
import { movedTo, nudged } from '../../packages/previewer/page/src/move/free.js';
import { cutAt, gripsOf, inTurn, movesAt } from '../../packages/previewer/page/src/move/grips.js';
import { alongsOf, spanOf } from '../../packages/previewer/page/src/panels/spans.js';
import { verdictOf } from '../../packages/previewer/page/src/panels/verdict.js';
import { sketchOf } from '../../packages/previewer/page/src/worker/sketch.js';
import { workedOf } from '../../packages/previewer/page/src/worker/worked.js';
import { type FiledJob, OWN_JOBS, reportOf } from './corpus.js';
import { drawnFigures } from './skeleton.js';

/* The net under what the page makes of jobs, without a browser: see net.test.ts for what such a net is. */

const SCHEMA = jobJsonSchema() as JsonObject;

/** A drag that is no multiple of a step, and the way of a key. */
const [DRAG, KEY] = [
  [0.372, -0.218],
  [1, 0],
] as const;

/** What changed of a cut, written small. */
function changed(before: JsonObject, after: JsonObject | null): string {
  if (after === null) return 'nothing';
  const keys = Object.keys(after).filter((key) => JSON.stringify(after[key]) !== JSON.stringify(before[key]));
  return keys.map((key) => `${key} ${JSON.stringify(after[key])}`).join(', ');
}

function handles({ document }: FiledJob): string[] {
  const job = document as unknown as Json;
  const report = reportOf(document);
  const worked = new Map(report.cuts.map((cut) => [cut.id, workedOf(report, cut)]));
  const grips = gripsOf(job, worked, report.cuts[0]?.id ?? null);
  const step = stepOf(job, report.resolution);
  return inTurn(grips).map(({ key, index, pass, x, y, diameter, label }) => {
    const cut = cutAt(job, index) as JsonObject;
    const moves = movesAt(cut, worked.get(String(cut.id)) ?? null, pass);
    const head = `${key} ${x.toFixed(4)} ${y.toFixed(4)} ${diameter ?? '-'} ${label}`;
    if (moves?.at == null) return head;
    const to = [moves.at[0] + DRAG[0], moves.at[1] + DRAG[1]] as const;
    const dragged = changed(cut, movedTo(cut, moves, to, step));
    const pressed = changed(cut, nudged(cut, moves, KEY, 3, step));
    const spans = alongsOf(cut).map((along) =>
      spanOf(along, cut, worked.get(String(cut.id)) ?? workedOf(report, report.cuts[0] as never), step),
    );
    return `${head}\n  drag ${dragged}\n  keys ${pressed}\n  spans ${JSON.stringify(spans)}`;
  });
}

function told({ document }: FiledJob): string {
  const report = reportOf(document);
  const cut = parseJob(document).cuts.find(({ kind }) => kind !== 'swept');
  if (cut === undefined || cut.kind === 'swept') return '';
  const { y } = cut.center;
  const range = rangeOf(parseJob(document), { cut: cut.id, along: 'y', from: y - 0.4, to: y + 0.7 });
  const { head, next, stretches } = verdictOf(range);
  const sketch = sketchOf(report);
  const paths = JSON.stringify(sketch).replaceAll(/"([MLAZ][^"]*)"/g, (_, d: string) => `"${d.length}"`);
  const shapes = [sketch.outline, ...sketch.pieces.map((piece) => JSON.stringify(piece))].join(' ');
  return [
    head,
    next,
    ...stretches,
    paths.slice(0, 400),
    drawnFigures(`<path d="${shapes.replaceAll('"', ' ')}"/>`),
  ].join('\n');
}

describe('the page, as it was', () => {
  it.each(OWN_JOBS.map((job) => [job.name, job] as const))('%s', async (name, job) => {
    const { document } = job;
    const lengths = lengthsOf(document as unknown as Json, SCHEMA).map(
      ({ path, value }) =>
        `${pointerOf(path)} ${value} ${unitIn(document as unknown as Json, pointerOf(path))}`,
    );
    const lines = [...handles(job), told(job), ...lengths];
    await expect(`${lines.join('\n')}\n`).toMatchFileSnapshot(`page/${name}.snap`);
  });
});

describe('names on the forms', () => {
  it('are the keys in words, or words of our own', () => {
    expect(['toolMaterial', 'maxSpeed', 'sizeTolerance', 'angleTolerance'].map(called)).toEqual([
      'tool material',
      'max speed',
      'size tolerance',
      'angle tolerance',
    ]);
    expect(['a', 'b', 'center', 'keepOut', 'knifeEdge', 'smallest', 'largest', 'from'].map(called)).toEqual([
      'from',
      'to',
      'centre',
      'place to keep clear of',
      'knife edge under',
      'smallest bore',
      'largest bore',
      'starts from',
    ]);
    expect(['holes', 'batch', 'pins', 'x', 'cuts'].map(oneOf)).toEqual([
      'hole',
      'part',
      'pin',
      'action',
      'cut',
    ]);
    expect(['edge', 'cut', 'action'].map(withArticle)).toEqual(['an edge', 'a cut', 'an action']);
    expect(headed('tool material')).toBe('Tool material');
  });

  it('of each key of a job are words: no key stands as it is written', async () => {
    const keys = new Set(JSON.stringify(SCHEMA).match(/(?<=")[a-z]\w*(?=":\{)/gi));
    const names = [...keys].sort().map((key) => `${key}: ${called(key)}, ${oneOf(called(key))}`);
    expect(names.filter((name) => /: .*[a-z][A-Z]/.test(name) && !/SVG/.test(name))).toEqual([]);
    const shape = shapeOf(SCHEMA, SCHEMA);
    const blanks =
      shape.kind === 'object'
        ? shape.fields.map(
            ({ key, schema, optional }) => `${key} ${optional} ${JSON.stringify(blankOf(schema, SCHEMA))}`,
          )
        : [];
    await expect(`${[...names, ...blanks].join('\n')}\n`).toMatchFileSnapshot('page/names.snap');
  });
});
