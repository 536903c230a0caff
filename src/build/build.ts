import { mkdir, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, type Plugin } from "esbuild";
import { roomJsonSchema } from "../room/json-schema.js";
import { pairsTakenApart } from "./plain-pairs.js";
import { prepareTypeface } from "./prepare-typeface.js";
import { prepareZlib } from "./prepare-zlib.js";
import { rememberCompiled } from "./remember.js";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const BUILT = join(ROOT, "bin", "built");

/**
 * commander can run commands that are programs of their own, which ours are not. pdf-lib brings the widths of fonts that
 * every reader has, and ours is embedded. zod brings its complaints in fifty languages; ours are phrased in src/words.
 */
const withoutUnasked: Plugin = {
  name: "without what is never asked",
  setup({ onResolve, onLoad }) {
    const namespace = "never-asked";
    onResolve({ filter: /^@pdf-lib\/standard-fonts$/ }, ({ path }) => ({ path, namespace }));
    onResolve({ filter: /^node:child_process$/ }, ({ path, importer }) =>
      /node_modules.commander./.test(importer) ? { path, namespace } : undefined,
    );
    onResolve({ filter: /locales\/index\.js$/ }, ({ path, importer }) =>
      /node_modules.zod./.test(importer) ? { path, namespace } : undefined,
    );
    onLoad({ filter: /.*/, namespace }, () => ({
      contents: "export default null; export const Font = null, FontNames = {}, Encodings = {};",
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

/** pdf-lib has a deflater of its own for what it writes besides the pages; ours makes the same bytes of it. */
const oneDeflater: Plugin = {
  name: "one deflater",
  setup({ onResolve, onLoad }) {
    const namespace = "deflate";
    onResolve({ filter: /^pako$/ }, ({ path }) => ({ path, namespace }));
    onLoad({ filter: /.*/, namespace }, () => ({
      contents: `import { deflate } from "../output/deflate.js";
        const USUAL_LEVEL = 6;
        export default { deflate: (bytes) => deflate(bytes, USUAL_LEVEL) };`,
      resolveDir: join(ROOT, "src", "build"),
    }));
  },
};

/** How zod gives a schema its description: by a copy of it, made anew as the schema was. */
const DESCRIBED = /const cl = this\.clone\(\);\s*core\.globalRegistry\.add\(cl, [^;]*\);\s*return cl;/gu;

/**
 * Descriptions stand in the JSON Schema alone, which is written here and not by the program: without them it makes half
 * as many schemas at every start.
 */
const zodWithoutDescriptions: Plugin = {
  name: "schemas without descriptions",
  setup({ onLoad }) {
    onLoad({ filter: /zod.v4.classic.schemas\.js$/ }, async ({ path }) => {
      const text = await readFile(path, "utf8");
      if (text.match(DESCRIBED)?.length !== 2) throw new Error(`${path} describes schemas otherwise`);
      return { contents: text.replaceAll(DESCRIBED, "return this;") };
    });
  },
};

const SPANISH = { imported: /^import \{ spanish \} from .*$/mu, used: "es: () => spanish" };

/** The Spanish words are run when they are first asked for: that is no run of most people's. */
const spanishWhenAsked: Plugin = {
  name: "Spanish when it is asked for",
  setup({ onLoad }) {
    onLoad({ filter: /src.words.words\.ts$/ }, async ({ path }) => {
      const text = await readFile(path, "utf8");
      if (!SPANISH.imported.test(text) || !text.includes(SPANISH.used))
        throw new Error(`${path} takes Spanish in otherwise`);
      const late = text
        .replace(SPANISH.imported, "")
        .replace(SPANISH.used, 'es: () => require("./spanish/index.js").spanish');
      return { contents: late, loader: "ts" };
    });
  },
};

/** `check` by itself loads nothing late: what `cli.ts` would load so is the other commands. */
const withoutOtherCommands: Plugin = {
  name: "without the other commands",
  setup({ onResolve, onLoad }) {
    const namespace = "other-command";
    onResolve({ filter: /^\.\/commands\// }, ({ path, kind }) =>
      kind === "dynamic-import" ? { path, namespace } : undefined,
    );
    onLoad({ filter: /.*/, namespace }, ({ path }) => ({
      contents: `throw new Error("${path} is not in the program for check alone");`,
    }));
  },
};

/** As `bin/load.js` calls it: a program of a megabyte is not to be copied for a few words around it. */
const AROUND = { before: "(function (exports, require, module, __filename, __dirname) {", after: "})" };

/** A bundle of the older kind of module has no `import.meta`. */
const WITH_URL = 'const __programUrl = require("node:url").pathToFileURL(__filename).href;';

interface Built {
  readonly path: string;
  readonly text: string;
}

/**
 * One file, so that what V8 compiles of it can be kept; modules that only some commands need run when they are asked
 * for. It lies two folders deep like the sources, so that both find the typeface by one path.
 */
async function bundle(name: string, also: readonly Plugin[] = []): Promise<readonly Built[]> {
  const { outputFiles } = await build({
    entryPoints: [join(ROOT, "src", `${name}.ts`)],
    outfile: join(BUILT, `${name}.js`),
    bundle: true,
    format: "cjs",
    platform: "node",
    mainFields: ["module", "main"],
    target: "node20",
    minify: true,
    legalComments: "linked",
    define: { "import.meta.url": "__programUrl" },
    banner: { js: `${AROUND.before} "use strict"; ${WITH_URL}` },
    footer: { js: AROUND.after },
    plugins: [
      withoutUnasked,
      pdfLibWithoutRest,
      oneDeflater,
      zodWithoutDescriptions,
      spanishWhenAsked,
      ...also,
    ],
    logLevel: "warning",
    write: false,
  });
  return outputFiles.map(({ path, text }) => ({
    path,
    text: path.endsWith(".js") ? inAscii(pairsTakenApart(text)) : text,
  }));
}

/**
 * `bin/load.js` reads a byte as a letter, and esbuild leaves the letters of regular expressions as they are: curly quotes
 * and fractions are looked for by those. There each may be written by its number.
 */
const inAscii = (program: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: all of ASCII, its control characters too
  program.replace(/[^\u0000-\u007f]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`);

/**
 * The new programs in place of an earlier build's, with what V8 remembered of those; only once there are new ones, and
 * without the typeface, which somebody may be reading.
 */
async function replaceProgram(files: readonly Built[]): Promise<void> {
  await mkdir(BUILT, { recursive: true });
  const old = (await readdir(BUILT)).filter((name) => /\.(v8|js|js\.LEGAL\.txt)$/u.test(name));
  await Promise.all(old.map((name) => rm(join(BUILT, name))));
  await Promise.all(files.map(({ path, text }) => writeFile(path, text)));
}

/** The room file's JSON Schema beside the program, for editors. */
async function writeRoomSchema(): Promise<void> {
  await writeFile(join(BUILT, "room.schema.json"), `${JSON.stringify(roomJsonSchema(), null, 2)}\n`);
}

await prepareTypeface();
await prepareZlib();
const programs = await Promise.all([bundle("cli"), bundle("cli-check", [withoutOtherCommands])]);
await replaceProgram(programs.flat());
await writeRoomSchema();
await rememberCompiled(ROOT);
