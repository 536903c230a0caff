import { type Block, stack, textBlock } from "../../drawing/text-block.js";
import { findingText } from "../../words/finding-text.js";
import { headed, type Part, whole } from "../flow.js";
import type { Order } from "../sheet.js";
import { type Flag, flagAt, flagSize } from "./flags.js";

const CAP_MM = 2.5;

/** The findings of a sheet as sentences, each with the number that stands at it on the drawing. */
export function findingParts(order: Order, flags: readonly Flag[]): Part[] {
  return flags.map((flag, index) => {
    const sentence = whole((place) => sentenceBlock(order, flag, place));
    if (index > 0) return sentence;
    const title = order.words.marking.findings;
    return headed(
      ({ x, y, widthMm }) => textBlock(title, { x, y, widthMm, capMm: CAP_MM, face: "bold" }),
      sentence,
    );
  });
}

function sentenceBlock(
  { words, measure }: Order,
  flag: Flag,
  { x, y, widthMm }: { x: number; y: number; widthMm: number },
): Block {
  const { finding } = flag;
  const size = flagSize(flag, CAP_MM);
  const place = { x: x + size.widthMm + 1.5, widthMm: widthMm - size.widthMm - 1.5, capMm: CAP_MM };
  const face = finding.level === "error" ? "bold" : "regular";
  const accepted = finding.accepted === null ? [] : [words.marking.accepted(finding.accepted)];
  const block = stack(y + 0.9, [
    (at) => textBlock(findingText(words, measure, finding), { ...place, y: at, face }),
    ...accepted.map((said) => (at: number) => textBlock(said, { ...place, y: at })),
  ]);
  return {
    items: [...flagAt(flag, { x, y }, CAP_MM), ...block.items],
    heightMm: Math.max(block.heightMm + 0.9, size.heightMm + 0.6),
  };
}
