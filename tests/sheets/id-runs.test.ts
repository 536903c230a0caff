import { expect, test } from "vitest";
import { idRuns } from "../../src/sheets/id-runs.js";

const counted = (prefix: string, from: number, to: number): string[] =>
  Array.from({ length: to - from + 1 }, (_, index) => `${prefix}${from + index}`);

test.each([
  [
    ["FL", "C", "FR"],
    ["FL", "C", "FR"],
  ],
  [
    ["S1", "S2", "S3"],
    ["S1", "S2", "S3"],
  ],
  [counted("S", 1, 28), ["S1–S28"]],
  [
    [...counted("S", 8, 11), "TFL", ...counted("B-", 99, 102)],
    ["S8–S11", "TFL", "B-99–B-102"],
  ],
  [
    ["S1", "S2", "S4", "S5", "S6", "S7"],
    ["S1", "S2", "S4–S7"],
  ],
  [
    ["S4", "S3", "S2", "S1"],
    ["S4", "S3", "S2", "S1"],
  ],
  [["S01", "S02", "S03", "S04"], ["S01–S04"]],
  [[], []],
])("%j", (ids, said) => {
  expect(idRuns(ids)).toEqual(said);
});
