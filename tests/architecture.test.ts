import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";
import { expect, test } from "vitest";

/*
 * The house's own rule (DEVELOPERS.md): a file imports only from its own floor or from floors below, and nothing runs
 * in a circle. Read from the files' import statements, types included.
 */

const SOURCE = join(import.meta.dirname, "..", "src");

/** From the roof down; folders on one line stand on one floor. */
const FLOORS: readonly (readonly string[])[] = [
  ["cli.ts", "cli-check.ts", "build"],
  ["commands"],
  ["sheets"],
  [
    "job.ts",
    "job-json.ts",
    "areas-json.ts",
    "cabling-json.ts",
    "place-json.ts",
    "sound-json.ts",
    "compare.ts",
    "compare",
    "compare-json.ts",
  ],
  ["check"],
  ["place"],
  ["listen", "cable"],
  ["room"],
  ["output"],
  ["drawing"],
  ["words"],
  ["effort.ts", "findings", "standards", "geometry", "units"],
];

/** `build` prepares what others read: it alone reaches across floors. */
const ABOVE_ALL = new Set(["cli.ts", "cli-check.ts", "build"]);

const files = readdirSync(SOURCE, { recursive: true, encoding: "utf8" }).filter((file) =>
  file.endsWith(".ts"),
);

const folderOf = (file: string): string => file.split("/")[0] ?? file;

function floorOf(file: string): number {
  const floor = FLOORS.findIndex((folders) => folders.includes(folderOf(file)));
  expect(floor, `${file} stands on no floor of the house`).toBeGreaterThanOrEqual(0);
  return floor;
}

function importsOf(file: string): string[] {
  const text = readFileSync(join(SOURCE, file), "utf8");
  const named = [...text.matchAll(/(?:from|import)\s*\(?\s*"(\.[^"]+)"/g)].map((match) => match[1] ?? "");
  return named
    .filter((name) => name.endsWith(".js"))
    .map((name) => relative(SOURCE, normalize(join(SOURCE, dirname(file), name))).replace(/\.js$/, ".ts"));
}

const imports = new Map(files.map((file) => [file, importsOf(file)]));

test("imports are read at all, so the rules below can fail", () => {
  expect(imports.get("cli.ts")).toContain("words/words.ts");
  expect([...imports.values()].flat().length).toBeGreaterThan(100);
});

test("every import names a file that exists", () => {
  for (const [file, targets] of imports) {
    for (const target of targets) {
      if (target.startsWith("..")) continue;
      expect(files, `${file} imports ${target}`).toContain(target);
    }
  }
});

test("no file imports from a floor above its own", () => {
  const upward = [...imports].flatMap(([file, targets]) =>
    targets
      .filter((target) => !target.startsWith("..") && !ABOVE_ALL.has(folderOf(file)))
      .filter((target) => floorOf(target) < floorOf(file))
      .map((target) => `${file} -> ${target}`),
  );
  expect(upward).toEqual([]);
});

test("no imports run in a circle", () => {
  const done = new Set<string>();
  const circles: string[] = [];
  const walk = (file: string, way: readonly string[]): void => {
    if (way.includes(file)) {
      circles.push([...way.slice(way.indexOf(file)), file].join(" -> "));
      return;
    }
    if (done.has(file)) return;
    for (const target of imports.get(file) ?? []) walk(target, [...way, file]);
    done.add(file);
  };
  for (const file of files) walk(file, []);
  expect(circles).toEqual([]);
});
