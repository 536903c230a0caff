import { distance } from "fastest-levenshtein";

/** How many letters may be wrong in a word of that length for us to guess what was meant. Our own choice. */
const slipsAllowed = (length: number): number => (length <= 3 ? 1 : length <= 7 ? 2 : 3);

/** The choice that was most likely meant, without regard to case; null where none is near, or two are as near. */
export function suggest(typed: string, choices: readonly string[]): string | null {
  const word = typed.trim().toLowerCase();
  const most = slipsAllowed(word.length);
  const near = choices
    .map((choice) => ({ choice, slips: slipsBetween(word, choice.toLowerCase()) }))
    .filter(({ choice, slips }) => slips <= most && slips < Math.max(choice.length, word.length))
    .sort((a, b) => a.slips - b.slips);
  const [first, second] = near;
  return first === undefined || first.slips === second?.slips ? null : first.choice;
}

/** Letters out of order are one slip: the commonest of all. */
function slipsBetween(word: string, choice: string): number {
  const slips = distance(word, choice);
  return slips > 0 && sorted(word) === sorted(choice) ? 1 : slips;
}

const sorted = (word: string): string => [...word].sort().join("");
