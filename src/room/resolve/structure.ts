import { movedIn } from "../../geometry/ring.js";
import type { Polygon } from "../../geometry/shape.js";
import { directionOf, inner, minus, plus, quarterTurn, times } from "../../geometry/surface-point.js";
import { USUAL_PLATES } from "../../standards/framing-practice.js";
import type { Edge, Member } from "../room.js";
import type { FramingFile } from "../schema/framing.js";
import { ON_LINE_MM } from "./plan.js";
import { pointIn, type Strip, stretchesOf } from "./strip.js";
import type { BareSurface } from "./surfaces.js";

/** What does not repeat: plates and end studs of a wall. */
export interface Structure {
  readonly members: readonly Member[];
  /** What the plates leave to the members between them. */
  readonly clear: Polygon;
}

interface Place {
  readonly surface: BareSurface;
  readonly strip: Strip;
}

export function structureOf(entry: FramingFile, place: Place): Structure {
  if (place.surface.kind === "ceiling") return { members: [], clear: place.strip.outline };
  const plates = platesOf(entry, place);
  return {
    members: [...plates.members, ...endStudsOf(entry, place.strip, plates.clear)],
    clear: plates.clear,
  };
}

/** Plates run across the studs: bottom ones on the floor counted up, top ones under each ceiling counted down. */
function platesOf(entry: FramingFile, { surface, strip }: Place): Structure {
  const { below = USUAL_PLATES.below, above = USUAL_PLATES.above } = entry.plates ?? {};
  const thicknessMm = entry.plates?.thickness ?? USUAL_PLATES.thicknessMm;
  const count = (edge: Edge): number => (edge.along === "floor" ? below : isTop(edge) ? above : 0);
  const plate = (edge: Edge, index: number): Member => ({
    number: index + 1,
    kind: edge.along === "floor" ? "bottom-plate" : "top-plate",
    ...centreLine(edge, (index + 0.5) * thicknessMm, strip),
    widthMm: thicknessMm,
    depthMm: entry.member.depthMm,
    basis: entry.plates === undefined ? "assumed" : "measured",
    found: null,
  });
  const { edges } = surface;
  return {
    members: edges.flatMap((edge) => Array.from({ length: count(edge) }, (_, index) => plate(edge, index))),
    clear: movedIn(edges.map((edge) => ({ ...edge, inMm: count(edge) * thicknessMm }))),
  };
}

/** An edge under a ceiling: neither the floor nor upright. */
const isTop = ({ along, from, to }: Edge): boolean =>
  along !== "floor" && Math.abs(from.u - to.u) > ON_LINE_MM;

/** A line along an edge, so far inside, from the end that is measured from. */
export function centreLine({ from, to }: Edge, inMm: number, { away }: Strip): Pick<Member, "from" | "to"> {
  const inward = quarterTurn(directionOf(minus(to, from)));
  const [a, b] = [from, to]
    .map((end) => plus(end, times(inward, inMm)))
    .map(({ u, v }) => ({ u: u + 0, v: v + 0 }));
  if (a === undefined || b === undefined) return { from, to };
  return inner(away, a) <= inner(away, b) ? { from: a, to: b } : { from: b, to: a };
}

/** One stud at each end of the wall, the first at the end that is measured from. */
function endStudsOf(entry: FramingFile, strip: Strip, clear: Polygon): readonly Member[] {
  if (entry.end_studs === false) return [];
  const { widthMm, depthMm } = entry.member;
  return [widthMm / 2, strip.extentMm - widthMm / 2].flatMap((fromMm, index) =>
    stretchesOf(strip, { fromMm, widthMm }, clear).map(
      ([low, high]): Member => ({
        number: index + 1,
        kind: "end-stud",
        from: pointIn(strip, fromMm, low),
        to: pointIn(strip, fromMm, high),
        widthMm,
        depthMm,
        basis: entry.end_studs === undefined ? "assumed" : "measured",
        found: null,
      }),
    ),
  );
}
