import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { Polygon } from "../../geometry/shape.js";
import type { Layout } from "../room.js";
import type { FramingFile } from "../schema/framing.js";
import type { Run } from "./run.js";
import { beyond, type Strip } from "./strip.js";

/** How joists, studs or straps are told to repeat. */
export interface LaidFile extends Pick<FramingFile, "first" | "spacing" | "at" | "mark"> {
  readonly member: { readonly widthMm: number };
}

export const layoutOf = (
  { spacing, mark }: Pick<LaidFile, "spacing" | "mark">,
  { from, strip }: Run,
  basis: Layout["basis"],
): Layout => ({
  from,
  zero: strip.zero,
  spacingMm: spacing ?? null,
  basis,
  markedToNearEdge: mark === "near-edge",
});

/** The stretch past the last measured one of them: nobody has said what is there. */
export function pastLast(
  { at, member }: LaidFile,
  strip: Strip,
  centres: readonly number[],
): readonly Polygon[] {
  if (at === undefined) return [];
  const fromMm = (centres.at(-1) ?? 0) + member.widthMm / 2;
  return fromMm >= strip.extentMm - EPSILON_MM ? [] : beyond(strip, fromMm);
}
