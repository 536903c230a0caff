import { describe, expect, test } from "vitest";
import { answerRoom } from "../../src/job.js";
import { complaintsJson, jobJson } from "../../src/job-json.js";
import { readRoom } from "../../src/room/read.js";
import { resolveRoom } from "../../src/room/resolve.js";
import { parseLength } from "../../src/units/length.js";
import { type Parts, readParts } from "../rooms/build.js";
import { job } from "../rooms/job.js";

/** A room file as a person writes it: 4 x 6 m on framing faces, seat in the middle, ear at 1.2 m. */
const FILE = `baymark: 1
job: { name: Small room }
units: metric
room: { width: 4 m, length: 6 m, height: 2.6 m, measured_to: framing }
board: { ceiling: 12.5 mm, walls: 12.5 mm }
framing:
  ceiling: { run: left-right, member: { width: 45 mm, depth: 220 mm }, from: front, at: [600 mm, 1200 mm, 1800 mm, 6 m] }
models:
  tilted:
    opening: { round: 200 mm }
    flange: { round: 230 mm }
    depth: 90 mm
    clamp_reach: 12 mm
    baffle_tilt: 20 deg
seats:
  - { name: middle, at: { left: 2 m, front: 3 m }, ear: 1.2 m, reference: true }
  - { name: side, at: { left: 1 m, front: 3 m }, ear: 1.2 m }
speakers:
  - { id: TL, channel: U+045, model: tilted, on: ceiling, at: { left: 1 m, front: 1.5 m } }
  - { id: TR, channel: U-045, model: tilted, on: ceiling, at: { right: 1 m, front: 1150 mm } }
  - { id: TB, channel: LFE1, model: tilted, on: ceiling, at: best }
`;

function answered(text: string) {
  const read = readRoom(text, "small.yaml", { hasGlyph: () => true });
  if (!read.ok) throw new Error(JSON.stringify(read.complaints));
  const resolved = resolveRoom(read.file);
  if (!resolved.ok) throw new Error(JSON.stringify(resolved.problems));
  return answerRoom({
    file: "small.yaml",
    fingerprint: read.fingerprint,
    room: resolved.room,
    locate: read.locate,
  });
}

const json = jobJson(answered(FILE));

test("has the keys of the format and nothing unsaid", () => {
  expect(Object.keys(json)).toEqual([
    "baymark",
    "file",
    "fingerprint",
    "speakers",
    "areas",
    "cabling",
    "findings",
    "listening",
    "seats",
  ]);
  expect(json).toMatchObject({ baymark: 1, file: "small.yaml" });
  expect(json.fingerprint).toMatch(/^[0-9a-f]{64}$/u);
  for (const speaker of json.speakers) {
    expect(Object.keys(speaker)).toEqual([
      "id",
      "channel",
      "area",
      "model",
      "surface",
      "placed",
      "position",
      "on_surface",
      "gap",
      "direction",
      "window",
      "aim",
      "seats",
      "listening",
      "cable",
      "opening",
      "flange",
      "coverage",
    ]);
  }
  // Whatever is infinite or not a number would be lost on the way.
  expect(JSON.parse(JSON.stringify(json))).toEqual(json);
});

test("a loudspeaker by hand: where it stands, how far, which way it is turned", () => {
  // 1 m from the left and 1.5 m from the front of 6 m; the board is under 2.6 m. From the ear: 1000 left, 1500
  // forward, 1387.5 up.
  const across = Math.hypot(1000, 1500);
  const elevation = (Math.atan2(1387.5, across) * 180) / Math.PI;
  const [speaker] = json.speakers;
  expect(speaker).toMatchObject({
    id: "TL",
    channel: "U+045",
    model: "tilted",
    surface: "ceiling",
    placed: "given",
    position: { x: 1000, y: 4500, z: 2587.5 },
    // u runs to the left, from the right wall.
    on_surface: { u: 3000, v: 4500 },
    // 300 to the joists at 1200 and 1800, less 22.5 and 100.
    gap: { mm: expect.closeTo(177.5, 9), member: expect.stringMatching(/^ceiling [23]$/u) },
    direction: {
      azimuth: expect.closeTo((Math.atan2(1000, 1500) * 180) / Math.PI, 9),
      elevation: expect.closeTo(elevation, 9),
      distance: expect.closeTo(Math.hypot(across, 1387.5), 9),
    },
    window: null,
    aim: {
      target: "middle",
      arrow: expect.closeTo(180 - (Math.atan2(1000, 1500) * 180) / Math.PI, 9),
      off_axis: expect.closeTo(90 - elevation - 20, 9),
      // Into the very corner.
      sight: { mm: expect.closeTo(0, 6) },
    },
    cable: null,
  });
});

test("every seat is told apart, with the level against the reference seat and the delay to the furthest", () => {
  // TR, at 1000 right and 1850 forward of the middle seat, is the furthest from both seats; sound goes 343.2 m/s.
  const toMiddle = Math.hypot(1000, 1500, 1387.5);
  const toSide = Math.hypot(1500, 1387.5);
  const delay = (furthest: number, own: number) => (furthest - own) / 343.2;
  const atMiddle = delay(Math.hypot(1000, 1850, 1387.5), toMiddle);
  const [speaker] = json.speakers;
  expect(speaker?.seats).toMatchObject([
    {
      name: "middle",
      inside: null,
      off_axis: speaker?.aim?.off_axis,
      level: 0,
      delay: expect.closeTo(atMiddle, 9),
      samples: Math.round(atMiddle * 48),
    },
    // Straight in front of the seat at the side; no coverage is stated, so distance alone tells the level.
    {
      name: "side",
      azimuth: 0,
      distance: expect.closeTo(toSide, 9),
      level: expect.closeTo(20 * Math.log10(toMiddle / toSide), 9),
      delay: expect.closeTo(delay(Math.hypot(2000, 1850, 1387.5), toSide), 9),
    },
  ]);
  expect(speaker?.listening).toEqual({
    power: null,
    headroom: null,
    by_coverage: false,
    stated: null,
    at_voltage: null,
    trim: null,
  });
});

test("a loudspeaker without a position is there all the same", () => {
  expect(json.speakers[2]).toMatchObject({
    id: "TB",
    placed: "best",
    position: null,
    on_surface: null,
    gap: null,
    direction: null,
    aim: null,
    seats: [],
  });
});

test("findings say where they stand in the file, by line, and how to mend them in its own words", () => {
  expect(json.findings).toMatchObject([
    {
      code: "opening-cuts-member",
      level: "error",
      // 50 from the joist's centre: 22.5 + 100 - 50.
      message: 'TR: the opening cuts joist 2 by 72.5 mm (2 7/8")',
      line: 20,
      column: 5,
      path: ["speakers", 1],
      speaker: "TR",
      fix: { at: { right: "1000 mm", front: "1059 mm" }, u: 1000, v: 4941 },
    },
    { code: "not-placed-yet", level: "warning", line: 21, path: ["speakers", 2, "at"], fix: null },
  ]);
  for (const text of Object.values(json.findings[0]?.fix?.at ?? {})) expect(parseLength(text).ok).toBe(true);
});

describe("the fix typed into the file", () => {
  const cut = (units: string, at: Parts): Parts => ({ units, speakers: [{ id: "S", at }] });

  test.each([
    { units: "metric", at: { left: "2 m", front: "1150 mm" } },
    { units: "imperial", at: { right: "5' 3 7/8\"", back: "13' 9\"" } },
  ])("clears the finding, in $units", ({ units, at }) => {
    const [finding] = jobJson(job(cut(units, at))).findings;
    expect(finding?.level).toBe("error");
    const fixed = finding?.fix?.at ?? {};
    expect(Object.keys(fixed)).toEqual(Object.keys(at));
    expect(job(cut(units, fixed)).findings).toEqual([]);
  });

  test("on a wall it says up or down, as the file does", () => {
    const low: Parts = {
      speakers: [{ id: "W", model: "upright", on: "front", at: { left: "900 mm", up: "150 mm" } }],
    };
    const fixed = jobJson(job(low)).findings[0]?.fix?.at ?? {};
    expect(fixed).toEqual({ left: "900 mm", up: "207 mm" });
    const mended = { speakers: [{ id: "W", model: "upright", on: "front", at: fixed }] };
    expect(job(mended).findings).toEqual([]);
  });
});

test("structure that does not repeat says what it is", () => {
  const high = job({ speakers: [{ id: "W", on: "front", at: { left: "900 mm", up: "2380 mm" } }] });
  expect(jobJson(high).speakers[0]?.gap?.member).toBe("front top-plate 2");
});

describe("a file that cannot be used", () => {
  test("says every complaint as an error in the same form", () => {
    const read = readParts({ units: "cubits", checks: { clear: "7" } });
    if (read.ok) throw new Error("read");
    const { speakers, findings } = complaintsJson("bad.yaml", read.complaints);
    expect(speakers).toEqual([]);
    expect(findings).toHaveLength(2);
    for (const finding of findings) {
      expect(finding.level).toBe("error");
      expect(finding.line).toBeGreaterThan(0);
      expect(finding.message).not.toBe("");
    }
  });

  test("or why it was not even opened", () => {
    expect(complaintsJson("none.yaml", [], "none.yaml: there is no such file")).toEqual({
      baymark: 1,
      file: "none.yaml",
      fingerprint: null,
      areas: [],
      cabling: null,
      listening: null,
      seats: [],
      speakers: [],
      findings: [
        {
          code: "unreadable-file",
          level: "error",
          message: "none.yaml: there is no such file",
          line: 1,
          column: 1,
          path: [],
          speaker: null,
          fix: null,
          accepted: null,
        },
      ],
    });
  });
});

test("what is heard: seats, what levels are for, coverage on the ear plane, trims", () => {
  const heard = jobJson(
    job({
      listening: { target: "75 dB", headroom: "10 dB", temperature: "25 C" },
      models: {
        round: { coverage: "90 deg", sensitivity: "88 dB", impedance: "8 ohm", power: "60 W" },
        upright: { sensitivity: "88 dB", impedance: "8 ohm" },
      },
      speakers: [
        { id: "OVER", channel: "T+000", at: { left: "2 m", front: "2.7 m" } },
        { id: "WALL", channel: "M+030", model: "upright", on: "front", at: { left: "2 m", up: "1.2 m" } },
      ],
    }),
  );
  expect(heard.listening).toEqual({ target: 75, headroom: 10, temperature: 25 });
  expect(heard.seats).toEqual([{ name: "middle", reference: true, ear: { x: 2000, y: 3000, z: 1200 } }]);
  const [over, wall] = heard.speakers;
  // 1387.5 mm over the ear, straight down: a circle as wide as twice that at 90 degrees.
  expect(over?.coverage).toEqual({
    angle: 90,
    axis: { x: expect.closeTo(0, 12), y: expect.closeTo(0, 12), z: expect.closeTo(-1, 12) },
    ear_plane: {
      kind: "closed",
      long: expect.closeTo(2775, 6),
      short: expect.closeTo(2775, 6),
      foot: { x: expect.closeTo(2000, 6), y: expect.closeTo(3300, 6) },
    },
  });
  expect(wall?.coverage).toBeNull();
  // 88 dB at 1 m; the wall's is 3 m off less its board, 2987.5 mm, and by distance alone.
  const far = 88 - 20 * Math.log10(2.9875);
  const near =
    88 -
    20 * Math.log10(Math.hypot(300, 1387.5) / 1000) -
    6 * ((Math.atan2(300, 1387.5) * 180) / Math.PI / 45) ** 2;
  expect(wall?.listening).toMatchObject({ stated: null, at_voltage: expect.closeTo(far, 6), trim: 0 });
  expect(over?.listening).toMatchObject({
    stated: 60,
    at_voltage: expect.closeTo(near, 6),
    trim: expect.closeTo(far - near, 6),
  });
  expect(over?.opening).toMatchObject({ shape: "round" });
  expect(wall?.flange).toMatchObject({ shape: "rectangle" });
});
