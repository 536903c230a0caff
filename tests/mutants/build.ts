/*
 * Bundles test files (or all of a folder) and what they test into one file that plain Node runs:
 * `node tests/mutants/built.mjs`. For mutation tests: built once, run for every mutant.
 */
import { readdirSync } from "node:fs";
import { join, relative } from "node:path";
import { build } from "esbuild";

const HERE = import.meta.dirname;
const ROOT = join(HERE, "..", "..");

const testsIn = (path: string): string[] =>
  path.endsWith(".ts")
    ? [path]
    : readdirSync(join(ROOT, path))
        .filter((name) => name.endsWith(".test.ts"))
        .map((name) => join(path, name));

const loads = process.argv
  .slice(2)
  .flatMap(testsIn)
  .map(
    (path) =>
      `[${JSON.stringify(path)}, () => import(${JSON.stringify(`./${relative(HERE, join(ROOT, path))}`)})]`,
  );

await build({
  stdin: { contents: `import { run } from "./run.js"; await run([${loads.join(", ")}]);`, resolveDir: HERE },
  outfile: join(HERE, "built.mjs"),
  bundle: true,
  platform: "node",
  format: "esm",
  alias: { vitest: join(HERE, "vitest.ts") },
  // CommonJS packages in the bundle ask for Node's own modules by `require`.
  banner: {
    js: 'import { createRequire as bundled } from "node:module"; const require = bundled(import.meta.url);',
  },
});
