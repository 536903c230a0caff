/** What sheets say of members that were found elsewhere than the layout puts them. */
export const found = {
  word: "FOUND",
  note: (all: readonly FoundMembers[]) => `* FOUND there: ${all.map(said).join("; ")}.`,
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
