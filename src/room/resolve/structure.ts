import { USUAL_PLATES } from "../../standards/framing-practice.js";
import type { Member } from "../room.js";
import type { FramingFile, WallFramingFile } from "../schema/framing.js";
import { pointIn, type Strip } from "./strip.js";
import type { BareSurface } from "./surfaces.js";

/** What does not repeat: plates and end studs of a wall. */
export interface Structure {
  readonly members: readonly Member[];
  /** The stretch along the members that the plates leave. */
  readonly clearMm: readonly [number, number];
}

interface Place {
  readonly surface: BareSurface;
  readonly strip: Strip;
}

export function structureOf(entry: FramingFile, { surface, strip }: Place): Structure {
  if (surface.kind === "ceiling" || "run" in entry) return { members: [], clearMm: strip.alongMm };
  const plates = platesOf(entry, strip);
  return {
    members: [...plates.members, ...endStudsOf(entry, strip, plates.clearMm)],
    clearMm: plates.clearMm,
  };
}

/** Plates run across the studs, from end to end of the wall: bottom ones counted up, top ones counted down. */
function platesOf(entry: WallFramingFile, strip: Strip): Structure {
  const { below = USUAL_PLATES.below, above = USUAL_PLATES.above } = entry.plates ?? {};
  const thicknessMm = entry.plates?.thickness ?? USUAL_PLATES.thicknessMm;
  const [low, high] = strip.alongMm;
  const plate = (kind: Member["kind"], number: number, centreMm: number): Member => ({
    number,
    kind,
    from: pointIn(strip, 0, centreMm),
    to: pointIn(strip, strip.extentMm, centreMm),
    widthMm: thicknessMm,
    depthMm: entry.member.depthMm,
    basis: entry.plates === undefined ? "assumed" : "measured",
    found: null,
  });
  const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, index) => index);
  return {
    members: [
      ...upTo(below).map((index) => plate("bottom-plate", index + 1, low + (index + 0.5) * thicknessMm)),
      ...upTo(above).map((index) => plate("top-plate", index + 1, high - (index + 0.5) * thicknessMm)),
    ],
    clearMm: [low + below * thicknessMm, high - above * thicknessMm],
  };
}

/** One stud at each end of the wall, the first at the end that is measured from. */
function endStudsOf(entry: WallFramingFile, strip: Strip, clearMm: Structure["clearMm"]): readonly Member[] {
  if (entry.end_studs === false) return [];
  const { widthMm, depthMm } = entry.member;
  return [widthMm / 2, strip.extentMm - widthMm / 2].map((centreMm, index) => ({
    number: index + 1,
    kind: "end-stud",
    from: pointIn(strip, centreMm, clearMm[0]),
    to: pointIn(strip, centreMm, clearMm[1]),
    widthMm,
    depthMm,
    basis: entry.end_studs === undefined ? "assumed" : "measured",
    found: null,
  }));
}
