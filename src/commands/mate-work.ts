import { once } from "node:events";
import { orderOf } from "../sheets/order.js";
import { memoryOf } from "./made.js";
import type { MateNumbers, ShareTask } from "./mate.js";
import { countsOf, sheetsTaken } from "./together.js";
import { takeTurns } from "./turns.js";

/** Makes some sheets of a room, tells how many pages they have, and gives them when it is told their numbers. */
export async function share({ port, turns, job, asked }: ShareTask): Promise<void> {
  const order = orderOf(job, asked.wishes);
  const taken = takeTurns(order, asked, turns);
  port.postMessage(countsOf(taken));
  const [numbers]: MateNumbers[] = await once(port, "message");
  if (numbers === undefined) return;
  const sheets = sheetsTaken(order, asked, { taken, numbers, told: () => undefined });
  port.postMessage(sheets, [...sheets.values()].flatMap(memoryOf));
}
