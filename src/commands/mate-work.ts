import { once } from "node:events";
import pico from "picocolors";
import { wordsIn } from "../words/words.js";
import { askedBy } from "./asked.js";
import { load } from "./load.js";
import type { MateCounts, MateNumbers, ShareTask } from "./mate.js";
import type { Terminal } from "./terminal.js";
import { basisOf, countsOf, sheetsTaken } from "./together.js";
import { takeTurns } from "./turns.js";

/** Makes some sheets of a room, tells how many pages they have, and gives them when it is told their numbers. */
export async function share({ port, turns, flags, language, folder, typed }: ShareTask): Promise<void> {
  const words = wordsIn([language]);
  const asked = askedBy(flags, words);
  const loaded = load(silent(folder), words, typed);
  // Whoever called says what is wrong with the file.
  if (loaded.kind !== "job") return;
  const order = asked.orderFor(loaded.job);
  const taken = takeTurns(order, turns);
  const counts: MateCounts = { basis: basisOf(order, asked), kinds: countsOf(taken) };
  port.postMessage(counts);
  const [numbers]: MateNumbers[] = await once(port, "message");
  if (numbers !== undefined) port.postMessage(sheetsTaken(order, asked, taken, numbers));
}

const silent = (folder: string): Terminal => ({
  folder,
  write: () => undefined,
  tell: () => undefined,
  progress: () => undefined,
  colours: pico.createColors(false),
});
