import { EPSILON_MM } from "../../geometry/epsilon.js";
import { spansInside } from "../../geometry/ring.js";
import { inner, times } from "../../geometry/surface-point.js";
import type { Edge, Faces, Joint, Path } from "../room.js";
import { MOST_JOINTS } from "../schema/limits.js";
import type { SheetsFile } from "../schema/sheets.js";
import type { RoomFile } from "../schema.js";
import { linesToMeasureFrom } from "./hooks.js";
import { andThen, type Resolved, refused, resolved } from "./resolved.js";
import type { Shell } from "./shell.js";
import { pointIn, type Strip, stripOf } from "./strip.js";
import type { BareSurface } from "./surfaces.js";

/** Where the sheets of board on a surface meet, as the file tells; nothing where it does not. */
export function jointsOf(surface: BareSurface, file: RoomFile, shell: Shell): Resolved<readonly Joint[]> {
  const faces = shell.measuredTo;
  const lines = linesToMeasureFrom(surface, shell);
  const told = Object.entries(file.board.sheets).find(([name]) => name === surface.name)?.[1];
  if (told === undefined) return resolved([]);
  const path: Path = ["board", "sheets", surface.name];
  const rows = startOf(surface, { from: told.from, lines, path });
  if (!rows.ok) return rows;
  const { ends, length } = told;
  const longCount = rowsOf(told, rows.value, faces).length;
  if (longCount > MOST_JOINTS) return tooMany(longCount, [...path, "width"]);
  const long = longJoints(told, rows.value, faces);
  if (ends === undefined || length === undefined) return resolved(long);
  const across = startOf(surface, {
    from: ends.from,
    lines,
    path: [...path, "ends"],
    square: rows.value.strip,
  });
  if (!across.ok) return across;
  const count = longCount + Math.ceil((longCount + 1) * (across.value.strip.extentMm / length));
  if (count > MOST_JOINTS) return tooMany(count, [...path, "length"]);
  return andThen(across, (start) => [
    ...long,
    ...buttJoints({ ...told, ends, length }, { rows: rows.value, start, faces }),
  ]);
}

function tooMany(count: number, path: Path): Resolved<never> {
  const figures = { of: "joints", count, most: MOST_JOINTS } as const;
  return refused({ code: "too-many", path, at: "value", figures });
}

interface Start {
  readonly edge: Edge;
  readonly strip: Strip;
}

interface Asked {
  readonly from: string;
  readonly lines: readonly Edge[];
  readonly path: Path;
  readonly square?: Strip;
}

/** The strip that is measured from a wall or the floor; square to another one where that is given. */
function startOf(surface: BareSurface, { from, lines, path, square }: Asked): Resolved<Start> {
  const fits = (edge: Edge): boolean =>
    square === undefined || Math.abs(inner(stripOf(surface, edge).away, square.away)) < SQUARE;
  const edges = lines.filter(fits);
  const edge = edges.find(({ along }) => along === from);
  if (edge !== undefined) return resolved({ edge, strip: stripOf(surface, edge) });
  const choices = [...new Set(edges.map(({ along }) => along))];
  return refused({ code: "framing-from", path: [...path, "from"], at: "value", figures: { from, choices } });
}

/** Cosine of an angle that is a right one. */
const SQUARE = 1e-6;

const shiftMm = ({ edge }: Start, faces: Faces): number => (faces === "finish" ? edge.boardMm : 0);

/** From one place in steps both ways over a length, ascending. */
function every(stepMm: number, throughMm: number, toMm: number): readonly number[] {
  const first = throughMm - Math.floor((throughMm - EPSILON_MM) / stepMm) * stepMm;
  const count = Math.max(0, Math.ceil((toMm - EPSILON_MM - first) / stepMm));
  return Array.from({ length: count }, (_, index) => first + index * stepMm);
}

const rowsOf = ({ first, width }: SheetsFile, rows: Start, faces: Faces): readonly number[] =>
  every(width, first + shiftMm(rows, faces), rows.strip.extentMm);

function longJoints(told: SheetsFile, rows: Start, faces: Faces): readonly Joint[] {
  return rowsOf(told, rows, faces).flatMap((fromMm) =>
    spansOf(rows.strip, fromMm).map(
      ([low, high]): Joint => ({
        kind: "long",
        from: pointIn(rows.strip, fromMm, low),
        to: pointIn(rows.strip, fromMm, high),
      }),
    ),
  );
}

const spansOf = ({ along, away, startMm, outline }: Strip, fromMm: number) =>
  spansInside(outline, { origin: times(away, startMm + fromMm), direction: along });

interface Butt {
  readonly rows: Start;
  readonly start: Start;
  readonly faces: Faces;
}

/** Row by row, each from one long joint to the next. */
function buttJoints(
  told: SheetsFile & { readonly ends: NonNullable<SheetsFile["ends"]>; readonly length: number },
  { rows, start, faces }: Butt,
): readonly Joint[] {
  const { ends, length } = told;
  const stops = [0, ...rowsOf(told, rows, faces), rows.strip.extentMm];
  // Along the butt joints: the same way as across the rows, or the other.
  const sign = Math.sign(inner(start.strip.along, rows.strip.away));
  return stops.slice(1).flatMap((to, row) => {
    const limits = [stops[row] ?? 0, to].map((mm) => sign * (rows.strip.startMm + mm));
    const firstMm = ends.first + shiftMm(start, faces) + (row % 2 === 1 ? (ends.stagger ?? 0) : 0);
    return every(length, firstMm, start.strip.extentMm).flatMap((fromMm) =>
      spansOf(start.strip, fromMm).flatMap((span) => inRow(start.strip, fromMm, span, limits)),
    );
  });
}

function inRow(
  strip: Strip,
  fromMm: number,
  [low, high]: readonly [number, number],
  limits: readonly number[],
): readonly Joint[] {
  const from = Math.max(low, Math.min(...limits));
  const to = Math.min(high, Math.max(...limits));
  if (to - from < EPSILON_MM) return [];
  return [{ kind: "butt", from: pointIn(strip, fromMm, from), to: pointIn(strip, fromMm, to) }];
}
