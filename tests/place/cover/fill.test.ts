import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mountedIn } from "../../../src/listen/mounted.js";
import { type CoverPlace, type Filling, fillAreas } from "../../../src/place/cover/fill.js";
import type { Room } from "../../../src/room/room.js";
import { howMany } from "../../how-many.js";
import { type Parts, room, type Value } from "../../rooms/build.js";
import { isClearByHand } from "../../rooms/by-hand.js";
import { bareHall, randomHall } from "../../rooms/halls.js";

const fill = (one: Room): readonly Filling[] => fillAreas(one, mountedIn(one));

function filled(one: Room): Extract<Filling, { kind: "filled" }> {
  const [filling] = fill(one);
  if (filling?.kind !== "filled") throw new Error(JSON.stringify(filling));
  return filling;
}

const tapesOf = ({ tapes }: CoverPlace): readonly string[] => tapes.map(({ from, mm }) => `${from} ${mm}`);
const placesOf = (parts: Parts): readonly (readonly string[])[] => filled(room(parts)).places.map(tapesOf);

/*
 * Finished faces lie 12.5 mm inside the framing. Ears 1787.5 mm below the board make circles of 3575 mm at 90 degrees,
 * so no gap is 2527.9 in a square, 3096.0 in a hexagon.
 */
describe("a hall without joists has exactly the pattern", () => {
  test("square, by hand: 8025 x 6025 makes 4 of 2000 by 3 of 2000", () => {
    const filling = filled(room(bareHall({ width: 8025, length: 6025 })));
    expect(filling.lattice).toMatchObject({ rows: 3, perRow: 4 });
    expect(filling.lattice.spacingMm).toBeCloseTo(2000, 6);
    expect(filling.lattice.rowMm).toBeCloseTo(2000, 6);
    // 12.5 + 1000 and so on: half marks, rounded to whole ones either way, never further than that.
    for (const [index, { tapes, movedMm }] of filling.places.entries()) {
      expect(tapes.map(({ from }) => from)).toEqual(["left", "front"]);
      expect(Math.abs((tapes[0]?.mm ?? 0) - (1012.5 + 2000 * (index % 4)))).toBeLessThanOrEqual(0.5);
      expect(Math.abs((tapes[1]?.mm ?? 0) - (1012.5 + 2000 * Math.floor(index / 4)))).toBeLessThanOrEqual(
        0.5,
      );
      expect(movedMm).toBeLessThanOrEqual(Math.SQRT1_2 + 1e-9);
    }
    expect(filling.places.map(({ mounted }) => mounted.speaker.id)).toEqual(
      Array.from({ length: 12 }, (_, index) => `S${index + 1}`),
    );
  });

  test("as the file states it, on whole marks to the millimetre", () => {
    const room = { width: 8000, length: 6000 };
    expect(
      placesOf(
        bareHall(room, {
          spacing: "4 m",
          corner: { left: "1 m", front: "1 m" },
          opposite: { left: "7 m", front: "5 m" },
        }),
      ),
    ).toEqual([
      ["left 2500", "front 3000"],
      ["left 5500", "front 3000"],
    ]);
  });

  test("hexagon, by hand: 3 rows of 3, alternate ones half a spacing aside", () => {
    const size = { width: 9025, length: 7825 };
    const filling = filled(room(bareHall(size, { pattern: "hexagon" })));
    expect(filling.lattice).toMatchObject({ pattern: "hexagon", rows: 3, perRow: 3 });
    const { along, spacingMm, rowMm } = filling.lattice;
    expect(along).toBe("u");
    expect([spacingMm, rowMm]).toEqual([3000, 2600]);
    const across = filling.places.map(({ tapes }) => tapes[0]?.mm ?? 0);
    const [first = 0, second = 0] = [across[0], across[3]];
    expect(Math.abs(Math.abs(first - second) - 1500)).toBeLessThanOrEqual(1);
    expect(Math.abs(across[6] ?? 0)).toBe(first);
    expect(Math.abs(Math.min(first, second) - (12.5 + 750))).toBeLessThanOrEqual(0.5);
  });

  test("one row down a corridor", () => {
    const filling = filled(room(bareHall({ width: 1500, length: 9000 }, { pattern: "hexagon" })));
    const across = new Set(filling.places.map(({ tapes }) => tapes.find(({ from }) => from === "left")?.mm));
    expect([...across]).toEqual([750]);
    expect(filling.places.length).toBe(Math.ceil(8975 / 3096));
  });

  test("inside an L-shaped area only, with holes kept out", () => {
    const at = (left: number, front: number): Parts => ({ left: `${left} m`, front: `${front} m` });
    const corners = [at(0, 0), at(9, 0), at(9, 3), at(3, 3), at(3, 9), at(0, 9)];
    const filling = filled(room(bareHall({ width: 9000, length: 9000 }, { corners, spacing: "1.5 m" })));
    for (const { tapes } of filling.places) {
      const [left = 0, front = 0] = tapes.map(({ mm }) => mm);
      expect(left <= 3000 || front <= 3000, `${left} ${front}`).toBe(true);
    }
    // 45 m² by 1.5 m squares.
    expect(filling.places.length).toBeGreaterThanOrEqual(18);
    expect(filling.places.length).toBeLessThanOrEqual(22);
  });
});

describe("under joists", () => {
  const joists = (parts: Parts): Parts => ({
    ...parts,
    framing: {
      ceiling: { at: Array.from({ length: 20 }, (_, index) => `${600 * (index + 1)} mm`) },
      left: null,
      right: null,
      front: null,
      back: null,
    },
  });

  test("each moves to its own side of the joist and no further than half a bay; a row stays a row", () => {
    const filling = filled(room(joists(bareHall({ width: 8000, length: 12_000 }))));
    const byRow = new Map<number, Set<number | undefined>>();
    filling.places.forEach(({ movedMm, tapes }, index) => {
      expect(movedMm).toBeLessThanOrEqual(300);
      const row = Math.floor(index / filling.lattice.perRow);
      byRow.set(row, (byRow.get(row) ?? new Set()).add(tapes.find(({ from }) => from === "front")?.mm));
    });
    expect(byRow.size).toBe(filling.lattice.rows);
    for (const fronts of byRow.values()) expect(fronts.size).toBe(1);
    expect(Math.max(...filling.places.map(({ movedMm }) => movedMm))).toBeGreaterThan(50);
  });

  // A point on the joist at 600: 22.5 + 80 + 12 + 6.35 = 120.85 clear of its centre.
  test("by hand", () => {
    const area = {
      spacing: "1.2 m",
      corner: { left: "0", front: "0" },
      opposite: { left: "4 m", front: "1.2 m" },
    };
    const { places } = filled(room(joists(bareHall({ width: 8000, length: 12_000 }, area))));
    for (const { tapes } of places) expect([479, 721]).toContain(tapes[1]?.mm);
  });
});

describe("what stands in the way", () => {
  test("a point near which nothing is clear is told and left out", () => {
    const duct = {
      name: "duct",
      on: "ceiling",
      corner: { left: "0", front: "0" },
      opposite: { left: "2.9 m", front: "2.9 m" },
    };
    const hall = bareHall({ width: 8000, length: 6000 }, { spacing: "2 m" }, { obstructions: [duct] });
    const filling = filled(room(hall));
    expect(filling.places.length + filling.nowhere.length).toBe(12);
    expect(filling.nowhere).toHaveLength(1);
    expect(filling.places[0]?.mounted.speaker.id).toBe("S1");
  });

  test("ids go on where others stop, whatever their capitals, and none is one that systems keep", () => {
    const hall = bareHall(
      { width: 8000, length: 6000 },
      { prefix: "COM" },
      { speakers: [{ id: "com11", model: "round", at: { left: "1 m", front: "1 m" } }] },
    );
    const ids = filled(room(hall)).places.map(({ mounted }) => mounted.speaker.id);
    expect(ids).toEqual(["COM10", "COM12", "COM13"].concat(ids.slice(3)));
    expect(new Set(ids).size).toBe(ids.length);
  });

  test("a second area begins after the first and keeps away from it", () => {
    const half = (side: string): Parts => ({
      name: side,
      on: "ceiling",
      model: "straight",
      ear: "1.2 m",
      corner: { [side]: "0", front: "0" },
      opposite: { [side]: "4.05 m", back: "0" },
    });
    const hall = bareHall({ width: 8000, length: 6000 }, {}, { areas: [half("left"), half("right")] });
    const fillings = fill(room(hall));
    const places = fillings.flatMap((one) => (one.kind === "filled" ? one.places : []));
    expect(new Set(places.map(({ mounted }) => mounted.speaker.id)).size).toBe(places.length);
    expect(places.length).toBe(12);
  });

  test("more than a file may hold is said, not tried", () => {
    expect(fill(room(bareHall({ width: 40_000, length: 60_000 }, { spacing: "1 m" })))[0]).toMatchObject({
      kind: "too-many",
      count: 2400,
      most: 500,
    });
    expect(fill(room(bareHall({ width: 40_000, length: 60_000 }, { spacing: "10 mm" })))[0]?.kind).toBe(
      "too-many",
    );
  });

  test("under framing that nobody knows, and where nothing is clear, it says so", () => {
    const hall = bareHall({ width: 8000, length: 6000 });
    const unknown = { ...hall, framing: { ceiling: null, left: null, right: null, front: null, back: null } };
    expect(fill(room(unknown))[0]).toMatchObject({ kind: "unfilled", because: "framing-unknown" });
    const corner = { corner: { left: "0", front: "0" }, opposite: { right: "0", back: "0" } };
    const full = { ...hall, obstructions: [{ name: "plenum", on: "ceiling", ...corner }] };
    expect(fill(room(full))[0]).toMatchObject({ kind: "unfilled", because: "nothing-clear" });
  });

  test("an area that loudspeakers of the file fill is left as it is", () => {
    const speakers = [{ id: "A", area: "hall", model: "straight", at: { left: "2 m", front: "2 m" } }];
    expect(fill(room(bareHall({ width: 8000, length: 6000 }, {}, { speakers })))).toEqual([]);
  });
});

const OTHER: Readonly<Record<string, string>> = { left: "right", right: "left" };

function mirrored(value: Value): Value {
  if (typeof value === "string") return OTHER[value] ?? value;
  if (Array.isArray(value)) return value.map((each: Value) => mirrored(each));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [OTHER[key] ?? key, mirrored(each)]));
}

const mirror = (parts: Parts): Parts => mirrored(parts) as Parts;

const RUNS = howMany(8);

describe("random halls", () => {
  test("all clear by plain arithmetic, all apart, never moved past their cell, and the same each time", () => {
    let moved = 0;
    fc.assert(
      fc.property(randomHall, (parts) => {
        const one = room(parts);
        const [filling] = fill(one);
        expect(fill(one)).toEqual([filling]);
        if (filling?.kind !== "filled") return;
        const { places, lattice } = filling;
        expect(lattice.spacingMm).toBeLessThanOrEqual((one.areas[0]?.spacingMm ?? 0) + 1e-6);
        const all = { ...one, speakers: [...one.speakers, ...places.map(({ mounted }) => mounted.speaker)] };
        for (const { mounted, movedMm } of places) {
          expect(isClearByHand(all, mounted.speaker, mounted.centre, 0.02)).toBe(true);
          expect(movedMm).toBeLessThanOrEqual(Math.min(lattice.spacingMm, lattice.rowMm) / 2 + 1e-6);
          if (movedMm > 2) moved += 1;
        }
      }),
      { numRuns: RUNS },
    );
    expect(moved).toBeGreaterThan(RUNS);
  });

  // Two hexagons that begin at either side are equally even in a hall that is its own image; then either may be taken.
  test("a mirrored hall has as many, as even, moved as far", () => {
    fc.assert(
      fc.property(randomHall, (parts) => {
        const [plain] = fill(room(mirror(mirror(parts))));
        const [image] = fill(room(mirror(parts)));
        expect(image?.kind).toBe(plain?.kind);
        if (plain?.kind !== "filled" || image?.kind !== "filled") return;
        expect(Math.abs(image.places.length - plain.places.length)).toBeLessThanOrEqual(1);
        expect(Math.abs(image.spread.deviationDb - plain.spread.deviationDb)).toBeLessThan(0.1);
      }),
      { numRuns: RUNS },
    );
  });

  test("a mirrored hall with nothing but joists has the mirror image of a square", () => {
    fc.assert(
      fc.property(randomHall, (parts) => {
        const plainly: Parts = { ...parts, obstructions: [], speakers: [], areas: square(parts) };
        const [plain, image] = [filled(room(mirror(mirror(plainly)))), filled(room(mirror(plainly)))];
        const width =
          room(plainly).surfaces[0]?.edges.reduce((most, { from }) => Math.max(most, from.u), 0) ?? 0;
        const far = image.places.map(({ mounted: { centre } }) => ({ u: width - centre.u, v: centre.v }));
        for (const { mounted } of plain.places) {
          const near = Math.min(
            ...far.map(({ u, v }) => Math.hypot(u - mounted.centre.u, v - mounted.centre.v)),
          );
          // Marks are counted from the other wall: half of one either way, on both tapes.
          expect(near).toBeLessThanOrEqual(1.5);
        }
      }),
      { numRuns: RUNS },
    );
  });
});

const square = ({ areas }: Parts): Value =>
  Array.isArray(areas) ? areas.map((area: Value) => ({ ...(area as Parts), pattern: "square" })) : null;
