/** What is changed, and the tests that are run against each change: those that stand nearest, the quickest first. */
const PARTS = {
  units: { mutate: ["src/units/*.ts"], tests: ["tests/units"] },
  frames: {
    mutate: [
      "src/geometry/{frame,vector,surface-point,ring}.ts",
      "src/room/resolve/{face,meeting,planes,shell,surfaces}.ts",
    ],
    tests: [
      "tests/geometry/distance-from.test.ts",
      "tests/room/frames.test.ts",
      "tests/room/not-boxes.test.ts",
      "tests/room/resolve.test.ts",
      "tests/geometry/frame.test.ts",
      "tests/geometry/ring.test.ts",
      "tests/room/meeting.test.ts",
      "tests/room/steps.test.ts",
      "tests/room/structure.test.ts",
    ],
  },
  gap: {
    mutate: [
      "src/geometry/{body,convex,distance,distance-from}.ts",
      "src/place/{fitting,gaps,obstacles}.ts",
      "src/check/{framing-gap,neighbours,obstruction,outside-surface}.ts",
    ],
    tests: [
      "tests/geometry/distance.test.ts",
      "tests/place/obstacles.test.ts",
      "tests/check/framing.test.ts",
      "tests/check/layout.test.ts",
      "tests/check/obstructions.test.ts",
      "tests/geometry/body.test.ts",
      "tests/geometry/distance-from.test.ts",
      "tests/check/past-the-surface.test.ts",
      "tests/check/rules.test.ts",
      "tests/place/gaps.test.ts",
    ],
  },
  tiling: {
    mutate: ["src/drawing/{shown,tiles,touches}.ts"],
    tests: ["tests/drawing/tiles.test.ts", "tests/drawing/touches.test.ts"],
  },
  labels: {
    mutate: ["src/sheets/{label-stock,labelling}.ts", "src/standards/label-stock.ts"],
    tests: [
      "tests/standards/label-stock.test.ts",
      "tests/sheets/labels.test.ts",
      "tests/sheets/label-stock.test.ts",
    ],
  },
};

export const name = process.env.MUTANTS ?? "";
export const part = PARTS[name];
if (part === undefined) throw new Error(`MUTANTS is one of ${Object.keys(PARTS).join(", ")}`);
