import type { ComplaintCode, ProblemOf } from "../findings/complaint.js";
import type { Words } from "./words.js";

/** A complaint as a sentence: what is wrong, and what to type instead. */
export function complaintText<C extends ComplaintCode>(
  words: Words,
  { code, figures }: Pick<ProblemOf<C>, "code" | "figures">,
): string {
  return words.complaints.phrase[code](figures);
}
