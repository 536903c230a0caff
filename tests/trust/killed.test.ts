import { spawnSync } from "node:child_process";
import { mkdirSync, readdirSync, rmSync, statfsSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ownFolder, typed } from "./command.js";
import { beside, contents, found } from "./faults/packets.js";
import { packetOf } from "./faults/packets-of.js";

/*
 * The program as people start it, killed (SIGKILL) while it prints over an older packet, short of disk, and twice at
 * once.
 */

/** A room that is soon printed. */
const ROOM = `baymark: 1
job: { name: Fern Row box room, number: FR-1, revision: A, date: 2026-11-25 }
units: metric
room: { width: 3 m, length: 4 m, height: 2.4 m, measured_to: framing }
board: { ceiling: 12.5 mm, walls: 12.5 mm }
framing:
  ceiling: { run: left-right, member: { width: 45 mm, depth: 220 mm }, from: front, first: 600 mm, spacing: 600 mm }
models:
  one: { opening: { round: 200 mm }, flange: { round: 230 mm }, depth: 120 mm, clamp_reach: 12 mm }
seats:
  - { name: chair, at: { left: 1.5 m, front: 2 m }, ear: 1.2 m, reference: true }
speakers:
  - { id: T, channel: U+045, model: one, on: ceiling, at: { left: 900 mm, front: 900 mm } }
`;

/** Prints in one of two ways, so that the two packets differ in every PDF. */
const wordsFor = (paper: "A4" | "letter"): readonly string[] => [
  "print",
  "room.yaml",
  "-o",
  "out/packet",
  "--paper",
  paper,
  "--pdf",
];

let [older, newer]: (string | null)[] = [null, null];

function roomFolder(): { readonly folder: string; readonly target: string } {
  const folder = ownFolder();
  writeFileSync(join(folder, "room.yaml"), ROOM);
  return { folder, target: join(folder, "out", "packet") };
}

async function printed(folder: string, paper: "A4" | "letter", environment = {}) {
  const ended = await typed(wordsFor(paper), { folder, environment });
  return ended;
}

beforeAll(async () => {
  const { folder, target } = roomFolder();
  expect(await printed(folder, "A4")).toMatchObject({ code: 0 });
  older = found(target);
  expect(await printed(folder, "letter")).toMatchObject({ code: 0 });
  newer = found(target);
  expect(newer).not.toBe(older);
});

const tally = { killed: 0, stoodOlder: 0, stoodNewer: 0, stoodNeither: 0 };
afterAll(() => console.log(JSON.stringify(tally)));

/** What stands now is one of the two; and a run that comes to nothing, of a file that is not there, puts it right. */
async function holdsAfterDeath({ folder, target }: ReturnType<typeof roomFolder>): Promise<void> {
  tally.killed += 1;
  const stands = found(target);
  if (stands === null) tally.stoodNeither += 1;
  else expect([older, newer]).toContain(stands);
  if (stands === older) tally.stoodOlder += 1;
  if (stands === newer) tally.stoodNewer += 1;
  expect(await typed(["print", "none.yaml", "-o", "out/packet"], { folder })).toMatchObject({ code: 2 });
  expect([older, newer]).toContain(found(target));
  expect(beside(target)).toEqual([]);
}

describe("a print over an older packet, killed", () => {
  const PRELOAD = `--import=${pathToFileURL(join(import.meta.dirname, "faults", "die-at.js"))}`;

  test("at each change on the disk, one print after another", async () => {
    const room = roomFolder();
    for (let at = 1; ; at++) {
      await printed(room.folder, "A4");
      const environment = { NODE_OPTIONS: PRELOAD, BAYMARK_DIE_AT: String(at) };
      const { signal, code } = await printed(room.folder, "letter", environment);
      if (signal === null) {
        expect(code).toBe(0);
        expect(at).toBeGreaterThan(10);
        break;
      }
      await holdsAfterDeath(room);
    }
  });

  test("at any moment: as soon as something is written, and some milliseconds later", async () => {
    const room = roomFolder();
    for (let tries = 0; tries < 8; tries++) {
      await printed(room.folder, "A4");
      const above = join(room.folder, "out");
      const { signal } = await typed(wordsFor("letter"), {
        folder: room.folder,
        started: (running) => {
          const look = setInterval(() => {
            if (running.exitCode !== null) clearInterval(look);
            if (!readdirSync(above).some((name) => name.startsWith("."))) return;
            clearInterval(look);
            setTimeout(() => running.kill("SIGKILL"), tries);
          }, 1);
        },
      });
      if (signal !== null) await holdsAfterDeath(room);
    }
  });
});

describe("two runs into one folder at once", () => {
  test("print: both are done, and one packet is there, whole", async () => {
    const { folder, target } = roomFolder();
    for (let times = 0; times < 4; times++) {
      const both = await Promise.all([printed(folder, "A4"), printed(folder, "letter")]);
      expect(both.map(({ code, err }) => [code, err])).toEqual(both.map(({ err }) => [0, err]));
      expect([older, newer]).toContain(found(target));
      expect(beside(target)).toEqual([]);
    }
  });

  test("four that write again and again", async () => {
    const target = join(ownFolder(), "out", "packet");
    const writer = join(import.meta.dirname, "faults", "writer.ts");
    const names = ["one", "two", "three", "four"];
    const runs = names.map((name) =>
      typed([target, name, "60"], {
        folder: join(import.meta.dirname),
        program: ["--import", "tsx", writer],
      }),
    );
    expect((await Promise.all(runs)).map(({ out, err }) => out + err)).toEqual(names.map(() => "[]"));
    expect(names.map((name) => contents(packetOf(name)))).toContain(found(target));
    expect(beside(target)).toEqual([]);
  });
});

/** A file system of its own, where this machine lets us have one. */
function mounted(options: string): string | null {
  const folder = ownFolder();
  const { status } = spawnSync("mount", ["-t", "tmpfs", "-o", options, "tmpfs", folder]);
  return status === 0 ? folder : null;
}

const unmount = (folder: string): void => void spawnSync("umount", [folder]);

describe("on a disk of its own", () => {
  test("that is full: told, and the older packet stands alone and whole", async (context) => {
    const folder = mounted("size=4m");
    if (folder === null) return context.skip("this machine lets nobody mount a disk");
    try {
      writeFileSync(join(folder, "room.yaml"), ROOM);
      const target = join(folder, "out", "packet");
      expect(await printed(folder, "A4")).toMatchObject({ code: 0 });
      const { bavail, bsize } = statfsSync(folder);
      // Room for some files of the next packet, not for all of them.
      writeFileSync(join(folder, "filling"), Buffer.alloc(bavail * bsize - 60_000));
      const { code, err } = await printed(folder, "letter");
      expect(code).toBe(2);
      expect(err).toMatch(/ENOSPC|full/u);
      expect(found(target)).toBe(older);
      expect(beside(target)).toEqual([]);
      rmSync(join(folder, "filling"));
      expect(await printed(folder, "letter")).toMatchObject({ code: 0 });
      expect(found(target)).toBe(newer);
    } finally {
      unmount(folder);
    }
  });

  test("that may only be read: told, and the packet stands as it did", async (context) => {
    const folder = mounted("size=4m");
    if (folder === null) return context.skip("this machine lets nobody mount a disk");
    try {
      writeFileSync(join(folder, "room.yaml"), ROOM);
      mkdirSync(join(folder, "out"));
      expect(await printed(folder, "A4")).toMatchObject({ code: 0 });
      expect(spawnSync("mount", ["-o", "remount,ro", folder]).status).toBe(0);
      const { code, err } = await printed(folder, "letter");
      expect(code).toBe(2);
      expect(err).toMatch(/EROFS|read-only/iu);
      expect(found(join(folder, "out", "packet"))).toBe(older);
    } finally {
      unmount(folder);
    }
  });
});
