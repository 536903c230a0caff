import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { flow, flowed, headed, type Part, run, whole } from "../../src/sheets/flow.js";

const BOX = { x: 0, y: 0, widthMm: 100, heightMm: 100 };

const block = (heightMm: number) => () => ({ items: [], heightMm });
const high = fc.oneof(
  { weight: 9, arbitrary: fc.integer({ min: 1, max: 30 }) },
  fc.integer({ min: 1, max: 130 }),
);
const blocks = fc.array(high, { minLength: 1, maxLength: 6 });

/** Rows under a heading that comes again wherever they go on. */
const repeated = (headingMm: number, rows: readonly number[]): Part =>
  headed(block(headingMm), (free, fresh) => {
    const laid = run(rows.map(block), 0)(free, fresh);
    const taken = rows.findIndex(
      (_, index) => rows.slice(0, index + 1).reduce((a, b) => a + b, 0) > (laid?.heightMm ?? 0),
    );
    return laid === null || laid.rest === null
      ? laid
      : { ...laid, rest: repeated(headingMm, rows.slice(taken)) };
  });

const part: fc.Arbitrary<Part> = fc.oneof(
  high.map((heightMm) => whole(block(heightMm))),
  blocks.map((all) => run(all.map(block), 1)),
  fc
    .tuple(fc.integer({ min: 1, max: 20 }), blocks)
    .map(([heading, all]) => headed(block(heading), run(all.map(block), 1))),
  fc.tuple(fc.integer({ min: 1, max: 20 }), blocks).map(([heading, all]) => repeated(heading, all)),
);

describe("parts that flow over pages", () => {
  it("stand on no fewer than it is said, however close they stand", () => {
    let sure = 0;
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 12 }), (parts) => {
        const { pageCount, leastPages } = flowed(parts, BOX, 3);
        if (leastPages === pageCount && pageCount > 1) sure += 1;
        for (const gapMm of [3, 2, 1, 0]) {
          expect(flow(parts, BOX, gapMm).length).toBeGreaterThanOrEqual(leastPages);
        }
      }),
      { numRuns: 400 },
    );
    expect(sure).toBeGreaterThan(10);
  });
});
