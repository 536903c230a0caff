import { suggest } from "../room/suggest.js";
import type { NumberedSheet } from "../sheets/packet.js";
import { pageCountOf } from "../sheets/page-count.js";
import type { Sheet } from "../sheets/sheet.js";
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

/** What else than its name and its kind asks for a sheet on paper: its trades, and the names of what it holds. */
function othersOf({ trades, alsoNamed = [] }: Sheet): readonly string[] {
  return [...trades, ...alsoNamed.map((name) => name.toLowerCase())];
}

function names(sheet: string, others: readonly string[]): string[] {
  return [sheet.toLowerCase(), kindOf(sheet).toLowerCase(), ...others];
}

/** The sheets of a packet that were asked for, their numbers kept. Throws `UsageError` naming what there is. */
export function onlyWanted(
  sheets: readonly NumberedSheet[],
  wanted: Wanted,
  words: Words,
): readonly NumberedSheet[] {
  if (wanted === null) return sheets;
  const onPaper = sheets.filter(({ sheet }) => pageCountOf(sheet) > 0);
  const others = new Map(onPaper.map(({ sheet }) => [sheet.name, othersOf(sheet)]));
  const drawn = sheets.filter(({ sheet }) => sheet.whole !== null);
  const known = new Set([...others.keys(), ...drawn.map(({ sheet }) => sheet.name)]);
  for (const name of wanted) {
    if (![...known].some((sheet) => names(sheet, others.get(sheet) ?? []).includes(name))) {
      const near = suggest(name, [
        ...new Set([...others.values(), ...[...known].map(kindOf), ...known].flat()),
      ]);
      throw new UsageError(words.commands.failure.unknownSheet(name, near ?? "", listed(known, others)));
    }
  }
  return sheets.filter(({ sheet }) =>
    names(sheet.name, others.get(sheet.name) ?? []).some((name) => wanted.includes(name)),
  );
}

/** Trades, kinds and names; of a kind with very many sheets the first ones and the last. */
function listed(sheets: ReadonlySet<string>, others: ReadonlyMap<string, readonly string[]>): string {
  const kinds = new Set([...sheets].map(kindOf));
  const names = [...kinds].flatMap((kind) => {
    const ofKind = [...sheets].filter((sheet) => kindOf(sheet) === kind);
    return ofKind.length <= MOST_NAMED
      ? ofKind
      : [...ofKind.slice(0, 1), `${ofKind[1]} ... ${ofKind.at(-1)}`];
  });
  return [...new Set([...[...others.values()].flat(), ...kinds, ...names])].join(", ");
}

/** More names of one kind than this are read by nobody. Our own choice. */
const MOST_NAMED = 10;
