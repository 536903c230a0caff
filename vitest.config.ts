import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    globalSetup: ["tests/setup.ts"],
    maxWorkers: "100%",
    // Rendering sheets on a busy machine takes its time; a test that hangs is still found.
    testTimeout: 30_000,
  },
});
