import { mkdir, readFile, rename, stat, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { deflateSync } from "node:zlib";
import subsetFont from "subset-font";
import type { Face } from "../drawing/drawing.js";
import { type Coverage, type FaceMetrics, TYPEFACE_FILES } from "../drawing/typeface.js";
import { TYPEFACE_FOLDER } from "../drawing/typeface-files.js";
import { ALL_LETTERS, EVERYDAY_LETTERS } from "./letters.js";
import { readMetrics } from "./true-type.js";

const PACKAGE = dirname(createRequire(import.meta.url).resolve("dejavu-fonts-ttf/package.json"));

/** PostScript names of the fonts, which are their file names too. */
const FONT: Readonly<Record<Face, string>> = {
  regular: "DejaVuSansCondensed",
  bold: "DejaVuSansCondensed-Bold",
};
const FACES = ["regular", "bold"] as const;
const LICENCE = "LICENSE";

/** What is read to prepare the typeface: younger than what was written, it is prepared again. */
const SOURCES: readonly string[] = [
  ...["./prepare-typeface.ts", "./letters.ts", "./true-type.ts", "../drawing/typeface.ts"].map((path) =>
    fileURLToPath(new URL(path, import.meta.url)),
  ),
  ...FACES.map((face) => fontFile(face)),
];

function fontFile(face: Face): string {
  return join(PACKAGE, "ttf", `${FONT[face]}.ttf`);
}

/** No kerning, ligatures or hints: text is set by plain advances everywhere, and printers do not need hints. */
async function cut(font: Buffer, letters: string): Promise<Buffer> {
  return subsetFont(font, letters, {
    targetFormat: "truetype",
    keepFeatures: [],
    noLayoutClosure: true,
    noHinting: true,
    dropTables: ["GSUB", "GPOS", "GDEF", "kern", "MATH"],
  });
}

/** Written beside and renamed, so that somebody who reads at the same time never meets half a file. */
async function writeWhole(name: string, content: Buffer | string): Promise<void> {
  const path = join(TYPEFACE_FOLDER, name);
  await writeFile(`${path}.${process.pid}`, content);
  await rename(`${path}.${process.pid}`, path);
}

interface PreparedFace {
  readonly whole: FaceMetrics;
  readonly everyday: FaceMetrics;
}

async function prepareFace(face: Face): Promise<PreparedFace> {
  const font = await readFile(fontFile(face));
  const whole = await cut(font, ALL_LETTERS);
  const everyday = await cut(font, EVERYDAY_LETTERS);
  const metrics = readMetrics(whole, FONT[face]);
  await writeWhole(TYPEFACE_FILES.whole(face), whole);
  await writeWhole(TYPEFACE_FILES.deflated(face), deflateSync(whole, { level: 9 }));
  await writeWhole(TYPEFACE_FILES.everyday(face), everyday);
  await writeWhole(TYPEFACE_FILES.metrics(face), JSON.stringify(metrics));
  return { whole: metrics, everyday: readMetrics(everyday, FONT[face]) };
}

/** Stretches of the code points that every face holds. */
function coverageOf(faces: readonly FaceMetrics[]): Coverage {
  const sets = faces.map((face) => new Set(face.rows.map(([codePoint]) => codePoint)));
  const [first = new Set<number>()] = sets;
  const shared = [...first].filter((codePoint) => sets.every((set) => set.has(codePoint)));
  const ranges: [number, number][] = [];
  for (const codePoint of shared.sort((a, b) => a - b)) {
    const last = ranges.at(-1);
    if (last !== undefined && last[1] + 1 === codePoint) last[1] = codePoint;
    else ranges.push([codePoint, codePoint]);
  }
  return ranges;
}

/** Cuts both faces to our letters and writes them with their metrics, coverage and licence. */
export async function prepareTypeface(): Promise<void> {
  await mkdir(TYPEFACE_FOLDER, { recursive: true });
  const faces = await Promise.all(FACES.map(prepareFace));
  await writeWhole(LICENCE, await readFile(join(PACKAGE, LICENCE)));
  const everyday = coverageOf(faces.map((face) => face.everyday));
  await writeWhole(TYPEFACE_FILES.everydayCoverage, JSON.stringify(everyday));
  // Last, since its age stands for all of them.
  await writeWhole(TYPEFACE_FILES.coverage, JSON.stringify(coverageOf(faces.map((face) => face.whole))));
}

const ageOf = async (path: string): Promise<number> => (await stat(path)).mtimeMs;

async function isFresh(): Promise<boolean> {
  const written = await ageOf(join(TYPEFACE_FOLDER, TYPEFACE_FILES.coverage)).catch(() => 0);
  return Math.max(...(await Promise.all(SOURCES.map(ageOf)))) < written;
}

/** Prepares the typeface unless it stands there already and nothing that it is made from is younger. */
export async function prepareTypefaceWhenStale(): Promise<void> {
  if (!(await isFresh())) await prepareTypeface();
}
