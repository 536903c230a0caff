import { EPSILON_MM } from "../../geometry/epsilon.js";
import { inner, minus } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Opening } from "../../job.js";
import type { Edge, Member } from "../../room/room.js";
import { BETWEEN_LANGUAGES } from "../../words/bilingual.js";
import { figuresOf } from "../figures.js";
import type { Order } from "../sheet.js";
import { tapeFromEdge, tapesOf } from "../tapes.js";
import type { ChainMark, ChainOf } from "./chains.js";
import { numberText } from "./found.js";
import { axisOf, isAlongAxis, type Row, rowsOf } from "./rows.js";
import type { SurfaceStage } from "./surface-stage.js";
import { zeroPoint } from "./zero-mark.js";

/** Length of a box to write a found figure in. */
export const WRITE_MM = 15;

/** Running dimensions of the openings along the bottom and the left, of the members on the side across their run. */
export function chainsOf(order: Order, at: SurfaceStage): ChainOf[] {
  return [...openingsChain(order, at, "u"), ...openingsChain(order, at, "v"), ...rowChains(order, at)];
}

function openingsChain(order: Order, at: SurfaceStage, axis: "u" | "v"): ChainOf[] {
  const zero = at.zero[axis];
  if (zero === null || at.openings.length === 0) return [];
  return [
    {
      side: axis === "u" ? "bottom" : "left",
      marks: [
        zeroMark(order, zero),
        ...groups(at.openings, axis).map((group) => openingMark(order, at, zero, group)),
      ],
      extended: at.openings.map(({ centre }) => centre),
      writeMm: 0,
    },
  ];
}

function zeroMark({ words }: Order, zero: Edge): ChainMark {
  const [first = "", ...others] = words.frame.wall(zero.along).split(BETWEEN_LANGUAGES);
  return { at: zero.from, lines: [`0 ${first}`, ...others], face: "bold", kind: "zero" };
}

/** Openings on one line share a figure. */
function groups(openings: readonly Opening[], axis: "u" | "v"): Opening[][] {
  const sorted = [...openings].sort((a, b) => a.centre[axis] - b.centre[axis]);
  const found: Opening[][] = [];
  for (const opening of sorted) {
    const last = found.at(-1);
    const near =
      last?.[0] !== undefined && Math.abs(last[0].centre[axis] - opening.centre[axis]) < EPSILON_MM;
    if (near) last?.push(opening);
    else found.push([opening]);
  }
  return found;
}

/** Bold where the tape from this zero governs; in brackets, as an auxiliary figure (ISO 129-1), where it only checks. */
function openingMark(order: Order, at: SurfaceStage, zero: Edge, group: readonly Opening[]): ChainMark {
  const { room } = order.job;
  const tapes = group.flatMap((opening) => tapesOf(room, opening, at.stage).governing);
  const governing = tapes.find(({ from }) => from === zero.along);
  const centre: SurfacePoint = group[0]?.centre ?? zero.from;
  const mm = governing?.mm ?? tapeFromEdge(zero, centre, at.stage).mm;
  const figure = figuresOf(mm, room.units).main;
  return governing === undefined
    ? { at: centre, lines: [`(${figure})`], face: "regular", kind: "mark" }
    : { at: centre, lines: [figure], face: "bold", kind: "mark" };
}

/** The edge that a chain across a row counts from; null where there is none, or it runs at an angle. */
function zeroAcross({ membersZero: zero }: SurfaceStage, row: Row): Edge | null {
  if (!isAlongAxis(row)) return null;
  return axisOf(row) === "u" ? zero.v : zero.u;
}

/** What the figures of a row count from, and the figure of a point. */
export interface Counted {
  readonly from: string;
  mm(point: SurfacePoint): number;
}

/** The edge of the chain, else what they were measured from. */
export function countedFrom({ job: { room } }: Order, at: SurfaceStage, row: Row): Counted | null {
  const { from, zero } = row.layout;
  const edge = zeroAcross(at, row) ?? at.edges.find(({ along }) => along === from);
  if (edge !== undefined) return { from: edge.along, mm: (point) => tapeFromEdge(edge, point, at.stage).mm };
  const zeroAt = zeroPoint(room, at, row.layout);
  if (zeroAt === null) return null;
  return { from, mm: (point) => inner(zero.away, minus(point, zeroAt)) };
}

/** The figures of a row in its order, as they stand on a side of the drawing. */
export function memberMarks(order: Order, at: SurfaceStage, row: Row, side: "right" | "top"): ChainMark[] {
  const zero = countedFrom(order, at, row);
  if (zero === null) return [];
  const { members } = row;
  // In an L one joist's line may come twice; it has one figure.
  return members
    .filter(({ number }, index) => members.findIndex((other) => other.number === number) === index)
    .map((member) => memberMark(order, { member, row, zero, side }));
}

/** One for each row on the side across its run; a second row that runs as the first does stands in the table alone. */
function rowChains(order: Order, at: SurfaceStage): ChainOf[] {
  const rows = rowsOf(at.surface);
  return rows
    .filter((row, index) => rows.findIndex((other) => axisOf(other) === axisOf(row)) === index)
    .flatMap((row) => rowChain(order, at, row));
}

function rowChain(order: Order, at: SurfaceStage, row: Row): ChainOf[] {
  const side = axisOf(row) === "u" ? "right" : "top";
  const marks = memberMarks(order, at, row, side);
  const zero = zeroAcross(at, row);
  if (zero === null || marks.length === 0) return [];
  return [
    {
      side,
      marks: [zeroMark(order, zero), ...marks],
      extended: [],
      writeMm: row.layout.basis === "assumed" ? WRITE_MM : 0,
    },
  ];
}

/** The members' numbers alone, where their figures have no room: the figures stand in a table. */
export function numbersOnly(chains: readonly ChainOf[], at: SurfaceStage): ChainOf[] {
  const { framing } = at.surface;
  const members = framing.kind === "unknown" ? [] : framing.members;
  const numberAt = (mark: ChainMark): string[] =>
    members.filter(({ from }) => from === mark.at).map((member) => numberText(member));
  return chains.map((chain) =>
    isMembers(chain)
      ? {
          ...chain,
          writeMm: 0,
          marks: chain.marks.flatMap((mark) => {
            const lines = numberAt(mark);
            return lines.length === 0 ? [] : [{ ...mark, lines: lines.slice(0, 1) }];
          }),
        }
      : chain,
  );
}

/** The members' chain stands on the right or at the top, those of openings opposite. */
export const isMembers = ({ side }: ChainOf): boolean => side === "right" || side === "top";

/** "7 · 9' 4"", and where the layout was struck to the near edge that figure too, in square brackets. */
function memberMark(
  order: Order,
  { member, row, zero, side }: { member: Member; row: Row; zero: Counted; side: "right" | "top" },
): ChainMark {
  const { units } = order.job.room;
  const { layout } = row;
  const centreMm = zero.mm(member.from);
  const centre = `${numberText(member)} · ${figuresOf(centreMm, units).main}`;
  const mark = { at: member.from, face: "regular", kind: "mark" } as const;
  if (!layout.markedToNearEdge) return { ...mark, lines: [centre] };
  const nearer = layout.from === zero.from ? -1 : 1;
  const edge = `[${figuresOf(centreMm + (nearer * member.widthMm) / 2, units).main}]`;
  return { ...mark, lines: side === "right" ? [centre, edge] : [`${centre} ${edge}`] };
}

/** What the figures of a row are; null where there are none. */
export function rowCaption(order: Order, at: SurfaceStage, row: Row): string | null {
  const zero = countedFrom(order, at, row);
  if (zero === null) return null;
  const { caption } = order.words.marking;
  const figures = caption[row.of](row.layout.markedToNearEdge, row.layout.basis === "assumed");
  return zeroAcross(at, row) === null ? `${figures}. ${caption.square(zero.from)}` : figures;
}

/** The same of all rows; null where no row has figures. */
export function membersCaption(order: Order, at: SurfaceStage): string | null {
  const said = rowsOf(at.surface).flatMap((row) => rowCaption(order, at, row) ?? []);
  return said.length === 0 ? null : said.join(". ");
}
