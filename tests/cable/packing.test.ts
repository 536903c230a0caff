import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { packed } from "../../src/cable/packing.js";

/** Every way to part things into groups, one by one: the plainest there is. */
function groupings(count: number): readonly (readonly (readonly number[])[])[] {
  if (count === 0) return [[]];
  const last = count - 1;
  return groupings(last).flatMap((groups) => [
    ...groups.map((_, at) => groups.map((group, index) => (index === at ? [...group, last] : group))),
    [...groups, [last]],
  ]);
}

interface Bought {
  readonly mm: number;
  readonly spools: number;
}

/** The least bought over all groupings, of equal ones the fewest spools. */
function leastByTrying(lengths: readonly number[], stock: readonly number[]): Bought {
  return groupings(lengths.length)
    .map((groups) =>
      groups.map((group) => {
        const sum = group.reduce((total, index) => total + (lengths[index] ?? 0), 0);
        return Math.min(...stock.filter((spool) => spool >= sum));
      }),
    )
    .map((spools) => ({ mm: spools.reduce((a, b) => a + b, 0), spools: spools.length }))
    .reduce((best, next) =>
      next.mm < best.mm || (next.mm === best.mm && next.spools < best.spools) ? next : best,
    );
}

const bought = (spools: readonly { readonly spoolMm: number }[]): Bought => ({
  mm: spools.reduce((sum, { spoolMm }) => sum + spoolMm, 0),
  spools: spools.length,
});

const lengths = (most: number, longest = 100) =>
  fc.array(fc.integer({ min: 1, max: longest }), { minLength: 1, maxLength: most });

describe("spools", () => {
  test("as little as any grouping buys, in one length or in several", () => {
    fc.assert(
      fc.property(lengths(7), fc.array(fc.integer({ min: 20, max: 150 }), { maxLength: 2 }), (all, more) => {
        const stock = [100, ...more];
        const { spools, exact } = packed(all, stock);
        expect(exact).toBe(true);
        expect(bought(spools)).toEqual(leastByTrying(all, stock));
      }),
    );
  });

  test("every length comes off one spool, and none off more than it holds, however many there are", () => {
    fc.assert(
      fc.property(lengths(40), (all) => {
        const { spools } = packed(all, [100, 60]);
        expect(spools.flatMap((spool) => spool.lengths).sort((a, b) => a - b)).toEqual([...all.keys()]);
        for (const { spoolMm, lengths: taken } of spools) {
          const sum = taken.reduce((total, index) => total + (all[index] ?? 0), 0);
          expect(sum).toBeLessThanOrEqual(spoolMm);
        }
      }),
    );
  });

  test("what longest first misses is found: 42 + 58, 30 + 70, 20 + 30 + 50", () => {
    // Longest first puts 70 + 30, 58 + 42, 50 + 30 + 20: equal; with 44, 28, 28 and 36, 36, 28 it would take a third.
    const { spools } = packed([44, 28, 28, 36, 36, 28], [100]);
    expect(spools).toHaveLength(2);
  });

  test("many lengths are called exact only where no fewer spools could hold them", () => {
    expect(packed(Array<number>(20).fill(50), [100])).toMatchObject({ exact: true });
    expect(packed(Array<number>(20).fill(51), [100])).toMatchObject({ exact: false });
  });
});
