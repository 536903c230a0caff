import { type File, startTests, type Test, type VitestRunner } from "@vitest/runner";

/** A test file of the bundle and what evaluates it. */
export type Load = readonly [name: string, load: () => Promise<unknown>];

/** Far more often than any test comes by one place; a mutant that does has lost its way. */
const MOST_HITS = 30_000_000;

/** Runs the test files and ends with exit 1 as soon as one test fails: that is all that a mutant is asked. */
export async function run(files: readonly Load[]): Promise<void> {
  // The instrumented sources count up to it (mutation testing's own protocol) and throw beyond.
  Object.assign(globalThis, { __stryker__: { hitCount: 0, hitLimit: MOST_HITS } });
  // No test may fail for want of speed, or a busy machine would be taken for a killed mutant.
  performance.now = () => 0;
  const loads = new Map(files);
  const runner: VitestRunner = {
    config: CONFIG,
    importFile: async (name) => loads.get(name)?.(),
    onCollected: (collected) => collected.forEach(refuseUnread),
    onAfterRunTask: (test) => refuse(test),
  };
  for (const [name] of files) await startTests([{ filepath: name }], runner);
}

function refuseUnread({ name, result }: File): void {
  if (result?.state === "fail") fail(name, result.errors?.[0]?.message);
}

function refuse({ name, result }: Test): void {
  if (result?.state === "fail") fail(name, result.errors?.[0]?.message);
}

function fail(name: string, message: string | undefined): never {
  console.error(`${name}: ${message}`);
  process.exit(1);
}

const CONFIG: VitestRunner["config"] = {
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
