import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { Opening } from "../../job.js";
import type { Surface } from "../../room/room.js";
import { BETWEEN_LANGUAGES } from "../../words/bilingual.js";
import { figuresOf } from "../figures.js";
import type { Order } from "../sheet.js";
import type { ChainMark, ChainOf } from "./chains.js";
import { aimLinesPiece, marksPiece, seatsPiece } from "./floor-pieces.js";
import { below, type FloorPlan, floorTapesOf } from "./floor-plan.js";
import type { Sketch } from "./sketch.js";

/** The plan looking down: a mark under each overhead opening, the seats, running figures from both control walls. */
export function floorSketch(order: Order, plan: FloorPlan): Sketch {
  const { walls, corners } = plan;
  return {
    outline: corners,
    edges: walls.map(({ name }, index) => ({
      name: order.words.frame.wall(name),
      from: corners[index] ?? { u: 0, v: 0 },
      to: corners[(index + 1) % corners.length] ?? { u: 0, v: 0 },
    })),
    chains: plan.control.flatMap((wall) => controlChain(order, plan, wall)),
    caption: null,
    inside: (view) => [aimLinesPiece(plan, view), seatsPiece(order, view), marksPiece(order, plan, view)],
  };
}

/** Along the side that a wall's tapes run to; none for a wall at an angle, whose tapes stand in the table alone. */
function controlChain(order: Order, plan: FloorPlan, wall: Surface): ChainOf[] {
  const { x, y } = wall.frame.n;
  const axis = Math.abs(x) > 1 - 1e-9 ? "u" : Math.abs(y) > 1 - 1e-9 ? "v" : null;
  if (axis === null) return [];
  const [first = "", ...others] = order.words.frame.wall(wall.name).split(BETWEEN_LANGUAGES);
  const zero: ChainMark = {
    at: below(wall.frame.origin),
    lines: [`0 ${first}`, ...others],
    face: "bold",
    kind: "zero",
  };
  const marks = plan.openings.flatMap((opening) => markOf(order, plan, { wall, opening }));
  return [
    {
      side: axis === "u" ? "bottom" : "left",
      marks: [zero, ...apart(marks, axis)],
      extended: marks.map(({ at }) => at),
      writeMm: 0,
    },
  ];
}

/** None where the tape from this wall cannot be held: the table tells which one can. */
function markOf(
  order: Order,
  plan: FloorPlan,
  { wall, opening }: { wall: Surface; opening: Opening },
): ChainMark[] {
  const tape = floorTapesOf(plan, opening).governing.find(({ from }) => from === wall.name);
  if (tape === undefined) return [];
  const { main } = figuresOf(tape.mm, order.job.room.units);
  return [{ at: below(opening.position), lines: [main], face: "bold", kind: "mark" }];
}

/** Marks on one line share a figure. */
function apart(marks: readonly ChainMark[], axis: "u" | "v"): ChainMark[] {
  return marks.filter(
    (mark, index) =>
      marks.findIndex((other) => Math.abs(other.at[axis] - mark.at[axis]) < EPSILON_MM) === index,
  );
}
