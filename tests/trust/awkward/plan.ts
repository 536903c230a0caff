import fc from "fast-check";
import type { Parts } from "../../rooms/build.js";
import { leastFirst, mm, type Point, type Rectangle } from "./choice.js";

/*
 * The room seen from above: a box, or an outline of as many corners as there may be.
 */

export interface PlanChoice {
  readonly shape: "box" | "comb" | "round" | "star";
  readonly widthMm: number;
  readonly lengthMm: number;
  /** Of a round room or a star. */
  readonly corners: number;
}

const side = leastFirst(6000, 12_000, 30_000, 40_000, 60_000, 100_000);

export const planChoice: fc.Arbitrary<PlanChoice> = fc.record({
  shape: leastFirst("box", "box", "box", "comb", "round", "star"),
  widthMm: side,
  lengthMm: side,
  corners: leastFirst(24, 60),
});

export interface Plan extends Pick<PlanChoice, "shape" | "widthMm" | "lengthMm"> {
  /** Keys of the room file's `room`. */
  readonly room: Parts;
  readonly walls: readonly string[];
  /** Where things stand: all of a box, of another room a part that lies inside and to one side of both walls of `tapes`. */
  readonly core: Rectangle;
  /** Whether two corners make a rectangle that lies as the room does. */
  readonly isSquare: boolean;
  /** The two walls that tapes hook on: joists are counted from the first. */
  readonly hooks: readonly [string, string];
  readonly tapes: (point: Point) => Parts;
}

const HEIGHT_MM = 5000;

export function planOf(choice: PlanChoice): Plan {
  const { shape, widthMm, lengthMm } = choice;
  const height = { height: mm(HEIGHT_MM), measured_to: "framing" };
  if (shape !== "box") return outlined(choice, height);
  return {
    ...{ shape, widthMm, lengthMm, core: { leftMm: 0, frontMm: 0, widthMm, lengthMm }, isSquare: true },
    room: { width: mm(widthMm), length: mm(lengthMm), ...height },
    walls: ["front", "right", "back", "left"],
    hooks: ["front", "left"],
    tapes: ({ leftMm, frontMm }) => ({ left: mm(leftMm), front: mm(frontMm) }),
  };
}

function outlined(choice: PlanChoice, height: Parts): Plan {
  const { shape, widthMm, lengthMm } = choice;
  const outline =
    shape === "comb" ? combed(choice) : roundIn(wholeOf(choice), choice.corners, shape === "star");
  const walls = outline.map((_, index) => `w${index}`);
  const [corner, next, last] = [outline[0], outline[1], outline.at(-1)];
  const hooks = ["w0", `w${outline.length - 1}`] as const;
  if (corner === undefined || next === undefined || last === undefined) throw new RangeError("no corners");
  return {
    ...{ shape, widthMm, lengthMm, walls, hooks, core: coreOf(choice), isSquare: shape === "comb" },
    room: { outline: cornersOf(outline), walls, ...height },
    tapes: (point) => ({
      [hooks[0]]: mm(distanceMm(point, corner, next)),
      [hooks[1]]: mm(distanceMm(point, last, corner)),
    }),
  };
}

const wholeOf = ({ widthMm, lengthMm }: PlanChoice): Rectangle => ({
  leftMm: 0,
  frontMm: 0,
  widthMm,
  lengthMm,
});

/** In the inner circle of a round room; in a star between the lines of the two walls that make its first point. */
function coreOf({ shape, widthMm, lengthMm }: PlanChoice): Rectangle {
  const part = (left: number, front: number, width: number, length: number): Rectangle => ({
    leftMm: left * widthMm,
    frontMm: front * lengthMm,
    widthMm: width * widthMm,
    lengthMm: length * lengthMm,
  });
  if (shape === "comb") return part(0, 0, 1, TEETH_FROM);
  return shape === "star" ? part(0.44, 0.5, 0.12, 0.25) : part(0.175, 0.175, 0.65, 0.65);
}

const TEETH = 14;
/** As a share of the room's length. */
const TEETH_FROM = 0.4;

/** Narrow bays side by side along the back wall, with walls between them. */
function combed({ widthMm, lengthMm }: PlanChoice): readonly Point[] {
  const at = (across: number, along: number): Point => ({
    leftMm: (widthMm * across) / TEETH,
    frontMm: lengthMm * along,
  });
  const teeth = Array.from({ length: TEETH }, (_, index) => TEETH - index).flatMap((right) => [
    ...[at(right, 1), at(right - 0.5, 1), at(right - 0.5, TEETH_FROM), at(right - 1, TEETH_FROM)],
  ]);
  return [at(0, 0), at(TEETH, 0), ...teeth];
}

/** Of every other corner of a star, as a share of the others' distance from the middle. */
const STAR_INNER = 0.6;

/** So many corners round the middle, the first of them in front. */
export function roundIn(
  { leftMm, frontMm, widthMm, lengthMm }: Rectangle,
  corners: number,
  isStar: boolean,
): readonly Point[] {
  return Array.from({ length: corners }, (_, index) => {
    const turn = (2 * Math.PI * index) / corners;
    const share = isStar && index % 2 === 1 ? STAR_INNER : 1;
    return {
      leftMm: leftMm + (widthMm / 2) * (1 + share * Math.sin(turn)),
      frontMm: frontMm + (lengthMm / 2) * (1 - share * Math.cos(turn)),
    };
  });
}

export const cornersOf = (outline: readonly Point[]): readonly (readonly string[])[] =>
  outline.map(({ leftMm, frontMm }) => [mm(leftMm), mm(frontMm)]);

/** Square to the line through two corners; the room lies to the right of who goes along it on a plan, front wall up. */
function distanceMm(point: Point, from: Point, to: Point): number {
  const [across, along] = [to.leftMm - from.leftMm, to.frontMm - from.frontMm];
  const area = across * (point.frontMm - from.frontMm) - along * (point.leftMm - from.leftMm);
  return area / Math.hypot(across, along);
}
