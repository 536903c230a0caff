import { configDefaults, defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    // Slow suites, which `npm run trust` runs.
    exclude: [...configDefaults.exclude, "tests/trust/**"],
    globalSetup: ["tests/setup.ts"],
    setupFiles: ["tests/fixed-seed.ts"],
    maxWorkers: "100%",
    // Modules are pure, so files may share them: loading the renderers once a worker instead of once a file halves the time.
    isolate: false,
    // Rendering sheets on a busy machine takes its time; a test that hangs is still found.
    testTimeout: 30_000,
  },
});
