import { execFileSync, spawnSync } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { availableParallelism, cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { writeBuilding } from "./building.js";
import { htmlOf } from "./others/html.js";
import { packetPages, plainPages } from "./pages.js";
import { medians, type Taken, timed } from "./timed.js";

/*
 * How long the program takes, as a process of its own, against a bare start of Node; how long a building takes and how
 * much memory; and how long the pages of the largest example take through our back end and through others, each from
 * the same list of lines and texts with the same faces. Medians; a figure of one machine proves nothing about another.
 *
 *   npm run bench                 BAYMARK_RUNS=11 for more runs, BAYMARK_ROOMS=50 for a smaller building
 *
 * The others are fetched into a folder of their own and taken away again: nothing here depends on them.
 */

const ROOT = fileURLToPath(new URL("../../", import.meta.url));
const PROGRAM = join(ROOT, "bin", "baymark.js");
const FACES = join(ROOT, "bin", "built", "typeface");
const EXAMPLES = readdirSync(join(ROOT, "examples"))
  .filter((name) => name.endsWith(".yaml"))
  .map((name) => join(ROOT, "examples", name));
const ELEVEN = join(ROOT, "examples", "quarry-lane-den.yaml");
const RUNS = Number(process.env.BAYMARK_RUNS ?? 5);
const ROOMS = Number(process.env.BAYMARK_ROOMS ?? 200);
const FEW_ROOMS = 20;
const NODE = process.execPath;
const OTHERS = ["pdfkit@0.17.2", "@myriaddreamin/typst-ts-node-compiler@0.7.0"];
const BROWSERS = ["chromium", "chromium-browser", "google-chrome", "chrome"];

const say = (line = ""): void => void process.stdout.write(`${line}\n`);

interface Row {
  readonly what: string;
  readonly command: readonly string[];
}

/** A table of what each took, as figures and as multiples of the first. */
function table(heading: string, rows: readonly Row[], taken: readonly Taken[]): void {
  const [first] = taken;
  say(`\n${heading}`);
  say(`${"".padEnd(46)}   work ms      x   clock ms      x`);
  rows.forEach(({ what }, index) => {
    const { workMs, clockMs } = taken[index] ?? { workMs: Number.NaN, clockMs: Number.NaN };
    const times = (ms: number, bare: number | undefined): string =>
      (ms / (bare ?? ms)).toFixed(2).padStart(7);
    const figure = (ms: number): string => ms.toFixed(0).padStart(9);
    say(
      `${what.padEnd(46)} ${figure(workMs)}${times(workMs, first?.workMs)}  ${figure(clockMs)}${times(clockMs, first?.clockMs)}`,
    );
  });
}

function commands(scratch: string): void {
  const rows: Row[] = [
    { what: "node -e 0", command: [NODE, "-e", "0"] },
    { what: "baymark --version", command: [NODE, PROGRAM, "--version"] },
    ...EXAMPLES.map((file) => ({
      what: `check ${file.split("/").at(-1)}`,
      command: [NODE, PROGRAM, "check", file],
    })),
    {
      what: "print quarry-lane-den.yaml, PDF and SVG",
      command: [NODE, PROGRAM, "print", ELEVEN, "-o", join(scratch, "den")],
    },
  ];
  table(
    `Commands, medians of ${RUNS} runs`,
    rows,
    medians(
      rows.map(({ command }) => command),
      RUNS,
    ),
  );
}

/** Marking sheets, templates and labels of rooms with four loudspeakers overhead, in one run. */
function building(scratch: string): void {
  say(
    `\nA building, rooms of four overhead, sheets of the ceiling, of openings and labels as PDF; one run each`,
  );
  const files = writeBuilding(join(scratch, "rooms"), ROOMS);
  const peak = join(scratch, "peak");
  for (const count of [FEW_ROOMS, ROOMS]) {
    const asks = ["--pdf", "--only", "ceiling,opening,labels", "-o", join(scratch, "building")];
    const watched = [
      "env",
      `BAYMARK_PEAK=${peak}`,
      NODE,
      "--require",
      join(ROOT, "tests", "bench", "peak.cjs"),
    ];
    const { workMs, clockMs } = timed([...watched, PROGRAM, "print", ...files.slice(0, count), ...asks]);
    const perSecond = (ms: number): string => ((count * 1000) / ms).toFixed(1);
    const memory = `${(Number(readFileSync(peak, "utf8")) / 1024).toFixed(0)} MB at most`;
    const each = `${(workMs / count).toFixed(0)} ms of work a room`;
    say(
      `${String(count).padStart(5)} rooms: ${perSecond(clockMs)} rooms a second by the clock, ${each}, ${memory}`,
    );
  }
}

async function ourBackEnd(): Promise<string> {
  // Two folders deep below the package, where the program looks for the typeface.
  const outfile = join(ROOT, "bin", "built", "bench-back-end.mjs");
  await build({
    entryPoints: [join(ROOT, "tests", "bench", "others", "ours.ts")],
    ...{
      outfile,
      bundle: true,
      format: "esm",
      platform: "node",
      target: "node20",
      minify: true,
      logLevel: "error",
    },
    mainFields: ["module", "main"],
  });
  return outfile;
}

function install(scratch: string): string | null {
  const folder = join(scratch, "others");
  mkdirSync(folder);
  writeFileSync(join(folder, "package.json"), '{ "private": true }');
  const { status } = spawnSync("npm", ["install", "--no-audit", "--no-fund", ...OTHERS], { cwd: folder });
  return status === 0 ? join(folder, "package.json") : null;
}

const browser = (): string | undefined =>
  BROWSERS.find((name) => spawnSync(name, ["--version"], { encoding: "utf8" }).status === 0);

async function backEnds(scratch: string): Promise<void> {
  const pages = packetPages(ELEVEN);
  const plain = plainPages(pages);
  const [list, plainList, html] = ["pages.json", "plain.json", "pages.html"].map((name) =>
    join(scratch, name),
  );
  writeFileSync(list ?? "", JSON.stringify(pages));
  writeFileSync(plainList ?? "", JSON.stringify(plain));
  writeFileSync(html ?? "", htmlOf(plain, FACES));
  const out = (name: string): string => join(scratch, `${name}.pdf`);
  const installed = install(scratch);
  const other = (name: string): Row[] =>
    installed === null
      ? []
      : [
          {
            what: name,
            command: [
              NODE,
              join(ROOT, "tests", "bench", "others", `${name}.mjs`),
              plainList ?? "",
              out(name),
              installed,
              FACES,
            ],
          },
        ];
  if (installed === null) say("\npdfkit and typst could not be fetched: left out");
  const chromium = browser();
  if (chromium === undefined) say("\nno Chromium here: left out");
  const flags = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--no-pdf-header-footer",
    `--print-to-pdf=${out("chromium")}`,
  ];
  const ours = await ourBackEnd();
  const rows: Row[] = [
    { what: "ours", command: [NODE, ours, list ?? "", out("ours")] },
    ...other("pdfkit"),
    ...other("typst"),
    ...(chromium === undefined
      ? []
      : [{ what: "chromium", command: [chromium, ...flags, `file://${html}`] }]),
  ];
  const taken = medians(
    rows.map(({ command }) => command),
    RUNS,
  );
  table(
    `The ${pages.length} pages of quarry-lane-den.yaml by other ways, medians of ${RUNS} runs`,
    rows,
    taken,
  );
  say(`bytes: ${rows.map(({ what }) => `${what} ${statSync(out(what)).size}`).join(", ")}`);
  rmSync(ours);
}

const scratch = mkdtempSync(join(tmpdir(), "baymark-bench-"));
try {
  if (!existsSync(join(ROOT, "bin", "built", "cli.js"))) execFileSync("npm", ["run", "build"], { cwd: ROOT });
  say(`Node ${process.version}, ${availableParallelism()} of ${cpus()[0]?.model ?? "some processor"}`);
  commands(scratch);
  building(scratch);
  await backEnds(scratch);
} finally {
  rmSync(scratch, { recursive: true });
}
