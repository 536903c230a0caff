import type { Item, PagePoint, Window } from "../../drawing/drawing.js";
import { type Label, type LabelLine, label } from "../../drawing/label.js";
import {
  boxAbout,
  inTurn,
  type LabelWish,
  leader,
  middleOf,
  middlesAround,
  middlesOver,
  middlesWithin,
} from "../../drawing/label-places.js";
import { layer, outline, PEN, point } from "../../drawing/pen.js";
import { wrapText } from "../../drawing/text.js";
import { anyMeets } from "../../drawing/touches.js";
import { isInside } from "../../geometry/distance.js";
import { surfacePoint } from "../../geometry/surface-point.js";
import type { Opening } from "../../job.js";
import type { Edge, Member } from "../../room/room.js";
import { BETWEEN_LANGUAGES } from "../../words/bilingual.js";
import { acrossFigures } from "../cut-figures.js";
import { figuresOf } from "../figures.js";
import type { Order } from "../sheet.js";
import { slideIn } from "../slides.js";
import { facesAt, tapeFromEdge, tapesOf } from "../tapes.js";
import { clearPiece } from "./clear.js";
import { framingPiece, unknownPiece } from "./framing.js";
import { jointsPiece } from "./joints.js";
import { obstructionsPiece } from "./obstructions.js";
import { aimPiece, openingBox, openingsPiece } from "./openings.js";
import { drawPieces, type Piece, type WordsWish } from "./piece.js";
import { codesAgainst } from "./reasons.js";
import { axisOf, isAlongAxis, rowsOf } from "./rows.js";
import { slideLines } from "./slide-lines.js";
import type { SurfaceStage } from "./surface-stage.js";
import { boxOf, type Heights, type View, viewOf } from "./view.js";
import { voidsPiece } from "./voids.js";

/** Read from the floor or from a ladder: larger than on a sheet in the hand. */
const HEIGHTS: Heights = { smallMm: 7, wallMm: 20, idMm: 25 };
/** Names of edges and members come again at this distance, so that a strip seldom has none. */
const AGAIN_MM = 1200;

/** How wide the figures of its slides stand under an opening's own. */
const SLIDE_MM = 330;

export interface FullSize {
  readonly items: readonly Item[];
  readonly extent: Window;
}

/**
 * A surface at 1:1 in coordinates of its own, from the top left corner of its outline. Its words keep off the `joints`
 * of the paper where they can: what a joint cuts is whole on neither part.
 */
export function fullSizeDrawing(order: Order, at: SurfaceStage, joints: readonly Window[] = []): FullSize {
  const corners = at.edges.map(({ from }) => from);
  const view = viewOf(corners, { ratio: 1, heights: HEIGHTS, corner: point(0, 0) });
  const pieces: Piece[] = [
    clearPiece(order, at.openings, view),
    unknownPiece(order, at.surface, corners, view),
    framingPiece(order, at.surface, view),
    jointsPiece(at.surface, view),
    voidsPiece(order, at.surface, facesAt(at.stage), view),
    obstructionsPiece(order, at.surface, view),
    aimPiece(at.openings, view),
    {
      ...openingsPiece(order, at.openings, [], view),
      wishes: at.openings.map((opening) => openingName(order, at, { opening, joints }, view)),
    },
    { layer: "clear", rank: 7, items: [], wishes: clearNames(order, at, { joints, view }) },
    { layer: "framing", rank: 5, items: [], wishes: memberNames(order, at, { joints, view }) },
    {
      layer: "notes",
      rank: 6,
      items: [],
      wishes: at.edges.flatMap((edge) => edgeNames(order, edge, { joints, view })),
    },
  ];
  return {
    extent: view.box,
    items: [
      outline(corners.map(view.place), { stroke: PEN.outline }),
      ...drawPieces(pieces, { bounds: view.box }).items,
      ...at.openings.filter(({ mustNotCut }) => mustNotCut).map((opening) => across(order, opening, view)),
    ],
  };
}

/** Everything that proves the mark, beside it. */
function openingName(
  order: Order,
  at: SurfaceStage,
  { opening, joints }: { opening: Opening; joints: readonly Window[] },
  view: View,
): LabelWish {
  const box = openingBox(opening, view);
  const words = label(openingLines(order, at, opening));
  const near = {
    ...words,
    draw: (middle: PagePoint) => [...leader(box, boxAbout(middle, words)), ...words.draw(middle)],
    middles: middlesAround(box, words, [15, 40, 80]),
  };
  const onBoard = onSurface(at, words, view);
  // Asked for only where none near is free: it takes longer than all others together.
  const over = () => middlesOver(view.box, middleOf(box), 60);
  const middles = near.middles.filter(onBoard);
  return inTurn(
    { ...near, middles: offJoints(middles, words, joints) },
    () => ({ ...near, middles: offJoints(over().filter(onBoard), words, joints) }),
    () => ({ ...near, middles: [...middles, ...over().filter(onBoard)] }),
    () => ({ ...near, middles: [...near.middles, ...over()] }),
  );
}

/** Those middles at which no joint of the paper runs through the words. */
const offJoints = (middles: readonly PagePoint[], words: Label, joints: readonly Window[]): PagePoint[] =>
  middles.filter((middle) => !anyMeets(joints, boxAbout(middle, words)));

/** Whether words about a point lie on the surface itself: beside an L there is a wall, and no board to hold paper to. */
function onSurface({ edges }: SurfaceStage, words: Label, view: View): (middle: PagePoint) => boolean {
  const flat = ({ x, y }: PagePoint) => surfacePoint(x, y);
  const outlined = edges.map(({ from }) => flat(view.place(from)));
  return (middle) => {
    const { x, y, widthMm, heightMm } = boxAbout(middle, words);
    const box = [
      point(x, y),
      point(x + widthMm, y),
      point(x + widthMm, y + heightMm),
      point(x, y + heightMm),
    ];
    const corners = box.map(flat);
    return (
      corners.every((corner) => isInside(corner, outlined)) &&
      !outlined.some((corner) => isInside(corner, corners))
    );
  };
}

function openingLines(order: Order, at: SurfaceStage, opening: Opening): LabelLine[] {
  const { words, job } = order;
  const { units } = job.room;
  const { speaker, mustNotCut } = opening;
  const { full } = words.marking;
  const bold = (said: string, capMm: number): LabelLine => ({ words: said, capMm, face: "bold" });
  const size = acrossFigures(speaker.opening, units);
  const tapes = tapesOf(job.room, opening, at.stage).governing.map(({ from, mm }) => {
    const { main, others } = figuresOf(mm, units);
    return bold(`${words.frame.wall(from)}  ${main}  (${others})`, 8);
  });
  const cutting = [
    bold(`${speaker.opening.kind === "round" ? "⌀ " : ""}${size.main}  (${size.others})`, 10),
    ...tapes,
    ...full.prove
      .split(BETWEEN_LANGUAGES)
      .map((said): LabelLine => ({ words: said, capMm: 5, face: "regular" })),
    ...slideLines(order, opening)
      .flatMap((said) => wrapText(said, { capMm: 5, face: "regular", widthMm: SLIDE_MM }))
      .map((words): LabelLine => ({ words, capMm: 5, face: "regular" })),
  ];
  const reasons = words.marking.card.doNotCut(codesAgainst(order, opening)).split(BETWEEN_LANGUAGES);
  return [
    bold(speaker.id, HEIGHTS.idMm),
    { words: `${speaker.channel} · ${speaker.model.name}`, capMm: HEIGHTS.smallMm, face: "regular" },
    ...(mustNotCut ? reasons.map((said) => bold(said, HEIGHTS.smallMm)) : cutting),
    ...(opening.placed === "best" ? [bold(words.frame.computedNotFrozen, HEIGHTS.smallMm)] : []),
  ];
}

/** DO NOT CUT in the middle of what would be the hole. */
function across({ words }: Order, opening: Opening, view: View): Item {
  const lines = words.frame.doNotCut.split(BETWEEN_LANGUAGES);
  const said = label(lines.map((each) => ({ words: each, capMm: 15, face: "bold" })));
  return layer("cut", said.draw(view.place(opening.centre)));
}

interface Seen {
  readonly joints: readonly Window[];
  readonly view: View;
}

/** Steps aside in which words that come again and again look for a place that no joint runs through. */
const ASIDE_MM: readonly number[] = [0, 40, -40, 80, -80, 120, -120, 180, -180, 260, -260];

/** Places on a line about one of its points, the nearest first, those off the joints before it. */
function aside(
  at: PagePoint,
  [from, to]: readonly [PagePoint, PagePoint],
  { words, joints }: { readonly words: Label; readonly joints: readonly Window[] },
): PagePoint[] {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const along = point((to.x - from.x) / long, (to.y - from.y) / long);
  const places = ASIDE_MM.map((mm) => point(at.x + along.x * mm, at.y + along.y * mm)).filter(
    ({ x, y }) => Math.hypot(x - from.x, y - from.y) <= long && Math.hypot(x - to.x, y - to.y) <= long,
  );
  return [...offJoints(places, words, joints), at];
}

function memberNames(order: Order, at: SurfaceStage, { joints, view }: Seen): WordsWish[] {
  return rowsOf(at.surface).flatMap((row) => {
    const across = axisOf(row) === "u" ? at.zero.v : at.zero.u;
    const zero = isAlongAxis(row) ? across : null;
    return row.members.flatMap((member) => {
      const words = memberLabel(order, at, member, zero);
      const line = [view.place(member.from), view.place(member.to)] as const;
      return everySoOften(...line).map((middle) => ({
        ...words,
        middles: aside(middle, line, { words, joints }),
        optional: true,
      }));
    });
  });
}

function memberLabel(order: Order, at: SurfaceStage, member: Member, zero: Edge | null): Label {
  const { words, job } = order;
  const figure =
    zero === null ? [] : [figuresOf(tapeFromEdge(zero, member.from, at.stage).mm, job.room.units).main];
  const known = member.found === null ? [] : [words.found.by(member.found.by, member.found.on)];
  const basis = member.basis === "assumed" ? [words.marking.assumed] : known;
  const said = [words.findings.member({ surface: at.surface.name, ...member }), ...figure, ...basis].join(
    "  ·  ",
  );
  return label([{ words: said, capMm: HEIGHTS.smallMm, face: "regular" }]);
}

/** Points along a line, at equal distances of `AGAIN_MM` at most. */
function everySoOften(from: PagePoint, to: PagePoint): PagePoint[] {
  const count = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / AGAIN_MM));
  return Array.from({ length: count }, (_, index) => {
    const part = (index + 0.5) / count;
    return point(from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part);
  });
}

/** Whose centre may lie in each clear area, and nothing more: there is no key on a part of a drawing. */
function clearNames({ job, words }: Order, { openings }: SurfaceStage, { joints, view }: Seen): WordsWish[] {
  return openings.flatMap((opening) => {
    const [outline] = slideIn(job, opening)?.piece ?? [];
    if (outline === undefined) return [];
    const corners = outline.map(view.place);
    const said = label(
      [opening.speaker.id, ...words.marking.key.clear.split(BETWEEN_LANGUAGES)].map((each) => ({
        words: each,
        capMm: HEIGHTS.smallMm,
        face: "regular",
      })),
    );
    const box = boxOf(corners);
    const fits = middlesWithin(middlesOver(box, middleOf(box), AGAIN_MM / 12), said, box);
    return [{ ...said, middles: [...offJoints(fits, said, joints), ...fits], optional: true }];
  });
}

/** What stands along an edge, inside of it, again and again. */
function edgeNames({ words }: Order, edge: Edge, { joints, view }: Seen): WordsWish[] {
  const name = label([{ words: words.frame.wall(edge.along), capMm: HEIGHTS.wallMm, face: "bold" }]);
  const [from, to] = [view.place(edge.from), view.place(edge.to)];
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  if (long === 0) return [];
  // The outline runs anticlockwise as it is seen, so what is inside lies to the left of its edges: with y down, at (dy, -dx).
  const inside = point((to.y - from.y) / long, -(to.x - from.x) / long);
  const away = (Math.abs(inside.x) * name.widthMm + Math.abs(inside.y) * name.heightMm) / 2 + 8;
  const moved = (at: PagePoint, by: number): PagePoint => point(at.x + inside.x * by, at.y + inside.y * by);
  return everySoOften(from, to).map((at) => ({
    ...name,
    middles: [0, 30, 60].flatMap((more) => {
      const line = [moved(from, away + more), moved(to, away + more)] as const;
      return aside(moved(at, away + more), line, { words: name, joints });
    }),
    optional: true,
  }));
}
