import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { areaMm2, difference, type Region } from "../../src/geometry/clip.js";
import { distanceToSegmentMm, isInside, sidesOf } from "../../src/geometry/distance.js";
import { plus, times } from "../../src/geometry/surface-point.js";
import { type Mounted, mountedIn } from "../../src/listen/mounted.js";
import { clearTest } from "../../src/place/clear.js";
import { baysOf, clearInBay } from "../../src/place/clear-area.js";
import { fittingOf, neighboursOf } from "../../src/place/fitting.js";
import { piecesOf, type Slide, slideOf } from "../../src/place/slide.js";
import type { Room } from "../../src/room/room.js";
import { type Parts, room } from "../rooms/build.js";
import { randomRoom } from "../rooms/random.js";

const MODEL = { depth: "90 mm", clamp_reach: "2 mm" };

function slides(one: Room): (Slide | null)[] {
  const mounted = mountedIn(one);
  return mounted.map((each) =>
    slideOf({ room: one, mounted: each, neighbours: neighboursOf(each, mounted) }),
  );
}

/** Slides toward the front, the back, then along the joists, as the plain room's frame has them: v to the front. */
function waysOf(slide: Slide | null | undefined) {
  const to = (u: number, v: number): number | undefined =>
    slide?.ways?.find(({ direction }) => Math.abs(direction.u - u) + Math.abs(direction.v - v) < 1e-9)?.mm;
  return { front: to(0, 1), back: to(0, -1), left: to(1, 0), right: to(-1, 0) };
}

/*
 * By hand in the plain room: 4 x 6 m, joists of 45 centred every 600 from the front, walls' board 12.5, opening 200,
 * flange 230, clamps 12 and 6.35 clear beyond them. Between the joists at 1800 and 2400 a centre may lie from
 * 1800 + 22.5 + 18.35 + 100 = 1940.85 to 2400 - 140.85 = 2259.15 off the front wall, and no nearer to the side walls
 * than 12.5 + 115 = 127.5.
 */
describe("by hand in the plain room", () => {
  const at = (left: string, front: string, id = "A"): Parts => ({ id, at: { left, front } });

  test("a centre alone in its bay", () => {
    const [only] = slides(room({ speakers: [at("1 m", "2 m")] }));
    const ways = waysOf(only);
    expect(ways.front).toBeCloseTo(2000 - 1940.85, 1);
    expect(ways.back).toBeCloseTo(2259.15 - 2000, 1);
    expect(ways.left).toBeCloseTo(1000 - 127.5, 1);
    expect(ways.right).toBeCloseTo(3000 - 127.5, 1);
    expect(areaMm2(only?.piece ?? [])).toBeCloseTo((2259.15 - 1940.85) * (4000 - 255), -2);
  });

  test("a neighbour in the bay: 230 apart by both flanges, 200 + 12 + 12 + 6.35 = 230.35 by the openings", () => {
    const [first, second] = slides(room({ speakers: [at("1 m", "2 m"), at("2 m", "2 m", "B")] }));
    expect(waysOf(first).right).toBeCloseTo(1000 - 230.35, 1);
    expect(waysOf(second).left).toBeCloseTo(1000 - 230.35, 1);
    expect(waysOf(first).left).toBeCloseTo(872.5, 1);
  });

  test("seven in one bay: each keeps to the gap between its neighbours, whatever stands behind those", () => {
    const lefts = ["0.5 m", "1 m", "1.5 m", "2 m", "2.5 m", "3 m", "3.5 m"];
    const all = slides(room({ speakers: lefts.map((left, index) => at(left, "2.1 m", `S${index}`)) }));
    const middle = all[3];
    expect(waysOf(middle).left).toBeCloseTo(500 - 230.35, 1);
    expect(waysOf(middle).right).toBeCloseTo(500 - 230.35, 1);
    // Widest at the bay's sides, 159.15 off the line of centres: there an arc of 230.35 lies 166.5 off its centre.
    const us = middle?.piece.flat().map(({ u }) => u) ?? [];
    const asideMm = Math.sqrt(230.35 ** 2 - 159.15 ** 2);
    expect(Math.abs(Math.max(...us) - Math.min(...us) - (1000 - 2 * asideMm))).toBeLessThan(0.5);
  });

  test("at the limit itself it slides along and away all the same, and not beyond", () => {
    const [only] = slides(room({ speakers: [at("1 m", "1940.85 mm")] }));
    const ways = waysOf(only);
    expect(ways.front).toBeLessThan(0.011);
    expect(ways.back).toBeCloseTo(2259.15 - 1940.85, 1);
    expect(ways.left).toBeCloseTo(872.5, 1);
  });

  test("none where the centre is not clear: the nearest piece is shown, here the bay behind the joist", () => {
    const [only] = slides(room({ speakers: [at("1 m", "1810 mm")] }));
    expect(only?.ways).toBeNull();
    const vs = only?.piece.flat().map(({ v }) => 6000 - v) ?? [];
    expect(Math.min(...vs)).toBeCloseTo(1940.85, 1);
  });

  test("nothing where the framing is unknown", () => {
    expect(slides(room({ framing: { ceiling: null }, speakers: [at("1 m", "2 m")] }))).toEqual([null]);
  });
});

test("a hole belongs to the least outline round it", () => {
  const square = (low: number, high: number) => [
    { u: low, v: low },
    { u: high, v: low },
    { u: high, v: high },
    { u: low, v: high },
  ];
  const hole = square(1, 9).reverse();
  const inner = square(2, 8);
  const innerHole = square(3, 7).reverse();
  expect(piecesOf([square(0, 10), hole, inner, innerHole])).toEqual([
    [square(0, 10), hole],
    [inner, innerHole],
  ]);
});

test("in any room a slide ends where the rule does, and everything on the way passes", () => {
  let met = 0;
  fc.assert(
    fc.property(randomRoom, (parts) => {
      const one = room(parts);
      const mounted = mountedIn(one);
      for (const each of mounted) {
        const neighbours = neighboursOf(each, mounted);
        const isClear = clearTest(each.surface, fittingOf(each.speaker, one.checks), neighbours);
        const slide = slideOf({ room: one, mounted: each, neighbours });
        expect(slide?.ways === null || slide === null).toBe(!isClear(each.centre));
        for (const { direction, mm } of slide?.ways ?? []) {
          met += 1;
          const after = (along: number) => isClear(plus(each.centre, times(direction, along)));
          for (const share of [0.25, 0.5, 0.75, 1]) expect(after(Math.max(0, mm * share - 1e-6))).toBe(true);
          expect(after(mm + 1e-3)).toBe(false);
        }
      }
    }),
    { numRuns: 25 },
  );
  expect(met).toBeGreaterThan(3);
});

/** The pieces of all the bays that are as near to a centre as the nearest of them, with everything taken at once. */
function nearestAtOnce(one: Room, { surface, speaker, centre }: Mounted, neighbours: readonly Mounted[]) {
  const fitting = fittingOf(speaker, one.checks);
  const awayMm = (piece: Region): number =>
    piece.filter((ring) => isInside(centre, ring)).length % 2 === 1
      ? 0
      : Math.min(...piece.flatMap(sidesOf).map((side) => distanceToSegmentMm(centre, side)));
  const all = piecesOf(baysOf(surface, fitting)).flatMap((bay) =>
    piecesOf(clearInBay(bay, { surface, fitting, neighbours, arcMm: 0.1 })),
  );
  const leastMm = Math.min(...all.map(awayMm));
  return all.filter((piece) => awayMm(piece) <= leastMm + 0.01);
}

const otherwise = (a: Region, b: Region): number => areaMm2(difference(a, b)) + areaMm2(difference(b, a));

/** How many openings were looked at. */
function expectNearest(one: Room): number {
  const mounted = mountedIn(one);
  for (const each of mounted) {
    const neighbours = neighboursOf(each, mounted);
    const slide = slideOf({ room: one, mounted: each, neighbours });
    const plain = nearestAtOnce(one, each, neighbours);
    expect(slide === null).toBe(plain.length === 0);
    if (slide === null) continue;
    expect(Math.min(...plain.map((piece) => otherwise(piece, slide.piece)))).toBeLessThan(0.01);
  }
  return mounted.length;
}

describe("the piece shown is the nearest of all that is left when everything is taken at once", () => {
  test("in any room, clear or not", () => {
    let compared = 0;
    fc.assert(
      fc.property(randomRoom, (parts) => {
        compared += expectNearest(room(parts));
      }),
      { numRuns: 40 },
    );
    expect(compared).toBeGreaterThan(40);
  });

  const models = {
    small: { ...MODEL, opening: { round: "20 mm" }, flange: { round: "30 mm" } },
    tall: {
      ...MODEL,
      opening: { width: "20 mm", height: "520 mm" },
      flange: { width: "30 mm", height: "530 mm" },
    },
    large: {
      ...MODEL,
      opening: { width: "1.1 m", height: "520 mm" },
      flange: { width: "1.2 m", height: "530 mm" },
    },
  };
  const openings = (all: readonly (readonly [model: string, leftMm: number, frontMm: number])[]): Room =>
    room({
      models,
      speakers: all.map(([model, leftMm, frontMm], index) => ({
        id: `S${index}`,
        model,
        at: { left: `${leftMm} mm`, front: `${frontMm} mm` },
      })),
    });

  test("where a large opening lies over a centre that the four nearest leave clear, behind those", () => {
    const four = [2098, 2099, 2101, 2102].map((frontMm) => ["tall", 2060, frontMm] as const);
    const one = openings([["small", 2000, 2100], ...four, ["large", 1500, 2100]]);
    expectNearest(one);
    // The large one's flange ends at 2100, the small one's own half is 15: to the other side 885 is the nearest.
    const lefts =
      slides(one)[0]
        ?.piece.flat()
        .map(({ u }) => 4000 - u) ?? [];
    expect(Math.min(...lefts)).toBeCloseTo(2115, 1);
  });

  test("where openings of three sizes crowd one bay", () => {
    const crowd = fc.array(
      fc.tuple(
        fc.constantFrom("small", "tall", "large"),
        fc.integer({ min: 100, max: 3900 }),
        fc.integer({ min: 1850, max: 2350 }),
      ),
      { minLength: 6, maxLength: 10 },
    );
    fc.assert(
      fc.property(crowd, (all) => {
        expectNearest(openings(all));
      }),
      { numRuns: 20 },
    );
  });

  /** So many of 60 mm, twenty in each bay. */
  const boxes = (count: number): readonly Parts[] =>
    Array.from({ length: count }, (_, index) => {
      const [left, front] = [80 + 190 * (index % 20), 250 + 600 * Math.floor(index / 20)];
      return {
        ...{ name: `box ${index}`, on: "ceiling", corner: { left: `${left} mm`, front: `${front} mm` } },
        opposite: { left: `${left + 60} mm`, front: `${front + 60} mm` },
      };
    });
  const small = (left: string, front: string, id: string): Parts => ({
    id,
    model: "small",
    at: { left, front },
  });

  test("among more than a hundred obstructions, clear and not", () => {
    const speakers = [
      small("1 m", "2.05 m", "CLEAR"),
      small("1.1 m", "2.08 m", "BESIDE"),
      small("1.05 m", "2.08 m", "ON-BOX"),
      small("2 m", "1.8 m", "ON-JOIST"),
    ];
    const one = room({ models, obstructions: boxes(150), speakers });
    expect(expectNearest(one)).toBe(4);
    expect(slides(one).map((slide) => slide?.ways === null)).toContain(true);
    expect(slides(one).map((slide) => slide !== null && slide.ways !== null)).toContain(true);
  });

  test("nothing where more than a hundred leave nothing", () => {
    const large = { id: "A", model: "large", at: { left: "2 m", front: "3.3 m" } };
    const one = room({ models, obstructions: boxes(200), speakers: [large] });
    expect(expectNearest(one)).toBe(1);
    expect(slides(one)).toEqual([null]);
  });
});
