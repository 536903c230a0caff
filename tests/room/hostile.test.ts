import { describe, expect, test } from "vitest";
import { readRoom } from "../../src/room/read.js";
import { complaintsAbout, HERE, inShort, marked } from "./complaining.js";
import { changed, FULL_ROOM } from "./full-room.js";

/** The full room with the job's name written as this. */
const named = (written: string): string => changed("Willow Bend snug", written);

function nameRead(written: string): string | null {
  const read = readRoom(named(written), "test.yaml", { hasGlyph: () => true });
  return read.ok ? read.file.job.name : null;
}

const bytes = (...parts: readonly (string | readonly number[])[]): Uint8Array =>
  Uint8Array.from(
    parts.flatMap((part) => (typeof part === "string" ? [...new TextEncoder().encode(part)] : part)),
  );

describe("texts that a sheet cannot hold are refused by the character's name", () => {
  // Names and code points of the Unicode standard's code charts.
  const cases: Readonly<
    Record<string, { written: string; reason: string; codePoint: string; name: string | null }>
  > = {
    "a null": { written: '"a\\0b"', reason: "control", codePoint: "U+0000", name: "NULL" },
    "a null, typed as it is": { written: "a\0b", reason: "control", codePoint: "U+0000", name: "NULL" },
    "a tabulator": {
      written: '"a\\tb"',
      reason: "control",
      codePoint: "U+0009",
      name: "CHARACTER TABULATION",
    },
    "a line break": { written: '"a\\nb"', reason: "control", codePoint: "U+000A", name: "LINE FEED" },
    "an escape": { written: '"a\\x1b[31mb"', reason: "control", codePoint: "U+001B", name: "ESCAPE" },
    "a delete": { written: '"a\\x7fb"', reason: "control", codePoint: "U+007F", name: "DELETE" },
    "a C1 control": { written: '"a\\x9bb"', reason: "control", codePoint: "U+009B", name: null },
    "a line separator": {
      written: '"a\\u2028b"',
      reason: "control",
      codePoint: "U+2028",
      name: "LINE SEPARATOR",
    },
    "an override": {
      written: "a\u202eb",
      reason: "direction",
      codePoint: "U+202E",
      name: "RIGHT-TO-LEFT OVERRIDE",
    },
    "an isolate": {
      written: "a\u2067b",
      reason: "direction",
      codePoint: "U+2067",
      name: "RIGHT-TO-LEFT ISOLATE",
    },
    "a direction mark": {
      written: "a\u200fb",
      reason: "direction",
      codePoint: "U+200F",
      name: "RIGHT-TO-LEFT MARK",
    },
    "a joiner of no width": {
      written: "a\u200db",
      reason: "invisible",
      codePoint: "U+200D",
      name: "ZERO WIDTH JOINER",
    },
    "a soft hyphen": { written: "a\u00adb", reason: "invisible", codePoint: "U+00AD", name: "SOFT HYPHEN" },
    "a noncharacter": {
      written: '"a\\uffffb"',
      reason: "invisible",
      codePoint: "U+FFFF",
      name: "noncharacter",
    },
    "a private character": { written: "a\ue000b", reason: "invisible", codePoint: "U+E000", name: null },
    "half a pair, first": { written: '"a\\ud83d"', reason: "surrogate", codePoint: "U+D83D", name: null },
    "half a pair, second": { written: '"\\ude00b"', reason: "surrogate", codePoint: "U+DE00", name: null },
    Hebrew: { written: "den \u05e9\u05dc", reason: "right-to-left", codePoint: "U+05E9", name: null },
    Arabic: { written: "den \u0628", reason: "right-to-left", codePoint: "U+0628", name: null },
    Thaana: { written: "den \u0784", reason: "right-to-left", codePoint: "U+0784", name: null },
  };
  for (const [name, { written, ...figures }] of Object.entries(cases)) {
    test(name, () => {
      const { text, ...place } = marked(named(`${HERE}${written}`));
      expect(complaintsAbout(text)).toMatchObject([{ code: "bad-character", ...place, figures }]);
    });
  }

  test("a character that the typeface lacks, astral ones included, by its code point", () => {
    const lacks = (codePoint: number) => (missing: number) => missing !== codePoint;
    for (const character of ["\u{1f50a}", "\u6c34", "\u0416"]) {
      const codePoint = character.codePointAt(0) ?? 0;
      const { text, ...place } = marked(named(`${HERE}den ${character}`));
      const written = `U+${codePoint.toString(16).toUpperCase().padStart(4, "0")}`;
      expect(complaintsAbout(text, lacks(codePoint))).toMatchObject([
        { code: "bad-character", ...place, figures: { reason: "no-glyph", codePoint: written } },
      ]);
      expect(complaintsAbout(text)).toEqual([]);
    }
  });

  test("in every text that is printed", () => {
    const texts = [
      "Willow Bend snug",
      "Office, 555-0117",
      "mineral wool",
      "return duct",
      "spring clip",
      "block removed by the carpenter",
      "amplifier: A1",
      "colour: red",
      "name: middle",
    ];
    for (const text of texts) {
      const complaints = complaintsAbout(changed(text, `${text}\u202e`));
      expect(complaints, text).toMatchObject([{ code: "bad-character" }]);
    }
  });

  test("in the name of a model, which is a key", () => {
    const text = FULL_ROOM.replaceAll("wall-6", "wall\u202e6");
    expect(complaintsAbout(text)).toMatchObject([
      { code: "bad-character", path: ["models", "wall\u202e6"], at: "key" },
    ]);
  });
});

describe("texts that are ordinary, whatever they look like", () => {
  test("marks of another language are text", () => {
    for (const text of [
      "</text><script>",
      "]]>",
      "a & b",
      "%s $x",
      "-- ; DROP",
      "../../etc",
      "constructor",
    ]) {
      expect(nameRead(`'${text}'`)).toBe(text);
    }
  });

  test("composed and decomposed accents are one text (NFC)", () => {
    expect(nameRead("Cafe\u0301")).toBe("Caf\u00e9");
    const text = FULL_ROOM.replaceAll("wall-6", "wall \u00e9").replace("  wall \u00e9:", "  wall e\u0301:");
    expect(complaintsAbout(text)).toEqual([]);
  });

  test("figures in names stay as they were written", () => {
    const read = readRoom(FULL_ROOM, "test.yaml", { hasGlyph: () => true });
    expect(read.ok && read.file.job).toMatchObject({ number: "007", revision: "1.10", date: "2026-03-04" });
    for (const written of ["0x10", "1e3", "true", ".inf", "0o7", "12_000"])
      expect(nameRead(written)).toBe(written);
  });

  test("a name that JavaScript knows is an ordinary model", () => {
    expect(complaintsAbout(FULL_ROOM.replaceAll("wall-6", "constructor"))).toEqual([]);
    expect(complaintsAbout(changed("model: wall-6, on: left", "model: toString, on: left"))).toMatchObject([
      { code: "unknown-name", figures: { of: "model", typed: "toString" } },
    ]);
  });
});

describe("files that are no room file", () => {
  const refused: Readonly<Record<string, { text: string; code: string; figures?: object }>> = {
    "an empty file": { text: HERE, code: "empty-file" },
    "nothing but notes": { text: `${HERE}# a note\n`, code: "empty-file" },
    "a document of nothing": { text: `---${HERE}\n`, code: "empty-file" },
    "a list": { text: `${HERE}- baymark: 1\n`, code: "not-a-room", figures: { found: "list" } },
    "one word": { text: `${HERE}baymark\n`, code: "not-a-room", figures: { found: "text" } },
    "two documents": { text: `${FULL_ROOM}${HERE}---\nbaymark: 1\n`, code: "several-documents" },
    "a document after an end": { text: `${FULL_ROOM}...\n${HERE}baymark: 1\n`, code: "several-documents" },
    "an older YAML": { text: `${HERE}%YAML 1.1\n---\n${FULL_ROOM}`, code: "yaml-directive" },
    "an unknown directive": { text: `${HERE}%TAPE inch\n---\n${FULL_ROOM}`, code: "yaml-directive" },
    "a tag of a program": {
      text: changed("number: 007", `number: ${HERE}!js/function 'x'`),
      code: "yaml-tag",
    },
    "a tag of YAML": { text: changed("number: 007", `number: !!str ${HERE}007`), code: "yaml-tag" },
    "a set": { text: changed("stage: { walls: both }", `stage: !!set ${HERE}{ walls }`), code: "yaml-tag" },
    "an anchor": {
      text: changed("number: 007", `number: &n ${HERE}007`),
      code: "yaml-alias",
      figures: { written: "&n" },
    },
    "an anchor on a map": { text: changed("stage: {", `stage: &s ${HERE}{`), code: "yaml-alias" },
    "a merge": {
      text: changed("stage: {", `${HERE}<<: { walls: bare }\nstage: {`),
      code: "yaml-alias",
      figures: { written: "<<" },
    },
    "a key that is a list": {
      text: changed("stage: {", `? ${HERE}[a]\n: 1\nstage: {`),
      code: "key-not-text",
    },
    "a key that is nothing": { text: changed("stage: {", `${HERE}: 1\nstage: {`), code: "key-not-text" },
    "the prototype": {
      text: changed("stage: {", `${HERE}__proto__: { a: 1 }\nstage: {`),
      code: "unknown-key",
    },
    "the prototype, among models": {
      text: changed("  wall-6:\n", `  ${HERE}__proto__: { depth: 9 }\n  wall-6:\n`),
      code: "unknown-key",
    },
    "a constructor": {
      text: changed("stage: {", `${HERE}constructor: { a: 1 }\nstage: {`),
      code: "unknown-key",
    },
    "a tabulator for indenting": {
      text: changed("  number: 007", `${HERE}\tnumber: 007`),
      code: "not-yaml",
      figures: { slip: "tab" },
    },
    "a quote that is not closed": {
      text: changed("name: Willow Bend snug", `name: ${HERE}"Willow Bend snug`),
      code: "not-yaml",
      figures: { slip: "open-quote" },
    },
    "a bracket that is not closed": {
      text: changed(`ceiling: 5/8", walls: 1/2" }`, `ceiling: 5/8", walls: 1/2"`).replace(
        "board: ",
        `board: ${HERE}`,
      ),
      code: "not-yaml",
      figures: { slip: "open-bracket" },
    },
    "a colon in a name": {
      text: changed("name: Willow Bend snug", `name: ${HERE}Willow: Bend`),
      code: "not-yaml",
      figures: { slip: "colon" },
    },
    "a name that begins like a code": {
      text: changed("name: Willow Bend snug", `name: ${HERE}@Willow`),
      code: "not-yaml",
      figures: { slip: "start" },
    },
    "an indent between others": {
      text: changed("  number: 007", `${HERE} number: 007`),
      code: "not-yaml",
      figures: { slip: "indent" },
    },
    "something after a quote": {
      text: changed("name: Willow Bend snug", `name: "Willow" ${HERE}Bend`),
      code: "not-yaml",
      figures: { slip: "comma" },
    },
    "an unknown code": {
      text: changed("name: Willow Bend snug", `name: "Willow ${HERE}\\q"`),
      code: "not-yaml",
      figures: { slip: "escape" },
    },
    "a key without a colon": {
      text: `${HERE}baymark\n${FULL_ROOM}`,
      code: "not-yaml",
      figures: { slip: "no-colon" },
    },
  };
  for (const [name, { text, code, figures }] of Object.entries(refused)) {
    test(name, () => {
      const { text: typed, ...place } = marked(text);
      const complaints = complaintsAbout(typed);
      expect(complaints.map(inShort)).toEqual([{ code, ...place }]);
      expect(complaints[0]?.figures).toMatchObject(figures ?? {});
    });
  }

  test("references that would grow without end are refused without being followed", () => {
    const layers = Array.from(
      { length: 9 },
      (_, index) => `l${index + 1}: &l${index + 1} [${`*l${index}, `.repeat(9)}]`,
    );
    const text = `${FULL_ROOM}l0: &l0 [x]\n${layers.join("\n")}\n`;
    const codes = new Set(complaintsAbout(text).map(({ code }) => code));
    expect(codes).toContain("yaml-alias");
  });

  test("nested so deep that a program would end, in every way of nesting", () => {
    const deep = ["[".repeat(400_000), "{a: ".repeat(100_000), "- ".repeat(300_000), "? ".repeat(100_000)];
    for (const text of deep)
      expect(complaintsAbout(text)).toMatchObject([{ code: "nested-too-deep", line: 1 }]);
    const indented = Array.from({ length: 1000 }, (_, index) => `${" ".repeat(index)}a:`).join("\n");
    expect(complaintsAbout(indented)).toMatchObject([{ code: "nested-too-deep", figures: { most: 24 } }]);
  });
});

describe("bytes", () => {
  test("that are not UTF-8 are pointed at, after characters of several bytes too", () => {
    const before = "baymark: 1\njob: { name: Caf\u00e9 \u{1f50a} \ufffd";
    expect(complaintsAbout(bytes(before, [0xff], " }\n"))).toMatchObject([
      { code: "not-utf-8", line: 2, column: [..."job: { name: Caf\u00e9 \u{1f50a} \ufffd"].length + 1 },
    ]);
    expect(complaintsAbout(bytes("baymark: 1\n", [0xc3]))).toMatchObject([
      { code: "not-utf-8", line: 2, column: 1 },
    ]);
    // Lines end in three ways, and each of these has its own.
    expect(complaintsAbout(bytes("a: 1\rb: 2\r\nc: 3\n\r", [0xff], "\r"))).toMatchObject([
      { code: "not-utf-8", line: 5, column: 1 },
    ]);
    expect(complaintsAbout(bytes([0xff, 0xfe, 0x62, 0x00]))).toMatchObject([
      { code: "not-utf-8", line: 1, column: 1 },
    ]);
  });

  test.each(["utf16le", "big-endian"])("of two for each character are pointed at: %s", (order) => {
    const wide = Buffer.from(FULL_ROOM, "utf16le");
    expect(complaintsAbout(order === "utf16le" ? wide : wide.swap16())).toMatchObject([
      { code: "not-utf-8", line: 1, column: 1 },
    ]);
  });

  test("of a byte order mark are no part of the first line", () => {
    expect(complaintsAbout(bytes([0xef, 0xbb, 0xbf], FULL_ROOM))).toEqual([]);
    const text = changed("baymark: 1", "baymark: 2");
    expect(complaintsAbout(bytes([0xef, 0xbb, 0xbf], text))).toMatchObject([{ line: 1, column: 10 }]);
    expect(complaintsAbout(`\ufeff${text}`)).toMatchObject([{ line: 1, column: 10 }]);
  });

  test("may end lines in three ways", () => {
    const { text, ...place } = marked(changed(`height: 8' 6"`, `height: ${HERE}8`));
    for (const end of ["\r\n", "\r"]) {
      expect(complaintsAbout(text.replaceAll("\n", end))).toMatchObject([{ code: "no-unit", ...place }]);
    }
  });

  test("are counted: a million is read, one more is not", () => {
    const filled = (size: number): string => `${FULL_ROOM}#${"x".repeat(size - FULL_ROOM.length - 1)}`;
    expect(complaintsAbout(filled(1_000_000))).toEqual([]);
    expect(complaintsAbout(filled(1_000_001))).toMatchObject([
      { code: "file-too-large", line: 1, column: 1 },
    ]);
  });

  test("that go on and on, in every way of going on, are refused before anything is made of them", () => {
    const endless = ["\r", "a: b\n", "- &a a\n", "? a\n", "- - a\n"].map((piece) =>
      piece.repeat(160_000).slice(0, 960_000),
    );
    for (const text of endless) {
      expect(complaintsAbout(text)).toMatchObject([{ code: "too-much-written" }]);
    }
    expect(complaintsAbout(`a: 1\nb: "${"\\q".repeat(60_000)}"`)).toMatchObject([
      { code: "text-too-long", line: 2, column: 4 },
    ]);
  });

  test("a name that is none is shown fit to be read wherever it is a choice", () => {
    const odd = `rake\u0081`;
    const ceiling = `{ name: ${odd}, corners: [[0, 0], [5', 0], [5', 5']], height: 7' }`;
    const text = changed(
      "  measured_to: framing",
      `  measured_to: framing\n  ceilings:\n    - ${ceiling}`,
    ).replace("on: front, at: { left: 5'", "on: rake, at: { left: 5'");
    const told = complaintsAbout(text);
    expect(told).toContainEqual(expect.objectContaining({ code: "unknown-name" }));
    expect(JSON.stringify(told)).not.toContain(odd);
    expect(JSON.stringify(told)).toContain("rakeU+0081");
  });

  test("columns count characters, not halves of them", () => {
    const { text, ...place } = marked(
      changed("name: return duct, on: ceiling", `name: "\u{1f50a}\u{1f50a}", ${HERE}onn: ceiling`),
    );
    expect(complaintsAbout(text)).toContainEqual(expect.objectContaining({ code: "unknown-key", ...place }));
  });
});

test("whatever bytes come, the answer is a room or complaints with places in the file", () => {
  const noise = [..."\u0000\t\n -?:,[]{}#&*!|>'\"%@`~<=/\\0123456789aeiou\u202e\u{1f50a}\ud800"];
  let state = 1;
  // Marsaglia's xorshift, so that the same texts are tried each time.
  const next = (below: number): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
  const characters = [...FULL_ROOM];
  for (let round = 0; round < 150; round += 1) {
    const text = [...characters];
    for (let slip = 0; slip <= next(4); slip += 1)
      text.splice(next(text.length), next(3), noise[next(noise.length)] ?? "");
    const lines = text.join("").split(/\r\n|\n|\r/u);
    for (const { line, column } of complaintsAbout(text.join(""))) {
      expect(line).toBeGreaterThanOrEqual(1);
      expect(line).toBeLessThanOrEqual(lines.length);
      expect(column).toBeGreaterThanOrEqual(1);
      expect(column).toBeLessThanOrEqual([...(lines[line - 1] ?? "")].length + 1);
    }
  }
});
