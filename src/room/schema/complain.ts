import * as z from "zod";
import type { ComplaintCode, FiguresByComplaint } from "../../findings/complaint.js";

/** What a schema says is wrong; zod carries it to `issues.ts` in the issue's `params`. */
export interface SchemaComplaint<C extends ComplaintCode> {
  readonly code: C;
  readonly figures: FiguresByComplaint[C];
}

/** What a transform or a check is given by zod to complain through. */
export type Reading = Pick<z.core.$RefinementCtx, "issues" | "value">;

/** Puts a complaint about the value being read; returns what a transform returns when it has failed. */
export function complain<C extends ComplaintCode>(
  context: Reading,
  code: C,
  figures: FiguresByComplaint[C],
): never {
  const params: SchemaComplaint<C> = { code, figures };
  context.issues.push({ code: "custom", input: context.value, params: { ...params } });
  return z.NEVER;
}
