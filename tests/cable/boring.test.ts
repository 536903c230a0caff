import { describe, expect, test } from "vitest";
import { partedOver } from "../../src/cable/boring.js";
import { cablingOf } from "../../src/cable/cabling.js";
import { mountedIn } from "../../src/listen/mounted.js";
import { bundleHoleMm } from "../../src/standards/boring-limits.js";
import { type Parts, room } from "../rooms/build.js";

const INCH = 25.4;

function holes(said: Parts) {
  const one = room(said);
  return cablingOf(one, mountedIn(one))?.holes ?? [];
}

/** Three loudspeakers in the front wall, the rack on the right one, three joists from it. */
const THREE: Parts = {
  equipment: { at: { right: "0", front: "1600 mm" }, up: "2400 mm" },
  speakers: ["900 mm", "1500 mm", "2700 mm"].map((left, index) => ({
    id: `S${index}`,
    on: "front",
    model: "upright",
    at: { left, up: "1.2 m" },
  })),
};

describe("holes", () => {
  test("cables that pass a member side by side share one", () => {
    const found = holes(THREE);
    const plates = found.filter(({ surface, member }) => surface === "right" && member.kind === "top-plate");
    expect(plates).toHaveLength(2);
    // Three cables of 8 mm fill 40 % of a hole of 8 sqrt(3 / 0.4) = 21.9 mm: the 7/8 in bit is 22.2 mm.
    for (const plate of plates) {
      expect([...plate.speakers].sort()).toEqual(["S0", "S1", "S2"]);
      expect(plate.diameterMm).toBeCloseTo(0.875 * INCH, 9);
    }
    // Between 1600 and the front wall stand two joists, and two studs of the right wall: the way takes either.
    const passed = found.filter(
      ({ surface, member }) => surface !== "front" && (member.kind === "joist" || member.kind === "stud"),
    );
    expect(passed.map(({ speakers }) => speakers.length)).toEqual([3, 3]);
    // Down in the front wall each goes by itself.
    const own = found.filter(({ surface }) => surface === "front");
    expect(own.map(({ speakers }) => speakers.length)).toEqual([1, 1, 1, 1, 1, 1]);
  });

  test("of a cable that was measured they fit that cable", () => {
    const found = holes({ ...THREE, labels: { stock: "letter-30", cable_diameter: "12 mm" } });
    // 12 sqrt(3 / 0.4) = 32.9 mm: 1 3/8 in is 34.9.
    expect(found.find(({ speakers }) => speakers.length === 3)?.diameterMm).toBeCloseTo(1.375 * INCH, 9);
  });

  test("in lumber within the code, with the nail plates that the depth asks for", () => {
    const found = holes(THREE);
    // Joists of 220 mm: a third; plates of 120 mm: (120 - 22.2) / 2 is more than 1 1/4 in.
    expect(found.find(({ member }) => member.kind === "joist")?.verdict).toMatchObject({
      kind: "allowed",
      mostMm: 220 / 3,
      nailPlate: false,
    });
    const thin: Parts = {
      framing: { right: { member: { width: "38 mm", depth: "70 mm" } } },
    };
    const plate = holes({ ...THREE, ...thin }).find(
      ({ surface, member }) => surface === "right" && member.kind === "top-plate",
    );
    // (70 - 22.2) / 2 = 23.9 mm: nearer than 31.75.
    expect(plate?.verdict).toMatchObject({ kind: "allowed", nailPlate: true, tie: false });
  });

  test("a joist of 2x4 may not be bored at all; an engineered one only as its maker says", () => {
    const shallow = holes({
      ...THREE,
      framing: { ceiling: { member: { width: "38 mm", depth: "89 mm" } } },
    });
    expect(shallow.find(({ member }) => member.kind === "joist")?.verdict).toEqual({
      kind: "too-large",
      mostMm: 0,
    });
    const engineered = holes({ ...THREE, framing: { ceiling: { engineered: true } } });
    expect(engineered.find(({ member }) => member.kind === "joist")?.verdict).toEqual({ kind: "by-maker" });
  });

  test("a bundle parted over several holes", () => {
    // Eleven cables of 8 mm: 8 sqrt(11 / 0.4) = 42 mm. In a 2x6, 1 1/2 in at most: two holes of six and five, 31 mm.
    expect(partedOver(11, 8, 1.5 * INCH)).toEqual({ holes: 2, eachMm: 1.25 * INCH });
    expect(partedOver(11, 8, 5)).toBeNull();
  });

  test("how full a hole may be: 53, 31 and 40 %, of NEC Chapter 9, Table 1", () => {
    const fill = (cables: number) => (cables * 8 ** 2) / bundleHoleMm(cables, 8) ** 2;
    expect([1, 2, 3, 11].map(fill).map((share) => Math.round(share * 100))).toEqual([53, 31, 40, 40]);
  });
});
