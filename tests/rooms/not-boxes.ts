import type { Parts } from "./build.js";

/*
 * Rooms that are no boxes, for tests; millimetres that are easy to reckon with in the head.
 */

const mm = (figures: readonly number[]): readonly string[] => figures.map((figure) => `${figure} mm`);
const JOIST = { width: "45 mm", depth: "220 mm" };
const corners = (points: readonly (readonly [number, number])[]) => points.map(mm);

/**
 * An L, seen from above with the front wall up: 4 m wide in front, 7 m behind, the step 6 m from the front wall; 9 m
 * long. World: x from the left wall, y from the back wall, so the front wall is at y = 9000.
 */
export const L_ROOM: Parts = {
  room: {
    width: null,
    length: null,
    outline: corners([
      [0, 0],
      [4000, 0],
      [4000, 6000],
      [7000, 6000],
      [7000, 9000],
      [0, 9000],
    ]),
    walls: ["front", "right", "step", "end", "back", "left"],
  },
  framing: null,
};

/** The same with a soffit of 800 mm along all of the left wall, its framing 300 mm lower. */
export const L_WITH_SOFFIT: Parts = {
  ...L_ROOM,
  room: {
    ...(L_ROOM.room as Parts),
    ceilings: [
      {
        name: "soffit",
        corners: corners([
          [0, 0],
          [800, 0],
          [800, 9000],
          [0, 9000],
        ]),
        height: "2300 mm",
      },
    ],
  },
};

/** The plain box under a slope: 2000 mm at the wall that is named, 2000 mm higher across the room. */
export function sloped(lowAt: "front" | "back" | "left" | "right"): Parts {
  const low = 2000;
  const heights: Readonly<Record<typeof lowAt, readonly number[]>> = {
    front: [low, low, low + 2000, low + 2000],
    back: [low + 2000, low + 2000, low, low],
    left: [low, low + 2000, low + 2000, low],
    right: [low + 2000, low, low, low + 2000],
  };
  return {
    room: {
      ceilings: [
        {
          name: "slope",
          corners: corners([
            [0, 0],
            [4000, 0],
            [4000, 6000],
            [0, 6000],
          ]),
          heights: mm(heights[lowAt]),
        },
      ],
    },
    framing: null,
  };
}

/** Left wall at an angle: 3 m of width in front, 5 m behind, 6 m long. The angled wall is "slant". */
export const ANGLED: Parts = {
  room: {
    width: null,
    length: null,
    outline: corners([
      [2000, 0],
      [5000, 0],
      [5000, 6000],
      [0, 6000],
    ]),
    walls: ["front", "right", "back", "slant"],
  },
  framing: null,
  seats: [{ name: "middle", at: { right: "2 m", front: "3 m" }, ear: "1200 mm" }],
};

/** 20 m long and 2 m wide between two walls that run along it; its four end walls stand at 27 degrees to these. */
export const TAPERED: Parts = {
  room: {
    width: null,
    length: null,
    outline: corners([
      [2000, 0],
      [18_000, 0],
      [20_000, 1000],
      [18_000, 2000],
      [2000, 2000],
      [0, 1000],
    ]),
    walls: ["front", "right-front", "right-back", "back", "left-back", "left-front"],
  },
  framing: {
    ...{ left: null, right: null, front: null, back: null },
    ceiling: { from: "front", at: null, first: "400 mm", spacing: "400 mm" },
  },
  seats: [{ name: "middle", at: { front: "1 m", "left-front": "8 m" }, ear: "1.2 m", reference: true }],
};

/** A slope of 4 x 4 m along the left wall of a larger room, and no other wall: all its tapes run up the slope. */
export const SLOPE_AT_ONE_WALL: Parts = {
  room: {
    width: "12 m",
    length: "12 m",
    ceilings: [
      {
        name: "slope",
        corners: corners([
          [0, 4000],
          [4000, 4000],
          [4000, 8000],
          [0, 8000],
        ]),
        heights: mm([2000, 2500, 2500, 2000]),
      },
    ],
  },
  framing: {
    ...{ ceiling: null, left: null, right: null, front: null, back: null },
    slope: { ...{ run: "front-back", from: "left", first: "300 mm", spacing: "600 mm" }, member: JOIST },
  },
};
