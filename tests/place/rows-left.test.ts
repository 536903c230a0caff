import fc from "fast-check";
import { expect, test } from "vitest";
import { allRowsLeft } from "../../src/place/rows-left.js";

test("all are left until one is left out; then the next one either way is found", () => {
  const left = allRowsLeft(-3, 6);
  expect([left.below(2), left.above(2)]).toEqual([2, 2]);
  for (const row of [1, 2, 3]) left.leaveOut(row);
  expect([left.below(3), left.above(1), left.below(0), left.above(4)]).toEqual([0, 4, 0, 4]);
  for (const row of [-3, -2, -1, 0]) left.leaveOut(row);
  expect([left.below(3), left.above(-3)]).toEqual([-4, 4]);
});

test("whatever was left out, in whatever order, it answers as looking one by one does", () => {
  const row = fc.integer({ min: 0, max: 30 });
  fc.assert(
    fc.property(fc.array(fc.record({ out: row, asked: row }), { maxLength: 60 }), (steps) => {
      const left = allRowsLeft(0, 30);
      const gone = new Set<number>();
      for (const { out, asked } of steps) {
        left.leaveOut(out);
        gone.add(out);
        let [below, above] = [asked, asked];
        while (gone.has(below)) below -= 1;
        while (gone.has(above)) above += 1;
        expect([left.below(asked), left.above(asked)]).toEqual([below, above]);
      }
    }),
  );
});
