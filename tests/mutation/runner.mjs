/*
 * A test runner for Stryker that keeps all tests in one process. The runner for vitest loads every module anew for
 * each mutant, which takes far longer than the tests; here a mutant is switched on, and the tests that reach it run
 * until one fails: first the quick ones, and those that have found mutants before.
 */
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { commonTokens, declareClassPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import {
  DryRunStatus,
  determineHitLimitReached,
  TestStatus,
  toMutantRunResult,
} from '@stryker-mutator/api/test-runner';
import { build } from 'esbuild';

/** What the dry run has found, for a process that is started in place of one that hung. */
const FINDINGS = 'mutation-findings.json';

/**
 * A test in which a mutant is met this many times as often as in any test without it goes on without end; a few
 * more, since a loop that goes round once may go round a little longer and end.
 */
const MOST_HITS = 20;
const SPARE_HITS = 10_000;

/** Counts how often each mutant is met; needed in the dry run only, and slower than all else. */
const COUNTS = /stryCov_\w+\((?:"\d+"(?:, ?)?)+\)/g;

class InOneProcess {
  static inject = [commonTokens.options];
  #options;
  #file = '';
  #loads = 0;
  #tests = [];
  /** By test, how long it takes and how many mutants it has found. */
  #times = new Map();
  #kills = new Map();
  /** By mutant, how often it is met in the test that meets it most. */
  #hits = new Map();

  constructor(options) {
    this.#options = options;
  }

  get #state() {
    globalThis.__stryker__ ??= {};
    return globalThis.__stryker__;
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    const root = process.cwd();
    this.#file = join(root, `bundle-${process.pid}.mjs`);
    const { inOneProcess } = this.#options;
    process.env.EDGEBITE_RUNS = String(inOneProcess.runs);
    const imports = inOneProcess.testFiles.map((file) => `import './${file}';`);
    await build({
      stdin: {
        contents: [
          "import './tests/tools/setup.ts';",
          "import fc from 'fast-check';",
          // Shrinking a failure takes longer than finding it.
          'fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true });',
          ...imports,
          "export { tests } from 'vitest';",
        ].join('\n'),
        resolveDir: root,
        loader: 'ts',
      },
      outfile: this.#file,
      bundle: true,
      format: 'esm',
      platform: 'node',
      target: 'node20',
      packages: 'external',
      alias: { vitest: join(root, 'tests/mutation/vitest-stand-in.mjs'), ...sources(root) },
      plugins: [ownPlaces],
      logLevel: 'error',
    });
    const counting = readFileSync(this.#file, 'utf8');
    writeFileSync(this.#quick, counting.replace(COUNTS, '0'));
  }

  /** Tests that take longer do not run against mutants, in ms: a survivor is met by all of them. */
  get #slowest() {
    return this.#options.inOneProcess.slowest ?? Number.POSITIVE_INFINITY;
  }

  /** The bundle without counts. */
  get #quick() {
    return this.#file.replace(/\.mjs$/, '-quick.mjs');
  }

  async #load(file) {
    this.#loads += 1;
    const { tests } = await import(`${pathToFileURL(file)}?${this.#loads}`);
    const { leaveOut } = this.#options.inOneProcess;
    this.#tests = tests.filter(
      ({ name }) =>
        !leaveOut.some((start) => name.startsWith(start)) && (this.#times.get(name) ?? 0) <= this.#slowest,
    );
  }

  async dryRun() {
    await this.#load(this.#file);
    const results = [];
    for (const test of this.#tests) {
      this.#state.currentTestId = test.name;
      const result = await this.#run(test);
      results.push(result);
      this.#times.set(test.name, result.timeSpentMs);
    }
    this.#state.currentTestId = undefined;
    const mutantCoverage = withoutLoading(this.#state.mutantCoverage ?? { static: {}, perTest: {} });
    for (const { name, timeSpentMs } of results) {
      if (timeSpentMs > this.#slowest) delete mutantCoverage.perTest[name];
    }
    for (const counts of Object.values(mutantCoverage.perTest)) {
      for (const [id, count] of Object.entries(counts)) {
        this.#hits.set(id, Math.max(count, this.#hits.get(id) ?? 0));
      }
    }
    writeFileSync(FINDINGS, JSON.stringify({ times: [...this.#times], hits: [...this.#hits] }));
    await this.#load(this.#quick);
    return { status: DryRunStatus.Complete, tests: results, mutantCoverage };
  }

  async #takeFindings() {
    if (!existsSync(FINDINGS)) return void (await this.dryRun());
    const { times, hits } = JSON.parse(readFileSync(FINDINGS, 'utf8'));
    this.#times = new Map(times);
    this.#hits = new Map(hits);
    await this.#load(this.#quick);
  }

  async mutantRun({ activeMutant, testFilter, mutantActivation, reloadEnvironment }) {
    if (this.#times.size === 0) await this.#takeFindings();
    const state = this.#state;
    state.hitLimit = MOST_HITS * (this.#hits.get(activeMutant.id) ?? 0) + SPARE_HITS;
    state.hitCount = 0;
    state.activeMutant = mutantActivation === 'static' ? activeMutant.id : undefined;
    let results;
    try {
      if (reloadEnvironment) await this.#load(this.#quick);
      state.activeMutant = activeMutant.id;
      results = await this.#until(testFilter);
    } catch (error) {
      // What breaks while modules load breaks all tests.
      results = [failed('loading', 0, error)];
    }
    const reached = determineHitLimitReached(state.hitCount, state.hitLimit);
    state.activeMutant = undefined;
    state.hitCount = undefined;
    // Tests keep what a mutant has made of a module for the next one.
    if (mutantActivation === 'static') await this.#load(this.#quick);
    return toMutantRunResult(reached ?? { status: DryRunStatus.Complete, tests: results });
  }

  async #until(filter) {
    const wanted = filter && new Set(filter);
    const rank = ({ name }) => (this.#times.get(name) ?? 0) / (1 + (this.#kills.get(name) ?? 0));
    const tests = this.#tests
      .filter((test) => !wanted || wanted.has(test.name))
      .sort((one, other) => rank(one) - rank(other));
    const results = [];
    for (const test of tests) {
      this.#state.hitCount = 0;
      const result = await this.#run(test);
      results.push(result);
      if (result.status !== TestStatus.Failed) continue;
      this.#kills.set(test.name, 1 + (this.#kills.get(test.name) ?? 0));
      break;
    }
    return results;
  }

  async #run({ name, body }) {
    const start = performance.now();
    try {
      await body();
      return { id: name, name, status: TestStatus.Success, timeSpentMs: performance.now() - start };
    } catch (error) {
      return failed(name, performance.now() - start, error);
    }
  }

  async dispose() {
    for (const file of [this.#file, this.#quick]) rmSync(file, { force: true });
  }
}

/**
 * The coverage without what only the making of cases meets, where tests meet it too. Such mutants would need all
 * modules loaded anew and all tests run, to find cases made by wrong code.
 */
function withoutLoading({ static: loading, perTest }) {
  const met = new Set(Object.values(perTest).flatMap((counts) => Object.keys(counts)));
  const rest = Object.entries(loading).filter(([id]) => !met.has(id));
  return { static: Object.fromEntries(rest), perTest };
}

/** Where the source of each entry of the packages is; the longer names first, since a shorter one stands for what is below it. */
function sources(root) {
  const entries = {
    '@edgebite/core/testing': 'core/src/testing/index.ts',
    ...Object.fromEntries(
      ['door', 'flatten', 'geometry', 'machining'].map((name) => [
        `@edgebite/core/${name}`,
        `core/src/${name}.ts`,
      ]),
    ),
    '@edgebite/core': 'core/src/index.ts',
    '@edgebite/svg/tree': 'svg/src/tree.ts',
    '@edgebite/svg': 'svg/src/index.ts',
    '@edgebite/previewer': 'previewer/src/index.ts',
  };
  return Object.fromEntries(
    Object.entries(entries).map(([name, file]) => [name, join(root, 'packages', file)]),
  );
}

/** Tests look for files beside themselves, not beside the bundle. */
const ownPlaces = {
  name: 'own-places',
  setup({ onLoad }) {
    onLoad({ filter: /\.ts$/ }, ({ path }) => {
      const place = JSON.stringify(pathToFileURL(path).href);
      const contents = readFileSync(path, 'utf8')
        .replaceAll('import.meta.url', place)
        .replaceAll('import.meta.dirname', JSON.stringify(dirname(path)))
        .replaceAll('.toMatchFileSnapshot(', `.toBeFile(${place}, `);
      return { contents, loader: 'ts' };
    });
  },
};

function failed(name, timeSpentMs, error) {
  return {
    id: name,
    name,
    status: TestStatus.Failed,
    timeSpentMs,
    failureMessage: String(error?.message ?? error),
  };
}

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, 'in-one-process', InOneProcess)];
