import { readdirSync } from "node:fs";
import { createRequire, isBuiltin } from "node:module";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { Script } from "node:vm";
import { build } from "esbuild";

const requireHere = createRequire(import.meta.url);

/**
 * Test files and all of ours that they import as one script, compiled once; packages stay outside and are loaded once.
 * Every call of what is returned evaluates all sources anew, as a process of its own would, and gives what loads each
 * test file by its path.
 */
export async function bundle(testPaths) {
  // Where the mutants are: a copy of the whole, which Stryker goes to after it has read this file.
  const root = process.cwd();
  const tests = testPaths.flatMap((path) => testsIn(root, path));
  const { metafile } = await built(root, loading("tests", tests));
  const sources = Object.keys(metafile.inputs).filter((path) => path.startsWith("src/"));
  const { outputFiles } = await built(root, loading("sources", sources) + loading("tests", tests));
  const imports = Object.values(metafile.outputs).flatMap((output) => output.imports);
  const packages = new Map();
  for (const { path } of imports.filter(({ path }) => !isBuiltin(path))) {
    packages.set(path, withDefault(await import(path)));
  }
  const evaluate = new Script(`(function (module, require) {${outputFiles[0]?.text}\n})`).runInThisContext();
  return async () => {
    const module = { exports: {} };
    evaluate(module, (name) => packages.get(name) ?? requireHere(name));
    for (const load of Object.values(module.exports.sources)) await load();
    return module.exports.tests;
  };
}

const loading = (name, paths) =>
  `export const ${name} = {${paths.map((path) => `"${path}": () => import("./${path}")`).join(", ")}};\n`;

function built(root, contents) {
  const place = join(root, "tests", "mutants", "built.cjs");
  return build({
    stdin: { contents, resolveDir: root },
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
      "import.meta.dirname": JSON.stringify(dirname(place)),
      "import.meta.url": JSON.stringify(pathToFileURL(place).href),
    },
  });
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
