import type { Packet, PrintedPage } from "../sheets/packet.js";
import type { Words } from "../words/words.js";
import { UsageError } from "./usage-error.js";

/** Which sheets `--only` asks for; null asks for all. Names, kinds of sheet ("opening") and trades all serve. */
export type Wanted = readonly string[] | null;

export function wantedTyped(typed: string | undefined): Wanted {
  if (typed === undefined) return null;
  return typed
    .split(",")
    .map((name) => name.trim().toLowerCase())
    .filter((name) => name !== "");
}

/** The 1:1 marking sheets are drawn only when a name asks for them. */
export const asksFullSize = (wanted: Wanted): boolean =>
  wanted?.some((name) => name.endsWith("-full")) ?? false;

/** So are the story poles, unless the paper is a roll. */
export const asksPoles = (wanted: Wanted): boolean =>
  wanted?.some((name) => name === "pole" || name === "poles" || name.startsWith("pole-")) ?? false;

const kindOf = (sheet: string): string => sheet.split("-")[0] ?? sheet;

/** What else than its name and its kind asks for a sheet: its trades, and the names of what it holds. */
function othersOf({ trades, alsoNamed }: PrintedPage): readonly string[] {
  return [...trades, ...alsoNamed.map((name) => name.toLowerCase())];
}

function names(sheet: string, others: readonly string[]): string[] {
  return [sheet.toLowerCase(), kindOf(sheet).toLowerCase(), ...others];
}

/** The part of a packet that was asked for, its numbering kept. Throws `UsageError` naming what there is. */
export function onlyWanted(packet: Packet, wanted: Wanted, words: Words): Packet {
  if (wanted === null) return packet;
  const others = new Map(packet.pages.map((page) => [page.sheet, othersOf(page)]));
  const sheets = new Set([...others.keys(), ...packet.drawings.map((drawing) => drawing.sheet)]);
  for (const name of wanted) {
    if (![...sheets].some((sheet) => names(sheet, others.get(sheet) ?? []).includes(name))) {
      throw new UsageError(words.commands.failure.unknownSheet(name, listed(sheets, others)));
    }
  }
  const isWanted = (sheet: string): boolean =>
    names(sheet, others.get(sheet) ?? []).some((name) => wanted.includes(name));
  return {
    pages: packet.pages.filter((page) => isWanted(page.sheet)),
    drawings: packet.drawings.filter((drawing) => isWanted(drawing.sheet)),
  };
}

function listed(sheets: ReadonlySet<string>, others: ReadonlyMap<string, readonly string[]>): string {
  const kinds = [...sheets].map(kindOf);
  return [...new Set([...[...others.values()].flat(), ...kinds, ...sheets])].join(", ");
}
