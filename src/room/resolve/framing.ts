import type { Problem } from "../../findings/complaint.js";
import { rectangle } from "../../geometry/convex.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { Polygon } from "../../geometry/shape.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Edge, Faces, Framing, Layout, Member, Path } from "../room.js";
import type { FramingFile } from "../schema/framing.js";
import type { RoomFile } from "../schema.js";
import { centresOf } from "./centres.js";
import { asFound, type Centre } from "./found.js";
import { andThen, type Resolved, refused, resolved } from "./resolved.js";
import { type Axis, crossing, pointIn, type Strip, stripOf } from "./strip.js";
import { structureOf } from "./structure.js";
import type { BareSurface } from "./surfaces.js";

/** The framing of a surface as the file tells it; unknown where it says nothing. */
export function framingOf(surface: BareSurface, file: RoomFile, faces: Faces): Resolved<Framing> {
  const entry = entryOf(surface.name, file);
  if (entry === undefined) return resolved({ kind: "unknown" });
  const path: Path = ["framing", surface.name];
  const run = "run" in entry && entry.run === "left-right" ? "u" : "v";
  const edge = edgeToMeasureFrom(surface, entry.from, run);
  if (edge === undefined) return refused(wrongFrom(surface, entry.from, { run, path }));
  const strip = stripOf(surface, edge, run);
  const shiftMm = faces === "finish" ? edge.boardMm : 0;
  const options = { strip, shiftMm, path };
  const laid = centresOf(entry, options);
  const found = laid.ok ? asFound(entry, laid.value, options) : laid;
  return andThen(found, (centres) => known(entry, strip, { centres, surface }));
}

const entryOf = (name: string, { framing }: RoomFile): FramingFile | undefined =>
  Object.entries(framing ?? {}).find(([surface]) => surface === name)?.[1];

/** Walls that members of that run can be measured from: the edges that they run along. */
const edgesAlong = ({ edges }: BareSurface, run: Axis): readonly Edge[] =>
  edges.filter(({ along, from, to }) => {
    const isWall = along !== "floor" && along !== "ceiling";
    return isWall && Math.abs(from[crossing(run)] - to[crossing(run)]) <= EPSILON_MM;
  });

const edgeToMeasureFrom = (surface: BareSurface, wall: string, run: Axis): Edge | undefined =>
  edgesAlong(surface, run).find(({ along }) => along === wall);

function wrongFrom(
  surface: BareSurface,
  from: string,
  { run, path }: { readonly run: Axis; readonly path: Path },
): Problem {
  const choices = edgesAlong(surface, run).map(({ along }) => along);
  return { code: "framing-from", path: [...path, "from"], at: "value", figures: { from, choices } };
}

interface Parts {
  /** From the framing face of the wall that is measured from, ascending. */
  readonly centres: readonly Centre[];
  readonly surface: BareSurface;
}

function known(entry: FramingFile, strip: Strip, { centres, surface }: Parts): Framing {
  const { widthMm, depthMm } = entry.member;
  const basis = centres.every(({ basis }) => basis === "measured") ? "measured" : "assumed";
  const structure = structureOf(entry, { surface, strip });
  const members = centres.map(
    (centre, index): Member => ({
      number: index + 1,
      kind: surface.kind === "ceiling" ? "joist" : "stud",
      from: pointIn(strip, centre.mm, structure.clearMm[0]),
      to: pointIn(strip, centre.mm, structure.clearMm[1]),
      widthMm,
      depthMm,
      basis: centre.basis,
      found: centre.found,
    }),
  );
  return {
    kind: "known",
    layout: layoutOf(entry, basis),
    run: strip.along,
    members: [...members, ...structure.members],
    unknown: entry.at === undefined ? [] : beyond((centres.at(-1)?.mm ?? 0) + widthMm / 2, strip),
    cavityMm: cavityMm(entry),
  };
}

const layoutOf = (entry: FramingFile, basis: Layout["basis"]): Layout => ({
  from: entry.from,
  spacingMm: entry.spacing ?? null,
  basis,
  markedToNearEdge: entry.mark === "near-edge",
});

const cavityMm = ({ cavity, member }: FramingFile): number =>
  cavity === "open" ? Number.POSITIVE_INFINITY : (cavity ?? member.depthMm);

/** The stretch past the last measured member: nobody has said what is there. */
function beyond(fromMm: number, strip: Strip): readonly Polygon[] {
  if (fromMm >= strip.extentMm - EPSILON_MM) return [];
  const [low, high] = strip.alongMm;
  const corners = [
    pointIn(strip, fromMm, low),
    pointIn(strip, strip.extentMm, low),
    pointIn(strip, strip.extentMm, high),
    pointIn(strip, fromMm, high),
  ];
  return [rectangleRound(corners)];
}

function rectangleRound(points: readonly SurfacePoint[]): Polygon {
  const us = points.map(({ u }) => u);
  const vs = points.map(({ v }) => v);
  return rectangle({ u: Math.min(...us), v: Math.min(...vs) }, { u: Math.max(...us), v: Math.max(...vs) });
}
