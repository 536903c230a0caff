import { describe, expect, test } from "vitest";
import { type Placed, placeAll } from "../../../src/place/place.js";
import type { Room } from "../../../src/room/room.js";
import { type Parts, room } from "../../rooms/build.js";
import { isClear, positionOn, published, seen, sizeOf } from "./by-hand.js";

/*
 * Overhead loudspeakers on one side of the seat on one line from front to back (the same x), where that costs the worst
 * of them less than `checks: { line: ... }`, a degree unless said. The loss is worked out again here by trying every
 * whole millimetre.
 */

const UPPER: readonly Parts[] = [
  { id: "FL", channel: "U+045", at: "best", mirror: "FR" },
  { id: "FR", channel: "U-045", at: "best", mirror: "FL" },
  { id: "BL", channel: "U+135", at: "best", mirror: "BR" },
  { id: "BR", channel: "U-135", at: "best", mirror: "BL" },
];

/** A joist under where the front ones would stand; no layout, so that no window decides instead. */
const lengthwise = (line: string, more: Parts = {}): Parts => ({
  room: { width: "4.6 m", length: "6 m" },
  framing: { ceiling: { at: ["1 m", "1.6 m", "2.2 m", "6 m"] } },
  seats: [{ name: "middle", at: { left: "2.3 m", front: "2.7 m" }, ear: "1.2 m", reference: true }],
  checks: { line },
  speakers: UPPER,
  ...more,
});

const byId = (placed: readonly Placed[], id: string): Placed => {
  const found = placed.find(({ mounted }) => mounted.speaker.id === id);
  if (found === undefined) throw new Error(id);
  return found;
};

const xOf = (placed: readonly Placed[], id: string): number => byId(placed, id).mounted.position.x;

const ACROSS_MM = { least: 500, most: 660 };

/** What a pair loses at best at each whole millimetre from the left, against its best place anywhere. */
function lossesByLeft(one: Room, ids: readonly [string, string], aloneDeg: number): readonly number[] {
  const size = sizeOf(one);
  const surface = one.surfaces.find(({ name }) => name === "ceiling");
  if (surface === undefined) throw new Error("no ceiling");
  const { ear } = one.reference;
  const pair = ids.map((id, side) => {
    const speaker = one.speakers.find((each) => each.id === id);
    if (speaker === undefined) throw new Error(id);
    const wanted = published("4+7+0", speaker.channel);
    const uAt = (x: number): number => size.width - (side === 0 ? x : 2 * ear.x - x);
    return { speaker, wanted, uAt };
  });
  const lossAt = (x: number): number => {
    let least = Number.POSITIVE_INFINITY;
    for (let v = 150; v < size.length - 150; v += 1) {
      const offDeg = Math.max(
        ...pair.map(({ wanted, uAt }) => seen(ear, positionOn("ceiling", size, uAt(x), v), wanted, 5).offDeg),
      );
      if (offDeg >= least) continue;
      const isFree = pair.every(({ speaker, uAt }) =>
        isClear(one, { speaker, surface, centre: { u: uAt(x), v } }, []),
      );
      if (isFree) least = offDeg;
    }
    return least - aloneDeg;
  };
  return Array.from({ length: ACROSS_MM.most - ACROSS_MM.least }, (_, index) =>
    lossAt(ACROSS_MM.least + index),
  );
}

describe("front and back on one side", () => {
  const alone = placeAll(room(lengthwise("0"))).placed;
  const shared = placeAll(room(lengthwise("5 deg"))).placed;
  const lossDeg = Math.max(
    ...["FL", "BL"].map((id) => byId(shared, id).cost.offDeg - byId(alone, id).cost.offDeg),
  );

  test("stand on two lines when each is best, and on one when asked for", () => {
    expect(Math.abs(xOf(alone, "FL") - xOf(alone, "BL"))).toBeGreaterThan(5);
    expect(xOf(shared, "FL")).toBe(xOf(shared, "BL"));
    expect(xOf(shared, "FR")).toBeCloseTo(xOf(shared, "BR"), 9);
    expect(xOf(shared, "FL") + xOf(shared, "FR")).toBeCloseTo(4600, 9);
    expect(byId(shared, "FL").line).toEqual(["FL", "BL"]);
    expect(byId(shared, "BR").line).toEqual(["FR", "BR"]);
  });

  test("lose no more than on the best of all lines, tried by the millimetre", { timeout: 120_000 }, () => {
    const one = room(lengthwise("5 deg"));
    const front = lossesByLeft(one, ["FL", "FR"], byId(alone, "FL").cost.offDeg);
    const back = lossesByLeft(one, ["BL", "BR"], byId(alone, "BL").cost.offDeg);
    const worst = front.map((loss, index) => Math.max(loss, back[index] ?? Number.POSITIVE_INFINITY));
    expect(lossDeg).toBeGreaterThan(0.1);
    expect(lossDeg).toBeCloseTo(Math.min(...worst), 6);
  });

  test("share it just when the loss is less than the limit", () => {
    const limited = (limitDeg: number) => placeAll(room(lengthwise(`${limitDeg.toFixed(6)} deg`))).placed;
    const less = limited(lossDeg - 0.001);
    expect(less.map(({ line }) => line)).toEqual([[], [], [], []]);
    expect(xOf(less, "FL")).toBe(xOf(alone, "FL"));
    expect(xOf(limited(lossDeg + 0.001), "FL")).toBe(xOf(shared, "FL"));
  });

  test("the line is said to be in the way of what it costs", () => {
    const said = shared.flatMap(({ mounted, inTheWay }) =>
      inTheWay.filter(({ kind }) => kind === "line").map((one) => [mounted.speaker.id, one]),
    );
    expect(said).toContainEqual(["FL", { kind: "line", with: ["BL"] }]);
    expect(said).toContainEqual(["FR", { kind: "line", with: ["BR"] }]);
  });
});

test("without mirrors each side has its own line", () => {
  const speakers = UPPER.map(({ id = "", channel = "" }) => ({ id, channel, at: "best" }));
  const { placed } = placeAll(room(lengthwise("5 deg", { speakers })));
  expect(xOf(placed, "FL")).toBe(xOf(placed, "BL"));
  expect(xOf(placed, "FR")).toBeCloseTo(xOf(placed, "BR"), 9);
});

test("a tape that is held across the room is no line for others", () => {
  const [first = {}, , third = {}] = UPPER.map(({ id = "", channel = "" }) => ({ id, channel, at: "best" }));
  const held = { ...first, hold: { left: "700 mm" } };
  const { placed } = placeAll(room(lengthwise("5 deg", { speakers: [held, third] })));
  expect(xOf(placed, "FL")).toBeCloseTo(700, 9);
  expect(placed.map(({ line }) => line)).toEqual([[], []]);
});

test("of three as many share a line as can", () => {
  // System H: its side one stands far out, 2403 mm for 30 degrees up; front and back share.
  const speakers = ["U+045", "U+090", "U+135"].map((channel, index) => ({
    id: `S${index}`,
    channel,
    at: "best",
  }));
  const parts: Parts = {
    room: { width: "6 m", length: "6 m" },
    layout: "9+10+3",
    framing: { ceiling: { at: ["6 m"] } },
    seats: [{ name: "middle", at: { left: "3 m", front: "3 m" }, ear: "1.2 m", reference: true }],
    speakers,
  };
  const { placed } = placeAll(room(parts));
  expect(placed.map(({ line }) => line)).toEqual([["S0", "S2"], [], ["S0", "S2"]]);
});

test("walls have no lines", () => {
  const speakers = ["M+090", "M+135"].map((channel, index) => ({
    id: `S${index}`,
    channel,
    on: "left",
    model: "upright",
    at: "best",
  }));
  const { placed } = placeAll(room({ layout: "4+7+0", checks: { line: "20 deg" }, speakers }));
  expect(placed.map(({ line }) => line)).toEqual([[], []]);
});
