import { inflateSync } from "node:zlib";
import fc from "fast-check";
import pako from "pako";
import { describe, expect, it } from "vitest";
import { deflate, deflated } from "../../src/output/deflate.js";

/** Bytes as pages have them, words again and again, and bytes without any order. */
const bytes = fc.oneof(
  fc.uint8Array({ maxLength: 3000 }),
  fc
    .array(fc.constantFrom("12.5 30 m", "0 G", "\n", "BT /R 3.5 Tf", "7.0625 l S", " ", "(\u0001)"), {
      maxLength: 3000,
    })
    .map((words) => new Uint8Array(Buffer.from(words.join(" "), "latin1"))),
);

describe("deflated bytes", () => {
  it("are those that another deflater makes, at every level", () => {
    const level = fc.integer({ min: 1, max: 9 });
    fc.assert(
      fc.property(bytes, level, (given, level) => {
        expect(Buffer.compare(deflate(given, level), pako.deflate(given, { level }))).toBe(0);
      }),
    );
  });

  it("are whole where there are more of them than are handed over at once, before and after", () => {
    let seed = 7;
    const noise = Uint8Array.from({ length: 400_000 }, () => {
      seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31;
      return seed >> 16;
    });
    for (const given of [noise, noise.map((byte) => byte & 7), new Uint8Array(300_000), new Uint8Array(0)]) {
      const made = deflate(given, 4);
      expect(Buffer.compare(inflateSync(made), given)).toBe(0);
      expect(Buffer.compare(made, pako.deflate(given, { level: 4 }))).toBe(0);
    }
  });

  it("hold one byte for each character of a content stream", () => {
    expect([...inflateSync(deflated("(\u0000\u00ff) Tj"))]).toEqual([40, 0, 255, 41, 32, 84, 106]);
  });
});
