import type { MemberName } from "../findings/finding.js";

/** A gap to a member, its length already written; `isCut` where the opening goes into it by so much. */
export interface WrittenGap {
  readonly member: MemberName;
  readonly figure: string;
  readonly isCut: boolean;
  /** The wall on whose side it stands; null where that is not known. */
  readonly toward: string | null;
}

/** What a schedule says of an opening beside its size and its tapes; lengths are already written. */
export interface Details {
  /** Null where it is not known. */
  readonly bay: { readonly number: number; readonly from: string } | null;
  /** Null where the framing is not known. */
  readonly gaps: readonly WrittenGap[] | null;
  readonly depth: string;
  /** Against the members, or against the top where they do not say it; null where the sheet shows no arrow. */
  readonly arrow:
    | {
        readonly member: "joist" | "stud";
        readonly end: string;
        readonly degrees: number;
        readonly toward: string;
      }
    | { readonly anticlockwiseDeg: number }
    | "straight"
    | null;
}
