import { grey, type Stroke } from "../../drawing/drawing.js";
import { line, outline, PEN, point, text } from "../../drawing/pen.js";
import { measureText } from "../../drawing/text.js";
import { LINE_PITCH, textBlock } from "../../drawing/text-block.js";
import type { Surface } from "../../room/room.js";
import { headed, type Part } from "../flow.js";
import type { Order } from "../sheet.js";
import { type Inline, inlines } from "./inline.js";
import { LINES } from "./lines.js";

const CAP_MM = 2.5;
const SAMPLE_MM = 11;

/** What the line styles of a surface's drawing mean, so that colour is never needed. */
export function keyPart({ words }: Order, { framing, obstructions, joints }: Surface): Part {
  const { key } = words.marking;
  const members = framing.kind === "known" ? framing.members : [];
  const samples = [
    ...(members.some(({ basis }) => basis === "measured") ? [sample(key.measured, measuredSample)] : []),
    ...(members.some(({ basis }) => basis === "assumed")
      ? [sample(key.assumed, dashedSample(LINES.assumed))]
      : []),
    ...(obstructions.some(({ keepMm }) => keepMm > 0) ? [sample(key.keep, dashedSample(LINES.keep))] : []),
    ...(obstructions.some(({ behindMm }) => behindMm !== null)
      ? [sample(key.behind, dashedSample(LINES.behind))]
      : []),
    ...(joints.length > 0 ? [sample(key.joint, dashedSample(LINES.joint))] : []),
  ];
  return headed(
    ({ x, y, widthMm }) => textBlock(key.brackets, { x, y, widthMm, capMm: CAP_MM }),
    inlines(samples),
  );
}

type Drawing = (x: number, y: number) => ReturnType<Inline["draw"]>;

const measuredSample: Drawing = (x, y) => {
  const corners = [
    point(x, y - 1),
    point(x + SAMPLE_MM, y - 1),
    point(x + SAMPLE_MM, y + 1),
    point(x, y + 1),
  ];
  return [outline(corners, { stroke: PEN.thin, fill: grey(0.92) })];
};

const dashedSample =
  (stroke: Stroke): Drawing =>
  (x, y) => [line(point(x, y), point(x + SAMPLE_MM, y), stroke)];

function sample(words: string, drawing: Drawing): Inline {
  const { widthMm } = measureText(words, { capMm: CAP_MM, face: "regular" });
  return {
    widthMm: SAMPLE_MM + 1.5 + widthMm,
    heightMm: CAP_MM * LINE_PITCH,
    draw: ({ x, y }) => [
      ...drawing(x, y + CAP_MM / 2),
      text(point(x + SAMPLE_MM + 1.5, y + CAP_MM), words, { capMm: CAP_MM }),
    ],
  };
}
