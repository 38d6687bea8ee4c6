/*
 * Room: the `edgebite` command: its arguments, files and exit codes.
 * In: arguments, and a job from a file or a pipe.
 * Out: text, JSON, SVG or HTML, and an exit code.
 */

import { readFileSync } from 'node:fs';
import type { Along } from '@edgebite/core';
import { clean, type DrawOptions, LEVELS, SHEET_SIZES, THEME_NAMES } from '@edgebite/svg';
import { Command, CommanderError, Option } from 'commander';
import type { Instead } from './draw-job.js';
import { EXIT } from './exit.js';
import { Failure, Unfinished } from './failure.js';
import { type Io, terminal } from './io.js';
import type { Which } from './load.js';
import type { MeasureArguments } from './measure.js';
import { numberIn, PATIENCE } from './number-in.js';
import type { ProposeOptions } from './propose.js';
import { SHEET_FORMATS, type SheetFormat } from './sheet/formats.js';
import type { Level } from './text/findings.js';

/**
 * Runs the `edgebite` command with its arguments; resolves to the exit code and never rejects: 0 clean, 1 findings
 * at or over `--fail-on`, 2 anything wrong with the arguments or the job, 3 what neither is to blame for: an output that
 * cannot be written, a fault of edgebite.
 */
export async function run(args: readonly string[], io: Io = terminal()): Promise<number> {
  const code = await worked(args, io);
  try {
    await io.written?.();
    return code;
  } catch (error) {
    const failed = told(error, io);
    await io.written?.().catch(() => {});
    return failed;
  }
}

async function worked(args: readonly string[], io: Io): Promise<number> {
  let code: number = EXIT.clean;
  const program = commandLine(io, async (work) => {
    code = await work();
  });
  try {
    await program.parseAsync(args, { from: 'user' });
    return code;
  } catch (error) {
    return told(error, io);
  }
}

/** Says what went wrong; returns the exit code. Never 1 for a fault of our own: that would read as a finding. */
function told(error: unknown, io: Io): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.clean : EXIT.bad;
  if (error instanceof Failure) {
    for (const line of error.lines) io.err(`edgebite: ${clean(line)}\n`);
    return error instanceof Unfinished ? EXIT.unfinished : EXIT.bad;
  }
  const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
  io.err(`edgebite: a fault in edgebite itself, not in the job:\n${cleanLines(trace)}\n`);
  return EXIT.unfinished;
}

/** Text of several lines without anything that a terminal would do instead of showing it. */
function cleanLines(text: string): string {
  return text.split('\n').map(clean).join('\n');
}

/** Each command is loaded when it is asked for, so that none waits for what others need. */
type Start = (work: () => number | Promise<number>) => Promise<void>;

function commandLine(io: Io, start: Start): Command {
  const program = new Command('edgebite')
    .description('What partial-hole cuts leave of a part: pieces, thin webs, knife edges, floors.')
    .version(version())
    .exitOverride()
    .configureOutput({ writeOut: io.out, writeErr: (text) => io.err(cleanLines(text)) })
    .showHelpAfterError('(try --help)')
    .addHelpText('after', HELP);
  program
    .command('check')
    .description('print what the cuts of a job leave, findings first')
    .argument('<job>', JOB)
    .option('--all', 'print all tables as well')
    .option('--json', 'print the whole report as JSON')
    .option(...TWIN)
    .option(...DRAWER)
    .addOption(
      new Option('--fail-on <level>', 'end with 1 if there is a finding of this level or a graver one')
        .choices(LEVELS)
        .default('danger'),
    )
    .action((job: string, { all = false, json = false, failOn, twin = false, drawer }: CheckArguments) =>
      start(async () => (await import('./check.js')).check(job, { all, json, failOn, twin, drawer }, io)),
    );
  program
    .command('draw')
    .description('draw a job as SVG, to print at its true scale')
    .argument('<job>', JOB)
    .option('-o, --output <file>', 'file to write, "-" for standard output (default: name of the job, .svg)')
    .addOption(new Option('--sheet <size>', 'size of the sheet').choices(SHEET_SIZES).default('A4'))
    .option('--upright', 'stand the sheet upright')
    .option('--zero <setup>', 'draw how the zero of a setup is found instead')
    .option('--measure <cut>', 'draw how to measure what a cut leaves instead')
    .option(...TWIN)
    .option(...DRAWER)
    .addOption(new Option('--theme <name>', 'its colours').choices(THEME_NAMES).default('light'))
    .action((job: string, { output, ...options }: { output?: string } & Instead & DrawOptions & Which) =>
      start(async () => (await import('./draw-job.js')).drawJob(job, output, options, io)),
    );
  program
    .command('range')
    .description('print where one number of one cut is safe, and each value at which something changes')
    .argument('<job>', JOB)
    .requiredOption('--cut <id>', 'the cut')
    .addOption(
      new Option('--along <number>', 'its free number: the place of its centre, or its diameter')
        .choices(['x', 'y', 'diameter'])
        .makeOptionMandatory(),
    )
    .requiredOption('--from <value>', 'where the range begins, in the unit of the job')
    .requiredOption('--to <value>', 'where it ends')
    .option('--json', 'print the whole answer as JSON')
    .option(...TWIN)
    .option(...DRAWER)
    .option('--svg <file>', 'draw it as a strip into a file as well')
    .option('--seconds <number>', 'stop after so long with what is known so far', String(PATIENCE))
    .addHelpText(
      'after',
      '\nEnds with 0 if some of the range is safe, 1 if none of it is, 2 and 3 as other commands do.',
    )
    .action((job: string, options: RangeArguments) =>
      start(async () => {
        const { range } = await import('./range.js');
        const { cut, along, json = false, svg, twin = false, drawer } = options;
        const seconds = numberIn('--seconds', options.seconds);
        const ends = { from: numberIn('--from', options.from), to: numberIn('--to', options.to) };
        return range(job, { cut, along, ...ends }, { json, svg, seconds, twin, drawer }, io);
      }),
    );
  program
    .command('measure')
    .description('print how to measure the arc that a cut leaves; with readings, what to correct')
    .argument('<job>', JOB)
    .requiredOption('--cut <id>', 'the cut')
    .option('--arc <number>', 'which of its arcs, where it leaves several', '1')
    .option(
      '--reading <way=value>',
      'what a way read, by its number: 2=23.45, or 2=23.45+-0.01; as often as need be',
      (text: string, all: string[]) => [...all, text],
      [] as string[],
    )
    .option('--tolerance <length>', 'how good readings are (default: 0.02 mm or 0.001 inch)')
    .option('--dial <length>', "one graduation of the head (default: that of the cut's tool)")
    .addOption(
      new Option('--dial-on <size>', 'what a graduation changes of the bore')
        .choices(['diameter', 'radius'])
        .default('diameter'),
    )
    .option('--json', 'print the answer as JSON')
    .option(...TWIN)
    .option(...DRAWER)
    .addHelpText(
      'after',
      '\nEnds with 1 if readings contradict each other, or the arc is past or over the drawn one.',
    )
    .action((job: string, options: MeasureArguments) =>
      start(async () => (await import('./measure.js')).measure(job, options, io)),
    );
  program
    .command('propose')
    .description('print ways to make a finished outline out of a blank with the tools of a drawer')
    .argument('<aim>', 'aim file, "-" for standard input')
    .option('--drawer <file>', 'file with the drawer, where the aim has none of its own')
    .option('--json', 'print the ways as JSON, each with its job')
    .option('--way <number>', 'print one of the ways as a job')
    .option('-o, --output <file>', 'write that job to a file')
    .addHelpText('after', '\nEnds with 1 if something can be made by no tool of the drawer.')
    .action((aim: string, { json = false, way, output, drawer }: Partial<ProposeOptions>) =>
      start(async () => (await import('./propose.js')).proposeWays(aim, { json, way, output, drawer }, io)),
    );
  program
    .command('compare')
    .description('print two jobs side by side, and where their finished parts differ')
    .argument('<first>', JOB)
    .argument('<second>', JOB)
    .option('--json', 'print the answer as JSON')
    .option('--drawer <file>', 'file with the drawer, where the jobs have none of their own')
    .addHelpText('after', '\nEnds with 1 if the finished parts differ.')
    .action((first: string, second: string, { json = false, drawer }: { json?: boolean; drawer?: string }) =>
      start(async () => (await import('./propose.js')).compare([first, second], { json, drawer }, io)),
    );
  program
    .command('sheet')
    .description('print a sheet to take to the machine: zeros, readout targets, speeds, what to watch')
    .argument('<job>', JOB)
    .addOption(
      new Option('--format <format>', 'text of 80 columns, CSV, or HTML to print')
        .choices(SHEET_FORMATS)
        .default('text'),
    )
    .option('-o, --output <file>', 'file to write (default: standard output)')
    .option(...TWIN)
    .option(...DRAWER)
    .action((job: string, options: { format: SheetFormat; output?: string } & Which) =>
      start(async () => (await import('./sheet/command.js')).sheet(job, options, io)),
    );
  program
    .command('page')
    .description('print the address of the page that shows jobs and changes them, to open in a browser')
    .action(() => start(async () => (await import('./page.js')).page(io)));
  program
    .command('schema')
    .description('print the JSON Schema of jobs')
    .option('--report', 'print that of reports')
    .addOption(new Option('--aim', 'print that of aims').conflicts('report'))
    .action(({ report = false, aim = false }: { report?: boolean; aim?: boolean }) =>
      start(async () => (await import('./schema.js')).schema(aim ? 'aim' : report ? 'report' : 'job', io)),
    );
  return program;
}

interface CheckArguments extends Which {
  readonly all?: boolean;
  readonly json?: boolean;
  readonly failOn: Level;
}

interface RangeArguments extends Which {
  readonly cut: string;
  readonly along: Along;
  readonly from: string;
  readonly to: string;
  readonly json?: boolean;
  readonly svg?: string;
  readonly seconds: string;
}

const TWIN = ['--twin', 'of its twin, the mirrored part'] as const;

const DRAWER = ['--drawer <file>', 'file with the drawer, where the job has none of its own'] as const;

const JOB = 'job file, "-" for standard input';

const HELP = `
Ends with 0 if all is clean, 1 if there are findings at or over --fail-on, 2 if the job, the
arguments are at fault, 3 if an output cannot be written or edgebite is at fault. A file is
written whole or not at all.`;

// The file lies beside src as well as beside dist.
function version(): string {
  const text = readFileSync(new URL('../package.json', import.meta.url), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
