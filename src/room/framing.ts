import type { MemberKind } from "../findings/finding.js";
import type { Polygon } from "../geometry/shape.js";
import type { SurfacePoint } from "../geometry/vector.js";

/* What stands behind a surface's board, on the surface and in millimetres: members, how they are laid out, straps. */

/** A length of framing: its centre line on the surface and what it measures across. */
export interface Member {
  /** Counted from the wall that the framing is measured from, 1 first; structure that does not repeat counts apart. */
  readonly number: number;
  readonly kind: MemberKind;
  readonly from: SurfacePoint;
  readonly to: SurfacePoint;
  readonly widthMm: number;
  readonly depthMm: number;
  /** Measured on site, or assumed from a first mark and a spacing (or from custom, for plates and end studs). */
  readonly basis: "measured" | "assumed";
  /** Who found it where it now is, and when; null where the layout itself says where it is. */
  readonly found: Found | null;
}

export interface Found {
  readonly by: string;
  /** As typed. */
  readonly on: string;
}

export interface Layout {
  /** Wall that the centres are measured from, or the name of a corner or a mark (`findings/edge-name.ts`). */
  readonly from: string;
  /** The line that they are measured from on framing faces: a point of it, and the way away from it, of length 1. */
  readonly zero: { readonly at: SurfacePoint; readonly away: SurfacePoint };
  /** Spacing where the file gives one. */
  readonly spacingMm: number | null;
  /** Assumed while any joist or stud of it is. */
  readonly basis: "measured" | "assumed";
  /** True where the file gave the first member's near edge (`mark: near-edge`). */
  readonly markedToNearEdge: boolean;
}

/** The part of a member between its flanges: of one thickness, or open as in a truss. */
export type Web = { readonly kind: "solid"; readonly mm: number } | { readonly kind: "open" };

/** Strapping or resilient channel, across the members or otherwise. */
export interface Straps {
  readonly kind: "strap" | "channel";
  readonly layout: Layout;
  /** The direction that they run in, of length 1, to the right or up. */
  readonly direction: SurfacePoint;
}

export type Framing =
  | { readonly kind: "unknown" }
  | {
      readonly kind: "known";
      readonly layout: Layout;
      /** "u" or "v": the direction that the members run in, or the nearer one where they run at an angle. */
      readonly run: "u" | "v";
      /** The direction itself, of length 1, to the right or up. */
      readonly direction: SurfacePoint;
      readonly members: readonly Member[];
      /** Stretches beyond the last measured member: unknown, not clear. */
      readonly unknown: readonly Polygon[];
      /** Clear depth behind the framing face, in mm; infinite over an open attic. */
      readonly cavityMm: number;
      /** Of I-joists and trusses, whose `widthMm` is across the flange or chord; null for members of one width. */
      readonly web: Web | null;
      /** I-joists, trusses, laminated members: bored only by their maker's rules. */
      readonly engineered: boolean;
      /** Whether a wall stands outside or carries; true where nobody has said. */
      readonly bearing: boolean;
      /** Straps or channels, which are among the members too; null where the file tells of none, or of their depth alone. */
      readonly straps: Straps | null;
      /** Joists or studs that somebody looked for in vain, where the layout has them. */
      readonly missing: readonly Member[];
      /** Numbers of those that were found and that the layout does not have. */
      readonly extra: readonly number[];
    };
