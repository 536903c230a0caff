import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { exampleRooms, ownFolder, PROGRAM } from "./command.js";

/* What was asked for goes to standard output, which may be a full disk or somebody who has stopped reading. */

const [ROOM = ""] = exampleRooms();

/** What becomes of a command whose standard output is handled by the rest of a shell's line. */
function typedInto(rest: string, words: readonly string[]) {
  const line = `"$@" ${rest}`;
  const { status, stderr } = spawnSync("/bin/sh", ["-c", line, "sh", process.execPath, PROGRAM, ...words], {
    cwd: ownFolder(),
    encoding: "utf8",
  });
  return { status, stderr };
}

describe.runIf(existsSync("/dev/full"))("standard output on a full disk", () => {
  test.each([
    ["check", ROOM],
    ["check", ROOM, "--json"],
    ["report", ROOM],
    ["print", ROOM, "--json", "-o", "out"],
  ])(
    "%s: told, without a trace of the program, and no exit code that could be taken for an answer",
    (...words) => {
      const { status, stderr } = typedInto("> /dev/full", words);
      expect(status).toBe(2);
      expect(stderr.trimEnd().split("\n").at(-1)).toMatch(/^baymark: .*ENOSPC/u);
      expect(stderr).not.toMatch(/^ {4}at |node:internal|\.js:\d/mu);
    },
  );

  test("standard error there stops nothing", () => {
    const { status } = typedInto("2> /dev/full > /dev/null", ["print", ROOM, "-o", join(ownFolder(), "out")]);
    expect([0, 1]).toContain(status);
  });
});

test("whoever stops reading hears no complaint", () => {
  const { stderr } = typedInto("| head -n 1", ["report", ROOM]);
  expect(stderr).toBe("");
});
