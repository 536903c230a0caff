import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { z } from "zod";
import { roomJsonSchema } from "../../src/room/json-schema.js";
import { readRoom } from "../../src/room/read.js";
import { resolveRoom } from "../../src/room/resolve.js";
import { startFile } from "../../src/room/start.js";
import { changed, FULL_ROOM } from "./full-room.js";

/* What an editor says of a file: the schema as data, against the file as any YAML reader has it. */

const schema = z.fromJSONSchema(JSON.parse(JSON.stringify(roomJsonSchema())));
const accepts = (text: string): boolean => schema.safeParse(parse(text)).success;

describe("the JSON Schema for editors", () => {
  test("is of the draft that it says, and speaks of what is typed", () => {
    const written = JSON.parse(JSON.stringify(roomJsonSchema()));
    expect(written.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(written.required).toEqual(["baymark", "job", "units", "room", "board", "seats"]);
    expect(written.properties.room.properties.width.description).toMatch(/left wall/u);
  });

  test("takes the full room, the examples and the files to begin from", () => {
    expect(accepts(FULL_ROOM)).toBe(true);
    for (const units of ["imperial", "metric"] as const)
      expect(accepts(startFile({ language: "en", units }))).toBe(true);
    const examples = join(import.meta.dirname, "../../examples");
    const files = readdirSync(examples).filter((name) => name.endsWith(".yaml"));
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) expect(accepts(readFileSync(join(examples, file), "utf8")), file).toBe(true);
  });

  test("takes members at an angle, by flange and web, straps, and what is missing or besides", () => {
    const joists = "run: left-right, member: 2x8, from: front,";
    const corner = "from: { right: 0, front: 0 }";
    const straps = `strapping: { kind: channel, depth: 1/2", width: 2 1/2", ${corner}, first: 12", spacing: 24" }`;
    for (const said of [
      `run: 30 deg, member: 2x8, ${corner},`,
      `run: 22.5°, member: 2x8, ${corner},`,
      `run: 0, member: 2x8, ${corner},`,
      `run: left-right, member: { flange: 2 1/2", web: 3/8", depth: 11 7/8" }, from: front,`,
      `run: left-right, member: { flange: 3 1/2", web: open, depth: 14" }, from: front,`,
      `${joists} ${straps},`,
      `${joists} strapping: 3/4",`,
      `${joists} found: [{ missing: 3, by: lead, on: 2026-03-05 }, { extra: 61", by: lead, on: 2026-03-05 }],`,
    ]) {
      const text = changed(joists, said);
      expect(accepts(text), said).toBe(true);
      const read = readRoom(text, "full.yaml", { hasGlyph: () => true });
      expect(read.ok && resolveRoom(read.file).ok, said).toBe(true);
    }
    for (const said of [`run: 30, member: 2x8, ${corner},`, `run: askew, member: 2x8, from: front,`]) {
      expect(accepts(changed(joists, said)), said).toBe(false);
    }
  });

  test("refuses what reading refuses: other keys, bare numbers, other words, what is missing", () => {
    expect(accepts(changed("units: imperial", "units: imperial\nunit: metric"))).toBe(false);
    expect(accepts(changed(`width: 13' 4"`, "width: 160"))).toBe(false);
    expect(accepts(changed("coverage: 100 deg", "coverage: 100"))).toBe(false);
    expect(accepts(changed("units: imperial", "units: inches"))).toBe(false);
    expect(accepts(changed("channel: M-030", "channel: M-031"))).toBe(false);
    expect(accepts(changed(`    clamp_reach: 5/8"\n`, ""))).toBe(false);
    expect(accepts(changed("id: FL", "id: front/left"))).toBe(false);
    expect(accepts(changed("gauges: [16, 14, 12]", "gauges: [16.5]"))).toBe(false);
  });

  test("describes every key that a person may type", () => {
    const silent: string[] = [];
    const walk = (node: unknown, path: string): void => {
      if (typeof node !== "object" || node === null) return;
      const { properties } = node as { properties?: Record<string, { description?: string }> };
      for (const [key, value] of Object.entries(properties ?? {})) {
        if (value.description === undefined) silent.push(`${path}.${key}`);
      }
      for (const [key, value] of Object.entries(node)) walk(value, `${path}.${key}`);
    };
    walk(JSON.parse(JSON.stringify(roomJsonSchema())), "");
    expect(silent).toEqual([]);
  });
});
