import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { InternalError } from "../../src/findings/internal-error.js";
import { spliced } from "../../src/room/splice.js";
import type { Entry } from "../../src/room/splice-list.js";

const ENTRIES: readonly Entry[] = [
  [
    ["id", "S1"],
    [
      "at",
      [
        ["left", `3' 6 1/4"`],
        ["up", "42 mm"],
      ],
    ],
  ],
  [["id", "S2"]],
];
const ONE = `{ id: S1, at: { left: 3' 6 1/4", up: 42 mm } }`;
const TWO = "{ id: S2 }";

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const decode = (bytes: Uint8Array): string => new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);

const added = (text: string, entries = ENTRIES): string =>
  decode(spliced(encode(text), [], [{ key: "list", entries }]));

describe("entries go to the end of a list, and nothing else changes", () => {
  test.each([
    ["on lines", "list:\n  - id: X\nb: 1\n", `list:\n  - id: X\n  - ${ONE}\n  - ${TWO}\nb: 1\n`],
    ["in braces on lines", "list:\n- { id: X }\n", `list:\n- { id: X }\n- ${ONE}\n- ${TWO}\n`],
    ["without an end of line", "list:\n  - id: X", `list:\n  - id: X\n  - ${ONE}\n  - ${TWO}`],
    [
      "past a comment beside the last one, before those below",
      "list:\n  - id: X # last\n\n# next\nb: 1",
      `list:\n  - id: X # last\n  - ${ONE}\n  - ${TWO}\n\n# next\nb: 1`,
    ],
    [
      "with carriage returns",
      "list:\r\n  - id: X\r\nb: 1\r\n",
      `list:\r\n  - id: X\r\n  - ${ONE}\r\n  - ${TWO}\r\nb: 1\r\n`,
    ],
    [
      "over lines of their own",
      "list:\n  - id: X\n    at: { up: 1 }\n",
      `list:\n  - id: X\n    at: { up: 1 }\n  - ${ONE}\n  - ${TWO}\n`,
    ],
    ["in brackets", "list: [{ id: X }] # all\n", `list: [{ id: X },\n  ${ONE},\n  ${TWO}] # all\n`],
    [
      "in brackets over lines",
      "list: [\n    { id: X },\n]\n",
      `list: [\n    { id: X },\n    ${ONE},\n    ${TWO},\n]\n`,
    ],
    ["in empty brackets", "list: []\nb: 1\n", `list: [\n  ${ONE},\n  ${TWO}\n]\nb: 1\n`],
    [
      "to a list that is not there",
      "a: 1\nb: { c: 2 } # x\n# end\n",
      `a: 1\nb: { c: 2 } # x\nlist:\n  - ${ONE}\n  - ${TWO}\n# end\n`,
    ],
    [
      "behind a byte order mark",
      "\ufefflist:\n  - id: X\n",
      `\ufefflist:\n  - id: X\n  - ${ONE}\n  - ${TWO}\n`,
    ],
    [
      "before the end of the document",
      "list:\n  - id: X\n...\n",
      `list:\n  - id: X\n  - ${ONE}\n  - ${TWO}\n...\n`,
    ],
  ])("%s", (_, text, after) => {
    expect(added(text)).toBe(after);
    expect(parse(after).list.slice(-2)).toEqual([
      { id: "S1", at: { left: `3' 6 1/4"`, up: "42 mm" } },
      { id: "S2" },
    ]);
  });

  test("JSON stays JSON", () => {
    for (const text of [
      JSON.stringify({ list: [{ id: "X" }], b: 1 }),
      JSON.stringify({ list: [{ id: "X" }], b: 1 }, null, 2),
      JSON.stringify({ list: [], b: 1 }),
      JSON.stringify({ b: 1 }),
      JSON.stringify({ b: { c: [1] } }, null, 2),
    ]) {
      const before = JSON.parse(text);
      expect(JSON.parse(added(text))).toEqual({
        ...before,
        list: [...(before.list ?? []), { id: "S1", at: { left: `3' 6 1/4"`, up: "42 mm" } }, { id: "S2" }],
      });
    }
  });

  test("what means something else in YAML is quoted", () => {
    for (const name of [
      "a, b",
      "x: y",
      "[z]",
      "null",
      "# no",
      "- a",
      "a b",
      `5" round`,
      "ñandú-5",
      "007",
      "",
    ]) {
      const after = added("list: []\n", [[["model", name]]]);
      expect(String(parse(after, { schema: "failsafe" }).list[0].model)).toBe(name);
    }
  });

  test("with none to add the file is as it was; what is no list throws", () => {
    expect(added("list:\n  - 1\n", [])).toBe("list:\n  - 1\n");
    expect(() => added("list: 5\n")).toThrow(InternalError);
  });

  test("together with texts that are exchanged", () => {
    const bytes = spliced(
      encode("list:\n  - { at: best, id: X }\n  - { at: best }\n"),
      [0, 1].map((index) => ({ path: ["list", index, "at"], map: [["up", "1 mm"]] as const })),
      [{ key: "list", entries: [[["id", "S2"]]] }],
    );
    expect(decode(bytes)).toBe(
      `list:\n  - { at: { up: 1 mm }, id: X }\n  - { at: { up: 1 mm } }\n  - ${TWO}\n`,
    );
  });
});
