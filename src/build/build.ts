import { mkdir, readdir, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, type OutputFile, type Plugin } from "esbuild";
import { roomJsonSchema } from "../room/json-schema.js";
import { prepareTypeface } from "./prepare-typeface.js";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const BUILT = join(ROOT, "bin", "built");

/**
 * svgdom asks a font engine for the size of text, pictures for their size and a parser for markup, and none of the
 * three is ever asked here: text is measured by the prepared typeface. zod brings its complaints in fifty languages;
 * ours are phrased in src/words. Left out, they save half of what is loaded.
 */
const withoutUnasked: Plugin = {
  name: "without what is never asked",
  setup({ onResolve, onLoad }) {
    const namespace = "never-asked";
    onResolve({ filter: /^(fontkit|image-size|sax)$/ }, ({ path }) => ({ path, namespace }));
    onResolve({ filter: /locales\/index\.js$/ }, ({ path, importer }) =>
      /node_modules.zod./.test(importer) ? { path, namespace } : undefined,
    );
    onLoad({ filter: /.*/, namespace }, ({ path }) => ({
      contents: `export default null; export const openSync = () => { throw new Error("${path} is left out"); };`,
    }));
  },
};

/** pdf-lib does not say so, but a module of it that nobody imports from does nothing. */
const pdfLibWithoutRest: Plugin = {
  name: "parts of pdf-lib that are used",
  setup(setup) {
    setup.onResolve({ filter: /.*/ }, async ({ path, pluginData, ...rest }) => {
      if (pluginData === "resolved" || !/pdf-lib/.test(path + rest.importer)) return undefined;
      const resolved = await setup.resolve(path, { ...rest, pluginData: "resolved" });
      return { ...resolved, sideEffects: false };
    });
  },
};

/** A bundle as an ES module has no `require`; libraries made for the older kind still call it. */
const WITH_REQUIRE = `import { createRequire as __createRequire } from "node:module"; const require = __createRequire(import.meta.url);`;

/** The chunks lie beside the program, two folders deep like the sources, so that both find the typeface by one path. */
async function bundle(): Promise<readonly OutputFile[]> {
  const { outputFiles } = await build({
    entryPoints: [join(ROOT, "src", "cli.ts")],
    outdir: BUILT,
    bundle: true,
    format: "esm",
    platform: "node",
    mainFields: ["module", "main"],
    target: "node20",
    splitting: true,
    minifySyntax: true,
    minifyWhitespace: true,
    legalComments: "linked",
    banner: { js: WITH_REQUIRE },
    plugins: [withoutUnasked, pdfLibWithoutRest],
    logLevel: "warning",
    write: false,
  });
  return outputFiles;
}

/**
 * The new program in place of an earlier build's, whose chunks have other names; only once there is a new one, and
 * without the typeface, which somebody may be reading.
 */
async function replaceProgram(files: readonly OutputFile[]): Promise<void> {
  await mkdir(BUILT, { recursive: true });
  const old = (await readdir(BUILT)).filter((name) => /\.js(\.LEGAL\.txt)?$/u.test(name));
  await Promise.all(old.map((name) => rm(join(BUILT, name))));
  await Promise.all(files.map(({ path, contents }) => writeFile(path, contents)));
}

/** The room file's JSON Schema beside the program, for editors. */
async function writeRoomSchema(): Promise<void> {
  await writeFile(join(BUILT, "room.schema.json"), `${JSON.stringify(roomJsonSchema(), null, 2)}\n`);
}

await prepareTypeface();
await replaceProgram(await bundle());
await writeRoomSchema();
