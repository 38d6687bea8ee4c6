/*
 * A test runner for Stryker that keeps all tests in one process. The runner for vitest loads every module anew for
 * each mutant, which takes far longer than the tests; here a mutant is switched on, and the tests that reach it run
 * from the quickest to the slowest until one fails.
 */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { commonTokens, declareClassPlugin, PluginKind } from '@stryker-mutator/api/plugin';
import {
  DryRunStatus,
  determineHitLimitReached,
  TestStatus,
  toMutantRunResult,
} from '@stryker-mutator/api/test-runner';
import { build } from 'esbuild';

/** Beside the files that tests look for by a relative path. */
const BUNDLE = 'tests/tools';

class InOneProcess {
  static inject = [commonTokens.options];
  #options;
  #file = '';
  #loads = 0;
  #tests = [];
  #times = new Map();

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
    this.#file = join(root, BUNDLE, `bundle-${process.pid}.mjs`);
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
      alias: {
        vitest: join(root, 'tests/mutation/vitest-stand-in.mjs'),
        '@edgebite/core/testing': join(root, 'packages/core/src/testing/index.ts'),
        '@edgebite/core': join(root, 'packages/core/src/index.ts'),
      },
      logLevel: 'error',
    });
    await this.#load();
  }

  async #load() {
    this.#loads += 1;
    const { tests } = await import(`${pathToFileURL(this.#file)}?${this.#loads}`);
    const { leaveOut } = this.#options.inOneProcess;
    this.#tests = tests.filter(({ name }) => !leaveOut.includes(name));
  }

  async dryRun() {
    const results = [];
    for (const test of this.#tests) {
      this.#state.currentTestId = test.name;
      const result = await this.#run(test);
      results.push(result);
      this.#times.set(test.name, result.timeSpentMs);
    }
    this.#state.currentTestId = undefined;
    return { status: DryRunStatus.Complete, tests: results, mutantCoverage: this.#state.mutantCoverage };
  }

  async mutantRun({ activeMutant, testFilter, hitLimit, mutantActivation, reloadEnvironment }) {
    if (this.#times.size === 0) await this.dryRun();
    const state = this.#state;
    state.hitLimit = hitLimit;
    state.hitCount = hitLimit === undefined ? undefined : 0;
    state.activeMutant = mutantActivation === 'static' ? activeMutant.id : undefined;
    let results;
    try {
      if (reloadEnvironment) await this.#load();
      state.activeMutant = activeMutant.id;
      results = await this.#until(testFilter);
    } catch (error) {
      // What breaks while modules load breaks all tests.
      results = [failed('loading', 0, error)];
    }
    const reached = determineHitLimitReached(state.hitCount, hitLimit);
    state.activeMutant = undefined;
    state.hitCount = undefined;
    return toMutantRunResult(reached ?? { status: DryRunStatus.Complete, tests: results });
  }

  async #until(filter) {
    const wanted = filter && new Set(filter);
    const time = (test) => this.#times.get(test.name) ?? 0;
    const tests = this.#tests
      .filter((test) => !wanted || wanted.has(test.name))
      .sort((one, other) => time(one) - time(other));
    const results = [];
    for (const test of tests) {
      const result = await this.#run(test);
      results.push(result);
      if (result.status === TestStatus.Failed) break;
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
    rmSync(this.#file, { force: true });
  }
}

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
