import {
  grey,
  type Ink,
  type Item,
  type PagePoint,
  type Stroke,
  type Window,
} from "../../drawing/drawing.js";
import { hatch } from "../../drawing/hatch.js";
import { type Label, label } from "../../drawing/label.js";
import { boxAbout, inTurn, leader, middleOf, middlesAlong, middlesOver } from "../../drawing/label-places.js";
import { dashed, line, outline, PEN, point } from "../../drawing/pen.js";
import { measureText, wrapText } from "../../drawing/text.js";
import { boxesMeet } from "../../drawing/touches.js";
import { bandOf } from "../../geometry/body.js";
import { intersection } from "../../geometry/clip.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import { spansInside } from "../../geometry/ring.js";
import type { Polygon } from "../../geometry/shape.js";
import { directionOf, minus, plus, times } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Member, Surface } from "../../room/room.js";
import { BETWEEN_LANGUAGES } from "../../words/bilingual.js";
import type { Order } from "../sheet.js";
import { numberText } from "./found.js";
import { LINES } from "./lines.js";
import { obstructionBox } from "./obstructions.js";
import type { Piece, WordsWish } from "./piece.js";
import { isAlongAxis, isStrap, type Row, rowsOf } from "./rows.js";
import { boxOf, type View } from "./view.js";

/** Distance of the lines that cover what is unknown, on the page. */
const HATCH_MM = 4;
/** A band narrower than this on the page gets no centre line of its own. */
const LEAST_BAND_MM = 1.4;

/** Members as they were measured, in full lines, or are assumed, in broken lines and the word; those found since say so. */
export function framingPiece(order: Order, surface: Surface, view: View): Piece {
  const { framing } = surface;
  const members = framing.kind === "known" ? framing.members : [];
  const missing = framing.kind === "known" ? framing.missing : [];
  const rows = rowsOf(surface);
  const assumed = rows.map((row) => row.members.filter(({ basis }) => basis === "assumed"));
  const found = members.filter((member) => member.found !== null);
  return {
    layer: "framing",
    rank: 4,
    // Straps hang from the framing, nearer to whoever looks.
    items: [
      ...missing.flatMap((member) => missingItems(member, surface, view)),
      ...[...members.filter((member) => !isStrap(member)), ...members.filter(isStrap)].flatMap((member) =>
        memberItems(member, surface, view),
      ),
    ],
    wishes: [
      ...rows.flatMap((row) => numbers(order, row, view)),
      ...assumed.flatMap((each) => wordOn(order.words.marking.assumed, each, view)),
      ...found.flatMap((member) => wordOn(order.words.found.word, [member], view)),
      ...missing.map((member) => ({
        ...saying(order.words.found.notThere(member.number), 0, view),
        middles: middlesAlong(view.place(member.from), view.place(member.to)),
      })),
    ],
  };
}

/** What is unknown, hatched and said so: all of it, or the stretches beyond what was measured. */
export function unknownPiece(order: Order, surface: Surface, outlineNow: Polygon, view: View): Piece {
  const { framing, obstructions } = surface;
  const hidden = obstructions.map((obstruction) => obstructionBox(obstruction, view));
  const unknown = framing.kind === "unknown" ? [outlineNow] : framing.unknown;
  return {
    layer: "framing",
    rank: 2,
    items: unknown.flatMap((area) => hatch(area.map(view.place), HATCH_MM)),
    wishes: unknown.map((area) => unknownWish(order, { area, hidden }, view)),
  };
}

/** Where the layout has one that is not there: nothing but its outline in dots. */
const missingItems = (member: Member, surface: Surface, view: View): Item[] =>
  bandsOf(member, surface).map((band) => outline(band.map(view.place), { stroke: LINES.missing }));

function memberItems(member: Member, surface: Surface, view: View): Item[] {
  const body = bandsOf(member, surface).map((band) => outline(band.map(view.place), lookOf(member)));
  if (isStrap(member) || view.shrunk(member.widthMm) < LEAST_BAND_MM) return body;
  const centres = centreLines(member, surface).map(([from, to]) =>
    line(view.place(from), view.place(to), dashed(PEN.fine, 5, 1, 0.6, 1)),
  );
  return [...body, ...centres];
}

function lookOf(member: Member): { stroke: Stroke; fill?: Ink } {
  if (isStrap(member)) return { stroke: LINES.strap, fill: grey(1) };
  return member.basis === "measured" ? { stroke: PEN.thin, fill: grey(0.92) } : { stroke: LINES.assumed };
}

/** The member's outline on the surface; what runs at an angle ends where the surface does. */
function bandsOf(member: Member, { edges }: Surface): readonly Polygon[] {
  const band = bandOf(member);
  return isAslant(member) ? intersection([band], [edges.map(({ from }) => from)]) : [band];
}

/** A band's centre line is shorter than its longer side where it ends aslant. */
function centreLines(member: Member, { edges }: Surface): readonly (readonly [SurfacePoint, SurfacePoint])[] {
  const { from, to } = member;
  if (!isAslant(member)) return [[from, to]];
  const direction = directionOf(minus(to, from));
  const outline = edges.map((edge) => edge.from);
  return spansInside(outline, { origin: from, direction }).map(
    ([low, high]) => [plus(from, times(direction, low)), plus(from, times(direction, high))] as const,
  );
}

const isAslant = ({ from, to }: Member): boolean =>
  Math.abs(to.u - from.u) > EPSILON_MM && Math.abs(to.v - from.v) > EPSILON_MM;

/** Numbers on members that no chain at the drawing's side can show, since they run at an angle. */
function numbers({ words }: Order, row: Row, view: View): WordsWish[] {
  if (isAlongAxis(row)) return [];
  const name = (member: Member): string =>
    isStrap(member) ? words.findings.member({ surface: "", ...member }) : numberText(member);
  return row.members.map((member) => ({
    ...label([{ ...smallBold(view), words: name(member) }]),
    middles: partsAlong(view.place(member.from), view.place(member.to)),
  }));
}

/** Near its ends rather than where openings are. */
const PARTS = [0.12, 0.88, 0.2, 0.8, 0.3, 0.7, 0.4, 0.6, 0.5, 0.06, 0.94];

const partsAlong = (from: PagePoint, to: PagePoint): PagePoint[] =>
  PARTS.map((part) => point(from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part));

/** One word on one of these members, as near the middle of the drawing as there is room. */
function wordOn(word: string, members: readonly Member[], view: View): WordsWish[] {
  if (members.length === 0) return [];
  const centre = middleOf(view.box);
  const away = (each: PagePoint): number => Math.hypot(each.x - centre.x, each.y - centre.y);
  const middles = members
    .flatMap(({ from, to }) => middlesAlong(view.place(from), view.place(to)))
    .sort((a, b) => away(a) - away(b));
  return [{ ...saying(word, 0, view), middles, optional: true }];
}

const smallBold = ({ heights }: Pick<View, "heights">) => ({ capMm: heights.smallMm, face: "bold" }) as const;

/** A few words in bold inside a width, no narrower than the longest of them. */
function saying(words: string, widthMm: number, { heights }: Pick<View, "heights">): Label {
  const style = smallBold({ heights });
  const widest = Math.max(...words.split(" ").map((word) => measureText(word, style).widthMm));
  const lines = wrapText(words, { ...style, widthMm: Math.max(widest, widthMm) });
  return label(lines.map((line) => ({ ...style, words: line })));
}

/** How far words may stand out of the area that they name. */
const NEARLY_MM = 2;

/** In the area where it fits or nearly so, else beside it with a line to it: nobody takes its neighbours for unknown. */
function unknownWish(
  { words }: Order,
  { area, hidden }: { area: Polygon; hidden: readonly Window[] },
  view: View,
): WordsWish {
  const box = boxOf(area.map(view.place));
  const phrase = words.marking.framingUnknown;
  const within = saying(phrase, box.widthMm - 2, view);
  const isIn = within.widthMm < box.widthMm + NEARLY_MM && within.heightMm < box.heightMm + NEARLY_MM;
  const moved = middlesIn(box).map((middle) => movedInto(view.box, middle, within));
  const widest = Math.max(
    ...phrase.split(BETWEEN_LANGUAGES).map((said) => measureText(said, smallBold(view)).widthMm),
  );
  return inTurn(
    { ...within, middles: [...middlesIn(box), ...(isIn ? moved : [])] },
    () => besideArea(saying(phrase, widest, view), { box, hidden }, view),
    () => besideArea(saying(phrase, 0, view), { box, hidden }, view),
  );
}

/** Near the area, and rather not over what would be `hidden` by the words. */
function besideArea(
  said: Label,
  { box, hidden }: { box: Window; hidden: readonly Window[] },
  view: View,
): WordsWish {
  const spot = boxAbout(middleOf(box), { widthMm: 0, heightMm: 0 });
  const meets = (middle: PagePoint, others: readonly Window[]): boolean =>
    others.some((other) => boxesMeet(boxAbout(middle, said), other));
  const middles = middlesOver(view.box, middleOf(box), 4).filter((middle) => !meets(middle, [box]));
  return {
    ...said,
    draw: (middle) => [...leader(spot, boxAbout(middle, said)), ...said.draw(middle)],
    middles: [
      ...middles.filter((middle) => !meets(middle, hidden)),
      ...middles.filter((middle) => meets(middle, hidden)),
    ],
  };
}

/** The nearest middle at which a label lies inside a box: a strip along an edge is lower than its words. */
function movedInto(
  { x, y, widthMm, heightMm }: Window,
  middle: PagePoint,
  label: { widthMm: number; heightMm: number },
): PagePoint {
  const [across, down] = [label.widthMm / 2, label.heightMm / 2];
  return point(
    Math.min(Math.max(middle.x, x + across), x + widthMm - across),
    Math.min(Math.max(middle.y, y + down), y + heightMm - down),
  );
}

/** Places over a box, its middle first. */
function middlesIn({ x, y, widthMm, heightMm }: Window): PagePoint[] {
  const parts = [0.5, 0.35, 0.65, 0.2, 0.8];
  return parts.flatMap((down) => parts.map((across) => point(x + widthMm * across, y + heightMm * down)));
}
