import {
  chmodSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { replaceFile } from "../../src/output/file.js";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "baymark-"));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const path = (): string => join(folder, "room.yaml");
const held = (): string => readFileSync(path(), "utf8");

function replace(before: string, after: string) {
  return replaceFile(path(), { before: bytes(before), after: bytes(after) });
}

test("a file is replaced whole, and nothing is left beside it", () => {
  writeFileSync(path(), "before");
  expect(replace("before", "after, and longer")).toEqual({ kind: "written" });
  expect(held()).toBe("after, and longer");
  expect(readdirSync(folder)).toEqual(["room.yaml"]);
});

test("one that somebody else changed meanwhile is left alone", () => {
  writeFileSync(path(), "changed");
  expect(replace("before", "after")).toEqual({ kind: "changed" });
  expect(held()).toBe("changed");
});

test("its permissions stay", () => {
  writeFileSync(path(), "before");
  chmodSync(path(), 0o640);
  replace("before", "after");
  expect(statSync(path()).mode & 0o777).toBe(0o640);
});

test("a link stays one, and what it points to is replaced", () => {
  const target = join(folder, "target.yaml");
  writeFileSync(target, "before");
  symlinkSync(target, path());
  expect(replace("before", "after")).toEqual({ kind: "written" });
  expect(lstatSync(path()).isSymbolicLink()).toBe(true);
  expect(readFileSync(target, "utf8")).toBe("after");
});

test("what the system refuses is a result, and the file is as it was", () => {
  expect(replace("before", "after")).toEqual({ kind: "unwritable", code: "ENOENT" });
  mkdirSync(path());
  expect(replace("before", "after")).toEqual({ kind: "unwritable", code: "EISDIR" });
  expect(readdirSync(folder)).toEqual(["room.yaml"]);
});

test("what a broken run left beside it goes, and a link there is not followed", () => {
  writeFileSync(path(), "before");
  const other = join(folder, "other");
  writeFileSync(other, "somebody else's");
  // No system gives a process this number.
  symlinkSync(other, join(folder, ".room.yaml.baymark-new-999999999-0a1b2c3d"));
  expect(replace("before", "after")).toEqual({ kind: "written" });
  expect(held()).toBe("after");
  expect(readFileSync(other, "utf8")).toBe("somebody else's");
  expect(readdirSync(folder).sort()).toEqual(["other", "room.yaml"]);
});
