import fc from "fast-check";
import { acos, cross, dot, lusolve, type Matrix, norm, rotate } from "mathjs";
import { describe, expect, test } from "vitest";
import { angleBetweenDeg, subtract, type Vector } from "../../src/geometry/vector.js";
import { aimOf } from "../../src/listen/aim.js";
import { axisOf, leanOf } from "../../src/listen/axis.js";
import { mount } from "../../src/listen/mounted.js";
import { surfaceNamed } from "../../src/room/room.js";
import { type Parts, room, speakerNamed } from "../rooms/build.js";
import { job, openingNamed } from "../rooms/job.js";

/*
 * The plain room is 4 x 6 x 2.6 m with its seat in the middle, ear at 1.2 m: the finished ceiling (12.5 mm of board)
 * is 2600 - 12.5 - 1200 = 1387.5 over the ear.
 */
const OVER_EAR_MM = 1387.5;
const tilted = (tilt: string): Parts => ({ tilted: { baffle_tilt: tilt } });
const at = (left: number, front: number): Parts => ({
  speakers: [{ id: "T", model: "tilted", at: { left: `${left} mm`, front: `${front} mm` } }],
});
const aimAt = (left: number, front: number, more: Parts = {}) =>
  openingNamed(job({ ...at(left, front), ...more })).aim;

describe("in a ceiling", () => {
  test("in front of the seat it points back: half a turn from v, toward the middle of the back wall", () => {
    // The plain room's joists run left-right, so that the arrow stands square to them.
    expect(aimAt(2000, 1500)).toMatchObject({
      target: "middle",
      arrowDeg: 180,
      sight: { wall: "back", mm: 2000 },
      fromRun: { degrees: 90, toward: "back" },
    });
  });

  test("left in front it points back and to the RIGHT, which is left on the sheet: anticlockwise under 180", () => {
    // From (left 1000, front 1500) to (2000, 3000): 1000 to the right and 1500 back; on the sheet u is to the LEFT.
    const aim = aimAt(1000, 1500);
    const deg = 180 - (Math.atan2(1000, 1500) * 180) / Math.PI;
    expect(aim?.arrowDeg).toBeCloseTo(deg, 9);
    // On to the back wall: 4500 back from the speaker, so 3000 to the right of it: 4000 from the left, the corner.
    expect(aim?.sight?.mm).toBeCloseTo(0, 6);
    expect(aim?.fromRun?.end).toBe("right");
    expect(aim?.fromRun?.degrees).toBeCloseTo((Math.atan2(1500, 1000) * 180) / Math.PI, 9);
    expect(aim?.fromRun?.toward).toBe("back");
  });

  test("the sight mark is taped from the nearer corner, on bare walls unless the stage says boarded", () => {
    // From (1000, 2000) to the seat: 1000 right, 1000 back. The right wall is 3000 away: 5000 from the front there.
    expect(aimAt(1000, 2000)?.sight).toMatchObject({ wall: "right", from: "back" });
    expect(aimAt(1000, 2000)?.sight?.mm).toBeCloseTo(1000, 6);
    // Boarded, that face stands 12.5 nearer, and so does the back wall's in the corner: 1000 + 12.5 - 12.5.
    expect(aimAt(1000, 2000, { stage: { walls: "boarded" } })?.sight?.mm).toBeCloseTo(1000, 6);
    // From (1000, 2500): 1000 right and 500 back; bare 2500 + 1500 = 4000 from the front, 2000 from the back;
    // boarded the mark is 12.5 / 2 sooner and the corner 12.5 nearer.
    expect(aimAt(1000, 2500)?.sight?.mm).toBeCloseTo(2000, 6);
    expect(aimAt(1000, 2500, { stage: { walls: "boarded" } })?.sight?.mm).toBeCloseTo(2000 + 6.25 - 12.5, 6);
  });

  test("off axis it is what tilt and place leave: |t - angle(n, w)|", () => {
    const away = Math.hypot(1000, 1500);
    const fromNormalDeg = (Math.atan2(away, OVER_EAR_MM) * 180) / Math.PI;
    expect(aimAt(1000, 1500)?.offAxisDeg).toBeCloseTo(fromNormalDeg - 20, 9);
  });

  test("square over the target there is no arrow", () => {
    // 1 degree is 1387.5 x tan(1 deg) = 24.2 mm off.
    expect(aimAt(2000, 2980)).toMatchObject({ arrowDeg: null, sight: null, fromRun: null });
    expect(aimAt(2000, 2980)?.offAxisDeg).toBeCloseTo(20 - (Math.atan2(20, OVER_EAR_MM) * 180) / Math.PI, 9);
    expect(aimAt(2000, 2970)?.arrowDeg).toBe(180);
  });

  test("a straight one has no arrow, only what it is off axis", () => {
    const aim = aimAt(1000, 1500, { models: tilted("0 deg") });
    expect(aim).toMatchObject({ arrowDeg: null, sight: null, fromRun: null });
    expect(aim?.offAxisDeg).toBeCloseTo((Math.atan2(Math.hypot(1000, 1500), OVER_EAR_MM) * 180) / Math.PI, 9);
  });

  test("aimed at nothing there is no aim; at another seat or a point, the aim is there", () => {
    const withAim = (aim: string | Parts): Parts => ({
      seats: [
        { name: "middle", at: { left: "2 m", front: "3 m" }, ear: "1.2 m", reference: true },
        { name: "side", at: { left: "1 m", front: "3 m" }, ear: "1.2 m" },
      ],
      speakers: [{ id: "T", model: "tilted", at: { left: "1 m", front: "1.5 m" }, aim }],
    });
    expect(openingNamed(job(withAim("none"))).aim).toBeNull();
    expect(openingNamed(job(withAim("side"))).aim).toMatchObject({ target: "side", arrowDeg: 180 });
    // A point of the room to the left of it, at the ceiling's height: anticlockwise of v by 270, to the sheet's right.
    const point = { left: "0.2 m", front: "1.5 m", up: "2 m" };
    expect(openingNamed(job(withAim(point))).aim).toMatchObject({ target: "point", arrowDeg: 270 });
  });
});

describe("a tilted rectangle points where `turn` says", () => {
  const upright = (turn: string): Parts => ({
    models: { upright: { baffle_tilt: "20 deg" } },
    speakers: [{ id: "T", model: "upright", at: { left: "2 m", front: "1.5 m" }, turn }],
  });

  test.each([
    { turn: "0 deg", arrow: 0 },
    { turn: "90 deg", arrow: 90 },
    { turn: "180 deg", arrow: 180 },
    { turn: "270 deg", arrow: 270 },
  ])("turn $turn", ({ turn, arrow }) => {
    expect(openingNamed(job(upright(turn))).aim?.arrowDeg).toBe(arrow);
  });

  test("turned away from the seat it leaves the sum of both angles, toward it their difference", () => {
    // The seat is 1500 back of it: atan(1500 / 1387.5) = 47.23 from the normal.
    const fromNormalDeg = (Math.atan2(1500, OVER_EAR_MM) * 180) / Math.PI;
    expect(openingNamed(job(upright("0 deg"))).aim?.offAxisDeg).toBeCloseTo(fromNormalDeg + 20, 9);
    expect(openingNamed(job(upright("180 deg"))).aim?.offAxisDeg).toBeCloseTo(fromNormalDeg - 20, 9);
  });
});

describe("in a wall", () => {
  test("a tilted one high on the front wall points down, at the floor", () => {
    const high = { id: "T", model: "tilted", on: "front", at: { left: "2 m", up: "2 m" } };
    expect(openingNamed(job({ speakers: [high] })).aim).toMatchObject({
      arrowDeg: 180,
      sight: { wall: "floor", mm: 2000 - 12.5 },
      fromRun: { end: "floor", degrees: 0 },
    });
  });

  test("one at the left of the front wall points to the right, as one faces it: 270 from v", () => {
    const level = { id: "T", model: "tilted", on: "front", at: { left: "1 m", up: "1.2 m" } };
    expect(openingNamed(job({ speakers: [level] })).aim).toMatchObject({
      arrowDeg: 270,
      sight: { wall: "right", from: "floor", mm: 1200 },
      fromRun: { degrees: 90, toward: "right" },
    });
  });
});

/*
 * Facts of the trade (computed there): 45 degrees up from the seat with a tilt of 30 degrees the axis is 15 degrees
 * off when turned right, 23 when the bearing is 30 wrong, 52 mirrored at azimuth 45, 75 reversed.
 */
describe("what a wrong turn costs, 45 degrees up, tilt 30", () => {
  const DIAGONAL = OVER_EAR_MM / Math.SQRT2;
  const said = { ...at(2000 - DIAGONAL, 3000 - DIAGONAL), models: tilted("30 deg") };
  const opening = openingNamed(job(said));
  const toSeat = subtract(room(said).reference.ear, opening.position);

  function offWhenTurned(wrongDeg: number): number {
    const lean = leanOf(opening, room(said).reference.ear);
    if (lean === null) throw new Error("no lean");
    const [u = 0, v = 0] = rotate([lean.u, lean.v], (wrongDeg * Math.PI) / 180) as number[];
    const axis = axisOf(opening, { u, v });
    if (axis === null) throw new Error("no axis");
    return angleBetweenDeg(axis, toSeat);
  }

  test.each([
    { how: "right", wrongDeg: 0, costDeg: 15 },
    { how: "30 wrong", wrongDeg: 30, costDeg: 23 },
    // The mirror image of azimuth 45 is azimuth -45: a quarter turn.
    { how: "mirrored", wrongDeg: 90, costDeg: 52 },
    { how: "reversed", wrongDeg: 180, costDeg: 75 },
  ])("$how: $costDeg", ({ wrongDeg, costDeg }) => {
    expect(opening.direction.azimuthDeg).toBeCloseTo(45, 6);
    expect(opening.direction.elevationDeg).toBeCloseTo(45, 6);
    expect(Math.round(offWhenTurned(wrongDeg))).toBe(costDeg);
  });
});

/** The same aim from planes and vectors of a general library (mathjs), in world coordinates, knowing no frame. */
describe("against vectors of a general library", () => {
  const list = ({ x, y, z }: Vector): number[] => [x, y, z];
  const angleDeg = (a: number[], b: number[]): number =>
    (Number(acos(Math.min(1, Math.max(-1, dot(a, b) / Number(norm(a)) / Number(norm(b)))))) * 180) / Math.PI;
  const UP = [0, 0, 1];
  const TO_FRONT = [0, 1, 0];
  /** Into the room, and the direction that the sheet calls up. */
  const SIDES: Readonly<Record<string, { readonly inward: number[]; readonly up: number[] }>> = {
    ceiling: { inward: [0, 0, -1], up: TO_FRONT },
    front: { inward: [0, -1, 0], up: UP },
    left: { inward: [1, 0, 0], up: UP },
    right: { inward: [-1, 0, 0], up: UP },
    back: { inward: [0, 1, 0], up: UP },
  };

  test("arrow, angle off axis and sight mark of any round one in any surface", () => {
    const one = room({
      ...at(1000, 1000),
      stage: { walls: "bare" },
      models: tilted("20 deg"),
    });
    const speaker = speakerNamed(one, "T");
    const share = fc.integer({ min: 5, max: 95 }).map((n) => n / 100);
    fc.assert(
      fc.property(fc.constantFrom(...Object.keys(SIDES)), share, share, (name, across, up) => {
        const surface = surfaceNamed(one, name);
        const [, , far] = surface.edges;
        const opposite = far?.from;
        if (opposite === undefined) throw new Error("no far corner");
        const [low = opposite] = surface.edges.map(({ from }) => from);
        const centre = {
          u: low.u + across * (opposite.u - low.u),
          v: low.v + up * (opposite.v - low.v),
        };
        const mounted = mount(speaker, surface, centre);
        const aim = aimOf(mounted, "bare");
        const { inward = UP, up: sheetUp = UP } = SIDES[name] ?? {};
        const from = list(mounted.position);
        const toSeat = list(one.reference.ear).map((part, index) => part - (from[index] ?? 0));
        const along = dot(toSeat, inward);
        const flat = toSeat.map((part, index) => part - along * (inward[index] ?? 0));
        fc.pre(angleDeg(inward, toSeat) > 1.01);
        // Anticlockwise as seen facing the surface, whose normal points at the viewer.
        const turn = Math.sign(dot(cross(sheetUp, flat) as number[], inward));
        const arrow = ((turn >= 0 ? 1 : -1) * angleDeg(sheetUp, flat) + 360) % 360;
        const apart = Math.abs((aim?.arrowDeg ?? Number.NaN) - arrow);
        expect(Math.min(apart, 360 - apart)).toBeLessThan(1e-4);
        expect(aim?.offAxisDeg).toBeCloseTo(Math.abs(20 - angleDeg(inward, toSeat)), 4);
        expect(aim?.sight?.mm).toBeCloseTo(sightByPlanes(from, flat, inward), 4);
      }),
      { numRuns: 200 },
    );
  });

  /** Faces of the bare room: a normal and an offset each. */
  const FACES: readonly { readonly normal: number[]; readonly offset: number }[] = [
    { normal: [1, 0, 0], offset: 0 },
    { normal: [1, 0, 0], offset: 4000 },
    { normal: [0, 1, 0], offset: 0 },
    { normal: [0, 1, 0], offset: 6000 },
    { normal: [0, 0, 1], offset: 0 },
    { normal: [0, 0, 1], offset: 2600 },
  ];

  /**
   * Where the arrow's line first meets a face, and from there to the nearest of the two corners of the room on that
   * face in the surface's plane: every corner is where three faces meet, solved as linear equations.
   */
  function sightByPlanes(from: number[], flat: number[], inward: number[]): number {
    const met = FACES.filter(({ normal }) => Math.abs(dot(normal, inward)) < 0.5)
      .map((face) => ({ face, ahead: (face.offset - dot(face.normal, from)) / dot(face.normal, flat) }))
      .filter(({ ahead }) => ahead >= -1e-9)
      .sort((a, b) => a.ahead - b.ahead)[0];
    if (met === undefined) throw new Error("the line meets no face");
    const point = from.map((part, index) => part + met.ahead * (flat[index] ?? 0));
    const sides = FACES.filter(
      ({ normal }) => Math.abs(dot(normal, inward)) < 0.5 && Math.abs(dot(normal, met.face.normal)) < 0.5,
    );
    const distances = sides.map((side) => {
      const corner = lusolve(
        [met.face.normal, side.normal, inward],
        [met.face.offset, side.offset, dot(inward, point)],
      ) as number[][] | Matrix;
      const flatCorner = (corner as number[][]).map(([part = 0]) => part);
      return Number(norm(flatCorner.map((part, index) => part - (point[index] ?? 0))));
    });
    return Math.min(...distances);
  }
});
