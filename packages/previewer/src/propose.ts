import {
  type Comparison,
  compareJobs,
  type Proposal,
  type ProposedWay,
  parseAim,
  propose,
} from '@edgebite/core';
import { clean } from '@edgebite/svg';
import { EXIT, STANDARD_OUTPUT } from './exit.js';
import { Failure } from './failure.js';
import type { Io } from './io.js';
import { jsonText } from './json-text.js';
import { loadDrawer, loadJob, loadWith, STANDARD_INPUT } from './load.js';
import { saveWhole } from './save.js';
import { outputFile } from './target.js';
import { comparisonText, proposalText } from './text/ways.js';

/** How `propose` prints, and which way it writes as a job, if any. */
export interface ProposeOptions {
  readonly json: boolean;
  /** Its number, from 1. */
  readonly way: string | undefined;
  readonly output: string | undefined;
  /** A file with the drawer, where the aim has none of its own. */
  readonly drawer?: string | undefined;
}

/**
 * Prints ways to make a part, or writes one of them as a job; returns the exit code: clean where there are ways, found
 * where something can be made by no tool of the drawer.
 * @throws Failure if the aim cannot be used, there is no such way, or the job cannot be written.
 */
export async function proposeWays(name: string, options: ProposeOptions, io: Io): Promise<number> {
  const drawer = await loadDrawer(options.drawer, name, io);
  const aim = await loadWith(name, (text) => parseAim(text, drawer), 'the aim', io);
  const proposal = propose(aim);
  if (options.way === undefined) {
    if (options.output !== undefined) throw new Failure(['-o: say with --way which way is to be written']);
    io.out(options.json ? jsonText(withoutReports(proposal)) : proposalText(aim, proposal));
  } else await writeWay(name, proposal, options.way, options.output, io);
  return proposal.refusals.length > 0 ? EXIT.found : EXIT.clean;
}

/** Reports are those of `check --json` for each job. */
function withoutReports({ ways, refusals }: Proposal): object {
  return { ways: ways.map(({ job, row }) => ({ job, row })), refusals };
}

async function writeWay(
  name: string,
  { ways }: Proposal,
  asked: string,
  output: string | undefined,
  io: Io,
): Promise<void> {
  const way = /^\d+$/.test(asked) ? ways[Number(asked) - 1] : undefined;
  if (way === undefined) {
    const there = ways.length === 0 ? 'there is none' : `there are 1 to ${ways.length}`;
    throw new Failure([`--way: is ${JSON.stringify(asked)}; ${there}`]);
  }
  const text = jobText(way);
  if (output === undefined || output === STANDARD_OUTPUT) return io.out(text);
  const file = outputFile(output, name, '-o', io);
  await saveWhole(file, output, text);
  io.out(`Job written to ${clean(output)}\n`);
}

function jobText({ job }: ProposedWay): string {
  return jsonText(job);
}

/**
 * Prints two jobs side by side, and where their finished parts differ; returns the exit code: found where they do.
 * @throws Failure if a job cannot be used, or they are not in one unit.
 */
export async function compare(
  names: readonly [string, string],
  { json, drawer }: { readonly json: boolean; readonly drawer?: string | undefined },
  io: Io,
): Promise<number> {
  const [first, second] = names;
  if (first === STANDARD_INPUT && second === STANDARD_INPUT) {
    throw new Failure(['standard input can be one of the two jobs only; name a file for the other']);
  }
  const jobs = [await loadJob(first, io, { drawer }), await loadJob(second, io, { drawer })] as const;
  if (jobs[0].units !== jobs[1].units) {
    throw new Failure([
      `${second}: is in ${jobs[1].units}, ${first} in ${jobs[0].units}; write both in one unit to compare them`,
    ]);
  }
  const comparison: Comparison = compareJobs(...jobs);
  io.out(json ? jsonText(comparison) : comparisonText(jobs, comparison));
  return comparison.differences.length > 0 ? EXIT.found : EXIT.clean;
}
