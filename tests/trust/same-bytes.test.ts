import { cpSync, mkdirSync } from "node:fs";
import { basename, join, relative } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { exampleRooms, hashesBelow, ownFolder, typed, type World } from "./command.js";

/*
 * The same rooms print the same bytes, whoever prints them, when and where. Names of zones and locales are those of
 * the tz database and of Unicode's CLDR; Node carries the data for them whether the system knows them or not.
 */

/** A clock that stands years on, and other luck: nothing that is printed may ask for either. */
const OTHER_CLOCK = `--import=data:text/javascript,${encodeURIComponent(
  "const now = Date.now; Date.now = () => now() + 3e11; const D = Date; globalThis.Date = class extends D { constructor(...a) { a.length ? super(...a) : super(D.now()); } }; Math.random = () => 0.123;",
)}`;

interface Way {
  readonly environment?: Readonly<Record<string, string>>;
  readonly umask?: string;
  readonly rooms?: (paths: readonly string[], folder: string) => readonly string[];
}

/** Several differences at a time, since each print takes its seconds. */
const WAYS: Readonly<Record<string, Way>> = {
  "far east of Greenwich, an i without a dot, nobody else may read": {
    environment: { TZ: "Etc/GMT-14", LANG: "tr_TR.UTF-8", LC_ALL: "tr_TR.UTF-8" },
    umask: "077",
  },
  "far west of Greenwich, other digits from right to left, colours, everybody may write": {
    environment: { TZ: "Etc/GMT+12", LC_ALL: "ar_EG.UTF-8", FORCE_COLOR: "1", COLUMNS: "40" },
    umask: "000",
  },
  "no locale, a clock that is years on, other luck": {
    environment: { LANG: "C", LC_ALL: "C", NODE_OPTIONS: OTHER_CLOCK },
  },
  "commas in figures, the rooms the other way round, by relative paths": {
    environment: { LANG: "de_DE.UTF-8", LC_ALL: "de_DE.UTF-8", LANGUAGE: "de:es" },
    rooms: (paths, folder) => paths.map((path) => relative(folder, path)).toReversed(),
  },
};

async function printed(way: Way): Promise<ReadonlyMap<string, string>> {
  const folder = ownFolder();
  const rooms = (way.rooms ?? ((paths) => paths))(exampleRooms(), folder);
  const world: World = { folder, ...way };
  const { code, err } = await typed(["print", ...rooms, "-o", "out"], world);
  expect(code, err).toBe(1);
  return hashesBelow(join(folder, "out"));
}

describe("the same rooms print the same bytes", () => {
  let first: ReadonlyMap<string, string> = new Map();
  beforeAll(async () => {
    first = await printed({ environment: { TZ: "UTC", LANG: "C.UTF-8" } });
  });

  test("for every example there is a packet to compare", () => {
    const folders = new Set([...first.keys()].map((path) => path.split("/")[0]));
    expect([...folders]).toEqual(exampleRooms().map((path) => basename(path, ".yaml")));
    expect(first.size).toBeGreaterThan(100);
  });

  test.concurrent.each(Object.keys(WAYS))("with %s", async (name) => {
    const again = await printed(WAYS[name] ?? {});
    expect([...again]).toEqual([...first]);
  });

  test("from a copy of the room in a folder with an odd name", async () => {
    const folder = join(ownFolder(), "día 1 — “ünder”");
    mkdirSync(folder);
    for (const room of exampleRooms()) cpSync(room, join(folder, basename(room)));
    const rooms = exampleRooms().map((room) => basename(room));
    const { code, err } = await typed(["print", ...rooms, "-o", "out"], { folder });
    expect(code, err).toBe(1);
    expect([...hashesBelow(join(folder, "out"))]).toEqual([...first]);
  });
});
