import type { MemberName } from "./finding.js";

/** What keeps a loudspeaker from a place nearer to its preferred direction. */
export type Hindrance =
  | { readonly kind: "member"; readonly member: MemberName }
  | { readonly kind: "obstruction"; readonly name: string }
  /** The finished edge along a wall, the floor or the ceiling. */
  | { readonly kind: "edge"; readonly along: string }
  /** A joint of the board, which it keeps off since that costs little. */
  | { readonly kind: "joint"; readonly joint: "long" | "butt" }
  /** Framing that nobody has measured. */
  | { readonly kind: "unknown" }
  | { readonly kind: "neighbour"; readonly id: string }
  /** What the layout allows. */
  | { readonly kind: "window"; readonly figure: "azimuth" | "elevation" }
  /** A tape that the file holds. */
  | { readonly kind: "hold"; readonly from: string }
  /** What stands in the way of its partner, which it is matched with. */
  | { readonly kind: "partner"; readonly id: string; readonly of: Hindrance }
  /** The line that it shares with these. */
  | { readonly kind: "line"; readonly with: readonly string[] };
