import type { Code, Finding, FindingOf } from "../findings/finding.js";
import type { Measure } from "./measure.js";
import type { Words } from "./words.js";

/** A finding as a sentence, the loudspeaker that it is about in front: `TFL: the opening cuts joist 7 by ...`. */
export function findingText(words: Words, measure: Measure, finding: Finding): string {
  const sentence = phraseOf(words, measure, finding);
  return finding.speaker === null ? sentence : `${finding.speaker}: ${sentence}`;
}

function phraseOf<C extends Code>(words: Words, measure: Measure, { code, figures }: FindingOf<C>): string {
  return words.findings.phrase[code](figures, measure);
}

/** Where to move the opening to, as tapes; null where no fix was found. */
export function fixText(words: Words, measure: Measure, { fix }: Pick<Finding, "fix">): string | null {
  if (fix === null) return null;
  const tapes = Object.entries(fix.at).map(([from, mm]) => ({ from, length: measure.tape(mm) }));
  return words.findings.nearestClear(tapes);
}
