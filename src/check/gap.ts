import type { MemberName } from "../findings/finding.js";

export interface Gap {
  /** Edge to edge in the framing plane, in mm; negative where the opening cuts the member. */
  readonly mm: number;
  readonly member: MemberName;
}
