import { grey, type Item, type PagePoint, type Window } from "../../drawing/drawing.js";
import { hatch } from "../../drawing/hatch.js";
import { label } from "../../drawing/label.js";
import { boxAbout, leader, middleOf, middlesAlong, middlesOver } from "../../drawing/label-places.js";
import { dashed, line, outline, PEN, point } from "../../drawing/pen.js";
import { measureText, wrapText } from "../../drawing/text.js";
import type { Polygon } from "../../geometry/shape.js";
import { directionOf, minus, plus, quarterTurn, times } from "../../geometry/surface-point.js";
import type { Framing, Member, Surface } from "../../room/room.js";
import { BETWEEN_LANGUAGES } from "../../words/bilingual.js";
import type { Order } from "../sheet.js";
import { LINES } from "./lines.js";
import type { Piece, WordsWish } from "./piece.js";
import { boxOf, extentOf, type View } from "./view.js";

/** Distance of the lines that cover what is unknown, on the page. */
const HATCH_MM = 4;
/** A band narrower than this on the page gets no centre line of its own. */
const LEAST_BAND_MM = 1.4;

/** Members as they were measured (full lines) or are assumed (broken lines and the word), and what is unknown, hatched. */
export function framingPiece(order: Order, surface: Surface, outlineNow: Polygon, view: View): Piece {
  const { framing } = surface;
  const unknown = framing.kind === "unknown" ? [outlineNow] : framing.unknown;
  const members = framing.kind === "known" ? framing.members : [];
  return {
    layer: "framing",
    rank: 4,
    items: [
      ...unknown.flatMap((area) => hatch(area.map(view.place), HATCH_MM)),
      ...members.flatMap((member) => memberItems(member, view)),
    ],
    wishes: [...unknown.map((area) => unknownWish(order, area, view)), ...assumed(order, framing, view)],
  };
}

function memberItems(member: Member, view: View): Item[] {
  const measured = member.basis === "measured";
  const band = bandOf(member).map(view.place);
  const stroke = measured ? PEN.thin : LINES.assumed;
  const body = outline(band, measured ? { stroke, fill: grey(0.92) } : { stroke });
  if (view.shrunk(member.widthMm) < LEAST_BAND_MM) return [body];
  return [body, line(view.place(member.from), view.place(member.to), dashed(PEN.fine, 5, 1, 0.6, 1))];
}

/** The member's outline on the surface: its width to both sides of its centre line. */
function bandOf({ from, to, widthMm }: Member): Polygon {
  const aside = times(quarterTurn(directionOf(minus(to, from))), widthMm / 2);
  return [minus(from, aside), minus(to, aside), plus(to, aside), plus(from, aside)];
}

function assumed(order: Order, framing: Framing, view: View): WordsWish[] {
  if (framing.kind === "unknown") return [];
  const repeated = framing.members.filter(
    ({ kind, basis }) => basis === "assumed" && (kind === "joist" || kind === "stud"),
  );
  if (repeated.length === 0) return [];
  const centre = middleOf(view.box);
  const away = (each: PagePoint): number => Math.hypot(each.x - centre.x, each.y - centre.y);
  const middles = repeated
    .flatMap(({ from, to }) => middlesAlong(view.place(from), view.place(to)))
    .sort((a, b) => away(a) - away(b));
  return [{ ...saying(order.words.marking.assumed, 0, view), middles, optional: true }];
}

/** A few words in bold inside a width, the languages one under the other. */
function saying(words: string, widthMm: number, { heights }: View) {
  const style = { capMm: heights.smallMm, face: "bold" } as const;
  const widest = Math.max(...words.split(" ").map((word) => measureText(word, style).widthMm));
  const lines = words
    .split(BETWEEN_LANGUAGES)
    .flatMap((each) => wrapText(each, { ...style, widthMm: Math.max(widest, widthMm) }));
  return label(lines.map((line) => ({ ...style, words: line })));
}

function unknownWish({ words }: Order, area: Polygon, view: View): WordsWish {
  const { widthMm } = extentOf(area);
  const said = saying(words.marking.framingUnknown, view.shrunk(widthMm) - 2, view);
  const box = boxOf(area.map(view.place));
  const spot = boxAbout(middleOf(box), { widthMm: 0, heightMm: 0 });
  const anywhere: WordsWish = {
    ...said,
    draw: (middle) => [...leader(spot, boxAbout(middle, said)), ...said.draw(middle)],
    middles: middlesOver(view.box, middleOf(box), 4),
  };
  return { ...said, middles: middlesIn(box), otherwise: anywhere };
}

/** Places over a box, its middle first. */
function middlesIn({ x, y, widthMm, heightMm }: Window): PagePoint[] {
  const parts = [0.5, 0.35, 0.65, 0.2, 0.8];
  return parts.flatMap((down) => parts.map((across) => point(x + widthMm * across, y + heightMm * down)));
}
