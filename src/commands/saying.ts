import type { MemberName } from "../findings/finding.js";
import type { TapeRead } from "../words/english/compare.js";
import type { Measure } from "../words/measure.js";
import type { Words } from "../words/words.js";

/** One line of a comparison: what it is about and what is otherwise. */
export type Line = readonly [name: string, said: string];

export interface Saying {
  readonly words: Words;
  readonly measure: Measure;
}

export function tapeRead({ measure }: Saying, from: string | null, before: number, after: number): TapeRead {
  return {
    from,
    before: measure.tape(before),
    after: measure.tape(after),
    by: measure.length(Math.abs(after - before)),
    further: after > before,
  };
}

interface Numbered {
  readonly member: MemberName;
}

/** Whether two things are about neighbouring members. */
export const isNext = ({ member: before }: Numbered, { member }: Numbered): boolean =>
  member.surface === before.surface && member.kind === before.kind && member.number === before.number + 1;
