import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { roomText } from "../rooms/build.js";
import { bareHall } from "../rooms/halls.js";
import { EXAMPLES, workFolder } from "./in-folder.js";

const HALL = "hall.yaml";
const SIZE = { width: 8025, length: 6025 };

/** A work folder with a hall in it that is to be filled with twelve. */
function hallToFill(text = roomText(bareHall(SIZE))) {
  const { folder, type } = workFolder();
  const file = join(folder, HALL);
  writeFileSync(file, text);
  return {
    type,
    held: (): string => readFileSync(file, "utf8"),
    write: (said: string) => writeFileSync(file, said),
  };
}

describe("place fills an area", () => {
  test("prints pattern, spacing, tapes, moves, gaps and level, and writes nothing", async () => {
    const { type, held } = hallToFill();
    const before = held();
    const { code, out } = await type("place", HALL);
    expect(code).toBe(0);
    expect(held()).toBe(before);
    expect(out).toContain("hall  12 loudspeakers straight on the ceiling");
    expect(out).toContain("square pattern, 3 rows of 4; rows run left to right");
    expect(out).toContain("circles of 3575 mm");
    expect(out).toMatch(/No gap between them: at most 2528 mm/u);
    expect(out).toMatch(/Got: 2000 mm .* along a row, 2000 mm/u);
    expect(out.match(/^ {2}S\d+ +left: \d+ mm +front: \d+ mm +in place/gmu)).toHaveLength(12);
    expect(out).toMatch(
      /Level at the ears: from -[\d.]+ dB to \+[\d.]+ dB of its mean; standard deviation [\d.]+ dB/u,
    );
    expect(out).toMatch(/\d+ % of the area lies within 3 dB of the mean/u);
    expect(out).toContain("MODEL");
  });

  test("in Spanish", async () => {
    const { out } = await hallToFill().type("place", HALL, "--language", "es");
    expect(out).toContain("trazo cuadrado, 3 filas de 4; las filas van de izquierda a derecha");
    expect(out).toMatch(/Nivel en los oídos/u);
  });

  test("until then check says that it is not filled", async () => {
    const { out, code } = await hallToFill().type("check", HALL);
    expect(out).toContain("[area-not-placed]");
    expect(code).toBe(0);
  });

  test("as JSON, the same figures", async () => {
    const { type } = hallToFill();
    const { areas, speakers } = JSON.parse((await type("place", HALL, "--json")).out);
    expect(speakers).toEqual([]);
    expect(areas).toHaveLength(1);
    const [{ filling, ...area }] = areas;
    expect(area).toMatchObject({
      name: "hall",
      surface: "ceiling",
      model: "straight",
      pattern: "square",
      overlap: "no-gap",
      drop: 1787.5,
      speakers: [],
      level: null,
    });
    expect(area.circle).toBeCloseTo(3575, 6);
    expect(filling).toMatchObject({ kind: "filled", along: "left-right", rows: 3, per_row: 4, nowhere: [] });
    expect(filling.places).toHaveLength(12);
    expect(filling.places[5]).toMatchObject({
      id: "S6",
      at: { left: expect.stringMatching(/^301[23] mm$/u), front: expect.stringMatching(/^301[23] mm$/u) },
    });
    expect(filling.level.deviation).toBeGreaterThan(0);
  });

  test("what cannot be filled ends with 1 and says why", async () => {
    const { type } = hallToFill(roomText(bareHall({ width: 40_000, length: 60_000 }, { spacing: "1 m" })));
    const { out, code } = await type("place", HALL);
    expect(out).toContain("it would take 2400 loudspeakers, and the file has room for 500");
    expect(code).toBe(1);
  });
});

describe("place --write", () => {
  test("adds the loudspeakers, every other byte as it was, and a second time nothing", async () => {
    const { type, held } = hallToFill(`${roomText(bareHall(SIZE))}# ¿fin?\n`);
    const before = held();
    const { code, err } = await type("place", HALL, "--write");
    expect([code, err]).toEqual([0, `wrote 12 positions into ${HALL}; everything else in it is as it was\n`]);
    const after = held();
    const added =
      /\n {2}\{ id: S\d+, area: hall, model: straight, on: ceiling, at: \{ left: \d+ mm, front: \d+ mm \} \},?/gu;
    expect(after.match(added)).toHaveLength(12);
    expect(after.replaceAll(added, "").replace("[\n]", "[]")).toBe(before);
    const again = await type("place", HALL, "--write");
    expect(again.err).toContain("nothing to write");
    expect(again.out).toContain("Filled already");
    expect(held()).toBe(after);
  });

  test("then check has nothing against them, and report tells the level that place did", async () => {
    const { type } = hallToFill();
    const [{ filling }] = JSON.parse((await type("place", HALL, "--json")).out).areas;
    await type("place", HALL, "--write");
    const { findings, areas, speakers } = JSON.parse((await type("report", HALL, "--json")).out);
    expect(findings).toEqual([]);
    expect(areas[0].speakers).toHaveLength(12);
    expect(areas[0].level).toEqual(filling.level);
    expect(speakers[0]).toMatchObject({
      id: "S1",
      area: "hall",
      channel: "hall",
      placed: "given",
      aim: null,
    });
    const { out } = await type("report", HALL);
    expect(out).toContain("How evenly areas are filled");
    expect(out).toContain("12 loudspeakers straight on the ceiling");
  });

  test("beside best places and what stands there already", async () => {
    const parts = bareHall(
      SIZE,
      {},
      {
        speakers: [
          { id: "T", channel: "U+030", model: "round", at: "best" },
          { id: "G", channel: "M+000", model: "round", at: { left: "3 m", front: "3 m" } },
        ],
      },
    );
    const { type, held } = hallToFill(roomText(parts));
    await type("place", HALL, "--write");
    expect(held()).not.toContain("best");
    const { findings, speakers } = JSON.parse((await type("report", HALL, "--json")).out);
    expect(speakers).toHaveLength(14);
    expect(findings).toEqual([]);
  });

  test("taken out of the file the area is filled anew, alike", async () => {
    const { type, held, write } = hallToFill();
    const before = held();
    await type("place", HALL, "--write");
    const after = held();
    write(before);
    await type("place", HALL, "--write");
    expect(held()).toBe(after);
  });
});

test("the example shop stands as `place --write` leaves it", async () => {
  const shop = readFileSync(join(EXAMPLES, "tansy-row-shop.yaml"), "utf8");
  const [, speakers = ""] = /(\nspeakers:\n(?: {2}- .*\n?)+)$/u.exec(shop) ?? [];
  expect(speakers.match(/area: shop-floor/gu)).toHaveLength(28);
  const { type, held } = hallToFill(`${shop.slice(0, -speakers.length)}\n`);
  expect((await type("check", HALL)).out).toContain("[area-not-placed]");
  await type("place", HALL, "--write");
  expect(held()).toBe(shop);
  expect((await type("check", HALL)).out).toContain("28 openings, no findings");
});
