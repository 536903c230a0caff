import { cross, dot, multiply, norm, subtract } from "mathjs";
import { describe, expect, test } from "vitest";
import { toWorld } from "../../src/geometry/frame.js";
import type { Vector } from "../../src/geometry/vector.js";
import { axisOf, leanOf } from "../../src/listen/axis.js";
import { surfaceNamed } from "../../src/room/room.js";
import { job, openingNamed } from "../rooms/job.js";
import { sloped } from "../rooms/not-boxes.js";

/*
 * Aim on a slope from points in the world, by another library: nothing of ours but the room and what is under test.
 * The plain room (4 x 6 m) with a slope from 2 m to 4 m; the seat in its middle, ear at 1.2 m.
 */

type Triple = [number, number, number];
const triple = ({ x, y, z }: Vector): Triple => [x, y, z];
const unit = (a: Triple): Triple => multiply(a, 1 / Number(norm(a))) as Triple;
const crossed = (a: Triple, b: Triple): Triple => cross(a, b) as Triple;
const less = (a: Triple, b: Triple): Triple => subtract(a, b) as Triple;

/** Where the slope lies over a point of the plan, by its rise. */
const HEIGHT: Readonly<Record<"front" | "back" | "left" | "right", (x: number, y: number) => number>> = {
  front: (_x, y) => 2000 + ((6000 - y) / 6000) * 2000,
  back: (_x, y) => 2000 + (y / 6000) * 2000,
  left: (x) => 2000 + (x / 4000) * 2000,
  right: (x) => 2000 + ((4000 - x) / 4000) * 2000,
};
const SEAT: Triple = [2000, 3000, 1200];

describe.each(["front", "back", "left", "right"] as const)("on a slope that is low at the %s", (low) => {
  const one = job({
    ...sloped(low),
    speakers: [{ id: "S", model: "tilted", on: "slope", at: { left: "1 m", front: "1500 mm" } }],
  });
  const opening = openingNamed(one);
  const { frame } = surfaceNamed(one.room, "slope");
  const framing = triple(toWorld(frame, opening.centre));
  const corner = (x: number, y: number): Triple => [x, y, HEIGHT[low](x, y)];
  const [a, b, c] = [corner(0, 0), corner(4000, 0), corner(0, 6000)];
  const upward = unit(crossed(less(b, a), less(c, a)));
  const down = multiply(upward, -1) as Triple;

  test("the loudspeaker is on the slope, its face a board square below the framing", () => {
    const [x, y, z] = framing;
    expect(z).toBeCloseTo(HEIGHT[low](x, y), 6);
    const drop = less(triple(opening.position), framing);
    expect(Number(norm(crossed(drop, down)))).toBeLessThan(1e-9);
    expect(Number(dot(drop, down))).toBeCloseTo(12.5, 9);
  });

  test("the axis leans in the plane of the slope's normal and the seat, by the tilt", () => {
    const toSeat = unit(less(SEAT, triple(opening.position)));
    const lean = leanOf(opening, { x: SEAT[0], y: SEAT[1], z: SEAT[2] });
    const axis = axisOf(opening, lean);
    if (axis === null) throw new Error("no axis");
    // Tilted by 20 degrees from the normal, square to the normal of that plane, on the seat's side.
    expect(Number(dot(triple(axis), down))).toBeCloseTo(Math.cos((20 * Math.PI) / 180), 9);
    expect(Number(dot(triple(axis), crossed(down, toSeat)))).toBeCloseTo(0, 9);
    const offNormal = Math.acos(Number(dot(toSeat, down)));
    const left = Math.abs(offNormal - (20 * Math.PI) / 180);
    expect(opening.aim?.offAxisDeg).toBeCloseTo((left * 180) / Math.PI, 6);
  });

  test("the arrow on the sheet, held to the slope with its top to the front, points to the seat", () => {
    const toSeat = less(SEAT, triple(opening.position));
    const inPlane = less(toSeat, multiply(down, Number(dot(toSeat, down))) as Triple);
    // The sheet's top: toward the front wall, in the slope. Who faces f with t upward has f x t to the right.
    const front: Triple = [0, 1, 0];
    const top = unit(less(front, multiply(down, Number(dot(front, down))) as Triple));
    const right = crossed(upward, top);
    const deg = (Math.atan2(-Number(dot(inPlane, right)), Number(dot(inPlane, top))) * 180) / Math.PI;
    expect(opening.aim?.arrowDeg).toBeCloseTo((deg + 360) % 360, 6);
  });

  test("direction and distance are those of the point in the world", () => {
    const [x = 0, y = 0, z = 0] = less(triple(opening.position), SEAT);
    expect(opening.direction.azimuthDeg).toBeCloseTo((Math.atan2(-x, y) * 180) / Math.PI, 9);
    expect(opening.direction.elevationDeg).toBeCloseTo((Math.atan2(z, Math.hypot(x, y)) * 180) / Math.PI, 9);
    expect(opening.direction.distanceMm).toBeCloseTo(Math.hypot(x, y, z), 6);
  });
});
