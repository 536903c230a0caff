/** What sheets say of members that were found elsewhere than the layout puts them. */
export const found = {
  word: "FOUND",
  note: (all: readonly FoundMembers[]) => `* FOUND there: ${all.map(said).join("; ")}.`,
  extra: (all: readonly FoundMembers[]) => `* FOUND, one more than laid out: ${all.map(said).join("; ")}.`,
  missing: (all: readonly FoundMembers[]) => `NOT THERE: ${all.map(said).join("; ")}.`,
  /** On the drawing, where the layout has it. */
  notThere: (number: number) => `${number} NOT THERE`,
  by: (by: string, on: string) => `FOUND by ${by}, ${on}`,
};

/** Members that one person found on one day, by number. */
export interface FoundMembers {
  /** "7", or "5–9" */
  readonly numbers: string;
  readonly by: string;
  readonly on: string;
}

const said = ({ numbers, by, on }: FoundMembers): string => `${numbers} by ${by}, ${on}`;
