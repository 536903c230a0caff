import { distance } from "fastest-levenshtein";
import { shown } from "./shown.js";

/** How many letters may be wrong in a word of that length for us to guess what was meant. Our own choice. */
const slipsAllowed = (length: number): number => (length <= 4 ? 1 : length <= 7 ? 2 : 3);

/** Among more than these nobody means one of them by a slip of typing. Our own choice. */
const MOST_CHOICES = 1000;

/**
 * The choice that was most likely meant, without regard to case and fit to be shown; null where none is near, or two
 * are as near.
 */
export function suggest(typed: string, choices: readonly string[]): string | null {
  if (choices.length > MOST_CHOICES) return null;
  const word = typed.trim().toLowerCase();
  const most = slipsAllowed(word.length);
  const near = choices
    // As many letters as one has more than the other are wrong.
    .filter((choice) => Math.abs(choice.length - word.length) <= most)
    .map((choice) => ({ choice, slips: slipsBetween(word, choice.toLowerCase()) }))
    .filter(({ choice, slips }) => slips <= most && slips < Math.max(choice.length, word.length))
    .sort((a, b) => a.slips - b.slips);
  const [first, second] = near;
  return first === undefined || first.slips === second?.slips ? null : shown(first.choice);
}

/** Letters out of order are one slip: the commonest of all. */
function slipsBetween(word: string, choice: string): number {
  const slips = distance(word, choice);
  return slips > 0 && sorted(word) === sorted(choice) ? 1 : slips;
}

const sorted = (word: string): string => [...word].sort().join("");
