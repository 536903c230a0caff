import { type Face, type Item, type PagePoint, WHITE } from "./drawing.js";
import { filled, point, text } from "./pen.js";
import { measureText } from "./text.js";
import { LINE_PITCH } from "./text-block.js";

export interface LabelLine {
  readonly words: string;
  readonly capMm: number;
  readonly face: Face;
}

/** Words on a white panel, so that no line runs through them; its size is known before it has a place. */
export interface Label {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly draw: (middle: PagePoint) => readonly Item[];
}

const PAD_MM = 0.7;
/** From the top of a line to its baseline as a share of the cap height: room for accents on capitals. */
export const BASELINE = 1.35;

export function label(lines: readonly LabelLine[]): Label {
  const widthMm = Math.max(0, ...lines.map((each) => measureText(each.words, each).widthMm)) + 2 * PAD_MM;
  const heightMm = lines.reduce((sum, { capMm }) => sum + capMm * LINE_PITCH, 0);
  return {
    widthMm,
    heightMm,
    draw: (middle) => [panel(middle, widthMm, heightMm), ...wordsAt(lines, middle, heightMm)],
  };
}

const panel = (middle: PagePoint, widthMm: number, heightMm: number): Item =>
  filled({ x: middle.x - widthMm / 2, y: middle.y - heightMm / 2, widthMm, heightMm }, WHITE);

function wordsAt(lines: readonly LabelLine[], middle: PagePoint, heightMm: number): Item[] {
  let top = middle.y - heightMm / 2;
  return lines.map(({ words, capMm, face }) => {
    const baseline = top + capMm * BASELINE;
    top += capMm * LINE_PITCH;
    return text(point(middle.x, baseline), words, { capMm, face, anchor: "middle" });
  });
}
