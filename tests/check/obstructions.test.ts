import { expect, test } from "vitest";
import type { Parts } from "../rooms/build.js";
import { codesOf, findingsOf } from "../rooms/job.js";

/*
 * Lamps, ducts and pipes in the way, in the plain room: the opening of 200 stands in the middle of the second bay, is 90
 * deep behind 12.5 of board, and its clamps reach 12, with 6.35 asked for beyond.
 */
const one = (more: Parts = {}): Parts => ({
  ...more,
  speakers: [{ id: "S", at: { left: "2 m", front: "900 mm" } }],
});

// The disc of 100 is right of the opening: its centre 150 + d further makes the distance d.
const lamp = (distanceMm: number, more: Parts = {}): Parts =>
  one({
    obstructions: [
      {
        name: "lamp",
        on: "ceiling",
        at: { left: `${2150 + distanceMm} mm`, front: "900 mm" },
        round: "100 mm",
        ...more,
      },
    ],
  });

test.each([
  { distanceMm: -30, level: "error" },
  { distanceMm: 11.9, level: "error" },
  // The clamps swing, and only the gap asked for beyond them is missing.
  { distanceMm: 12, level: "warning" },
  { distanceMm: 18.3, level: "warning" },
])("$distanceMm away: $level", ({ distanceMm, level }) => {
  expect(findingsOf(lamp(distanceMm))).toMatchObject([
    {
      code: "opening-meets-obstruction",
      level,
      figures: {
        obstruction: "lamp",
        distanceMm: expect.closeTo(distanceMm, 6),
        wantedMm: expect.closeTo(18.35, 9),
        behindMm: null,
      },
    },
  ]);
});

test("its own keep counts where it is larger, and nearer than that is an error", () => {
  expect(codesOf(lamp(18.35))).toEqual([]);
  expect(codesOf(lamp(50, { keep: "50 mm" }))).toEqual([]);
  expect(findingsOf(lamp(49, { keep: "50 mm" }))).toMatchObject([
    { level: "error", figures: { wantedMm: 50 } },
  ]);
});

test("behind the framing it is met only by what is deeper than that and the board", () => {
  // 90 deep: 77.5 behind and 12.5 of board.
  expect(codesOf(lamp(-30, { behind: "77.5 mm" }))).toEqual([]);
  expect(findingsOf(lamp(-30, { behind: "77 mm" }))).toMatchObject([
    { code: "opening-meets-obstruction", figures: { behindMm: 77 } },
  ]);
});

test("what stands in the board alone is met by the shallowest", () => {
  // 10 deep in 12.5 of board: what is told without `behind` begins at the finished face.
  const shallow: Parts = { models: { round: { depth: "10 mm" } } };
  expect(codesOf({ ...lamp(-30), ...shallow })).toEqual(["opening-meets-obstruction"]);
  expect(codesOf({ ...lamp(-30, { behind: "0 mm" }), ...shallow })).toEqual([]);
});

/** Hooks of 20 across to the right of the opening, so far from its edge each. */
const hooks = (distancesMm: readonly number[]): Parts =>
  one({
    obstructions: distancesMm.map((mm, index) => {
      const turn = ((index - 5) * Math.PI) / 12;
      const left = 2000 + (110 + mm) * Math.cos(turn);
      const front = 900 + (110 + mm) * Math.sin(turn);
      return {
        name: `hook ${index}`,
        on: "ceiling",
        at: { left: `${left} mm`, front: `${front} mm` },
        round: "20 mm",
      };
    }),
  });
const named = (found: ReturnType<typeof findingsOf>): readonly string[] =>
  found.flatMap(({ figures }) => ("obstruction" in figures ? [figures.obstruction] : []));

test("of more than eight the nearest eight, in the file's order, and of the rest how many, how many of them errors", () => {
  // Clamps reach 12 and 18.35 is asked for: of ten, one at 15 and one at 11 are the furthest.
  const found = findingsOf(hooks([15, 4, 3, 11, 2, 1, 5, 6, 7, 8]));
  const met = found.filter(({ code }) => code === "opening-meets-obstruction");
  expect(named(met)).toEqual([1, 2, 4, 5, 6, 7, 8, 9].map((index) => `hook ${index}`));
  expect(met).toHaveLength(9);
  expect(met[8]).toMatchObject({ level: "error", figures: { others: 2, errors: 1 }, fix: null });
});

test("where the rest are only nearer than asked for, that is a warning; eight are told one by one", () => {
  const met = findingsOf(hooks([15, 4, 3, 14, 2, 1, 5, 6, 7, 8]));
  expect(met[8]).toMatchObject({ level: "warning", figures: { others: 2, errors: 0 } });
  expect(findingsOf(hooks([15, 4, 3, 11, 2, 1, 5, 6]))).toHaveLength(8);
});

test("the fix stays clear of it", () => {
  // 50 of lamp + 100 of opening + 18.35 = 168.35 from the lamp's centre at 2120: 1951.65, so 1951.
  expect(findingsOf(lamp(-30))[0]?.fix?.at).toEqual({ left: 1951, front: 900 });
});
