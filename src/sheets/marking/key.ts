import { grey, type Stroke } from "../../drawing/drawing.js";
import { line, outline, PEN, point, text } from "../../drawing/pen.js";
import { measureText, wrapText } from "../../drawing/text.js";
import { LINE_PITCH, textBlock } from "../../drawing/text-block.js";
import type { Straps } from "../../room/room.js";
import { headed, type Part } from "../flow.js";
import type { Order } from "../sheet.js";
import { slideIn } from "../slides.js";
import { clearSample } from "./clear.js";
import { type Inline, inlines } from "./inline.js";
import { LINES } from "./lines.js";
import { isStrap } from "./rows.js";
import type { SurfaceStage } from "./surface-stage.js";

const CAP_MM = 2.5;
const SAMPLE_MM = 11;
const CLEAR_MM = 2.2;

/** What the line styles of a surface's drawing mean, so that colour is never needed. */
export function keyPart(order: Order, { surface, openings }: SurfaceStage): Part {
  const { key } = order.words.marking;
  const { framing, obstructions, joints } = surface;
  const slides = openings.some((opening) => slideIn(order.job, opening) !== null);
  const members = framing.kind === "known" ? framing.members.filter((member) => !isStrap(member)) : [];
  const samples = [
    ...(members.some(({ basis }) => basis === "measured") ? [sample(key.measured, measuredSample)] : []),
    ...(members.some(({ basis }) => basis === "assumed")
      ? [sample(key.assumed, dashedSample(LINES.assumed))]
      : []),
    ...(framing.kind === "known" && framing.straps !== null
      ? [sample(strapWords(key, framing.straps), dashedSample(LINES.strap))]
      : []),
    ...(obstructions.some(({ keepMm }) => keepMm > 0) ? [sample(key.keep, dashedSample(LINES.keep))] : []),
    ...(obstructions.some(({ behindMm }) => behindMm !== null)
      ? [sample(key.behind, dashedSample(LINES.behind))]
      : []),
    ...(slides ? [sample(key.clear, clearSample(SAMPLE_MM, CLEAR_MM))] : []),
    ...(joints.length > 0 ? [sample(key.joint, dashedSample(LINES.joint))] : []),
  ];
  return headed(
    ({ x, y, widthMm }) => textBlock(key.brackets, { x, y, widthMm, capMm: CAP_MM }),
    inlines(samples),
  );
}

function strapWords(key: Order["words"]["marking"]["key"], { kind, layout }: Straps): string {
  if (layout.basis === "measured") return key[kind];
  return kind === "strap" ? key.strapAssumed : key.channelAssumed;
}

export type Drawing = (x: number, y: number) => ReturnType<Inline["draw"]>;

const measuredSample: Drawing = (x, y) => {
  const corners = [
    point(x, y - 1),
    point(x + SAMPLE_MM, y - 1),
    point(x + SAMPLE_MM, y + 1),
    point(x, y + 1),
  ];
  return [outline(corners, { stroke: PEN.thin, fill: grey(0.92) })];
};

export const dashedSample =
  (stroke: Stroke): Drawing =>
  (x, y) => [line(point(x, y), point(x + SAMPLE_MM, y), stroke)];

/** As wide as words may stand beside a sample in the narrowest column. */
const WORDS_MM = 70;

/** A piece of a line with what it means beside it. */
export function sample(words: string, drawing: Drawing): Inline {
  const style = { capMm: CAP_MM, face: "regular" } as const;
  const lines = wrapText(words, { ...style, widthMm: WORDS_MM });
  const pitchMm = CAP_MM * LINE_PITCH;
  return {
    widthMm: SAMPLE_MM + 1.5 + Math.max(...lines.map((line) => measureText(line, style).widthMm)),
    heightMm: pitchMm * lines.length,
    draw: ({ x, y }) => [
      ...drawing(x, y + CAP_MM / 2),
      ...lines.map((line, index) =>
        text(point(x + SAMPLE_MM + 1.5, y + CAP_MM + index * pitchMm), line, { capMm: CAP_MM }),
      ),
    ],
  };
}
