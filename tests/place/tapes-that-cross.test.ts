import { describe, expect, test } from "vitest";
import { outer } from "../../src/geometry/surface-point.js";
import { fillAreas } from "../../src/place/cover/fill.js";
import { placeAll } from "../../src/place/place.js";
import { tapeLine, tapeMm } from "../../src/place/tapes.js";
import type { Room, Tape } from "../../src/room/room.js";
import { findingText } from "../../src/words/finding-text.js";
import { measureIn } from "../../src/words/measure.js";
import { wordsIn } from "../../src/words/words.js";
import { type Parts, room } from "../rooms/build.js";
import { findingsOf } from "../rooms/job.js";
import { SLOPE_AT_ONE_WALL, TAPERED } from "../rooms/not-boxes.js";

/*
 * Two tapes fix a place only where they cross: the nearest wall is left aside where no other goes with it.
 */

const AREA: Parts = { name: "hall", model: "round", ear: "1.2 m", spacing: "2 m" };
const MODELS: Parts = {
  round: {
    ...{ opening: { round: "200 mm" }, flange: { round: "230 mm" } },
    ...{ depth: "90 mm", clamp_reach: "12 mm", coverage: "90 deg" },
  },
};
/** Sine of 30 degrees: tapes that meet at less fix a point badly. Common practice, no source. */
const LEAST_CROSSING = 0.5;

describe("in a long room that tapers at both ends no wall crosses those along it", () => {
  const one = room({
    ...TAPERED,
    models: MODELS,
    areas: [{ ...AREA, on: "ceiling" }],
    speakers: [{ id: "BEST", channel: "U+045", model: "round", at: "best" }],
  });
  const [ceiling] = one.surfaces.filter(({ name }) => name === "ceiling");

  function expectFixed(at: { u: number; v: number }, tapes: readonly [Tape, Tape]): void {
    if (ceiling === undefined) throw new Error("no ceiling");
    const [first, second] = tapes.map(({ from }) => tapeLine(one, ceiling, from));
    if (first === undefined || second === undefined) throw new Error("no tapes");
    expect(Math.abs(outer(first.direction, second.direction))).toBeGreaterThanOrEqual(LEAST_CROSSING);
    for (const [line, { mm }] of [
      [first, tapes[0]],
      [second, tapes[1]],
    ] as const)
      expect(tapeMm(line, at)).toBeCloseTo(mm, 6);
  }

  test("a best place is taped from two end walls", () => {
    const [placed] = placeAll(one).placed;
    if (placed === undefined) throw new Error("no place");
    expectFixed(placed.mounted.centre, placed.tapes);
  });

  test("and so is all that fills an area", () => {
    const [filling] = fillAreas(one, []);
    if (filling?.kind !== "filled") throw new Error("not filled");
    expect(filling.places.length).toBeGreaterThan(5);
    for (const { mounted, tapes } of filling.places) expectFixed(mounted.centre, tapes);
  });
});

describe("on a slope that meets one wall all tapes run one way", () => {
  const parts: Parts = {
    ...SLOPE_AT_ONE_WALL,
    models: MODELS,
    areas: [{ ...AREA, on: "slope" }],
    speakers: [{ id: "BEST", channel: "U+045", model: "round", on: "slope", at: "best" }],
  };
  const one: Room = room(parts);

  test("no area on it is filled, and it says why", () => {
    expect(fillAreas(one, [])).toMatchObject([{ kind: "unfilled", because: "no-tapes" }]);
    expect(wordsIn(["en"]).areas.unfilled["no-tapes"]).toContain("let its outline reach one more");
  });

  test("no best place on it is looked for, and it says why", () => {
    expect(placeAll(one).unplaced).toMatchObject([{ because: "no-tapes" }]);
    const told = findingsOf(parts).filter(({ code }) => code === "not-placed-yet");
    for (const language of ["en", "es"] as const) {
      const texts = told.map((finding) => findingText(wordsIn([language]), measureIn("metric"), finding));
      expect(texts).toEqual([expect.stringMatching(/slope/u)]);
    }
    const english = told.map((finding) => findingText(wordsIn(["en"]), measureIn("metric"), finding));
    expect(english).toEqual([expect.stringContaining("let its outline reach one more")]);
  });
});
