import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Placed, type Placing, placeAll } from "../../../src/place/place.js";
import type { Room } from "../../../src/room/room.js";
import { howMany } from "../../how-many.js";
import { type Parts, room } from "../../rooms/build.js";
import { isClear, positionOn, published, type Standing, seen, sizeOf } from "./by-hand.js";

/*
 * Openings that come too close where each is best. Two are settled so that the sum of what both cost is least: held
 * against every two places of one line of marks, one by one.
 */

const mm = (value: number): string => `${value} mm`;

/** On the left wall at one height, so that each has one tape free: M+090 and another of nearly the same direction. */
function onOneLine(studs: readonly string[], channels: readonly string[]): Room {
  return room({
    layout: "3+7+0",
    framing: { left: { at: [...studs, "6 m"] } },
    speakers: channels.map((channel, index) => ({
      id: `S${index}`,
      channel,
      on: "left",
      model: "upright",
      at: "best",
      hold: { up: "1.2 m" },
    })),
  });
}

const standing = ({ placed }: Placing): readonly Standing[] => placed.map(({ mounted }) => mounted);

function areClear(one: Room, all: readonly Standing[]): boolean {
  return all.every((each, index) =>
    isClear(
      one,
      each,
      all.filter((_, other) => other !== index),
    ),
  );
}

const BREACH_DEG = 1000;
const costDeg = ({ cost }: Placed): number => cost.breaches * BREACH_DEG + cost.offDeg;
const sumDeg = ({ placed }: Placing): number => placed.reduce((sum, one) => sum + costDeg(one), 0);

interface Candidate {
  readonly standing: Standing;
  readonly costDeg: number;
}

/** Every clear mark of the held line for one loudspeaker, with what it costs, worked out a second way. */
function candidates(one: Room, id: string): readonly Candidate[] {
  const size = sizeOf(one);
  const speaker = one.speakers.find((each) => each.id === id);
  const surface = one.surfaces.find(({ name }) => name === speaker?.surface);
  if (speaker === undefined || surface === undefined) throw new Error(id);
  const wanted = published(one.layout ?? "", speaker.channel);
  return Array.from({ length: size.length }, (_, u): Candidate => {
    const { offDeg, breaches } = seen(one.reference.ear, positionOn(surface.name, size, u, 1200), wanted, 5);
    return {
      standing: { speaker, surface, centre: { u, v: 1200 } },
      costDeg: breaches * BREACH_DEG + offDeg,
    };
  })
    .filter((candidate) => isClear(one, candidate.standing, []))
    .sort((a, b) => a.costDeg - b.costDeg);
}

/** The least sum over all pairs of candidates that are clear together; those that cannot be less are passed over. */
function leastOfTwo(one: Room): number {
  const [first, second] = [candidates(one, "S0"), candidates(one, "S1")];
  let least = Number.POSITIVE_INFINITY;
  for (const a of first) {
    for (const b of second) {
      if (a.costDeg + b.costDeg >= least) break;
      if (isClear(one, a.standing, [b.standing])) least = a.costDeg + b.costDeg;
    }
  }
  return least;
}

describe("two on one wall", () => {
  test("with one direction stand beside each other, and the sum is least", () => {
    const one = onOneLine(["1.9 m", "2.5 m", "3.1 m", "3.7 m", "4.3 m"], ["M+090", "M+090"]);
    const placing = placeAll(one);
    expect(areClear(one, standing(placing))).toBe(true);
    expect(sumDeg(placing)).toBeLessThanOrEqual(leastOfTwo(one) + 0.02 + 1e-6);
  });

  test("in any framing: against every two places, one by one", { timeout: 120_000 }, () => {
    const rooms = fc.record({
      studs: fc.array(fc.integer({ min: 260, max: 900 }), { minLength: 6, maxLength: 12 }),
      channels: fc.constantFrom(["M+090", "M+090"], ["M+090", "M+135"], ["M+135", "M+135"]),
    });
    let met = 0;
    fc.assert(
      fc.property(rooms, ({ studs, channels }) => {
        const places = studs.map((_, index) =>
          studs.slice(0, index + 1).reduce((sum, step) => sum + step, 0),
        );
        const one = onOneLine(places.filter((place) => place < 5950).map(mm), channels);
        const placing = placeAll(one);
        const least = leastOfTwo(one);
        expect(placing.placed.length).toBe(
          Number.isFinite(least) ? 2 : Math.min(1, candidates(one, "S0").length),
        );
        expect(areClear(one, standing(placing))).toBe(true);
        if (!Number.isFinite(least)) return;
        met += channels[0] === channels[1] ? 1 : 0;
        expect(sumDeg(placing)).toBeLessThanOrEqual(least + 0.02 + 1e-6);
      }),
      { numRuns: howMany(12) },
    );
    expect(met).toBeGreaterThan(0);
  });
});

describe("bays that hold one opening each", () => {
  /** Studs every 290 mm leave 22 mm for the centre of the upright model: a bay is one of a few places. */
  const narrow = Array.from({ length: 20 }, (_, index) => 290 * (index + 1)).map(mm);

  test.each([2, 3, 4])("%i with one direction take as many bays, and no exchange betters them", (count) => {
    const one = onOneLine(
      narrow,
      Array.from({ length: count }, () => "M+090"),
    );
    const placing = placeAll(one);
    expect(placing.placed).toHaveLength(count);
    expect(areClear(one, standing(placing))).toBe(true);
    const all = candidates(one, "S0");
    const bayOf = (place: Standing): number => Math.floor(place.centre.u / 290);
    const bays = new Set(standing(placing).map(bayOf));
    expect(bays.size).toBe(count);
    // Enumerated: of each bay what is best in it, and of these the best so many.
    const bestByBay = new Map<number, number>();
    for (const { standing: place, costDeg: cost } of all) {
      if (!bestByBay.has(bayOf(place))) bestByBay.set(bayOf(place), cost);
    }
    const least = [...bestByBay.values()].sort((a, b) => a - b).slice(0, count);
    expect(sumDeg(placing)).toBeLessThanOrEqual(least.reduce((sum, cost) => sum + cost, 0) + 0.05);
  });
});

describe("beside what is given", () => {
  test("the given one stays and the other gives way", () => {
    const speakers: readonly Parts[] = [
      { id: "GIVEN", channel: "U+045", at: { left: "300 mm", front: "1.5 m" } },
      { id: "BEST", channel: "U+045", at: "best" },
    ];
    const one = room({ speakers });
    const placing = placeAll(one);
    const given = one.speakers[0];
    const surface = one.surfaces.find(({ name }) => name === "ceiling");
    if (given?.position.kind !== "given" || surface === undefined) throw new Error("not given");
    const there = { speaker: given, surface, centre: given.position.centre };
    const [best] = standing(placing);
    if (best === undefined) throw new Error("no place");
    expect(isClear(one, best, [there])).toBe(true);
    expect(placing.placed[0]?.inTheWay).toContainEqual({ kind: "neighbour", id: "GIVEN" });
  });
});

test("more than the surface holds: those that come first in the file have places, the others none", () => {
  // One bay, 1.2 m wide between its walls, 0.9 m long.
  const count = 24;
  const speakers = Array.from({ length: count }, (_, index) => ({
    id: `S${index}`,
    channel: "T+000",
    at: "best",
  }));
  const one = room({
    room: { width: "1.2 m", length: "0.9 m" },
    framing: { ceiling: { at: ["0.9 m"] }, left: null, right: null, front: null, back: null },
    seats: [{ name: "middle", at: { left: "0.6 m", front: "0.45 m" }, ear: "1.2 m", reference: true }],
    speakers,
  });
  const placing = placeAll(one);
  expect(placing.placed.length).toBeGreaterThan(3);
  expect(placing.placed.length + placing.unplaced.length).toBe(count);
  expect(areClear(one, standing(placing))).toBe(true);
  expect(placing.unplaced.every(({ because }) => because === "nothing-clear")).toBe(true);
});
