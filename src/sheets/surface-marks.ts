import type { Surface } from "../room/room.js";
import { facingFacts } from "./facing.js";
import { cardParts } from "./marking/card.js";
import { countPart } from "./marking/count.js";
import { findingParts } from "./marking/findings-part.js";
import { fittedPages } from "./marking/fitted.js";
import { type Flag, flagsOf } from "./marking/flags.js";
import { foundParts } from "./marking/found.js";
import { keyPart } from "./marking/key.js";
import { captionParts, chainlessParts, memberParts } from "./marking/members.js";
import type { Fitted, Form } from "./marking/page-choice.js";
import { stepParts } from "./marking/steps.js";
import { isMembers, numbersOnly } from "./marking/surface-chains.js";
import { surfaceSketch } from "./marking/surface-sketch.js";
import { type SurfaceStage, surfaceAt, surfacesToMark } from "./marking/surface-stage.js";
import { countedWhenAsked } from "./page-count.js";
import type { Order, Sheet } from "./sheet.js";
import { facesAt, type Stage, stagesOf } from "./tapes.js";

export { fullSizeMarks } from "./full-size-marks.js";

/**
 * Marking sheets of every ceiling and wall with openings, at a round scale, seen by the person who cuts: LOOKING UP,
 * or FACING the wall. One for each stage that it is used at; the second is named "-after".
 */
export const surfaceMarks = (order: Order): Sheet[] => surfacesToDraw(order).map((draw) => draw());

/** The same one by one, each made when it is asked for. */
export const surfacesToDraw = (order: Order): readonly (() => Sheet)[] =>
  surfacesToMark(order.job).flatMap((surface) =>
    stagesOf(order.job.room, surface).map(
      (stage, index) => () => surfaceSheet(order, surface, { stage, index }),
    ),
  );

function surfaceSheet(order: Order, surface: Surface, used: { stage: Stage; index: number }): Sheet {
  const at = surfaceAt(order, surface, used.stage);
  const flags = flagsOf(order, surface);
  const title = titleOf(order, surface, used.stage);
  const { whole, draw } = fittedPages(order, {
    forms: formsOf(order, at, flags),
    facts: { title, faces: order.words.frame.faces[facesAt(used.stage)], ...facingFacts(order, surface) },
    figuresTitle: order.words.marking.figures[surface.kind](surface.name),
    allFigures: () => memberParts(order, at),
  });
  const sheet = { name: nameOf(surface, used.index), trades: ["drywall"], title, whole } as const;
  // Laid out once without the note on what found no room and once with it, so many cards take as long as drawn.
  return countedWhenAsked(sheet, { count: () => null, draw });
}

/**
 * With the members' figures beside the drawing; without what explains them, which follows; with their numbers alone, or
 * nothing of them, and the figures in a table.
 */
function formsOf(order: Order, at: SurfaceStage, flags: readonly Flag[]): Fitted["forms"] {
  const sketch = surfaceSketch(order, at, flags);
  const openingsOnly = sketch.chains.filter((chain) => !isMembers(chain));
  const count = countPart(order, at);
  const others = [
    keyPart(order, at),
    ...foundParts(order, at.surface.framing),
    ...stepParts(order, at),
    ...findingParts(order, flags),
  ];
  const cards = cardParts(order, at, flags);
  const inTable = (chains: Form["sketch"]["chains"]): Form => ({
    sketch: { ...sketch, caption: null, chains },
    parts: [count, ...others, ...memberParts(order, at), ...cards],
    tabled: true,
  });
  // Members at an angle have no chain: their figures stand in the table.
  if (openingsOnly.length === sketch.chains.length) return [inTable(openingsOnly)];
  const chainless = chainlessParts(order, at);
  return [
    { sketch, parts: [count, ...others, ...chainless, ...cards] },
    () => ({
      sketch: { ...sketch, caption: null },
      parts: [count, ...captionParts(order, at), ...others, ...chainless, ...cards],
    }),
    () => inTable(numbersOnly(sketch.chains, at)),
    () => inTable(openingsOnly),
  ];
}

function nameOf({ name, kind }: Surface, index: number): string {
  return `${kind === "wall" ? `wall-${name}` : name}${index === 0 ? "" : "-after"}`;
}

/** A surface that is marked at two stages says which one. */
function titleOf({ job, words }: Order, surface: Surface, stage: Stage): string {
  const title = words.marking.title[surface.kind];
  return stagesOf(job.room, surface).length === 1
    ? title(surface.name)
    : words.marking.staged[surface.kind](surface.name, stage);
}
