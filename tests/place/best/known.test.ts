import { describe, expect, test } from "vitest";
import { type Placed, placeAll } from "../../../src/place/place.js";
import { type Parts, room, type Value } from "../../rooms/build.js";

/*
 * Answers that can be known beforehand. Nominal directions: ITU-R BS.2051-2 (tests/standards/published-positions.ts).
 * Rooms as in tests/rooms/build.ts: 12.5 mm of board, so that the finished ceiling of 2600 mm is 1387.5 over an ear at
 * 1200; the round model asks for 100 + 12 mm of opening and clamps, and for what `clear` says (6.35 unless said).
 */
const OVER_EAR_MM = 1387.5;

/** A room of 8 x 8 m with its seat in the middle, and joists from left to right with these centres from the front. */
function wide(joists: readonly string[], more: Parts = {}): Parts {
  const { speakers = [], ...rest } = more;
  return {
    room: { width: "8 m", length: "8 m" },
    framing: { ceiling: { at: [...joists, "8 m"] } },
    seats: [{ name: "middle", at: { left: "4 m", front: "4 m" }, ear: "1.2 m", reference: true }],
    speakers,
    ...rest,
  };
}

const best = (channel: string, more: Parts = {}): Parts => ({ id: "S1", channel, at: "best", ...more });

function onlyPlaced(parts: Parts): Placed {
  const { placed } = placeAll(room(parts));
  const [only] = placed;
  if (only === undefined || placed.length > 1) throw new Error(`${placed.length} places`);
  return only;
}

const read = ({ tapes }: Placed): Record<string, number> =>
  Object.fromEntries(tapes.map(({ from, mm }) => [from, mm]));

const DEG = Math.PI / 180;

describe("without joists", () => {
  test("the best is the nominal direction, to a mark", () => {
    // 30 degrees up: 1387.5 / tan 30 = 2403.2 away on plan, at 45 degrees: 1699.3 to the left and 1699.3 ahead.
    const aside = OVER_EAR_MM / Math.tan(30 * DEG) / Math.SQRT2;
    const placed = onlyPlaced(wide([], { layout: "4+7+0", speakers: [best("U+045")] }));
    expect(read(placed)).toEqual({ left: Math.ceil(4000 - aside), front: Math.ceil(4000 - aside) });
    expect(placed.cost.offDeg).toBeLessThan(0.02);
    expect(placed.cost.breaches).toBe(0);
    expect(placed.inTheWay).toEqual([]);
  });

  test("in feet and inches it is whole sixteenths", () => {
    const placed = onlyPlaced(wide([], { units: "imperial", layout: "4+7+0", speakers: [best("U-135")] }));
    for (const { mm } of placed.tapes) expect((mm / 25.4) * 16).toBeCloseTo(Math.round((mm / 25.4) * 16), 9);
    expect(placed.cost.offDeg).toBeLessThan(0.03);
  });

  test("without a layout the label's own direction is as good", () => {
    const placed = onlyPlaced(wide([], { speakers: [best("U-045")] }));
    expect(placed.preferred).toEqual({ azimuthDeg: -45, elevationDeg: 30 });
    expect(placed.cost.offDeg).toBeLessThan(0.02);
  });
});

describe("one joist under the nominal direction", () => {
  // Straight overhead the nearer edge is the nearer one in degrees too. 22.5 of joist, 112 of loudspeaker, 6.35 asked.
  const AWAY_MM = 22.5 + 112 + 6.35;

  test.each([
    { joist: 3990, front: Math.ceil(3990 + AWAY_MM) },
    { joist: 4010, front: Math.floor(4010 - AWAY_MM) },
  ])("at $joist: the nearer edge", ({ joist, front }) => {
    const placed = onlyPlaced(wide([`${joist} mm`], { speakers: [best("T+000")] }));
    const { left, right } = read(placed);
    expect(left ?? right).toBe(4000);
    expect(placed.mounted.centre.v).toBeCloseTo(8000 - front, 6);
    expect(placed.cost.offDeg).toBeCloseTo(Math.atan(Math.abs(front - 4000) / OVER_EAR_MM) / DEG, 9);
    expect(placed.inTheWay).toEqual([
      { kind: "member", member: { surface: "ceiling", kind: "joist", number: 1 } },
    ]);
  });

  test("by hand, with a window of 5 degrees: ahead, where only the elevation is outside it", () => {
    const speakers = [best("T+000")];
    const placed = onlyPlaced(wide(["3995 mm"], { layout: "9+10+3", speakers }));
    // 140.85 from 3995, away from the joist: 3854 or 4136. Behind, 136 mm off, are 5.6 degrees, but at an azimuth of
    // 180, which the channel may not have under 85 degrees of elevation; ahead it is 146 mm: atan(146 / 1387.5).
    expect(placed.mounted.centre.v).toBeCloseTo(8000 - 3854, 6);
    expect(placed.cost).toMatchObject({ offDeg: expect.closeTo(6.007, 3) as number, breaches: 1 });
  });

  test("a clear place inside the window comes before a nearer one outside it", () => {
    // U+045 of 4+7+0: from 30 degrees up. The joist leaves the way outward and downward, or a longer one inward.
    const aside = OVER_EAR_MM / Math.tan(30 * DEG) / Math.SQRT2;
    const joist = `${Math.round(4000 - aside) + 60} mm`;
    const free = onlyPlaced(wide([joist], { speakers: [best("U+045")] }));
    const inWindow = onlyPlaced(wide([joist], { layout: "4+7+0", speakers: [best("U+045")] }));
    expect(free.cost.offDeg).toBeLessThan(inWindow.cost.offDeg);
    expect(inWindow.cost.breaches).toBe(0);
    const layout = placeAll(room(wide([joist], { layout: "4+7+0", speakers: [best("U+045")] })));
    expect(layout.placed[0]?.cost).toEqual(inWindow.cost);
  });
});

describe("tapes that the file holds", () => {
  test("stay as typed, and the rest is free", () => {
    const wall = (hold: Parts): Parts => ({
      layout: "4+7+0",
      speakers: [best("M+090", { on: "left", model: "upright", hold })],
    });
    const up = onlyPlaced(wall({ up: "1234.5 mm" }));
    expect(read(up)).toMatchObject({ floor: 1234.5 });
    expect(up.inTheWay).toContainEqual({ kind: "hold", from: "floor" });
    const both = onlyPlaced(wall({ up: "1.3 m", front: "2.7 m" }));
    expect(read(both)).toEqual({ floor: 1300, front: 2700 });
  });

  test("may leave nothing clear", () => {
    const { placed, unplaced } = placeAll(room({ speakers: [best("U+045", { hold: { front: "600 mm" } })] }));
    expect(placed).toEqual([]);
    expect(unplaced).toMatchObject([{ because: "nothing-clear" }]);
  });

  test("that contradict each other leave nothing", () => {
    const hold = { left: "1 m", right: "2 m" };
    expect(placeAll(room({ speakers: [best("U+045", { hold })] })).placed).toEqual([]);
    const agreeing = { left: "1 m", right: "3 m" };
    expect(read(onlyPlaced({ speakers: [best("U+045", { hold: agreeing })] }))).toMatchObject({ left: 1000 });
  });
});

describe("narrow places", () => {
  /** Two joists that leave so much for the centre of the round model between them, the middle at 2 m. */
  function bay(leavesMm: number): Parts {
    const half = (45 + 2 * (100 + 12 + 10) + leavesMm) / 2;
    // In front of and behind these stands a joist every 200 mm, so that nothing else is clear.
    const before = [-1800, -1600, -1400, -1200, -1000, -800, -600, -400, -200, 0].map(
      (by) => 2000.3 - half + by,
    );
    const after = Array.from({ length: 20 }, (_, index) => 2000.3 + half + 200 * index);
    const joists = [...before, ...after]
      .filter((at) => at > 30 && at < 5990)
      .map((at) => `${at.toFixed(4)} mm`);
    return {
      framing: { ceiling: { at: [...joists, "6 m"] } },
      checks: { clear: "10 mm" },
      speakers: [best("U+045", { hold: { left: "1 m" } })],
    };
  }

  test("are found where no whole mark lies in them, on finer ones", () => {
    // From 1999.9 to 2000.7 lies the mark 2000; from 2000.15 to 2000.45 the fifth part 2000.2 or 2000.4.
    expect(read(onlyPlaced(bay(0.8)))).toMatchObject({ front: 2000 });
    expect([2000.2, 2000.4]).toContainEqual(expect.closeTo(read(onlyPlaced(bay(0.3))).front ?? 0, 6));
  });

  test("that are exactly wide enough pass", () => {
    expect(read(onlyPlaced(bay(0))).front).toBeCloseTo(2000.3, 6);
  });
});

describe("what cannot be asked", () => {
  test("low-frequency effects have no direction, an unknown surface no clear place", () => {
    const speakers: readonly Value[] = [
      best("LFE1", { id: "SUB" }),
      best("U+045", { id: "UP" }),
      best("M+000", { id: "C", on: "front" }),
    ];
    const { placed, unplaced } = placeAll(room({ framing: { ceiling: null }, speakers }));
    expect(placed.map(({ mounted }) => mounted.speaker.id)).toEqual(["C"]);
    expect(unplaced.map(({ speaker, because }) => [speaker.id, because])).toEqual([
      ["SUB", "no-direction"],
      ["UP", "framing-unknown"],
    ]);
  });

  test("without an `at: best` there is nothing to do", () => {
    expect(placeAll(room({ speakers: [{ id: "S1", at: { left: "1 m", front: "1 m" } }] }))).toEqual({
      placed: [],
      unplaced: [],
      mismatched: [],
      spareShare: 1,
    });
  });
});

test("the same room gives the same answer, in whatever order its loudspeakers stand", () => {
  const speakers = ["U+045", "U-045", "U+135", "U-135"].map((channel, index) =>
    best(channel, { id: `S${index}` }),
  );
  const tapes = (order: readonly Parts[]) =>
    new Map(
      placeAll(room({ layout: "4+7+0", speakers: order })).placed.map((one) => [
        one.mounted.speaker.id,
        read(one),
      ]),
    );
  const first = tapes(speakers);
  expect(tapes(speakers)).toEqual(first);
  expect(tapes([...speakers].reverse())).toEqual(first);
});
