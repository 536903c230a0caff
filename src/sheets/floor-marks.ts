import type { Cell, Table } from "../drawing/table.js";
import { measureText } from "../drawing/text.js";
import { textBlock } from "../drawing/text-block.js";
import type { Opening } from "../job.js";
import type { Surface } from "../room/room.js";
import { CHECK_TAPE_WITHIN_MM } from "../standards/cutting-practice.js";
import { figuresOf } from "./figures.js";
import { type Part, rowsOf, whole } from "./flow.js";
import { numbered, ticked } from "./marking/count.js";
import { fittedPages } from "./marking/fitted.js";
import { type FloorPlan, floorPlanOf, floorTapeMm, wallFacing } from "./marking/floor-plan.js";
import { floorSketch } from "./marking/floor-sketch.js";
import { inlines } from "./marking/inline.js";
import { codesAgainst } from "./marking/reasons.js";
import { tolerated, writing } from "./marking/steps.js";
import type { Order, Sheet } from "./sheet.js";

const SMALL_MM = 2.5;
const MAIN_MM = 5;

/**
 * The plan LOOKING DOWN with a mark under each overhead opening, to be drawn on the floor while the framing is bare
 * and plumbed up with a laser afterwards. No sheet where nothing is overhead.
 */
export function floorMarks(order: Order): Sheet[] {
  const plan = floorPlanOf(order);
  if (plan === null) return [];
  const { words } = order;
  const { floor } = words.marking;
  const { pages, whole: drawing } = fittedPages(order, {
    facts: {
      title: floor.title,
      view: words.frame.lookingDown,
      hold: null,
      front: 0,
      faces: words.frame.faces.framing,
    },
    figuresTitle: floor.figures,
    forms: [{ sketch: floorSketch(order, plan), parts: partsOf(order, plan) }],
    allFigures: [],
  });
  return [{ name: "floor", trades: ["drywall", "installer"], title: floor.title, pages, whole: drawing }];
}

function partsOf(order: Order, plan: FloorPlan): Part[] {
  return [
    countOf(order, plan),
    ...instructions(order, plan),
    table(order, plan),
    writing(order.words.marking.floor.markedBy),
  ];
}

function countOf({ words }: Order, { openings }: FloorPlan): Part {
  const toMark = openings.filter(({ mustNotCut }) => !mustNotCut);
  const ticks = inlines(toMark.map(({ speaker }) => ticked(speaker.id)));
  return numbered(words.marking.floor.count(toMark.length), ticks);
}

function instructions({ words, job }: Order, { control, openings }: FloorPlan): Part[] {
  const { floor, stop, stopBlank } = words.marking;
  const [first, second] = control;
  const aimed = openings.some(({ aim }) => (aim?.arrowDeg ?? null) !== null);
  const { call } = job.room;
  return [
    saying(floor.use),
    saying(floor.control(first.name, second.name), "bold"),
    saying(floor.left),
    saying(floor.plumb),
    ...(aimed ? [saying(floor.aimLine)] : []),
    call === null ? writing(stopBlank, "bold") : saying(stop(call), "bold"),
  ];
}

const saying = (words: string, face: "regular" | "bold" = "regular"): Part =>
  whole(({ x, y, widthMm }) => textBlock(words, { x, y, widthMm, capMm: SMALL_MM, face }));

/** Both distances of each mark, large; under them the opposite tapes, which only check. */
function table(order: Order, plan: FloorPlan): Part {
  const { floor } = order.words.marking;
  const columns = plan.control.map((wall) => ({
    heading: floor.from(wall.name),
    weight: 2,
    leastMm: widestMm(order, plan, wall),
  }));
  const built: Table = {
    capMm: SMALL_MM,
    columns: [
      { heading: floor.columns.done, weight: 0 },
      { heading: floor.columns.opening, weight: 1 },
      ...columns,
    ],
    rows: plan.openings.map((opening) => rowOf(order, plan, opening)),
    under: plan.openings.map((opening) => underRow(order, plan, opening)),
  };
  return rowsOf(built);
}

/** A figure is never broken over two lines. */
function widestMm(order: Order, { openings }: FloorPlan, wall: Surface): number {
  const widths = openings.map((opening) => {
    const { main } = figuresOf(floorTapeMm(wall, opening), order.job.room.units);
    return measureText(main, { capMm: MAIN_MM, face: "bold" }).widthMm;
  });
  return Math.max(...widths);
}

function rowOf(order: Order, { control }: FloorPlan, opening: Opening): Cell[] {
  const { speaker, mustNotCut } = opening;
  return [
    mustNotCut ? "" : { kind: "tick" },
    {
      kind: "lines",
      lines: [
        { words: speaker.id, capMm: 3.5, face: "bold" },
        { words: speaker.channel, capMm: SMALL_MM, face: "regular" },
      ],
    },
    ...control.map((wall): Cell => {
      const { main, others } = figuresOf(floorTapeMm(wall, opening), order.job.room.units);
      return {
        kind: "lines",
        lines: [
          { words: main, capMm: MAIN_MM, face: "bold" },
          { words: others, capMm: SMALL_MM, face: "regular" },
        ],
      };
    }),
  ];
}

function underRow(order: Order, { walls, control }: FloorPlan, opening: Opening) {
  const { card } = order.words.marking;
  if (opening.mustNotCut) {
    const words = card.doNotCut(codesAgainst(order, opening));
    return [{ words, capMm: SMALL_MM, face: "bold" as const }];
  }
  const [first, second] = control.map((wall) => {
    const opposite = wallFacing(walls, wall);
    const { main } = figuresOf(floorTapeMm(opposite, opening), order.job.room.units);
    return { from: opposite.name, figure: main };
  });
  if (first === undefined || second === undefined) return [];
  const words = card.check(first, second, tolerated(CHECK_TAPE_WITHIN_MM, order));
  return [{ words, capMm: SMALL_MM, face: "regular" as const }];
}
