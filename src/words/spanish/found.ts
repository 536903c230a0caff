import type { found as english, FoundMembers } from "../english/found.js";

export const found: typeof english = {
  word: "HALLADO",
  note: (all) => `* HALLADO ahí: ${all.map(said).join("; ")}.`,
  extra: (all) => `* HALLADO, uno más que en el trazo: ${all.map(said).join("; ")}.`,
  missing: (all) => `NO ESTÁ: ${all.map(said).join("; ")}.`,
  notThere: (number) => `${number} NO ESTÁ`,
  by: (by, on) => `HALLADO por ${by}, ${on}`,
};

const said = ({ numbers, by, on }: FoundMembers): string => `${numbers} por ${by}, ${on}`;
