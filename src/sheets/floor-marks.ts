import type { Cell, Table } from "../drawing/table.js";
import { measureText } from "../drawing/text.js";
import { textBlock } from "../drawing/text-block.js";
import type { Opening } from "../job.js";
import { CHECK_TAPE_WITHIN_MM } from "../standards/cutting-practice.js";
import { figuresOf } from "./figures.js";
import { type Part, rowsOf, whole } from "./flow.js";
import { notFrozen, numbered, ticked } from "./marking/count.js";
import { fittedPages } from "./marking/fitted.js";
import { type FloorPlan, floorPlanOf, floorTapesOf } from "./marking/floor-plan.js";
import { floorSketch } from "./marking/floor-sketch.js";
import { inlines } from "./marking/inline.js";
import { codesAgainst } from "./marking/reasons.js";
import { tolerated, writing } from "./marking/steps.js";
import { wallFigures } from "./marking/wall-figures.js";
import { countedWhenAsked } from "./page-count.js";
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
  const { whole: drawing, ...making } = fittedPages(order, {
    facts: {
      title: floor.title,
      view: words.frame.lookingDown,
      hold: null,
      front: 0,
      faces: words.frame.faces.framing,
    },
    figuresTitle: floor.figures,
    forms: [{ sketch: floorSketch(order, plan), parts: partsOf(order, plan) }],
    allFigures: () => [],
  });
  const sheet = {
    name: "floor",
    trades: ["drywall", "installer"],
    title: floor.title,
    whole: drawing,
  } as const;
  return [countedWhenAsked(sheet, making)];
}

function partsOf(order: Order, plan: FloorPlan): Part[] {
  return [
    countOf(order, plan),
    ...instructions(order, plan),
    table(order, plan),
    writing(order.words.marking.floor.markedBy),
  ];
}

function countOf(order: Order, { openings }: FloorPlan): Part {
  const { floor } = order.words.marking;
  const toMark = openings.filter(({ mustNotCut }) => !mustNotCut);
  const ticks = inlines(toMark.map(({ speaker }) => ticked(speaker.id)));
  return numbered([floor.count(toMark.length), ...notFrozen(order, toMark)], ticks);
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
  const columns = plan.control.map((wall, index) => ({
    heading: floor.from(wall.name),
    weight: 2,
    leastMm: widestMm(order, plan, index),
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
function widestMm(order: Order, plan: FloorPlan, index: number): number {
  const widths = plan.openings.flatMap((opening) => {
    const tape = floorTapesOf(plan, opening).governing[index];
    if (tape === undefined) return [];
    const { main } = figuresOf(tape.mm, order.job.room.units);
    return [measureText(main, { capMm: MAIN_MM, face: "bold" }).widthMm];
  });
  return Math.max(0, ...widths);
}

function rowOf(order: Order, plan: FloorPlan, opening: Opening): Cell[] {
  const { speaker, mustNotCut } = opening;
  const { governing } = floorTapesOf(plan, opening);
  return [
    mustNotCut ? "" : { kind: "tick" },
    {
      kind: "lines",
      lines: [
        { words: speaker.id, capMm: 3.5, face: "bold" },
        { words: speaker.channel, capMm: SMALL_MM, face: "regular" },
      ],
    },
    ...plan.control.map((wall, index): Cell => {
      const tape = governing[index];
      if (tape === undefined) return "";
      const { main, others } = figuresOf(tape.mm, order.job.room.units);
      const instead = tape.from === wall.name ? [] : [order.words.marking.floor.from(tape.from)];
      return {
        kind: "lines",
        lines: [
          ...instead.map((words) => ({ words, capMm: SMALL_MM, face: "bold" as const })),
          { words: main, capMm: MAIN_MM, face: "bold" },
          { words: others, capMm: SMALL_MM, face: "regular" },
        ],
      };
    }),
  ];
}

function underRow(order: Order, plan: FloorPlan, opening: Opening) {
  const { card } = order.words.marking;
  if (opening.mustNotCut) {
    const words = card.doNotCut(codesAgainst(order, opening));
    return [{ words, capMm: SMALL_MM, face: "bold" as const }];
  }
  const checks = floorTapesOf(plan, opening).checks.map(({ from, mm }) => ({
    wall: from,
    figure: figuresOf(mm, order.job.room.units).main,
  }));
  if (checks.length === 0) return [];
  const words = wallFigures(order, card.check(tolerated(CHECK_TAPE_WITHIN_MM, order)), checks);
  return [{ words, capMm: SMALL_MM, face: "regular" as const }];
}
