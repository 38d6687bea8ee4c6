import { type Report, type ReportCut, type ReportEdge, sourceText } from '@edgebite/core';
import { lengthText, numberText } from '@edgebite/svg';
import { tableText } from '../columns/table.js';
import { hanging } from '../columns/wrap.js';
import type { Section } from './passes.js';
import { left, right } from './tables.js';

type ToolPath = NonNullable<ReportCut['toolPath']>;

/** The path of each cut that follows the outline, and what its tool does not reach there. */
export function pathSections(report: Report): Section[] {
  return report.cuts.flatMap((cut): Section[] =>
    cut.toolPath === null
      ? []
      : [[`PATH of the tool's centre in cut ${cut.id}, as drawn`, pathText(report, cut, cut.toolPath)]],
  );
}

function pathText(report: Report, cut: ReportCut, path: ToolPath): string {
  const { units } = report;
  const allowance =
    path.allowance === 0 ? 'touching it' : `${lengthText(path.allowance, units)} left between`;
  const facts = `Runs ${path.side} of the outline, ${allowance}; ${path.milling} milling; tool ${lengthText(cut.diameter, units)} across.`;
  return [hanging('', facts), movesTable(report, path), leftText(report, path)].join('\n');
}

interface Move {
  readonly pass: string;
  readonly what: string;
  readonly to: readonly [number, number];
  readonly center: readonly [number, number] | null;
  readonly beside: string;
}

function movesTable({ units, names }: Report, { passes }: ToolPath): string {
  const moves = passes.flatMap(({ leadIn, cut, leadOut }, k): Move[] => {
    const all = [...leadIn, ...cut, ...leadOut];
    const [first] = all;
    if (first === undefined) return [];
    const start: Move = { pass: String(k + 1), what: 'down at', to: first.a, center: null, beside: '-' };
    const told = (name: string) => (edge: ReportEdge) => moveOf(name, edge, names);
    const last = all[all.length - 1] as ReportEdge;
    const end: Move = { pass: '', what: 'lift at', to: last.b, center: null, beside: '-' };
    return [start, ...leadIn.map(told('in: ')), ...cut.map(told('')), ...leadOut.map(told('out: ')), end];
  });
  const number = (value: number | undefined) => (value === undefined ? '-' : numberText(value, units));
  return tableText<Move>(
    [
      left('pass', ({ pass }) => pass),
      left('move', ({ what }) => what),
      right('to x', ({ to }) => number(to[0])),
      right('y', ({ to }) => number(to[1])),
      right('centre x', ({ center }) => number(center?.[0])),
      right('y', ({ center }) => number(center?.[1])),
      left('beside', ({ beside }) => beside),
    ],
    moves,
  );
}

function moveOf(name: string, edge: ReportEdge, names: Report['names']): Move {
  const beside = edge.source === undefined ? '-' : sourceText(edge.source, names);
  if (edge.kind === 'line') return { pass: '', what: `${name}line`, to: edge.b, center: null, beside };
  const what = `${name}${edge.ccw ? 'left' : 'right'} arc`;
  return { pass: '', what, to: edge.b, center: edge.center, beside };
}

const REASONS: Readonly<Record<ToolPath['unreached'][number]['by'], string>> = {
  corner: 'sharp corner',
  arc: 'hollow arc',
  gap: 'narrow gap',
  tips: 'between tips',
};

function leftText({ units }: Report, { unreached, missed }: ToolPath): string {
  const loops = missed.length === 0 ? [] : [hanging('', `Does not fit at all along ${missed.join(', ')}.`)];
  if (unreached.length === 0) {
    return [...loops, ...(missed.length === 0 ? ['The tool reaches all along it.'] : [])].join('\n');
  }
  const table = tableText<ToolPath['unreached'][number]>(
    [
      left('not reached', ({ by }) => REASONS[by]),
      right('area', ({ area }) => numberText(area, units)),
      right('x', ({ at }) => numberText(at[0], units)),
      right('y', ({ at }) => numberText(at[1], units)),
      right('largest tool', ({ largestTool }) =>
        largestTool === 0 ? 'none' : numberText(largestTool, units),
      ),
    ],
    unreached,
  );
  return [...loops, table].join('\n');
}
