import { fileURLToPath } from 'node:url';
import { isoWords, type JobDocument, parseJob, rangeOf } from '@edgebite/core';
import { draw, drawRange, drawStep } from '@edgebite/svg';
import { describe, expect, it } from 'vitest';
import { ran } from '../../packages/previewer/fixtures/ran.js';
import { ALL_JOBS, type FiledJob, OWN_JOBS, reportOf } from './corpus.js';
import { drawnFigures, figuresOf, skeletonOf, withoutTags } from './skeleton.js';

/*
 * A net against slips, not a proof: what jobs that use nearly all of the format came to when this was written. That the
 * figures are right is checked elsewhere, against sources, simulation and brute force; here every figure that a person
 * may read is held, so that none moves unseen. After a change look at what moved and why, then
 * `npx vitest run tests/whole --update`.
 */

const HERE = fileURLToPath(new URL('.', import.meta.url));

/** Never reached: what is cut short by time depends on the machine. */
const LONG = '1000';

type Ask = readonly [what: string, args: readonly string[], how: (text: string) => string];

const heading = (what: string, text: string): string => `== ${what}\n${text}`;

async function answers(asks: readonly Ask[], input = ''): Promise<string> {
  const parts: string[] = [];
  for (const [what, args, how] of asks) {
    const { code, out, err } = await ran(args, HERE, input);
    parts.push(heading(`${what}: ${code}`, how(out) + (code > 1 ? err : '')));
  }
  return `${parts.join('\n')}\n`;
}

const ofTwin = (file: string): Ask[] => [
  ['twin', ['sheet', '--twin', file], skeletonOf],
  ['twin figures', ['check', '--json', '--twin', file], (text) => figuresOf(JSON.parse(text))],
];

const asWritten = ({ file, document }: FiledJob): Ask[] => [
  ['check', ['check', file], skeletonOf],
  ['check all', ['check', '--all', file], skeletonOf],
  ['sheet', ['sheet', file], skeletonOf],
  ['sheet csv', ['sheet', '--format', 'csv', file], skeletonOf],
  ['sheet html', ['sheet', '--format', 'html', file], (html) => skeletonOf(withoutTags(html))],
  ...(document.twin === undefined ? [] : ofTwin(file)),
];

const drawings = ({ file, document }: FiledJob): Ask[] => [
  ['draw', ['draw', file, '-o', '-', '--sheet', 'A3'], drawnFigures],
  ...(document.setups ?? []).map(
    ({ id }): Ask => [`zero of ${id}`, ['draw', file, '-o', '-', '--zero', id], drawnFigures],
  ),
];

/** How many cuts of a job are asked about: a range is the dearest of all questions. */
const ASKED = 3;

/** Where the first bores and rings that are given by a point may go, along one of their numbers. */
const ranges = ({ file, document }: FiledJob): Ask[] =>
  document.cuts
    .flatMap((cut) => {
      if (cut.kind === 'swept' || !Array.isArray(cut.center) || cut.diameter === undefined) return [];
      return [{ id: cut.id, center: cut.center as readonly [number, number], diameter: cut.diameter }];
    })
    .slice(0, ASKED)
    .map(({ id, center, diameter }, k): Ask => {
      const along = (['x', 'y', 'diameter'] as const)[k % 3] as 'x' | 'y' | 'diameter';
      const middle = along === 'diameter' ? diameter : center[along === 'x' ? 0 : 1];
      const by = diameter / 6;
      const stretch = ['--from', `${middle - by}`, '--to', `${middle + by}`];
      const asked = ['range', file, '--cut', id, '--along', along, ...stretch, '--seconds', LONG];
      return [`range of ${id} along ${along}`, asked, skeletonOf];
    });

/** The middle one of a job's round cuts, its range drawn alone and on the sheet; each step drawn large. */
function drawnAlone({ document }: FiledJob): string {
  const job = parseJob(document);
  const report = reportOf(document);
  const round = job.cuts.flatMap((one) => (one.kind === 'swept' ? [] : [one]));
  const cut = round[Math.floor(round.length / 2)];
  const steps = report.steps
    .slice(-3)
    .map((step, k) =>
      heading(`step ${k} ${step.cut}`, drawnFigures(drawStep(report, report.steps.indexOf(step)))),
    );
  if (cut === undefined) return steps.join('\n');
  const { x } = cut.center;
  const answer = rangeOf(job, {
    cut: cut.id,
    along: 'x',
    from: x - cut.diameter / 5,
    to: x + cut.diameter / 9,
  });
  return [
    ...steps,
    heading('range', drawnFigures(drawRange(answer))),
    heading('range on sheet', drawnFigures(draw(report, { range: answer, sheet: 'A3' }))),
  ].join('\n');
}

/** Paths as numeric words. */
function words({ document }: FiledJob): string {
  return parseJob(document)
    .cuts.flatMap((cut) => {
      const along = cut.kind === 'swept' ? cut.plan?.along : null;
      if (!along) return [];
      const paths = along.passes.map(({ leadIn, cut: edges, leadOut }) => [...leadIn, ...edges, ...leadOut]);
      const { blocks } = isoWords(paths, {
        units: document.units,
        heights: { cut: -3, clear: 5 },
        feed: 120,
      });
      return [heading(`words of ${cut.id}`, blocks.join('\n'))];
    })
    .join('\n');
}

/** Each arc that can be measured, and what comes of readings a little off by its first two ways. */
const measured = ({ file, document }: FiledJob): Ask[] =>
  reportOf(document)
    .checks.slice(0, 4)
    .flatMap(({ cut, ways }, k): Ask[] => {
      const first = reportOf(document).checks.findIndex((check) => check.cut === cut);
      const arc = ['measure', file, '--cut', cut, '--arc', `${k - first + 1}`];
      const readings = ways
        .slice(0, 2)
        .flatMap(({ reading }, n) => ['--reading', `${n + 1}=${(reading * (1.001 + 0.001 * n)).toFixed(4)}`]);
      return [
        [`measure ${cut} ${k}`, arc, skeletonOf],
        [`readings of ${cut} ${k}`, [...arc, ...readings, '--dial', '0.02'], skeletonOf],
      ];
    });

describe('what is told, as it was told', () => {
  it.each(ALL_JOBS.map((job) => [job.name, job] as const))('%s: figures', async (name, { document }) => {
    await expect(`${figuresOf(reportOf(document))}\n`).toMatchFileSnapshot(`figures/${name}.snap`);
  });

  it.each(ALL_JOBS.map((job) => [job.name, job] as const))('%s: text and sheets', async (name, job) => {
    await expect(await answers([...asWritten(job), ...measured(job)])).toMatchFileSnapshot(
      `told/${name}.snap`,
    );
  });

  it.each(OWN_JOBS.map((job) => [job.name, job] as const))('%s: drawings and ranges', async (name, job) => {
    const told = `${await answers([...drawings(job), ...ranges(job)])}${drawnAlone(job)}\n${words(job)}`;
    await expect(`${told.trimEnd()}\n`).toMatchFileSnapshot(`drawn/${name}.snap`);
  });

  it.each(['rocker', 'link'])('%s: ways to make a part', async (name) => {
    const aim = `aims/${name}.json`;
    const ways: Ask[] = ['1', '2'].map((way) => [
      `way ${way}`,
      ['propose', aim, '--way', way],
      (text) => figuresOf(reportOf(JSON.parse(text) as JobDocument)),
    ]);
    const asks: Ask[] = [['propose', ['propose', aim], skeletonOf], ...ways];
    await expect(await answers(asks)).toMatchFileSnapshot(`told/${name}.snap`);
  });
});

it('two jobs side by side, as they were', async () => {
  const plain = ALL_JOBS.find(({ name }) => name === 'plain')?.document as JobDocument;
  const other = { ...plain, cuts: plain.cuts.slice(0, 3) };
  const asked: Ask = ['compare', ['compare', 'jobs/plain.json', '-'], skeletonOf];
  await expect(await answers([asked], JSON.stringify(other))).toMatchFileSnapshot('told/compared.snap');
});

describe('the skeleton of a text', () => {
  it('keeps numbers, units and sides, and no other word', () => {
    expect(skeletonOf('Goes 8.000 mm deep, 90° to the left of W1, by 3 in in all; ±0.02 at worst.')).toBe(
      '8.000 mm deep 90° left 3 in ±0.02 worst',
    );
  });
});
