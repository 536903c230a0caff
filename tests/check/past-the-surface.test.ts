import { describe, expect, test } from "vitest";
import type { Parts } from "../rooms/build.js";
import { TRAY_CORNERS } from "../rooms/build.js";
import { findingsOf } from "../rooms/job.js";

/*
 * An opening past what is finished of its wall or ceiling, in the plain room: 4 x 6 x 2.6 m on framing faces, 12.5 of
 * board on them, the flange 230, so that 127.5 from a wall the flange just touches its board.
 */

const one = (more: Parts = {}, speaker: Parts = {}): Parts => ({
  ...more,
  speakers: [{ id: "S", ...speaker }],
});

/* Finished width: 4000 - 2 x 12.5; the flange is 230. */
describe("past the surface", () => {
  const left = (mm: number) => findingsOf(one({}, { at: { left: `${mm} mm`, front: "900 mm" } }));

  test.each([
    { mm: 127.5, byMm: null },
    { mm: 127.495, byMm: null },
    { mm: 127.48, byMm: 0.02 },
    { mm: 100, byMm: 27.5 },
    { mm: 0, byMm: 127.5 },
  ])("$mm from the left: past by $byMm", ({ mm, byMm }) => {
    const found = left(mm);
    if (byMm === null) expect(found).toEqual([]);
    else {
      expect(found).toMatchObject([
        {
          code: "opening-outside-surface",
          level: "error",
          figures: { edge: "left", byMm: expect.closeTo(byMm, 6) },
          fix: { at: { left: 128, front: 900 } },
        },
      ]);
    }
  });

  test("wholly outside it says by how much all of it must come back", () => {
    const found = findingsOf(one({}, { at: { right: "4.5 m", front: "900 mm" } }));
    // The centre is 500 past the left framing face: 500 + 12.5 + 115.
    expect(found).toMatchObject([
      { code: "opening-outside-surface", figures: { edge: "left", byMm: expect.closeTo(627.5, 6) } },
    ]);
  });

  test("in a corner the worse edge is named, once", () => {
    const found = findingsOf(one({}, { at: { left: "60 mm", front: "100 mm" } }));
    expect(found.filter(({ code }) => code === "opening-outside-surface")).toMatchObject([
      { figures: { edge: "left", byMm: expect.closeTo(67.5, 6) } },
    ]);
  });

  test("on a wall the floor and the boarded ceiling are edges", () => {
    const high = { on: "front", model: "round", at: { left: "900 mm", down: "0" } };
    const found = findingsOf(one({}, high));
    expect(found[0]).toMatchObject({ figures: { edge: "ceiling", byMm: expect.closeTo(127.5, 6) } });
  });
});

/** Which edge it is past, and by how much; null where it is past none. */
function pastOf(parts: Parts): { readonly edge: string; readonly byMm: number } | null {
  const found = findingsOf(parts).filter(({ code }) => code === "opening-outside-surface");
  expect(found.length).toBeLessThan(2);
  return found[0]?.code === "opening-outside-surface" ? found[0].figures : null;
}

const at = (left: number, front: number, more: Parts = {}) =>
  pastOf(one(more, { at: { left: `${left} mm`, front: `${front} mm` } }));

const past = (edge: string, byMm: number) => ({ edge, byMm: expect.closeTo(byMm, 6) });

describe("in a corner", () => {
  test("the worse edge is named, whichever it is", () => {
    expect(at(100, 90)).toEqual(past("front", 37.5));
    expect(at(90, 100)).toEqual(past("left", 37.5));
    expect(at(3910, 5900)).toEqual(past("right", 37.5));
    expect(at(3900, 5910)).toEqual(past("back", 37.5));
  });

  test("past both alike the one across the sheet is named, in the room and in its mirror image", () => {
    expect(at(100, 100)).toEqual(past("front", 27.5));
    expect(at(3900, 100)).toEqual(past("front", 27.5));
    expect(at(100, 5900)).toEqual(past("back", 27.5));
    expect(at(3900, 5900)).toEqual(past("back", 27.5));
  });

  test("past both by less than a hundredth otherwise is alike", () => {
    expect(at(99.995, 100)).toEqual(past("front", 27.5));
    expect(at(99.98, 100)).toEqual(past("left", 27.52));
  });

  test("its flange touches both boards and passes neither", () => {
    expect(at(127.5, 127.5)).toBeNull();
    expect(at(127.5, 127)).toEqual(past("front", 0.5));
  });
});

describe("wholly outside", () => {
  const out = (tapes: Parts) => pastOf(one({}, { at: tapes }));

  test("past one wall, by all of it that must come back", () => {
    expect(out({ right: "4.5 m", back: "3 m" })).toEqual(past("left", 627.5));
    expect(out({ left: "4.2 m", back: "3 m" })).toEqual(past("right", 327.5));
    expect(out({ left: "2 m", back: "6.3 m" })).toEqual(past("front", 427.5));
    expect(out({ left: "2 m", front: "6.1 m" })).toEqual(past("back", 227.5));
  });

  test("off a corner, past two walls, the one across the sheet", () => {
    // The corner is the nearest place of either, however far it is past the other.
    expect(out({ right: "4.8 m", back: "6.3 m" })).toEqual(past("front", 427.5));
    expect(out({ left: "4.3 m", front: "6.8 m" })).toEqual(past("back", 927.5));
  });

  test("just off a corner, its flange over both edges, the one that it is further past", () => {
    // Off the board on either side: 60 of the left one and 20 of the front one, which half of the flange comes to.
    expect(out({ right: "4047.5 mm", back: "6007.5 mm" })).toEqual(past("left", 175));
    expect(out({ right: "4007.5 mm", back: "6047.5 mm" })).toEqual(past("front", 175));
  });

  test("just off the finished edge, within the board", () => {
    expect(out({ left: "6 mm", back: "3 m" })).toEqual(past("left", 121.5));
  });
});

/* A tray 2 x 2 m in the ceiling, 300 up: what is round it ends at its edge, where the board turns up. */
describe("over a tray in the ceiling", () => {
  const tray = (speaker: Parts): Parts =>
    one({ room: { ceilings: [{ name: "tray", corners: TRAY_CORNERS, height: "2.9 m" }] } }, speaker);
  const round = (left: number, front: number) =>
    pastOf(tray({ at: { left: `${left} mm`, front: `${front} mm` } }));
  // The board ends 12.5 inside the hole, since it is wrapped round its edge.
  const by = (mm: number) => ({ edge: expect.any(String), byMm: expect.closeTo(mm, 6) });

  test("clear of its edge, up to it and past it", () => {
    expect(round(897.5, 3000)).toBeNull();
    expect(round(900, 3000)).toEqual(by(2.5));
    expect(round(950, 3000)).toEqual(by(52.5));
  });

  test("in the middle of it, the nearest edge and how far back to it", () => {
    expect(round(1500, 3000)).toEqual(by(602.5));
    expect(round(2500, 3000)).toEqual(by(602.5));
    expect(round(2000, 2300)).toEqual(by(402.5));
    expect(round(2000, 3700)).toEqual(by(402.5));
  });

  test("on the tray itself it is at home, and its walls are its edges", () => {
    const inTray = (left: number) => pastOf(tray({ on: "tray", at: { left: `${left} mm`, front: "3 m" } }));
    expect(inTray(2000)).toBeNull();
    expect(inTray(1127.5)).toBeNull();
    expect(inTray(1050)).toEqual(by(77.5));
  });
});

/* An L: 4 x 6 m without the quarter of 2 x 3 m behind on the right. */
describe("in a room that is no box", () => {
  const L: Parts = {
    room: {
      width: null,
      length: null,
      outline: [
        ["0", "0"],
        ["4 m", "0"],
        ["4 m", "3 m"],
        ["2 m", "3 m"],
        ["2 m", "6 m"],
        ["0", "6 m"],
      ],
      walls: ["front", "east", "ledge", "inner", "back", "west"],
    },
    framing: null,
    seats: [{ name: "middle", at: { west: "1 m", front: "2 m" }, ear: "1.2 m", reference: true }],
  };
  const inL = (west: number, front: number) =>
    pastOf(one(L, { at: { west: `${west} mm`, front: `${front} mm` } }));

  test("past the walls of the corner that comes in, each by itself", () => {
    expect(inL(3000, 2872.5)).toBeNull();
    expect(inL(3000, 2900)).toEqual(past("ledge", 27.5));
    expect(inL(1872.5, 4500)).toBeNull();
    expect(inL(1900, 4500)).toEqual(past("inner", 27.5));
  });

  test("where the room is not, behind the corner, the nearest wall of it", () => {
    expect(inL(3500, 3300)).toEqual(past("ledge", 427.5));
    expect(inL(2300, 5000)).toEqual(past("inner", 427.5));
    // As far from the one as from the other.
    expect(inL(2400, 3400)).toEqual(past("ledge", 527.5));
  });

  test("at the corner's point, 37.5 from either wall's line: by the flange's half less that", () => {
    expect(inL(1950, 2950)).toEqual(past("ledge", 77.5));
    // 87.5 and 107.5 off: 138.6 from the point, though less than 115 from both lines.
    expect(inL(1900, 2880)).toBeNull();
  });
});
