import type { Problem } from "../../findings/complaint.js";
import { MAIN_CEILING } from "../names.js";
import type { Path } from "../room.js";
import type { RoomFile } from "../schema.js";
import type { Shell } from "./shell.js";

/** What the file says about the ceiling at the room's height, where named ceilings leave nothing of it. */
export function withoutMainCeiling(shell: Shell, file: RoomFile): readonly Problem[] {
  if (shell.ceilings.some(({ name }) => name === MAIN_CEILING)) return [];
  const on = (list: "speakers" | "obstructions"): readonly Path[] =>
    (file[list] ?? []).flatMap((entry, index) => (entry.on === MAIN_CEILING ? [[list, index, "on"]] : []));
  const under = (["framing", "surfaces"] as const).flatMap((block): readonly Path[] =>
    Object.hasOwn(file[block] ?? {}, MAIN_CEILING) ? [[block, MAIN_CEILING]] : [],
  );
  const figures = { choices: shell.ceilings.map(({ name }) => name) };
  return [...on("speakers"), ...on("obstructions"), ...under].map((path) => ({
    code: "no-main-ceiling",
    path,
    at: "value",
    figures,
  }));
}
