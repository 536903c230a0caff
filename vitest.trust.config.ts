import { defineConfig } from "vitest/config";

/** Tests that `npm test` runs too, on some of their cases, or on fewer. */
const LOOKED_AT_LONGER = [
  "tests/paper/{packet,pdfjs,poppler,resvg}.test.ts",
  "tests/place/best/grid.test.ts",
  "tests/sheets/{ear-plane,marking-lettering,story-pole,template-lettering}.test.ts",
];

/** What takes minutes: odd input by the thousand, a process killed at every write, every PDF in several readers. */
export default defineConfig({
  test: {
    include: ["tests/trust/**/*.test.ts", ...LOOKED_AT_LONGER],
    // More than the cases that `npm test` looks at (tests/how-many.ts): all that are listed, of random ones as many as
    // each asks for at least. More of those would take a slow machine past the ten minutes of `.ci/run`.
    env: { BAYMARK_TIMES: "1.1" },
    globalSetup: ["tests/trust/setup.ts"],
    setupFiles: ["tests/fixed-seed.ts"],
    maxWorkers: "100%",
    // Most of these tests wait for a process of their own.
    maxConcurrency: 2,
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
