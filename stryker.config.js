/*
 * Mutation tests of the arithmetic that cuts wood, a part at a time: `MUTANTS=gap npm run mutants`. Not in CI: all
 * parts take longer than everything else together.
 */

/** What is changed, and the tests that are run against each change: those that stand nearest, and only quick ones. */
const PARTS = {
  units: { mutate: ["src/units/*.ts"], tests: ["tests/units"] },
  frames: {
    mutate: [
      "src/geometry/{frame,vector,surface-point,ring}.ts",
      "src/room/resolve/{face,meeting,planes,shell,surfaces}.ts",
    ],
    tests: [
      "tests/geometry/body.test.ts",
      "tests/geometry/chord.test.ts",
      "tests/geometry/clip.test.ts",
      "tests/geometry/distance-from.test.ts",
      "tests/room/frames.test.ts",
      "tests/room/not-boxes.test.ts",
      "tests/room/resolve.test.ts",
    ],
  },
  gap: {
    mutate: [
      "src/geometry/{body,convex,distance,distance-from,chord,clip}.ts",
      "src/place/{fitting,gaps,obstacles}.ts",
      "src/check/{framing-gap,neighbours,obstruction,outside-surface}.ts",
    ],
    tests: [
      "tests/geometry/body.test.ts",
      "tests/geometry/chord.test.ts",
      "tests/geometry/clip.test.ts",
      "tests/geometry/distance-from.test.ts",
      "tests/place/gaps.test.ts",
      "tests/check/framing.test.ts",
      "tests/check/layout.test.ts",
      "tests/check/rules.test.ts",
    ],
  },
  tiling: { mutate: ["src/drawing/{tiles,touches}.ts"], tests: ["tests/drawing/tiles.test.ts"] },
  labels: {
    mutate: ["src/sheets/{label-stock,labelling}.ts", "src/standards/label-stock.ts"],
    tests: ["tests/standards/label-stock.test.ts", "tests/sheets/labels.test.ts"],
  },
};

const name = process.env.MUTANTS ?? "";
const part = PARTS[name];
if (part === undefined) throw new Error(`MUTANTS is one of ${Object.keys(PARTS).join(", ")}`);

/** @type {import("@stryker-mutator/api/core").PartialStrykerOptions} */
export default {
  mutate: part.mutate,
  testRunner: "command",
  buildCommand: `npx tsx tests/mutants/build.ts ${part.tests.join(" ")}`,
  commandRunner: { command: "node tests/mutants/built.mjs" },
  // None: it would be read by a TypeScript older than ours, only to mend paths that ours has not.
  tsconfigFile: "none",
  concurrency: 1,
  // Loops that never end are found by counting (tests/mutants/run.ts); this much is for a machine that is busy.
  timeoutMS: 60_000,
  ignorePatterns: ["out", "coverage"],
  tempDirName: "coverage/stryker",
  reporters: ["progress-append-only", "clear-text", "json"],
  jsonReporter: { fileName: `coverage/mutants-${name}.json` },
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false },
  thresholds: { high: 95, low: 85, break: 85 },
};
