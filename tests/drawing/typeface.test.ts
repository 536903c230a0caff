import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { inflateSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { missingGlyphs } from "../../src/drawing/coverage.js";
import { measureText } from "../../src/drawing/text.js";
import { TYPEFACE_FILES, typeface } from "../../src/drawing/typeface.js";
import { readTypefaceFile } from "../../src/drawing/typeface-files.js";
import { InternalError } from "../../src/findings/internal-error.js";

describe("the prepared typeface", () => {
  it.each(["regular", "bold"] as const)("%s: what a PDF embeds inflates to the whole cut", (face) => {
    const whole = readTypefaceFile(TYPEFACE_FILES.whole(face));
    expect(inflateSync(readTypefaceFile(TYPEFACE_FILES.deflated(face))).equals(whole)).toBe(true);
    expect(typeface(face).byteLength).toBe(whole.length);
  });

  it.each(["regular", "bold"] as const)("%s: holds no table that would kern or join letters", (face) => {
    const font = readTypefaceFile(TYPEFACE_FILES.whole(face));
    const tags = Array.from({ length: font.readUInt16BE(4) }, (_, index) =>
      font.toString("latin1", 12 + 16 * index, 16 + 16 * index),
    );
    expect(tags).toContain("glyf");
    expect(tags.filter((tag) => ["GSUB", "GPOS", "kern"].includes(tag))).toEqual([]);
  });

  it.each(["regular", "bold"] as const)("%s: all figures are of one width", (face) => {
    const widths = [..."0123456789"].map((figure) => measureText(figure, { capMm: 2.5, face }).widthMm);
    expect(new Set(widths).size).toBe(1);
    expect(widths[0]).toBeGreaterThan(0);
  });

  it("comes with its licence", () => {
    expect(readTypefaceFile("LICENSE").toString("utf8")).toMatch(/Bitstream Vera/u);
  });

  it("is our own mistake where it is missing", () => {
    expect(() => readTypefaceFile("no-such-face.ttf")).toThrow(InternalError);
  });
});

describe("every word of the catalogue", () => {
  const WORDS = join(import.meta.dirname, "..", "..", "src", "words");

  it.each(["english", "spanish"])("in %s can be drawn: no letter of its files lacks a glyph", (language) => {
    const folder = join(WORDS, language);
    const letters = readdirSync(folder).map((file) => readFileSync(join(folder, file), "utf8"));
    expect(letters.join("").length).toBeGreaterThan(1000);
    expect(missingGlyphs(letters.join("").replaceAll(/[\n\t]/gu, " "))).toEqual([]);
  });
});
