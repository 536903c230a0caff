import { spawnSync } from "node:child_process";
import {
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { InternalError } from "../../src/findings/internal-error.js";
import { type PacketFile, replacePacket, settlePacket } from "../../src/output/folder.js";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "baymark-"));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** A packet whose files all hold `words`. */
function packet(words: string, paths: readonly string[] = ["drywall.pdf", "svg/floor.svg"]): PacketFile[] {
  const marker = { baymark: 1, files: paths.map((path) => ({ path, pages: 1 })) };
  return [
    { path: "packet.json", bytes: JSON.stringify(marker) },
    ...paths.map((path) => ({ path, bytes: Buffer.from(words) })),
  ];
}

const within = (...parts: string[]): string => join(folder, ...parts);
const read = (...parts: string[]): string => readFileSync(within(...parts), "utf8");
const listed = (path = folder): string[] => readdirSync(path).sort();

describe("a packet's folder", () => {
  it("is made with the folders on its way, and nothing is left beside it", () => {
    expect(replacePacket(within("out", "den"), packet("one"))).toEqual({ kind: "written" });
    expect(read("out", "den", "svg", "floor.svg")).toBe("one");
    expect(listed(within("out"))).toEqual(["den"]);
  });

  it("is replaced as a whole: a file that the new packet lacks is gone", () => {
    replacePacket(within("den"), packet("one", ["old.pdf", "drywall.pdf"]));
    replacePacket(within("den"), packet("two", ["drywall.pdf"]));
    expect(listed(within("den"))).toEqual(["drywall.pdf", "packet.json"]);
    expect(read("den", "drywall.pdf")).toBe("two");
    expect(listed()).toEqual(["den"]);
  });

  it("may be empty beforehand, or hold what a file browser leaves", () => {
    mkdirSync(within("den"));
    writeFileSync(within("den", ".DS_Store"), "");
    expect(replacePacket(within("den"), packet("one"))).toEqual({ kind: "written" });
  });

  it("behind a link is replaced where it is, and the link stays", () => {
    mkdirSync(within("real"));
    symlinkSync(within("real"), within("den"));
    replacePacket(within("den"), packet("one"));
    expect(read("real", "drywall.pdf")).toBe("one");
    expect(listed()).toEqual(["den", "real"]);
  });
});

describe("what is not ours is left alone", () => {
  it.each([
    ["other files", (): void => writeFileSync(within("den", "holiday.txt"), "mine")],
    ["a packet.json of something else", (): void => writeFileSync(within("den", "packet.json"), "{}")],
    ["a broken packet.json", (): void => writeFileSync(within("den", "packet.json"), "{")],
  ])("%s", (_, fill) => {
    mkdirSync(within("den"));
    fill();
    const before = listed(within("den"));
    expect(replacePacket(within("den"), packet("one"))).toEqual({ kind: "not-ours" });
    expect(listed(within("den"))).toEqual(before);
    expect(listed()).toEqual(["den"]);
  });

  it("a packet into which somebody put a file", () => {
    replacePacket(within("den"), packet("one"));
    writeFileSync(within("den", "svg", "photo.jpg"), "mine");
    expect(replacePacket(within("den"), packet("two"))).toEqual({ kind: "not-ours" });
    expect(read("den", "svg", "photo.jpg")).toBe("mine");
    expect(read("den", "drywall.pdf")).toBe("one");
  });

  it("a file of that name", () => {
    writeFileSync(within("den"), "mine");
    expect(replacePacket(within("den"), packet("one"))).toEqual({ kind: "not-ours" });
    expect(read("den")).toBe("mine");
  });
});

describe("what the system refuses", () => {
  it("is a result with its code, and leaves nothing", () => {
    writeFileSync(within("file"), "");
    expect(replacePacket(within("file", "out", "den"), packet("one"))).toEqual({
      kind: "unwritable",
      code: "ENOTDIR",
    });
    expect(listed()).toEqual(["file"]);
  });

  it("half way leaves the old packet whole and takes away what was begun", () => {
    replacePacket(within("den"), packet("one"));
    // Each name is allowed; the path as a whole is longer than Linux takes (PATH_MAX, 4096 bytes).
    const deep = Array.from({ length: 30 }, () => "x".repeat(200)).join("/");
    const result = replacePacket(within("den"), packet("two", ["drywall.pdf", `${deep}/a.svg`]));
    expect(result).toEqual({ kind: "unwritable", code: "ENAMETOOLONG" });
    expect(read("den", "drywall.pdf")).toBe("one");
    expect(listed()).toEqual(["den"]);
  });
});

describe("an interrupted swap", () => {
  /** The number of a process that is over. */
  const over = spawnSync(process.execPath, ["-e", ""]).pid;
  const left = (what: "new" | "old", run = over): string => within(`.den.baymark-${what}-${run}-0123abcd`);
  const begin = (words: string): void => {
    replacePacket(within("begun"), packet(words));
    renameSync(within("begun"), left("new"));
  };

  beforeEach(() => {
    replacePacket(within("den"), packet("one"));
  });

  it("while writing: the old packet stays and what was begun goes", () => {
    begin("two");
    settlePacket(within("den"));
    expect(read("den", "drywall.pdf")).toBe("one");
    expect(listed()).toEqual(["den"]);
  });

  it("between the two renames: finished, since the new packet was whole", () => {
    begin("two");
    renameSync(within("den"), left("old"));
    settlePacket(within("den"));
    expect(read("den", "drywall.pdf")).toBe("two");
    expect(listed()).toEqual(["den"]);
  });

  it("with a new one that is not whole, on a system that lost a file: undone", () => {
    begin("two");
    rmSync(join(left("new"), "svg", "floor.svg"));
    renameSync(within("den"), left("old"));
    settlePacket(within("den"));
    expect(read("den", "drywall.pdf")).toBe("one");
    expect(listed()).toEqual(["den"]);
  });

  it("with only the old one left: undone", () => {
    renameSync(within("den"), left("old"));
    settlePacket(within("den"));
    expect(read("den", "drywall.pdf")).toBe("one");
    expect(listed()).toEqual(["den"]);
  });

  it("before the old one was taken away: tidied by the next packet", () => {
    replacePacket(within("begun"), packet("zero"));
    renameSync(within("begun"), left("old"));
    expect(replacePacket(within("den"), packet("three"))).toEqual({ kind: "written" });
    expect(read("den", "drywall.pdf")).toBe("three");
    expect(listed()).toEqual(["den"]);
  });

  it("while the old one was taken away, of a packet that somebody then took away: not half of it comes back", () => {
    renameSync(within("den"), left("old"));
    rmSync(join(left("old"), "packet.json"));
    settlePacket(within("den"));
    expect(listed()).toEqual([]);
  });

  it("behind a link whose end was just moved away: put right where it is, and the link stays", () => {
    mkdirSync(within("elsewhere"));
    renameSync(within("den"), within("elsewhere", `.den.baymark-old-${over}-0123abcd`));
    symlinkSync(within("elsewhere", "den"), within("den"));
    expect(replacePacket(within("den"), packet("two"))).toEqual({ kind: "written" });
    expect(read("elsewhere", "den", "drywall.pdf")).toBe("two");
    expect(listed(within("elsewhere"))).toEqual(["den"]);
    expect(lstatSync(within("den")).isSymbolicLink()).toBe(true);
  });

  it("of a run that is not over is left alone", () => {
    begin("two");
    renameSync(left("new"), left("new", process.ppid));
    settlePacket(within("den"));
    expect(listed()).toEqual([basename(left("new", process.ppid)), "den"]);
  });

  it("a folder on the way that another run meanwhile filled stays, where this one fails", () => {
    const deep = Array.from({ length: 30 }, () => "x".repeat(200)).join("/");
    const files = packet("two", ["a.pdf", `${deep}/a.svg`]);
    const first = files[1];
    if (first === undefined) throw new Error("no file");
    Object.defineProperty(first, "bytes", {
      get: () => {
        replacePacket(within("out", "studio"), packet("other"));
        return "two";
      },
    });
    expect(replacePacket(within("out", "den"), files)).toEqual({ kind: "unwritable", code: "ENAMETOOLONG" });
    expect(listed(within("out"))).toEqual(["studio"]);
    expect(read("out", "studio", "drywall.pdf")).toBe("other");
  });
});

describe("paths that only we can cause", () => {
  it.each([
    "../den.pdf",
    "/etc/passwd",
    "svg/../../x",
    "a\\b",
    "svg//x",
    "",
    "con",
    "AUX.svg",
    "x.",
    "a:b",
    "a\u0000b",
    ".hidden",
    `${"x".repeat(256)}`,
  ])("refuses %j", (path) => {
    expect(() => replacePacket(within("den"), packet("one", [path]))).toThrow(InternalError);
    expect(existsSync(within("den"))).toBe(false);
  });

  it("refuses two that are one where case does not count", () => {
    expect(() => replacePacket(within("den"), packet("one", ["svg/A.svg", "svg/a.svg"]))).toThrow(
      InternalError,
    );
  });

  it("refuses a packet without a marker or with a file that the marker does not list", () => {
    expect(() => replacePacket(within("den"), packet("one").slice(1))).toThrow(InternalError);
    const unlisted = [...packet("one"), { path: "more.pdf", bytes: "x" }];
    expect(() => replacePacket(within("den"), unlisted)).toThrow(InternalError);
  });
});
