import { readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { exampleRooms, hashesBelow, ownFolder, typed } from "./command.js";

/* Two threads share the sheets of one room: nobody can tell from what is printed, whoever made which, or failed to. */

const MATE = join(import.meta.dirname, "..", "..", "bin", "crew-member.js");
const PROGRAM = [join(import.meta.dirname, "with-mate.cjs")];

/** What is printed and said of a room where `mate` is what a mate runs. */
async function printed(room: string, mate: string) {
  const folder = ownFolder();
  const ended = await typed(["print", room, "-o", "out"], {
    folder,
    program: PROGRAM,
    environment: { BAYMARK_MATE: mate },
  });
  return { ended, files: hashesBelow(join(folder, "out")) };
}

test.each(exampleRooms())("%s: with a mate and without the same bytes and the same words", async (room) => {
  const alone = await printed(room, "");
  const together = await printed(room, MATE);
  expect(alone.files.size).toBeGreaterThan(20);
  expect(together).toEqual(alone);
});

/** Threads that do not do what they should with the first lot of sheets. */
const BAD_MATES = {
  "never starts": 'throw new Error("no memory");',
  "ends before it says what it took": "told(({ turns }) => { take(turns); process.exit(); });",
  "fails when it has taken something": 'told(({ turns }) => { take(turns); throw new Error("no memory"); });',
};

describe("a mate that is of no use costs time and nothing else", () => {
  const [room = ""] = exampleRooms();
  test.each(Object.entries(BAD_MATES))("%s", async (_, does) => {
    const script = join(ownFolder(), "mate.cjs");
    writeFileSync(
      script,
      `const { parentPort } = require("node:worker_threads");
      const told = (does) => parentPort.on("message", does);
      const take = (turns) => Atomics.add(turns, 0, 1);
      ${does}`,
    );
    expect(await printed(room, script)).toEqual(await printed(room, ""));
  });
});

test("a system that has no thread to give costs nothing but time", async () => {
  const [room = ""] = exampleRooms();
  expect(await printed(room, "refused")).toEqual(await printed(room, ""));
});

test("a room that cannot be used is complained of once, and leaves nothing", async () => {
  const folder = ownFolder();
  writeFileSync(join(folder, "room.yaml"), "baymark: 1\nunits: cubits\n");
  const { code, err } = await typed(["print", "room.yaml", "-o", "out"], { folder });
  expect(code).toBe(2);
  expect(err.match(/^room\.yaml:2/gmu)).toHaveLength(1);
  expect(readdirSync(folder)).toEqual(["room.yaml"]);
});
