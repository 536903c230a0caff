import { writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { expect, test } from "vitest";
import { writeBuilding } from "../bench/building.js";
import { hashesBelow, ownFolder, typed } from "./command.js";

/* Many rooms in one run are shared out among threads: nobody can tell from what is printed or said. */

const ASKS = ["--pdf", "--only", "ceiling,opening,labels"];

/** Seven rooms, of which the third is no room. */
function building(folder: string): readonly string[] {
  const files = writeBuilding(join(folder, "rooms"), 7).map((file) => relative(folder, file));
  writeFileSync(join(folder, files[2] ?? ""), "baymark: 1\nunits: cubits\n");
  return files;
}

test("together and one by one: the same files, the same words in the files' order, the worst code", async () => {
  const folder = ownFolder();
  const files = building(folder);
  const together = await typed(["print", ...files, ...ASKS, "-o", "out"], { folder });
  const hashes = hashesBelow(join(folder, "out"));
  const alone = [];
  for (const file of files) {
    const name = file.replace(/^.*\/(.*)\.yaml$/u, "$1");
    alone.push(await typed(["print", file, ...ASKS, "-o", `out/${name}-part`], { folder }));
  }
  expect(together.code).toBe(2);
  expect(alone.map(({ code }) => code)).toEqual([0, 0, 2, 0, 0, 0, 0]);
  expect(together.err).toBe(alone.map(({ err }) => err).join(""));
  expect(together.out).toBe("");
  expect(hashes.size).toBe(12);
  expect(hashesBelow(join(folder, "out"))).toEqual(hashes);
}, 60_000);

test("what is asked for wrongly is said once, and ends the run", async () => {
  const folder = ownFolder();
  const files = writeBuilding(join(folder, "rooms"), 5);
  const { code, err } = await typed(["print", ...files, "--only", "ceilng"], { folder });
  expect(code).toBe(2);
  expect(err.match(/ceilng/gu)).toHaveLength(1);
}, 60_000);

test("findings come as one object a room, in the files' order", async () => {
  const folder = ownFolder();
  const files = writeBuilding(join(folder, "rooms"), 5).map((file) => relative(folder, file));
  const { code, out } = await typed(["print", ...files, ...ASKS, "--json"], { folder });
  expect(code).toBe(0);
  const names = out
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line).file);
  expect(names).toEqual([1, 2, 3, 4, 5].map((count) => `room-00${count}.yaml`));
}, 60_000);
