import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bodyOfBand, bodyOfShape, separationMm } from "../../src/geometry/body.js";
import { nearestOnSegment } from "../../src/geometry/distance.js";
import type { Shape } from "../../src/geometry/shape.js";
import { directionOf, inner, minus, plus, times } from "../../src/geometry/surface-point.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";
import { type Mounted, mount, mountedIn } from "../../src/listen/mounted.js";
import { type KnownFraming, memberGaps, nearestGap, type Side, sideGaps } from "../../src/place/gaps.js";
import type { Member } from "../../src/room/room.js";
import { only } from "../only.js";
import { type Parts, room } from "../rooms/build.js";
import { bandBlock } from "../rooms/by-hand.js";
import { job, openingNamed } from "../rooms/job.js";
import { randomRoom } from "../rooms/random.js";

const on = (surface: string, at: Parts, more: Parts = {}) =>
  openingNamed(job({ ...more, speakers: [{ id: "S", on: surface, at }] }));

/* The plain room: joists of 45 every 600 from the front, opening 200 across. */
describe("gaps in the plain room", () => {
  test("to both sides across the run, before is toward the wall that is measured from", () => {
    // 1550 from the front: 350 past joist 2, 250 before joist 3; less 22.5 and 100.
    const { gap, sides } = on("ceiling", { left: "2 m", front: "1550 mm" });
    expect(sides.before).toEqual({
      mm: expect.closeTo(227.5, 9),
      member: { surface: "ceiling", kind: "joist", number: 2 },
    });
    expect(sides.after).toEqual({
      mm: expect.closeTo(127.5, 9),
      member: { surface: "ceiling", kind: "joist", number: 3 },
    });
    expect(gap).toEqual(sides.after);
  });

  test("before the first joist there is none on that side", () => {
    const { sides } = on("ceiling", { left: "2 m", front: "300 mm" });
    expect(sides.before).toBeNull();
    expect(sides.after?.member.number).toBe(1);
  });

  test("near a wall's top the plate is nearest, though it is no side across the studs", () => {
    // Two plates of 38.1 under 2600: 2523.8; centre at 2380, radius 100: 43.8. Stud 2 is 300 - 22.5 - 100 away.
    const { gap, sides } = on("front", { left: "900 mm", up: "2380 mm" });
    expect(gap).toEqual({
      mm: expect.closeTo(43.8, 9),
      member: { surface: "front", kind: "top-plate", number: 2 },
    });
    expect(sides.before).toEqual({
      mm: expect.closeTo(177.5, 9),
      member: { surface: "front", kind: "stud", number: 1 },
    });
    expect(sides.after).toEqual({
      mm: expect.closeTo(177.5, 9),
      member: { surface: "front", kind: "stud", number: 2 },
    });
  });

  test("of doubled joists the nearer ones are measured to, and none of those behind them", () => {
    // Pairs of 38 side by side: 938 ends at 957 and 1700 begins at 1681; the opening is 1200 to 1400.
    const at = ["300 mm", "338 mm", "900 mm", "938 mm", "1700 mm", "1738 mm", "2300 mm", "2338 mm"];
    const ceiling = { at: [...at, "6 m"], member: { width: "38 mm", depth: "220 mm" } };
    const doubled = { framing: { ceiling }, speakers: [{ id: "S", at: { left: "2 m", front: "1300 mm" } }] };
    const gaps = memberGaps(only(mountedIn(room(doubled)))) ?? [];
    expect(gaps.map(({ mm, member, side }) => [mm, member.number, side])).toEqual([
      [expect.closeTo(243, 9), 4, "above"],
      [expect.closeTo(281, 9), 5, "below"],
    ]);
  });

  test("an opening that ends where the measured framing does lies in what is known", () => {
    // Joist 2 ends at 1222.5, and the opening of 200 at 1122.5 as well.
    const short = { framing: { ceiling: { at: ["600 mm", "1200 mm"] } } };
    expect(on("ceiling", { left: "2 m", front: "1122.5 mm" }, short).gap?.mm).toBeCloseTo(-45, 9);
    expect(on("ceiling", { left: "2 m", front: "1122.6 mm" }, short).gap).toBeNull();
  });

  test("unknown where the framing is, and past the last measured member", () => {
    const at = { left: "2 m", front: "3 m" };
    expect(on("ceiling", at, { framing: { ceiling: null } })).toMatchObject({
      gap: null,
      sides: { before: null, after: null },
      bay: null,
    });
    const short = { framing: { ceiling: { at: ["600 mm", "1200 mm"] } } };
    expect(on("ceiling", at, short)).toMatchObject({ gap: null, bay: null });
    expect(on("ceiling", { left: "2 m", front: "900 mm" }, short).gap?.mm).toBeCloseTo(177.5, 9);
  });
});

describe("bays, as a person counts them from the wall that is measured from", () => {
  test.each([
    { front: "300 mm", number: 1 },
    { front: "900 mm", number: 2 },
    { front: "1500 mm", number: 3 },
    { front: "5700 mm", number: 10 },
  ])("$front from the front: bay $number", ({ front, number }) => {
    expect(on("ceiling", { left: "2 m", front }).bay).toEqual({ number, from: "front" });
  });

  test("measured from the back they are counted from there", () => {
    const back = { framing: { ceiling: { from: "back" } } };
    expect(on("ceiling", { left: "2 m", front: "300 mm" }, back).bay).toEqual({ number: 10, from: "back" });
  });

  test("a joist against the wall leaves no bay before it", () => {
    const against = { framing: { ceiling: { at: null, first: "22.5 mm", spacing: "600 mm" } } };
    expect(on("ceiling", { left: "2 m", front: "300 mm" }, against).bay?.number).toBe(1);
    expect(on("ceiling", { left: "2 m", front: "900 mm" }, against).bay?.number).toBe(2);
  });

  test("joists that run front to back are counted from a side wall", () => {
    const along = { framing: { ceiling: { run: "front-back", from: "right", at: ["700 mm", "1400 mm"] } } };
    expect(on("ceiling", { right: "1 m", front: "2 m" }, along).bay).toEqual({ number: 2, from: "right" });
  });

  test("studs likewise; end studs and plates are no bays", () => {
    expect(on("left", { front: "1500 mm", up: "1 m" }).bay).toEqual({ number: 3, from: "front" });
  });
});

/** Points along an opening's edge. */
function edgeOf(shape: Shape, { u, v }: SurfacePoint, count: number): SurfacePoint[] {
  return Array.from({ length: count }, (_, index) => {
    const turn = (2 * Math.PI * index) / count;
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    if (shape.kind === "round")
      return { u: u + (c * shape.diameterMm) / 2, v: v + (s * shape.diameterMm) / 2 };
    const reach = Math.max(Math.abs(c) / shape.widthMm, Math.abs(s) / shape.heightMm);
    return { u: u + c / reach / 2, v: v + s / reach / 2 };
  });
}

test("in any room the gap is the least distance from points sampled along the opening's edge", () => {
  const COUNT = 2000;
  let apart = 0;
  let cutting = 0;
  fc.assert(
    fc.property(randomRoom, (parts) => {
      for (const mounted of mountedIn(room(parts))) {
        const { speaker, centre } = mounted;
        const edge = edgeOf(speaker.opening, centre, COUNT);
        // Neighbouring samples are at most this far apart, corners of a rectangle included.
        const stepMm = (2 * Math.PI * 350) / COUNT;
        for (const { mm, of } of memberGaps(mounted) ?? []) {
          const { u, v } = bandBlock(of);
          const distances = edge.map((point) =>
            Math.hypot(
              Math.max(u[0] - point.u, 0, point.u - u[1]),
              Math.max(v[0] - point.v, 0, point.v - v[1]),
            ),
          );
          const least = Math.min(...distances);
          if (mm > 0) {
            apart += 1;
            expect(Math.abs(least - mm)).toBeLessThan(stepMm);
          }
          if (least > 0) expect(mm).toBeGreaterThan(-stepMm);
          if (mm < 0) cutting += 1;
        }
      }
    }),
    { numRuns: 40 },
  );
  expect(apart).toBeGreaterThan(100);
  expect(cutting).toBeGreaterThan(10);
});

/*
 * Short lengths lying any way, as in a ceiling that was altered again and again. `tests/geometry/body.test.ts` holds the
 * distance between two to brute force; here all lengths are measured to, one by one, where the house picks a few.
 */
describe("among lengths of framing that lie any way", () => {
  const rooms = (): readonly Mounted[] =>
    [
      { run: "left-right", from: "front" },
      { run: "left-right", from: "back" },
      { run: "front-back", from: "left" },
      { run: "front-back", from: "right" },
    ].flatMap((laid) =>
      ["round", "upright"].flatMap((model) => {
        const ceiling = { ...laid, at: null, first: "300 mm", spacing: "600 mm" };
        const speakers = [{ id: "S", model, at: { left: "1 m", front: "1 m" } }];
        return mountedIn(room({ framing: { ceiling }, speakers }));
      }),
    );

  // Places on a grid of 50, so that lengths touch the opening's middle lines and end level with it.
  const onGrid = fc.integer({ min: 0, max: 60 }).map((steps) => 50 * steps);
  const place = fc.record({ u: onGrid, v: onGrid });
  const lengths = fc.array(
    fc
      .record({ from: place, to: place, widthMm: fc.constantFrom(19, 38, 45, 89) })
      .filter(({ from, to }) => from.u !== to.u || from.v !== to.v),
    {
      minLength: 1,
      maxLength: 12,
    },
  );

  const knownIn = ({ surface: { framing } }: Mounted): KnownFraming => {
    if (framing.kind === "unknown") throw new Error("unknown");
    return framing;
  };

  function among(plain: Mounted, centre: SurfacePoint, drawn: readonly Partial<Member>[]) {
    const framing = knownIn(plain);
    const [first] = framing.members;
    if (first === undefined) throw new Error("no joist");
    const members = drawn.map((one, index): Member => ({ ...first, ...one, number: index + 1 }));
    const surface = { ...plain.surface, framing: { ...framing, members, unknown: [] } };
    const mounted = mount(plain.speaker, surface, centre);
    const opening = bodyOfShape(plain.speaker.opening, centre);
    const all = members.map((of) => ({ of, mm: separationMm(bodyOfBand(of), opening) }));
    return { mounted, framing, all };
  }

  /** Both where it lies as far aside as up or down, or where its centre line goes through the opening's middle. */
  function sidesOf({ from, to }: Member, centre: SurfacePoint): readonly Side[] {
    const { u, v } = minus(nearestOnSegment(centre, { from, to }), centre);
    const [across, up] = [u > 0 ? "right" : "left", v > 0 ? "above" : "below"] as const;
    if (Math.abs(Math.abs(u) - Math.abs(v)) < 1e-6) return [across, up];
    return [Math.abs(u) > Math.abs(v) ? across : up];
  }

  const leastOf = (all: readonly { readonly mm: number }[]): number => Math.min(...all.map(({ mm }) => mm));

  const DRAWN = { numRuns: 500 };

  test("all that is cut is told, and what is nearest on each side", () => {
    fc.assert(
      fc.property(fc.constantFrom(...rooms()), place, lengths, (plain, centre, drawn) => {
        const { mounted, all } = among(plain, centre, drawn);
        const told = memberGaps(mounted) ?? [];
        for (const { of, mm, side } of told) {
          expect(mm).toBe(all.find((one) => one.of === of)?.mm);
          expect(sidesOf(of, centre)).toContain(side);
        }
        const toldOnes = told.map(({ of }) => of);
        for (const { of, mm } of all) if (mm < 0) expect(toldOnes).toContain(of);
        for (const { of, mm } of all) {
          const sides = sidesOf(of, centre);
          expect(leastOf(told.filter(({ side }) => sides.includes(side)))).toBeLessThanOrEqual(mm);
        }
        expect(nearestGap(mounted)?.mm).toBe(leastOf(all));
      }),
      DRAWN,
    );
  });

  test("before and after it those that lie along the run and whose middles do", () => {
    fc.assert(
      fc.property(fc.constantFrom(...rooms()), place, lengths, (plain, centre, drawn) => {
        const { mounted, framing, all } = among(plain, centre, drawn);
        const { away } = framing.layout.zero;
        // Nearer to the run than to its square.
        const along = all.filter(
          ({ of }) => Math.abs(inner(directionOf(minus(of.to, of.from)), framing.direction)) > Math.SQRT1_2,
        );
        const aheadMm = ({ of }: { readonly of: Member }): number =>
          inner(minus(times(plus(of.from, of.to), 0.5), centre), away);
        const { before, after } = sideGaps(mounted);
        const [isAfter, isBefore] = [
          along.filter((one) => aheadMm(one) > 0),
          along.filter((one) => aheadMm(one) <= 0),
        ];
        expect(before?.mm ?? Number.POSITIVE_INFINITY).toBe(leastOf(isBefore));
        expect(after?.mm ?? Number.POSITIVE_INFINITY).toBe(leastOf(isAfter));
      }),
      DRAWN,
    );
  });
});
