/** Something typed or to be typed, told apart from the sentence round it. */
export const quoted = (text: string): string => `\`${text}\``;

const MOST_LISTED = 12;

/** Quoted choices as a sentence lists them, the last two joined by the language's own word. */
export function listed(choices: readonly string[], word: string): string {
  const quotedOnes = choices.map(quoted);
  if (choices.length > MOST_LISTED) return `${quotedOnes.slice(0, MOST_LISTED).join(", ")}, …`;
  const last = quotedOnes.at(-1) ?? "";
  const others = quotedOnes.slice(0, -1);
  return others.length === 0 ? last : `${others.join(", ")} ${word} ${last}`;
}
