import type { Aim, Comparison, Job, JobDocument, Proposal, WayRow } from '@edgebite/core';
import { clean, countText, lengthText, numberText } from '@edgebite/svg';
import { tableText } from '../columns/table.js';
import { hanging } from '../columns/wrap.js';
import { CLOSING } from './report.js';
import { orderWords, wayLines } from './way-figures.js';

type Units = Job['units'];

/**
 * What is proposed, as text for people: the ways side by side, best first, and the cuts of each in their order; or what
 * no tool of the drawer can make.
 */
export function proposalText(aim: Aim, { ways, refusals }: Proposal): string {
  const { name, units } = aim.job;
  const head = `${name === '' ? 'Aim without a name' : clean(name)}`;
  if (refusals.length > 0) {
    const list = refusals.map(({ message }, k) => hanging(`${k + 1}  `, message));
    return `${[head, `NOT TO BE MADE with these tools\n${list.join('\n')}`].join('\n\n')}\n`;
  }
  return `${[
    head,
    `${countText(ways.length, 'WAY', 'WAYS')}, ${orderWords(ways.map(({ row }) => row))}\n${rowsText(
      ways.map(({ row }, k) => ({ head: `way ${k + 1}`, row })),
      units,
    )}`,
    ...ways.map(({ job, row }, k) => `WAY ${k + 1}\n${cutsText(job)}${dangersText(row)}`),
    hanging('', ways.some(({ job }) => job.setups !== undefined) ? PICK_LAID : PICK),
    hanging('', CLOSING),
  ].join('\n\n')}\n`;
}

const PICK =
  'Each way is an ordinary job: --way 1 -o job.json writes the first one, to be given zeros and clamps, changed and checked. What is told here is of the part as drawn, without jaws or stops.';

const PICK_LAID =
  'Each way is an ordinary job: --way 1 -o job.json writes the first one, to be given tolerances of its zeros and clamps, changed and checked. What is told here knows no jaws, and of stops only the sides.';

/** Two jobs side by side, and where their finished parts differ. */
export function comparisonText([first, second]: readonly [Job, Job], comparison: Comparison): string {
  const { rows, differences } = comparison;
  const titles = [first, second].map(
    ({ name }, k) => `${'AB'[k]}  ${name === '' ? 'Job without a name' : clean(name)}`,
  );
  const table = rowsText(
    rows.map((row, k) => ({ head: 'AB'[k] as string, row })),
    first.units,
  );
  return `${[titles.join('\n'), table, differencesText(differences, first.units)].join('\n\n')}\n`;
}

interface Headed {
  readonly head: string;
  readonly row: WayRow;
}

/** What ways come to: a line for each figure, a column for each way. */
function rowsText(ways: readonly Headed[], units: Units): string {
  const lines = wayLines(
    units,
    ways.some(({ row }) => row.pushes !== null),
  );
  return tableText(
    [
      { head: '', align: 'left', cell: ([what]: (typeof lines)[number]) => what },
      ...ways.map(({ head, row }) => ({
        head,
        align: 'right' as const,
        cell: ([, figure]: (typeof lines)[number]) => figure(row),
      })),
    ],
    lines,
  );
}

/** The cuts of a job in their order, with the tool of each; where the part is laid anew, how. */
function cutsText({ cuts, setups = [] }: JobDocument): string {
  if (cuts.length === 0) return 'Nothing to cut: the blank is the finished part.';
  const widest = Math.max(...cuts.map(({ id }) => id.length));
  const layOf = (id: string) => setups.find((setup) => setup.cuts[0] === id)?.name;
  return cuts
    .flatMap(({ id, tool = '-' }, k) => {
      const lay = setups.length > 1 ? layOf(id) : undefined;
      const line = `${String(k + 1).padStart(String(cuts.length).length)}  ${id.padEnd(widest)}  ${clean(tool)}`;
      return lay === undefined ? [line] : [`${clean(lay)}:`, line];
    })
    .join('\n');
}

function dangersText({ dangers }: WayRow): string {
  return dangers.map(({ message }) => `\n${hanging('DANGER  ', message)}`).join('');
}

function differencesText(differences: Comparison['differences'], units: Units): string {
  if (differences.length === 0) return 'The finished parts are the same.';
  const list = differences.map(({ from, to, more, area, at }, k) => {
    const heights = `${numberText(from, units)} to ${lengthText(to, units)}`;
    const place = `(${numberText(at.x, units)}, ${numberText(at.y, units)})`;
    return hanging(
      `${k + 1}  `,
      `By ${place}, at heights ${heights}: ${more === 'first' ? 'A' : 'B'} leaves metal that ${more === 'first' ? 'B' : 'A'} does not, ${area.toPrecision(4)} ${units}².`,
    );
  });
  return `DIFFERENCES of the finished parts\n${list.join('\n')}`;
}
