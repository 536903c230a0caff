import { describe, expect, test } from "vitest";
import { complaintsAbout, HERE, inShort, marked } from "./complaining.js";
import { changed, FULL_ROOM, placeOf } from "./full-room.js";
import { SLIPS, slipped } from "./slips.js";

test("the full room has no complaint", () => {
  expect(complaintsAbout(FULL_ROOM)).toEqual([]);
});

describe("each slip is told where it is, and nothing else is", () => {
  for (const [name, slip] of Object.entries(SLIPS)) {
    test(name, () => {
      const { text, ...place } = slipped(name, slip);
      const complaints = complaintsAbout(text);
      expect(complaints.map(inShort)).toEqual([{ code: slip.code, ...place }]);
      expect(complaints[0]?.figures).toMatchObject(slip.figures ?? {});
    });
  }
});

test("several slips are told in one go, in the file's order", () => {
  const text = FULL_ROOM.replace(`width: 13' 4"`, "width: 160")
    .replace("units: imperial", "unit: imperial")
    .replace("model: wall-6, on: left", "model: wall, on: lft")
    .replace("sensitivity: 88 dB", "sensitivity: 88")
    .replace("name: outlet", 'name: "out\\tlet"');
  expect(complaintsAbout(text).map(({ code, line }) => [line, code])).toEqual([
    [7, "unknown-key"],
    [11, "no-unit"],
    [placeOf("name: outlet").line, "bad-character"],
    [placeOf("sensitivity").line, "no-unit"],
    [placeOf("id: SL").line, "unknown-name"],
    [placeOf("id: SL").line, "unknown-name"],
  ]);
});

test("more complaints than a person reads are counted, not shown", () => {
  const many = Array.from({ length: 150 }, (_, index) => `key-${index}: 1`).join("\n");
  const complaints = complaintsAbout(`${FULL_ROOM}${many}\n`);
  expect(complaints).toHaveLength(101);
  expect(complaints.at(-1)).toMatchObject({ code: "more-complaints", figures: { count: 50 } });
});

test("a room may have 500 loudspeakers and no more", () => {
  const speaker = (index: number) =>
    `  - { id: S${index}, channel: M+000, model: wall-6, on: left, at: { front: 5', up: 4' } }`;
  const text = (count: number): string =>
    FULL_ROOM.replace(
      /speakers:\n[\s\S]*\n\nequipment/u,
      `speakers:\n${Array.from({ length: count }, (_, index) => speaker(index)).join("\n")}\n\nequipment`,
    ).replace(/accept:.*\n/u, "");
  expect(complaintsAbout(text(500))).toEqual([]);
  expect(complaintsAbout(text(501))).toMatchObject([
    { code: "too-many", ...placeOf("- { id: FL"), figures: { of: "speakers", count: 501, most: 500 } },
  ]);
});

test.each([
  {
    key: "obstructions",
    most: 250,
    each: (index: number) => `{ name: duct ${index}, on: ceiling, at: { left: 1', front: 1' }, round: 1" }`,
  },
  {
    key: "seats",
    most: 1000,
    each: (index: number) =>
      `{ name: seat ${index}, at: { left: 1', front: 1' }, ear: 4'${index === 0 ? ", reference: true" : ""} }`,
  },
])("a room may have $most $key and no more", ({ key, most, each }) => {
  const list = (count: number) =>
    Array.from({ length: count }, (_, index) => `\n  - ${each(index)}`).join("");
  const counted = (count: number) =>
    complaintsAbout(
      `${FULL_ROOM.replace(new RegExp(`^${key}:.*\n(?: .*\n)*`, "mu"), "")}\n${key}:${list(count)}\n`,
    );
  const tooMany = { code: "too-many", figures: { of: "entries", count: most + 1, most } };
  expect(counted(most).filter(({ code }) => code === "too-many")).toEqual([]);
  expect(counted(most + 1)).toMatchObject([tooMany]);
});

test("a room may have 50 models and no more", () => {
  const model = (index: number) =>
    `  model ${index}: { opening: { round: 8" }, flange: { round: 9" }, depth: 4", clamp_reach: 1/2" }\n`;
  const text = (count: number) =>
    FULL_ROOM.replace(
      /^models:\n/mu,
      `models:\n${Array.from({ length: count }, (_, index) => model(index)).join("")}`,
    );
  const own = complaintsAbout(text(0)).length;
  expect(own).toBe(0);
  const before = Number(/^models:\n((?: .*\n)*)/mu.exec(FULL_ROOM)?.[1]?.match(/^ {2}\S/gmu)?.length);
  expect(complaintsAbout(text(50 - before))).toEqual([]);
  expect(complaintsAbout(text(51 - before))).toMatchObject([
    { code: "too-many", figures: { of: "models", count: 51, most: 50 } },
  ]);
});

test("a room may have 10,000 members and no more, and the complaint names how many there would be", () => {
  const text = (spacing: string): string =>
    FULL_ROOM.replace(`width: 13' 4"`, "width: 100 m").replace(
      `member: { width: 1 1/2", depth: 5 1/2" }, from: left, first: 16", spacing: 24"`,
      `member: { width: 5 mm, depth: 5 1/2" }, from: left, first: ${spacing}, spacing: ${HERE}${spacing}`,
    );
  // Between framing faces 100 m apart, the last one half inside the far wall; the other surfaces hold fewer than 60.
  expect(complaintsAbout(text("11 mm").replace(HERE, ""))).toEqual([]);
  const { text: tooMany, ...place } = marked(text("9 mm"));
  expect(complaintsAbout(tooMany)).toMatchObject([
    { code: "too-many", ...place, figures: { of: "members", count: 11111, most: 10000 } },
  ]);
});

test("the limit on members is on all surfaces together", () => {
  const studs = `{ member: { width: 5 mm, depth: 90 mm }, from: left, first: 17 mm, spacing: 17 mm }`;
  const text = FULL_ROOM.replace(`width: 13' 4"`, "width: 100 m").replace(
    /framing:\n( {2}ceiling.*\n)(?: {2}.*\n)*/u,
    `framing:\n  front: ${studs}\n  back: ${studs.replace("left", "right")}\n`,
  );
  expect(complaintsAbout(text)).toMatchObject([
    { code: "too-many", ...placeOf("framing:\n".trim()), figures: { of: "members" } },
  ]);
});

describe("cable and listening", () => {
  const codes = (from: string, to: string) => complaintsAbout(changed(from, to)).map(inShort);

  test("a cross-section that no standard has, a surface that is not there, a temperature without its scale", () => {
    expect(codes("sizes: [2.5 mm2]", "sizes: [3 mm2]")).toMatchObject([{ code: "unknown-word" }]);
    expect(codes("avoid: [{ on: ceiling", "avoid: [{ on: celing")).toMatchObject([{ code: "unknown-name" }]);
    expect(codes("temperature: 25 C", "temperature: 25")).toMatchObject([{ code: "no-unit" }]);
    expect(codes("temperature: 68 F", "temperature: 300 °F")).toMatchObject([{ code: "out-of-limits" }]);
  });
});
