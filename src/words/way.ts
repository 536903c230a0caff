import type { MemberName } from "../findings/finding.js";

/** One straight length of a cable's way; lengths are already written. */
export interface WrittenLeg {
  readonly surface: string;
  /** A wall's name, "floor" or "ceiling". */
  readonly toward: string;
  readonly length: string;
  /** Up or down from the ceiling before it, behind a face; null where it comes from anything else. */
  readonly step: { readonly length: string; readonly isUp: boolean } | null;
  /** Members that it passes through, by kind. */
  readonly crossed: readonly { readonly kind: MemberName["kind"]; readonly count: number }[];
  /** Numbers of the joists or studs at both sides, where it goes along them and both are there. */
  readonly between: { readonly kind: "joist" | "stud"; readonly numbers: readonly [number, number] } | null;
  /** Over the joists of an open attic, where nothing is bored. */
  readonly isOver: boolean;
  /** Through framing that nobody has measured. */
  readonly unmeasured: boolean;
}

/** What a room file leaves open about cable and what was taken for it, already written. */
export interface WrittenAssumption {
  readonly what:
    | "diameter"
    | "loop"
    | "rack-loop"
    | "spare"
    | "gauges"
    | "loss-limit"
    | "temperature"
    | "one-pair"
    | "nominal-impedance"
    | "spools";
  readonly figure: string;
}
