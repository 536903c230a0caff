import { expect, test } from "vitest";
import { type Parts, room } from "../rooms/build.js";

/* The plain room's ceiling is 4 m by 6 m: long joints are counted over 6 m, butt joints over 4 m. */

const sheets = (widthMm: number, lengthMm: number | null): Parts => ({
  board: {
    sheets: {
      ceiling: {
        ...{ from: "front", first: `${widthMm} mm`, width: `${widthMm} mm` },
        ...(lengthMm === null
          ? {}
          : { length: `${lengthMm} mm`, ends: { from: "left", first: `${lengthMm} mm` } }),
      },
    },
  },
});

test("joints of the board are counted before they are made: a slip of typing makes no millions", () => {
  expect(room(sheets(5, null)).surfaces.flatMap(({ joints }) => joints).length).toBeGreaterThan(1000);
  // Twelve hundred rows of eight sheets, and of eight hundred.
  expect(room(sheets(5, 500)).surfaces.flatMap(({ joints }) => joints).length).toBeGreaterThan(8000);
  expect(() => room(sheets(5, 5))).toThrow(/"too-many","path":\["board","sheets","ceiling","length"\]/u);
});
