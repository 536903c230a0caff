import { readdirSync } from "node:fs";
import { createRequire, isBuiltin } from "node:module";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { Script } from "node:vm";
import { build } from "esbuild";

const requireHere = createRequire(import.meta.url);

/**
 * Test files and all of ours that they import as one script, compiled once; packages stay outside and are loaded once.
 * Every call of what is returned evaluates the script anew, as a process of its own would, and gives what loads each
 * test file by its path.
 */
export async function bundle(testFiles) {
  // Where the mutants are: a copy of the whole, which Stryker goes to after it has read this file.
  const root = process.cwd();
  const built = join(root, "tests", "mutants", "built.cjs");
  const loads = testFiles
    .flatMap((path) => testsIn(root, path))
    .map((path) => `${JSON.stringify(path)}: () => import(${JSON.stringify(`./${path}`)})`);
  const { outputFiles, metafile } = await build({
    stdin: { contents: `export const load = { ${loads.join(", ")} };`, resolveDir: root },
    bundle: true,
    write: false,
    metafile: true,
    platform: "node",
    format: "cjs",
    packages: "external",
    alias: { vitest: "./tests/mutants/vitest.ts" },
    absWorkingDir: root,
    // Both are asked for by files two folders deep only, and for places under the root.
    define: {
      "import.meta.dirname": JSON.stringify(dirname(built)),
      "import.meta.url": JSON.stringify(pathToFileURL(built).href),
    },
  });
  const imports = Object.values(metafile.outputs).flatMap((output) => output.imports);
  const packages = new Map();
  for (const { path } of imports.filter(({ path }) => !isBuiltin(path))) {
    packages.set(path, withDefault(await import(path)));
  }
  const script = new Script(`(function (exports, module, require) {${outputFiles[0]?.text}\n})`, {
    filename: built,
  });
  const evaluate = script.runInThisContext();
  return () => {
    const module = { exports: {} };
    evaluate(module.exports, module, (name) => packages.get(name) ?? requireHere(name));
    return module.exports.load;
  };
}

const testsIn = (root, path) =>
  path.endsWith(".ts")
    ? [path]
    : readdirSync(join(root, path))
        .filter((name) => name.endsWith(".test.ts"))
        .map((name) => `${path}/${name}`);

/** A package as CommonJS sees it: what it exports by default is itself. */
const withDefault = (namespace) =>
  typeof namespace.default === "object" ? { ...namespace.default, ...namespace } : { ...namespace };
