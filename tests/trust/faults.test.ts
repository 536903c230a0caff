import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { replacePacket, settlePacket } from "../../src/output/folder.js";
import { ownFolder } from "./command.js";
import { type Fault, runWith } from "./faults/dying.js";
import { beside, contents, found } from "./faults/packets.js";
import { packetOf } from "./faults/packets-of.js";

/*
 * Dead or refused at every single change on the disk, one after another: the old packet or the new one is there,
 * whole, and the next run leaves nothing of the broken one.
 */

const OLD = contents(packetOf("old"));
const NEW = contents(packetOf("new"));
const LATER = contents(packetOf("later"));

/** A folder with or without a packet, and a run over it with the fault. */
function struck(fault: Fault | null, before: "packet" | "nothing") {
  const target = join(ownFolder(), "out", "den");
  if (before === "packet") replacePacket(target, packetOf("old"));
  const { returned, calls } = runWith(fault, () => replacePacket(target, packetOf("new")));
  return { target, returned, calls };
}

const callsFrom = (before: "packet" | "nothing"): readonly number[] =>
  Array.from({ length: struck(null, before).calls }, (_, index) => index + 1);

const oneOf = (target: string, ...wanted: readonly (string | null)[]): void =>
  expect(wanted).toContain(found(target));

describe.each(["packet", "nothing"] as const)("over %s, a run that is killed", (before) => {
  const stood = before === "packet" ? OLD : null;

  test.each([false, true])("at any change on the disk (half done: %s)", (half) => {
    const calls = callsFrom(before);
    expect(calls.length).toBeGreaterThan(10);
    for (const at of calls) {
      const { target } = struck({ kind: "death", at, half }, before);
      // Only between the two renames is neither there; then both lie whole beside, and the next run puts one back.
      if (found(target) !== null) oneOf(target, stood, NEW);
      settlePacket(target);
      oneOf(target, stood, NEW);
      expect(beside(target)).toEqual([]);
    }
  });

  test("and then the next one too, at any of its own: the third prints, and nothing is left", () => {
    const calls = callsFrom(before);
    for (const first of calls) {
      // Every third of the second run's, each time beginning with another one.
      for (const second of calls.filter((at) => (at + first) % 3 === 0)) {
        const { target } = struck({ kind: "death", at: first, half: true }, before);
        runWith({ kind: "death", at: second, half: true }, () => replacePacket(target, packetOf("later")));
        settlePacket(target);
        oneOf(target, stood, NEW, LATER);
        expect(replacePacket(target, packetOf("later"))).toEqual({ kind: "written" });
        oneOf(target, LATER);
        expect(beside(target)).toEqual([]);
        rmSync(join(target, "..", ".."), { recursive: true });
      }
    }
  });
});

describe.each(["packet", "nothing"] as const)("over %s, a system that refuses", (before) => {
  const stood = before === "packet" ? OLD : null;

  test.each(["ENOSPC", "EACCES", "EROFS", "EIO", "EBUSY"])("with %s at any one change", (code) => {
    for (const at of callsFrom(before)) {
      const { target, returned } = struck({ kind: "refusal", at, code, lasting: false }, before);
      oneOf(target, returned?.kind === "written" ? NEW : stood);
      settlePacket(target);
      oneOf(target, returned?.kind === "written" ? NEW : stood);
      expect(replacePacket(target, packetOf("later"))).toEqual({ kind: "written" });
      expect(beside(target)).toEqual([]);
    }
  });

  test("every write from one on, as a disk does that is full: told, and nothing is lost or left", () => {
    for (const at of callsFrom(before)) {
      const { target, returned } = struck({ kind: "refusal", at, code: "ENOSPC", lasting: true }, before);
      if (returned?.kind !== "written") expect(returned).toEqual({ kind: "unwritable", code: "ENOSPC" });
      oneOf(target, returned?.kind === "written" ? NEW : stood);
      mkdirSync(join(target, ".."), { recursive: true });
      expect(beside(target)).toEqual([]);
    }
  });
});
