import type { found as english, FoundMembers } from "../english/found.js";

export const found: typeof english = {
  word: "HALLADO",
  note: (all) => `* HALLADO ahí: ${all.map(said).join("; ")}.`,
  by: (by, on) => `HALLADO por ${by}, ${on}`,
};

const said = ({ numbers, by, on }: FoundMembers): string => `${numbers} por ${by}, ${on}`;
