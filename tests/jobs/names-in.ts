import type { Report } from '@edgebite/core';

/** A name in a report, where it stands, and whether there is such a thing in that report. */
type Named = readonly [where: string, name: string | number | null, isKnown: boolean];

/** Every name of a report that stands for nothing in it: of findings, cautions, webs, steps, bodies, targets, in words. */
export function unknownNames(report: Report): string[] {
  return [
    ...saidOf(report),
    ...namesOfMarks(report),
    ...namesOfSteps(report),
    ...namesOfBodies(report),
    ...namesOfCuts(report),
  ].flatMap(([where, name, isKnown]) => (isKnown ? [] : [`${where}: ${name}`]));
}

const has = (rows: readonly { readonly id: string }[], id: string | null): boolean =>
  id !== null && rows.some((row) => row.id === id);

function sourcesOf({ cuts, outline }: Report): ReadonlySet<string | null | undefined> {
  const edges = outline.flatMap(({ outer, holes }) => [outer, ...holes].flat());
  return new Set([...cuts, ...edges].map(({ source }) => source));
}

/** What findings and cautions are about, each once; and what in a finding's number a step is told of. */
function saidOf(report: Report): Named[] {
  const sources = sourcesOf(report);
  return [...report.findings, ...report.cautions].flatMap(({ code, about }): Named[] => [
    ...about.map((name): Named => [code, name, isKnown(report, sources, name)]),
    [code, about.join(', '), new Set(about).size === about.length],
  ]);
}

function isKnown(report: Report, sources: ReturnType<typeof sourcesOf>, name: string): boolean {
  const [kind, rest] = [name.slice(0, name.indexOf(':')), name.slice(name.indexOf(':') + 1)];
  switch (kind) {
    case 'piece':
      return has(report.pieces, rest);
    case 'body':
      return has(report.bodies, rest);
    case 'step':
      return report.steps[Number(rest)] !== undefined;
    case 'tool':
      return report.steps.some(({ tool }) => tool === rest);
    case 'web':
      return report.webs[Number(rest)] !== undefined;
    case 'knifeEdge':
      return report.knifeEdges[Number(rest)] !== undefined;
    case 'setup':
      return has(report.setups, rest);
    case 'keepOut':
      return has(report.keepOut, rest);
    case 'floor':
      return report.floors[Number(rest)] !== undefined;
    default:
      return sources.has(name);
  }
}

function namesOfMarks(report: Report): Named[] {
  const { webs, knifeEdges, floors, pieces, cuts, slabs } = report;
  const sources = sourcesOf(report);
  return [
    ...[...webs, ...knifeEdges].flatMap(({ between, slab, piece }): Named[] => [
      ...between.map((source): Named => ['between', source, sources.has(source)]),
      ['slab', slab, slabs[slab] !== undefined],
      ['piece', piece, has(pieces, piece)],
    ]),
    ...floors.flatMap(({ under, holds, slab }): Named[] => [
      ['floor under', under, has(cuts, under)],
      ['floor holds', holds, holds === null || has(pieces, holds)],
      ['slab of a floor', slab, slabs[slab] !== undefined],
    ]),
    ...pieces.flatMap(({ id, freedBy, horns }): Named[] => [
      ['freed by', freedBy, freedBy === null || has(cuts, freedBy)],
      ...horns.map((horn): Named => ['horn', horn, knifeEdges[horn]?.piece === id]),
    ]),
  ];
}

/** What a job without setups is told in, and so a cut that no setup has. */
const AS_DRAWN = /^as drawn(, turned over)?$/;

function namesOfSteps({ steps, setups, cuts, bodies, keepOut, findings }: Report): Named[] {
  return steps.flatMap((step): Named[] => [
    ['setup of a step', step.setup, AS_DRAWN.test(step.setup) || has(setups, step.setup)],
    ['cut of a step', step.cut, has(cuts, step.cut)],
    ['under a step', step.under.over, step.under.over === null || has(keepOut, step.under.over)],
    ...[...step.frees, ...step.hangs, ...step.meets].map(
      ({ body }): Named => ['body of a step', body, has(bodies, body)],
    ),
    ...step.findings.map((k): Named => ['finding of a step', k, findings[k] !== undefined]),
  ]);
}

function namesOfBodies({ bodies, merges, steps, pieces, cuts }: Report): Named[] {
  const isStep = (k: number) => steps[k] !== undefined;
  return [
    ...bodies.flatMap((body): Named[] => [
      ['step of a body', body.step, isStep(body.step)],
      ['end of a body', body.endStep, body.endStep === null || isStep(body.endStep)],
      ...body.pieces.map((id): Named => ['piece of a body', id, has(pieces, id)]),
    ]),
    ...merges.flatMap(({ step, cuts: both }): Named[] => [
      ['step of a merge', step, isStep(step)],
      ...both.map((id): Named => ['cut of a merge', id, has(cuts, id)]),
    ]),
  ];
}

function namesOfCuts(report: Report): Named[] {
  const sources = sourcesOf(report);
  const { cuts, setups, keepOut } = report;
  return [
    ...cuts.flatMap(({ bites, placement }): Named[] =>
      [
        ...bites.flatMap(({ face, far }) => (far === null ? [face] : [face, far])),
        ...(placement?.about ?? []),
      ].map((source): Named => ['edge of a cut', source, sources.has(source)]),
    ),
    ...keepOut.map(
      ({ setup }): Named => ['setup of a keep-out', setup, setup === null || has(setups, setup)],
    ),
    ...setups.flatMap(({ cuts: own, targets }) =>
      [...own, ...targets.map(({ cut }) => cut)].map((id): Named => ['cut of a setup', id, has(cuts, id)]),
    ),
    ...[cuts, setups, keepOut, report.pieces, report.bodies].map((rows): Named => {
      const ids = rows.map(({ id }) => id);
      return ['ids given twice', ids.join(', '), new Set(ids).size === ids.length];
    }),
  ];
}
