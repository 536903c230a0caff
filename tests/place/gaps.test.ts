import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Shape } from "../../src/geometry/shape.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";
import { mountedIn } from "../../src/listen/mounted.js";
import { memberGaps } from "../../src/place/gaps.js";
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
