import type { Opening } from "../../job.js";
import type { Order } from "../sheet.js";
import { writtenWays } from "../slides.js";
import { wallFigures } from "./wall-figures.js";

/** How far the opening may slide toward each wall; nothing where it is not clear as it stands. */
export function slideLines(order: Order, opening: Opening): string[] {
  const ways = writtenWays(order, opening);
  if (ways === null || opening.mustNotCut) return [];
  const { framing } = opening.surface;
  const { slide, slideAssumed } = order.words.marking.card;
  const isAssumed = framing.kind === "known" && framing.layout.basis === "assumed";
  return [wallFigures(order, isAssumed ? slideAssumed : slide, ways)];
}
