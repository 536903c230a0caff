import { EPSILON_MM } from "../../geometry/epsilon.js";
import { inner } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { USUAL_OPENING_STUDS, USUAL_PLATES } from "../../standards/framing-practice.js";
import type { Member, Obstruction, Path } from "../room.js";
import type { FramingFile } from "../schema/framing.js";
import type { PieceFile, RoughOpeningFile } from "../schema/structure.js";
import { all, andThen, type Resolved, together } from "./resolved.js";
import type { Shell } from "./shell.js";
import { pointIn, type Strip, stretchesOf } from "./strip.js";
import { centreLine, type Structure } from "./structure.js";
import type { BareSurface } from "./surfaces.js";
import { fixOn } from "./tapes.js";

/** A rectangle along u and v. */
export interface Box {
  readonly min: SurfacePoint;
  readonly max: SurfacePoint;
}

export interface Place {
  readonly surface: BareSurface;
  readonly shell: Shell;
  readonly path: Path;
}

interface Corners {
  readonly corner: Readonly<Record<string, number>>;
  readonly opposite: Readonly<Record<string, number>>;
}

export function boxOf(entry: Corners, { surface, shell, path }: Place): Resolved<Box> {
  const both = together({
    corner: fixOn(entry.corner, surface, { shell, path: [...path, "corner"] }),
    opposite: fixOn(entry.opposite, surface, { shell, path: [...path, "opposite"] }),
  });
  return andThen(both, ({ corner: { centre: a }, opposite: { centre: b } }) => ({
    min: { u: Math.min(a.u, b.u), v: Math.min(a.v, b.v) },
    max: { u: Math.max(a.u, b.u), v: Math.max(a.v, b.v) },
  }));
}

/** Pieces that stand by themselves, each along its longer side; those of a kind are counted as they are told. */
export function piecesOf(entry: FramingFile, place: Place): Resolved<readonly Member[]> {
  const told = entry.also ?? [];
  return all(
    told.map((piece, index) =>
      andThen(boxOf(piece, { ...place, path: [...place.path, "also", index] }), (box) =>
        standing(piece, box, {
          number: told.slice(0, index + 1).filter(({ kind }) => kind === piece.kind).length,
          depthMm: piece.depth ?? entry.member.depthMm,
        }),
      ),
    ),
  );
}

function standing(
  { kind }: Pick<PieceFile, "kind">,
  { min, max }: Box,
  { number, depthMm }: { readonly number: number; readonly depthMm: number },
): Member {
  const [across, up] = [max.u - min.u, max.v - min.v];
  const middle = { u: (min.u + max.u) / 2, v: (min.v + max.v) / 2 };
  const lies = across >= up;
  return {
    number,
    kind,
    from: lies ? { u: min.u, v: middle.v } : { u: middle.u, v: min.v },
    to: lies ? { u: max.u, v: middle.v } : { u: middle.u, v: max.v },
    widthMm: lies ? up : across,
    depthMm,
    basis: "measured",
    found: null,
  };
}

/** Rims across the ends of a ceiling's members: just inside every edge that they do not run along. */
export function rimsOf(entry: FramingFile, { edges }: BareSurface, strip: Strip): readonly Member[] {
  if (entry.rims !== true) return [];
  const { widthMm, depthMm } = entry.member;
  const across = edges.filter(({ from, to }) => {
    const lengthMm = Math.hypot(to.u - from.u, to.v - from.v);
    return Math.abs(inner(strip.away, { u: to.u - from.u, v: to.v - from.v })) > ALONG * lengthMm;
  });
  return across.map((edge, index) => ({
    number: index + 1,
    kind: "rim",
    ...centreLine(edge, widthMm / 2, strip),
    widthMm,
    depthMm,
    basis: "measured",
    found: null,
  }));
}

/** Sine of the angle from which an edge lies across the members. */
const ALONG = 0.1;

/** A door or a window in the studs. */
export interface RoughOpening {
  readonly box: Box;
  /** What the layout's studs do not come into: the opening with header, sill and the studs beside it. */
  readonly taken: Box;
  readonly members: readonly Member[];
}

export function roughOpeningsOf(
  entry: FramingFile,
  place: Place & { readonly strip: Strip; readonly structure: Structure },
): Resolved<readonly RoughOpening[]> {
  const told = entry.openings ?? [];
  return all(
    told.map((opening, index) =>
      andThen(boxOf(opening, { ...place, path: [...place.path, "openings", index] }), (box) =>
        framed(opening, box, { ...place, entry, number: index + 1 }),
      ),
    ),
  );
}

interface Around {
  readonly entry: FramingFile;
  readonly strip: Strip;
  readonly structure: Structure;
  /** Of the door or window, counted as they are told. */
  readonly number: number;
}

function framed(opening: RoughOpeningFile, box: Box, around: Around): RoughOpening {
  const { entry, strip, structure, number } = around;
  const { widthMm, depthMm } = entry.member;
  const studs = opening.studs ?? USUAL_OPENING_STUDS;
  const sideMm = studs * widthMm;
  const middle = (box.min.u + box.max.u) / 2;
  const clear = clearAt(middle, around);
  const headerMm = Math.min(opening.header ?? Number.POSITIVE_INFINITY, clear[1] - box.max.v);
  const sillMm = box.min.v > clear[0] + EPSILON_MM ? USUAL_PLATES.thicknessMm : 0;
  const lying = (kind: "header" | "sill", lowMm: number, highMm: number, isTold: boolean): Member[] => {
    if (highMm - lowMm <= EPSILON_MM) return [];
    const ends = { min: { u: box.min.u, v: lowMm }, max: { u: box.max.u, v: highMm } };
    const v = (lowMm + highMm) / 2;
    return [
      {
        number,
        kind,
        from: { u: ends.min.u, v },
        to: { u: ends.max.u, v },
        widthMm: highMm - lowMm,
        depthMm,
        basis: isTold ? "measured" : "assumed",
        found: null,
      },
    ];
  };
  const beside = Array.from({ length: studs }, (_, index) => (index + 0.5) * widthMm)
    .flatMap((mm) => [box.min.u - mm, box.max.u + mm])
    .flatMap((u, index) =>
      stretchesOf(strip, { fromMm: acrossMm(strip, u), widthMm }, structure.clear).map(
        ([low, high]): Member => ({
          number: (number - 1) * 2 * studs + index + 1,
          kind: "opening-stud",
          from: pointIn(strip, acrossMm(strip, u), low),
          to: pointIn(strip, acrossMm(strip, u), high),
          widthMm,
          depthMm,
          basis: opening.studs === undefined ? "assumed" : "measured",
          found: null,
        }),
      ),
    );
  return {
    box,
    taken: {
      min: { u: box.min.u - sideMm, v: box.min.v - sillMm },
      max: { u: box.max.u + sideMm, v: box.max.v + Math.max(0, headerMm) },
    },
    members: [
      ...lying("header", box.max.v, box.max.v + headerMm, opening.header !== undefined),
      ...lying("sill", box.min.v - sillMm, box.min.v, false),
      ...beside,
    ],
  };
}

/** How far from the end that is measured from a place on the wall lies. */
const acrossMm = ({ away, startMm }: Strip, u: number): number => away.u * u - startMm;

/** What the plates leave over a place on the wall. */
function clearAt(u: number, { strip, structure }: Around): readonly [number, number] {
  const [first] = stretchesOf(strip, { fromMm: acrossMm(strip, u), widthMm: 0 }, structure.clear);
  return first ?? [0, 0];
}

/** What a door or a window leaves of a stud that stands in its way: the cripples over and under it. */
export function withoutOpenings(member: Member, openings: readonly RoughOpening[]): readonly Member[] {
  return openings.reduce<readonly Member[]>(
    (left, { taken }) => left.flatMap((piece) => cutBy(piece, taken)),
    [member],
  );
}

function cutBy(member: Member, { min, max }: Box): readonly Member[] {
  const half = member.widthMm / 2;
  // Studs stand up, straps lie across them.
  const isUp = Math.abs(member.to.v - member.from.v) > Math.abs(member.to.u - member.from.u);
  const [along, across] = isUp ? (["v", "u"] as const) : (["u", "v"] as const);
  const at = member.from[across];
  if (at + half <= min[across] + EPSILON_MM || at - half >= max[across] - EPSILON_MM) return [member];
  const ends = [member.from[along], member.to[along]];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const piece = (from: number, to: number): readonly Member[] => {
    const end = (mm: number): SurfacePoint => (isUp ? { u: at, v: mm } : { u: mm, v: at });
    return to - from > EPSILON_MM ? [{ ...member, from: end(from), to: end(to) }] : [];
  };
  return [...piece(low, Math.min(min[along], high)), ...piece(Math.max(max[along], low), high)];
}

/** Doors and windows as what openings must stay away from; a wrong tape of one is told with the framing. */
export function doorsIn(entry: FramingFile | undefined, place: Place): readonly Obstruction[] {
  return (entry?.openings ?? []).flatMap((opening, index): readonly Obstruction[] => {
    const path = [...place.path, "openings", index];
    const box = boxOf(opening, { ...place, path });
    if (!box.ok) return [];
    return [
      { name: opening.name, area: { kind: "rectangle", ...box.value }, keepMm: 0, behindMm: null, path },
    ];
  });
}
