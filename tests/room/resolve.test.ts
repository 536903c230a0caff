import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import { readRoom } from "../../src/room/read.js";
import { surfaceNamed } from "../../src/room/room.js";
import { room, roomOf, speakerNamed } from "../rooms/build.js";
import { FULL_ROOM } from "./full-room.js";

/** NIST SP 811: 1 in = 25.4 mm; as whole tenths, so that the double is the nearest one. */
const inch = (count: number): number => (count * 254) / 10;
/** Between framing faces: 13' 4" x 18' 8" x 8' 6". */
const [WIDTH, LENGTH, HEIGHT] = [inch(160), inch(224), inch(102)];

const full = roomOf(FULL_ROOM);

describe("a room that uses every key", () => {
  test("job, stage, call and print, as they were written", () => {
    expect(full.job).toEqual({
      name: "Willow Bend snug",
      number: "007",
      revision: "1.10",
      date: "2026-03-04",
    });
    expect(full).toMatchObject({
      units: "imperial",
      measuredTo: "framing",
      stage: "both",
      floorBuildUpMm: inch(0.75),
      call: "Office, 555-0117",
      layout: "4+7+0",
      print: { paper: "letter", languages: ["en", "es"] },
    });
  });

  test("cable, checks and what is accepted", () => {
    expect(full.cable).toEqual({
      lossDb: 0.5,
      loopMm: inch(36),
      sparePercent: 5,
      gauges: [16, 14, 12],
      outsideDiameterMm: 7,
      rackLoopMm: inch(72),
      areasMm2: [2.5],
      wiring: "single",
      temperatureC: 25,
      spoolsMm: [inch(6000)],
      // The ceiling's u runs to the left from the right wall, its v to the front from the back wall.
      avoid: [
        {
          surface: "ceiling",
          area: {
            kind: "rectangle",
            min: { u: expect.closeTo(inch(160 - 36), 6), v: expect.closeTo(inch(224 - 60), 6) },
            max: { u: expect.closeTo(inch(160 - 12), 6), v: expect.closeTo(inch(224 - 24), 6) },
          },
        },
      ],
    });
    // 68 °F are 20 °C.
    expect(full.listening).toEqual({
      temperatureC: expect.closeTo(20, 9),
      targetDb: 82,
      headroomDb: 18,
    });
    expect(full.checks).toEqual({ clearMm: inch(0.375), toleranceDeg: 4, lineDeg: 1, jointDeg: 3 });
    expect(full.accept).toEqual([
      {
        code: "opening-near-member",
        speaker: "SL",
        why: "block removed by the carpenter, seen 3-02",
        path: ["accept", 0],
      },
    ]);
    expect(full.equipment?.at).toEqual({ x: WIDTH, y: inch(24), z: inch(24) });
  });

  test("labels by their geometry", () => {
    expect(full.labels).toEqual({
      pageWidthMm: 210,
      pageHeightMm: 297,
      labelWidthMm: 48,
      labelHeightMm: 20,
      columns: 4,
      rows: 13,
      leftMm: 8,
      topMm: 15,
      pitchXMm: 49,
      pitchYMm: 20.5,
      kind: "wrap",
      printedHeightMm: 12,
      used: 5,
    });
  });

  test("what is known of a surface, and what is not", () => {
    expect(surfaceNamed(full, "ceiling")).toMatchObject({
      rated: true,
      enclosure: true,
      insulation: "mineral wool",
      secondSupport: false,
      boardMm: inch(0.625),
    });
    expect(surfaceNamed(full, "left")).toMatchObject({
      rated: false,
      enclosure: false,
      insulation: null,
      secondSupport: false,
      boardMm: inch(0.5),
    });
    expect(surfaceNamed(full, "back").framing).toEqual({ kind: "unknown" });
  });

  test("obstructions on their surfaces, from corners in any order", () => {
    const [duct, light] = surfaceNamed(full, "ceiling").obstructions;
    // From the left wall 26 to 40 in, from the front wall 156 in to the back wall; u runs to the left from the right.
    expect(duct).toMatchObject({
      name: "return duct",
      keepMm: inch(2),
      behindMm: null,
      path: ["obstructions", 0],
    });
    if (duct?.area.kind !== "rectangle") throw new Error("a rectangle wanted");
    expect(duct.area.min.u).toBeCloseTo(inch(120), 9);
    expect(duct.area.max.u).toBeCloseTo(inch(134), 9);
    expect(duct.area.min.v).toBeCloseTo(0, 9);
    expect(duct.area.max.v).toBeCloseTo(inch(68), 9);
    if (light?.area.kind !== "round") throw new Error("a round one wanted");
    expect(light).toMatchObject({ keepMm: inch(6), behindMm: inch(1) });
    expect(light.area.diameterMm).toBeCloseTo(inch(6), 9);
    expect(light.area.centre.u).toBeCloseTo(inch(80), 9);
    expect(light.area.centre.v).toBeCloseTo(inch(152), 9);
    expect(surfaceNamed(full, "front").obstructions).toMatchObject([{ name: "outlet", keepMm: 0 }]);
  });

  test("models, with null for what no data sheet gave", () => {
    const { model } = speakerNamed(full, "TFL");
    expect(model).toMatchObject({
      name: "overhead-6",
      opening: { kind: "round", diameterMm: inch(8.25) },
      baffleTiltDeg: 20,
      coverageDeg: 100,
      sensitivityDb: 88,
      impedanceOhm: 8,
      minimumImpedanceOhm: 6.1,
      powerW: 120,
      terminal: "spring clip",
      conductors: [
        { colour: "red", terminal: "+", sign: "+" },
        { colour: "black", terminal: "-", sign: "-" },
      ],
    });
    // NIST SP 811: 1 lb = 0.453 592 37 kg.
    expect(model.weightKg).toBeCloseTo(7 * 0.45359237, 12);
    expect(model.stripMm).toBeCloseTo(inch(0.375), 12);
    expect(speakerNamed(full, "FL").model).toMatchObject({
      baffleTiltDeg: 0,
      boardRangeMm: null,
      coverageDeg: null,
      weightKg: null,
      minimumImpedanceOhm: null,
      terminal: null,
      conductors: [],
      stripMm: null,
    });
  });

  test("seats, and what loudspeakers are turned toward", () => {
    // 42 in over the floor as laid, which is 3/4 in over the floor as it stands.
    const middle = { x: inch(80), y: LENGTH - inch(108), z: inch(42.75) };
    expect(full.reference.name).toBe("middle");
    for (const axis of ["x", "y", "z"] as const)
      expect(full.reference.ear[axis]).toBeCloseTo(middle[axis], 9);
    expect(speakerNamed(full, "FL").target).toEqual({ kind: "seat", name: "middle", at: full.reference.ear });
    expect(speakerNamed(full, "FR").target).toMatchObject({ kind: "seat", name: "left" });
    expect(speakerNamed(full, "SL").target).toEqual({ kind: "none" });
    for (const id of ["SR", "TBL"]) {
      const { target } = speakerNamed(full, id);
      if (target.kind !== "point") throw new Error("a point wanted");
      expect(target.at.x).toBeCloseTo(inch(60), 9);
      expect(target.at.y).toBeCloseTo(LENGTH - inch(108), 9);
      expect(target.at.z).toBeCloseTo(inch(40), 9);
    }
  });

  test("a quarter turn lays a rectangle down", () => {
    const { opening, flange, turnDeg } = speakerNamed(full, "FR");
    expect(turnDeg).toBe(90);
    expect(opening).toEqual({ kind: "rectangle", widthMm: inch(12), heightMm: inch(7.875) });
    expect(flange).toEqual({ kind: "rectangle", widthMm: inch(13), heightMm: inch(8.875) });
    expect(speakerNamed(full, "FL").opening).toMatchObject({ widthMm: inch(7.875) });
  });

  test("cable and amplifier where they are given, null where not", () => {
    expect(speakerNamed(full, "FL")).toMatchObject({
      amplifierChannel: "A1",
      cable: {
        gauge: 14,
        conductors: 4,
        lengthMm: inch(384),
        areaMm2: null,
        wiring: "doubled",
        via: [
          {
            surface: "ceiling",
            at: { u: expect.closeTo(inch(160 - 72), 6), v: expect.closeTo(inch(224 - 24), 6) },
          },
        ],
      },
      path: ["speakers", 0],
    });
    expect(speakerNamed(full, "FR")).toMatchObject({
      amplifierChannel: null,
      cable: { gauge: null, conductors: null, lengthMm: null },
    });
  });

  test("the walls' tops are under the ceiling's framing", () => {
    expect(surfaceNamed(full, "ceiling").frame.origin.z).toBeCloseTo(HEIGHT, 9);
    const tops = surfaceNamed(full, "front").edges.filter(({ along }) => along === "ceiling");
    for (const { from, to, boardMm } of tops) {
      expect(from.v).toBeCloseTo(HEIGHT, 9);
      expect(to.v).toBeCloseTo(HEIGHT, 9);
      expect(boardMm).toBeCloseTo(inch(0.625), 12);
    }
  });
});

describe("what is left out", () => {
  test("is what is usual, or null", () => {
    const plain = room({ framing: null });
    expect(plain).toMatchObject({
      job: { number: null, revision: "A", date: null },
      stage: null,
      floorBuildUpMm: 0,
      layout: null,
      equipment: null,
      cable: { lossDb: null, loopMm: null, sparePercent: null, gauges: [], outsideDiameterMm: null },
      checks: { clearMm: 6.35, toleranceDeg: 5 },
      accept: [],
      labels: null,
      call: null,
      print: { paper: null, languages: ["en"] },
      speakers: [],
    });
  });

  test("one seat alone is the reference without saying so, whatever it is called", () => {
    for (const name of ["chair", "reference"]) {
      const seats = [{ name, at: { left: "1 m", back: "1 m" }, ear: "1 m" }];
      expect(room({ seats }).reference.name).toBe(name);
    }
  });

  test("label stock by name, in either case", () => {
    for (const stock of ["letter-30", "LETTER-30"]) {
      expect(room({ labels: { stock } }).labels).toMatchObject({
        columns: 3,
        rows: 10,
        kind: "flat",
        used: 0,
      });
    }
  });

  test("a layout by its letter is the system of that name", () => {
    for (const layout of ["D", "d", "4+5+0"]) expect(room({ layout }).layout).toBe("4+5+0");
  });
});

describe("the fingerprint", () => {
  test("is SHA-256 of the bytes, of a room and of a file that is none", () => {
    for (const text of [FULL_ROOM, "no room"]) {
      const { fingerprint } = readRoom(text, "test.yaml", { hasGlyph: () => true });
      expect(fingerprint).toBe(createHash("sha256").update(text).digest("hex"));
    }
  });
});

describe("places in the file", () => {
  const read = readRoom(FULL_ROOM, "test.yaml", { hasGlyph: () => true });
  if (!read.ok) throw new Error("the full room is read");
  const lines = FULL_ROOM.split("\n");
  const at = (text: string) => {
    const index = lines.findIndex((line) => line.includes(text));
    return { line: index + 1, column: (lines[index] ?? "").indexOf(text) + 1 };
  };

  test("of values and of keys", () => {
    expect(read.locate(["speakers", 1])).toEqual(at("{ id: FR"));
    expect(read.locate(["speakers", 2, "at"])).toEqual(at("best, mirror: TFR"));
    expect(read.locate(["speakers", 2, "at"], "key")).toEqual(at("at: best, mirror: TFR"));
    expect(read.locate(["room", "height"])).toEqual(at(`8' 6"`));
    expect(read.locate(["framing", "ceiling", "first"])).toEqual(at(`15 1/4", spacing`));
    expect(read.locate(["room"])).toEqual(at("width: 13'"));
  });

  test("of what is not there: the nearest thing above it", () => {
    expect(read.locate(["speakers", 0, "turn"])).toEqual(at("{ id: FL"));
    expect(read.locate(["framing", "back"])).toEqual(at("ceiling: { run"));
    expect(read.locate(["nothing", 3])).toEqual({ line: 1, column: 1 });
  });
});
