/*
 * Mutation tests of the arithmetic that cuts wood, a part at a time (tests/mutants/parts.js): `MUTANTS=gap npm run
 * mutants`. A score under 85 fails. `.ci/run` looks at the parts that are done within half a minute.
 */
import { name, part } from "./tests/mutants/parts.js";

/** @type {import("@stryker-mutator/api/core").PartialStrykerOptions} */
export default {
  mutate: part.mutate,
  plugins: ["./tests/mutants/runner.js"],
  testRunner: "bundle",
  coverageAnalysis: "perTest",
  concurrency: 1,
  maxTestRunnerReuse: 100,
  // Loops that never end are found by counting; this much is for a machine that is busy.
  timeoutMS: 30_000,
  // None: it would be read by a TypeScript older than ours, only to mend paths that ours has not.
  tsconfigFile: "none",
  ignorePatterns: ["out", "coverage"],
  tempDirName: "coverage/stryker",
  reporters: ["progress-append-only", "clear-text", "json"],
  jsonReporter: { fileName: `coverage/mutants-${name}.json` },
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  thresholds: { high: 95, low: 85, break: 85 },
};
