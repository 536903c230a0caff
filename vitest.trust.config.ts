import { defineConfig } from "vitest/config";

/** What takes minutes: odd input by the thousand, a process killed at every write, every PDF in several readers. */
export default defineConfig({
  test: {
    include: ["tests/trust/**/*.test.ts"],
    globalSetup: ["tests/trust/setup.ts"],
    maxWorkers: "100%",
    // Most of these tests wait for a process of their own.
    maxConcurrency: 2,
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
