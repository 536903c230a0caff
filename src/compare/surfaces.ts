import type { Polygon } from "../geometry/shape.js";
import type { Room, Surface } from "../room/room.js";
import { type MemberChange, memberChanges } from "./members.js";
import { isNear, isSamePoint } from "./near.js";
import { type ObstructionChange, obstructionChanges } from "./obstructions.js";

/** One thing that is otherwise about one wall or ceiling as a whole. */
export type SurfaceChange = { readonly surface: string } & (
  | { readonly what: "added" | "gone" }
  /** Between framing faces. */
  | { readonly what: "size"; readonly before: Size; readonly after: Size }
  /** As wide and as high as before, and of another outline. */
  | { readonly what: "outline" }
  /** Where sheets of its board meet. */
  | { readonly what: "joints" }
  | { readonly what: "board"; readonly beforeMm: number; readonly afterMm: number }
  /** Clear depth behind it; infinite where it is open. */
  | { readonly what: "cavity"; readonly beforeMm: number; readonly afterMm: number }
  | { readonly what: "framing"; readonly known: boolean }
  | { readonly what: "rated" | "enclosure" | "second-support"; readonly after: boolean }
  | { readonly what: "insulation"; readonly before: string | null; readonly after: string | null }
);

export interface Size {
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface SurfacesCompared {
  readonly surfaces: readonly SurfaceChange[];
  readonly members: readonly MemberChange[];
  readonly obstructions: readonly ObstructionChange[];
}

/** Walls and ceilings by their names. */
export function surfacesCompared(before: Room, after: Room): SurfacesCompared {
  const find = ({ surfaces }: Room, name: string) => surfaces.find((surface) => surface.name === name);
  const pairs = after.surfaces.flatMap((is) => {
    const was = find(before, is.name);
    return was === undefined ? [] : [{ was, is }];
  });
  return {
    surfaces: [
      ...pairs.flatMap(({ was, is }) => surfaceChanges(was, is)),
      ...lone("added", after.surfaces, before),
      ...lone("gone", before.surfaces, after),
    ],
    members: pairs.flatMap(({ was, is }) =>
      memberChanges({ room: before, surface: was }, { room: after, surface: is }),
    ),
    obstructions: pairs.flatMap(({ was, is }) => obstructionChanges(was, is)),
  };
}

const lone = (what: "added" | "gone", surfaces: readonly Surface[], other: Room): readonly SurfaceChange[] =>
  surfaces
    .filter(({ name }) => !other.surfaces.some((surface) => surface.name === name))
    .map(({ name }) => ({ surface: name, what }));

function surfaceChanges(was: Surface, is: Surface): readonly SurfaceChange[] {
  const surface = is.name;
  const outline = outlineChanges(was, is);
  const turned = (what: "rated" | "enclosure" | "second-support", old: boolean, after: boolean) =>
    old === after ? [] : [{ surface, what, after } as const];
  return [
    ...outline,
    ...(isNear(was.boardMm, is.boardMm)
      ? []
      : [{ surface, what: "board", beforeMm: was.boardMm, afterMm: is.boardMm } as const]),
    ...(outline.length > 0 || hasSameJoints(was, is) ? [] : [{ surface, what: "joints" } as const]),
    ...framingChanges(was, is),
    ...turned("rated", was.rated, is.rated),
    ...turned("enclosure", was.enclosure, is.enclosure),
    ...turned("second-support", was.secondSupport, is.secondSupport),
    ...(was.insulation === is.insulation
      ? []
      : [{ surface, what: "insulation", before: was.insulation, after: is.insulation } as const]),
  ];
}

function outlineChanges(was: Surface, is: Surface): readonly SurfaceChange[] {
  const outline = ({ edges }: Surface): Polygon => edges.map(({ from }) => from);
  const [before, after] = [sizeOf(outline(was)), sizeOf(outline(is))];
  if (!isNear(before.widthMm, after.widthMm) || !isNear(before.heightMm, after.heightMm)) {
    return [{ surface: is.name, what: "size", before, after }];
  }
  const outlines = [outline, ...voidsOf(was, is)].map((of) => isSamePolygon(of(was), of(is)));
  return outlines.every(Boolean) && was.voids.length === is.voids.length
    ? []
    : [{ surface: is.name, what: "outline" }];
}

const voidsOf = (was: Surface, is: Surface): readonly ((of: Surface) => Polygon)[] =>
  [...was.voids.keys(), ...is.voids.keys()].map(
    (index) => (of) => of.voids[index]?.edges.map(({ from }) => from) ?? [],
  );

function sizeOf(corners: Polygon): Size {
  const us = corners.map(({ u }) => u);
  const vs = corners.map(({ v }) => v);
  return { widthMm: Math.max(...us) - Math.min(...us), heightMm: Math.max(...vs) - Math.min(...vs) };
}

/** Corner by corner, wherever in the frame it lies: both are counted from their first corner. */
function isSamePolygon(a: Polygon, b: Polygon): boolean {
  const from = (polygon: Polygon): Polygon => {
    const [origin] = polygon;
    return polygon.map(({ u, v }) => ({ u: u - (origin?.u ?? 0), v: v - (origin?.v ?? 0) }));
  };
  const [first, second] = [from(a), from(b)];
  return first.length === second.length && first.every((corner, index) => isSamePoint(corner, second[index]));
}

const hasSameJoints = ({ joints: was }: Surface, { joints: is }: Surface): boolean =>
  was.length === is.length &&
  was.every(
    (joint, index) => isSamePoint(joint.from, is[index]?.from) && isSamePoint(joint.to, is[index]?.to),
  );

function framingChanges({ framing: was }: Surface, { framing: is, name }: Surface): readonly SurfaceChange[] {
  if (was.kind !== is.kind) return [{ surface: name, what: "framing", known: is.kind === "known" }];
  if (was.kind === "unknown" || is.kind === "unknown" || isNear(was.cavityMm, is.cavityMm)) return [];
  return [{ surface: name, what: "cavity", beforeMm: was.cavityMm, afterMm: is.cavityMm }];
}
