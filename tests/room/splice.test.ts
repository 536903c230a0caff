import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InternalError } from "../../src/findings/internal-error.js";
import type { Path } from "../../src/room/room.js";
import { type Splice, spliced } from "../../src/room/splice.js";

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const decode = (bytes: Uint8Array): string => new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);

const TAPES: Splice["map"] = [
  ["left", `3' 6 1/4"`],
  ["up", `42"`],
];
const WRITTEN = `{ left: 3' 6 1/4", up: 42" }`;

const put = (text: string, path: Path, map = TAPES): string => decode(spliced(encode(text), [{ path, map }]));

describe("a text is exchanged, and nothing else", () => {
  test.each([
    ["in braces", "a: [{ id: X, at: best, b: 1 }]\n"],
    ["in braces without spaces", "a: [{id: X,at: best}]"],
    ["over lines", "a:\n  - id: X\n    at: best\n    b: 1\n"],
    ["with a comment behind", "a:\n  - id: X\n    at: best   # ask\n    b: 1 # other\n"],
    ["at the end of the file", "a:\n  - id: X\n    at: best"],
    ["with carriage returns", "a:\r\n  - id: X\r\n    at: best # é\r\n    b: 1\r\n"],
    ["with old line ends", "a:\r  - id: X\r    at: best\r    b: 1\r"],
    ["behind a byte order mark", "\ufeffa:\n  - id: X\n    at: best\n"],
    ["behind letters of more than one byte", "# ⌀ 🙂 ñ\na:\n  - id: X\n    at: best\n"],
    ["in single quotes", "a:\n  - at: 'best'\n    id: X\n"],
    ["in odd spacing", "a :\n  -   id:   X\n      at :   best   \n\n\n# end"],
    ["on a line of its own", "a:\n  - id: X\n    at:\n      best\n    b: 1\n"],
  ])("%s", (_, text) => {
    expect(put(text, ["a", 0, "at"])).toBe(text.replace(/'best'|best/u, WRITTEN));
  });

  test("of a block of text the end of its line stays", () => {
    expect(put("a:\n  at: >-\n    best\n  b: 1\n", ["a", "at"])).toBe(`a:\n  at: ${WRITTEN}\n  b: 1\n`);
  });

  test("a tag goes with the text that it speaks of", () => {
    expect(put("a: !!str best # why\n", ["a"])).toBe(`a: ${WRITTEN} # why\n`);
  });

  test("JSON stays JSON", () => {
    const text = JSON.stringify({ speakers: [{ id: "X", at: "best" }] }, null, 2);
    const after = put(text, ["speakers", 0, "at"]);
    expect(JSON.parse(after)).toEqual({ speakers: [{ id: "X", at: Object.fromEntries(TAPES) }] });
    expect(after).toBe(text.replace('"best"', `{ "left": "3' 6 1/4\\"", "up": "42\\"" }`));
  });

  test("several at once, in any order", () => {
    const text = "a: [{ at: best }, { at: best }, { at: best }]";
    const splices = [2, 0].map(
      (index): Splice => ({ path: ["a", index, "at"], map: [["left", `${index} mm`]] }),
    );
    expect(decode(spliced(encode(text), splices))).toBe(
      "a: [{ at: { left: 0 mm } }, { at: best }, { at: { left: 2 mm } }]",
    );
  });
});

test("every byte outside the exchanged text is as it was, whatever stands there", () => {
  const comment = fc.string({
    unit: fc.constantFrom("x", " ", "é", "⌀", "🙂", "'", '"', "{", "#", "\t"),
    maxLength: 12,
  });
  const lineEnd = fc.constantFrom("\n", "\r\n", "\r");
  const files = fc.record({
    head: comment,
    before: comment,
    after: comment,
    end: lineEnd,
    mark: fc.boolean(),
    flow: fc.boolean(),
  });
  fc.assert(
    fc.property(files, ({ head, before, after, end, mark, flow }) => {
      const lines = flow
        ? [`# ${head}`, `a: [ { id: X, at: best, b: 1 } ] # ${after}`]
        : [`# ${head}`, "a:", `  - id: X # ${before}`, `    at: best # ${after}`, "    b: 1"];
      const text = (mark ? "\ufeff" : "") + lines.join(end) + end;
      const bytes = encode(text);
      const result = spliced(bytes, [{ path: ["a", 0, "at"], map: TAPES }]);
      const from = encode(text.slice(0, text.indexOf("at: best") + 4)).length;
      const put = encode(WRITTEN);
      expect(result.slice(0, from)).toEqual(bytes.slice(0, from));
      expect(result.slice(from, from + put.length)).toEqual(put);
      expect(result.slice(from + put.length)).toEqual(bytes.slice(from + 4));
    }),
  );
});

test("what is not there is our own failure", () => {
  expect(() => put("a: 1", ["b"])).toThrow(InternalError);
  expect(() => put("a: { b: 1 }", ["a"])).toThrow(InternalError);
  expect(() => put("a: [", ["a"])).toThrow(InternalError);
});
