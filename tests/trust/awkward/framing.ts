import fc from "fast-check";
import type { Parts } from "../../rooms/build.js";
import type { Ceiling } from "./ceilings.js";
import { atLeast, leastFirst, listOf, mm, type Point, scattered } from "./choice.js";
import type { Plan } from "./plan.js";

/*
 * Joists and studs as near to each other as all of them together may be, some found elsewhere, with pieces between.
 */

export interface FramingChoice {
  readonly spacingMm: number;
  readonly run: "left-right" | "front-back" | "30 deg" | "45 deg";
  readonly found: number;
  readonly blocking: number;
  readonly doubled: number;
  readonly onWalls: boolean;
  readonly onCeilings: boolean;
}

export const framingChoice: fc.Arbitrary<FramingChoice> = fc.record({
  spacingMm: leastFirst(600, 600, 400, 150, 60, 25, 10),
  run: leastFirst("left-right", "left-right", "front-back", "30 deg", "45 deg"),
  found: leastFirst(0, 0, 1500),
  blocking: leastFirst(0, 0, 100, 500),
  doubled: leastFirst(0, 0, 0, 500),
  onWalls: leastFirst(false, true),
  onCeilings: leastFirst(false, true),
});

/** Of the 10,000 that a room may have; what is left is for pieces, plates and studs at the ends. */
const MOST_ON_CEILING = 6200;
const MOST_ON_WALLS = 1400;
const MOST_ON_CEILINGS = 1200;

export function framingOf(choice: FramingChoice, plan: Plan, ceilings: readonly Ceiling[]): Parts {
  const { onWalls, onCeilings } = choice;
  // No tape hooks on a slope that meets no wall; a star's first wall looks away from half of the ceilings.
  const named = onCeilings && plan.shape !== "star" ? ceilings.filter(({ isSlope }) => !isSlope) : [];
  return {
    ceiling: ceilingFraming(choice, plan, piecesOfEach(plan, ceilings)),
    ...(onWalls && plan.shape === "box" ? wallFraming(choice, plan) : {}),
    ...Object.fromEntries(named.map(({ name }) => [name, framingOfNamed(choice, plan, named.length)])),
  };
}

/** Into how many pieces a joist is cut at most, on average, by bays of the room and by ceilings beside the main one. */
function piecesOfEach({ shape }: Plan, ceilings: readonly Ceiling[]): number {
  const ofBays = { box: 1, round: 1, star: 3, comb: 9 }[shape];
  return ofBays + Math.sqrt(ceilings.length) * (ceilings.some(({ isStar }) => isStar) ? 3 : 1);
}

function ceilingFraming(choice: FramingChoice, plan: Plan, pieces: number): Parts {
  const spacingMm = atLeast(choice.spacingMm, (acrossMm(choice, plan) * pieces) / MOST_ON_CEILING);
  const known = Math.max(0, Math.floor(knownMm(choice, plan) / spacingMm) - 2);
  const [found, doubled] = [Math.min(choice.found, known), Math.min(choice.doubled, known)];
  const blocking = plan.isSquare ? choice.blocking : 0;
  return {
    ...rowOf(spacingMm),
    ...wayOf(choice, plan),
    ...(found > 0 && plan.shape === "box" ? { found: listOf(found, foundNear(spacingMm)) } : {}),
    ...(doubled > 0 ? { doubled: listOf(doubled, (index) => index + 1) } : {}),
    ...(blocking > 0 ? { also: listOf(blocking, blockingIn(plan, spacingMm)) } : {}),
  };
}

const rowOf = (spacingMm: number): Parts => ({
  member: { width: mm(Math.max(5, Math.min(45, spacingMm / 3))), depth: "200 mm" },
  first: mm(spacingMm),
  spacing: mm(spacingMm),
});

/** What they are measured from: the wall along which they run, or the corner to one side of which they all lie. */
function wayOf({ run }: FramingChoice, { shape, hooks }: Plan): Parts {
  if (shape !== "box") return { run: "along", from: hooks[0] };
  if (run === "left-right") return { run, from: "front" };
  return run === "front-back" ? { run, from: "left" } : { run, from: { right: 0, front: 0 } };
}

/** From what they are measured from to the far end, or further. */
function acrossMm({ run }: FramingChoice, { shape, widthMm, lengthMm }: Plan): number {
  if (shape !== "box") return Math.hypot(widthMm, lengthMm);
  if (run === "left-right") return lengthMm;
  if (run === "front-back") return widthMm;
  const turn = (Number.parseFloat(run) * Math.PI) / 180;
  return widthMm * Math.sin(turn) + lengthMm * Math.cos(turn);
}

const LONGEST_TAPE_MM = 100_000;

/** As far as there are members for certain. */
const knownMm = (choice: FramingChoice, plan: Plan): number =>
  plan.shape === "box"
    ? Math.min(LONGEST_TAPE_MM, acrossMm(choice, plan))
    : 0.4 * Math.min(plan.widthMm, plan.lengthMm);

/** Each a millimetre or two further than it was to be. */
const foundNear =
  (spacingMm: number) =>
  (index: number): Parts => ({
    ...{ member: index + 1, at: mm(spacingMm * (index + 1) + (index % 3)) },
    ...{ by: "somebody", on: "a Monday" },
  });

const BLOCKING_MM = 45;

const blockingIn =
  ({ core, tapes }: Plan, spacingMm: number) =>
  (index: number): Parts => {
    const room = { ...core, widthMm: core.widthMm - 600, lengthMm: core.lengthMm - 600 };
    const corner: Point = scattered(room, index);
    const opposite = {
      leftMm: corner.leftMm + BLOCKING_MM,
      frontMm: corner.frontMm + Math.min(500, spacingMm),
    };
    return { kind: "blocking", corner: tapes(corner), opposite: tapes(opposite) };
  };

function wallFraming({ spacingMm }: FramingChoice, { walls, widthMm, lengthMm }: Plan): Parts {
  const row = rowOf(atLeast(spacingMm, (2 * (widthMm + lengthMm)) / MOST_ON_WALLS));
  return Object.fromEntries(
    walls.map((wall) => [wall, { ...row, from: wall === "left" || wall === "right" ? "front" : "left" }]),
  );
}

const LEAST_ON_CEILINGS_MM = 300;

function framingOfNamed(choice: FramingChoice, plan: Plan, count: number): Parts {
  const most = MOST_ON_CEILINGS / count;
  return {
    ...rowOf(atLeast(choice.spacingMm, LEAST_ON_CEILINGS_MM, acrossMm(choice, plan) / most)),
    // So that the first lies before the end of the smallest ceiling.
    first: "50 mm",
    ...wayOf(choice, plan),
  };
}
