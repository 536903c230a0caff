/*
 * A test runner for mutation tests: our test files under vitest's own collecting and matchers, in one process, the
 * sources evaluated anew for each mutant. Starting vitest itself for each of two thousand mutants takes hours.
 */
import { declareClassPlugin, PluginKind } from "@stryker-mutator/api/plugin";
import {
  DryRunStatus,
  determineHitLimitReached,
  TestStatus,
  toMutantRunResult,
} from "@stryker-mutator/api/test-runner";
import { startTests } from "@vitest/runner";
import { bundle } from "./bundle.js";
import { part } from "./parts.js";

class BundleRunner {
  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    this.evaluate = await bundle(part.tests);
  }

  async dryRun() {
    globalThis.__stryker__ = {};
    const tests = await this.run({});
    const mutantCoverage = ofFilesToTheirTests(globalThis.__stryker__.mutantCoverage, tests);
    return { status: DryRunStatus.Complete, tests, mutantCoverage };
  }

  async mutantRun({ activeMutant, testFilter, hitLimit }) {
    globalThis.__stryker__ = { activeMutant: activeMutant.id, hitCount: 0, hitLimit };
    const tests = await this.run({ only: testFilter, bail: true });
    const lost = determineHitLimitReached(globalThis.__stryker__.hitCount, hitLimit);
    return toMutantRunResult(lost ?? { status: DryRunStatus.Complete, tests });
  }

  /** What became of the tests, in their order; of those behind a failing one nothing where it is to bail out. */
  async run({ only, bail = false }) {
    const results = [];
    const fail = (id, name, errors) => {
      const failureMessage = `${errors?.[0]?.message}`;
      results.push({ id, name, timeSpentMs: 0, status: TestStatus.Failed, failureMessage });
    };
    let load = {};
    try {
      load = await this.evaluate();
    } catch (error) {
      fail("all", "all", [error]);
    }
    const wanted = only && new Set(only);
    const { now } = performance;
    const isAsked = (path) => !only || only.some((id) => id.startsWith(`${path} > `));
    for (const path of Object.keys(load).filter(isAsked)) {
      if (bail && results.some(({ status }) => status === TestStatus.Failed)) break;
      let begun = 0;
      globalThis.__stryker__.currentTestId = path;
      const runner = {
        config: CONFIG,
        importFile: (name) => load[name](),
        onCollected: ([file]) => {
          if (file?.result?.state === "fail") fail(path, path, file.result.errors);
          if (wanted) leaveOut(file, wanted);
        },
        onBeforeRunTask: (test) => {
          if (bail && results.some(({ status }) => status === TestStatus.Failed)) test.mode = "skip";
          globalThis.__stryker__.currentTestId = idOf(path, test);
          // No test may fail for want of speed, or a busy machine would be taken for a killed mutant.
          performance.now = () => 0;
          begun = Date.now();
        },
        onAfterRunTask: (test) => {
          performance.now = now;
          globalThis.__stryker__.currentTestId = path;
          const id = idOf(path, test);
          if (test.result?.state === "fail") fail(id, id, test.result.errors);
          else if (test.result?.state === "pass") {
            results.push({ id, name: id, timeSpentMs: Date.now() - begun, status: TestStatus.Success });
          }
        },
      };
      await startTests([{ filepath: path }], runner);
    }
    globalThis.__stryker__.currentTestId = undefined;
    return results;
  }
}

/** What a file does while its tests are collected is done for each of them. */
function ofFilesToTheirTests({ static: always, perTest } = { static: {}, perTest: {} }, tests) {
  const hits = tests.map(({ id }) => [id, { ...perTest[id.split(" > ")[0]], ...perTest[id] }]);
  return { static: always, perTest: Object.fromEntries(hits) };
}

/** Names may be alike: the place among the file's tests is part of it. */
const idOf = (path, test) => `${path} > ${test.name} (${test.id})`;

function leaveOut(task, wanted) {
  for (const each of task.tasks) {
    if (each.type === "suite") leaveOut(each, wanted);
    else if (!wanted.has(idOf(task.file.filepath, each))) each.mode = "skip";
  }
}

const CONFIG = {
  root: process.cwd(),
  setupFiles: [],
  name: undefined,
  passWithNoTests: false,
  testNamePattern: undefined,
  allowOnly: true,
  sequence: { seed: 1, hooks: "stack", setupFiles: "list" },
  chaiConfig: undefined,
  maxConcurrency: 1,
  testTimeout: 600_000,
  hookTimeout: 600_000,
  retry: 0,
  includeTaskLocation: false,
  tags: [],
  tagsFilter: undefined,
  strictTags: false,
};

export const strykerPlugins = [declareClassPlugin(PluginKind.TestRunner, "bundle", BundleRunner)];
