import { describe, expect, test } from "vitest";
import {
  coverageDiameterMm,
  OVERLAPS,
  PATTERNS,
  ROW_SHARE,
  spacingMm,
} from "../../src/standards/coverage-spacing.js";

describe("spacing of ceiling loudspeakers", () => {
  // The first line is a published worked example; the others are the same formula worked with a pocket calculator.
  test.each([
    [2.8, 1.5, 90, 2.6, 1.8385, 2.2517],
    [2.4384, 1.2, 90, 2.4768, 1.7514, 2.145],
    [2.7, 1.2, 100, 3.5753, 2.5281, 3.0963],
    [3.0, 1.2, 120, 6.2354, 4.4091, 5.4],
  ])("ceiling %d m, ears %d m, %d degrees", (ceiling, ear, deg, diameter, square, hexagon) => {
    const mm = coverageDiameterMm((ceiling - ear) * 1000, deg);
    expect(mm / 1000).toBeCloseTo(diameter, 4);
    expect(spacingMm("square", "no-gap", mm) / 1000).toBeCloseTo(square, 4);
    expect(spacingMm("hexagon", "no-gap", mm) / 1000).toBeCloseTo(hexagon, 4);
    for (const pattern of PATTERNS) {
      expect(spacingMm(pattern, "edge-to-edge", mm)).toBe(mm);
      expect(spacingMm(pattern, "double", mm)).toBe(mm / 2);
    }
  });

  /** The furthest that any point of an endless pattern lies from its nearest loudspeaker, looked for on a fine grid. */
  function furthest(pattern: (typeof PATTERNS)[number], spacing: number): number {
    const row = spacing * ROW_SHARE[pattern];
    const standing = Array.from({ length: 49 }, (_, index) => {
      const [a, b] = [(index % 7) - 3, Math.floor(index / 7) - 3];
      return [a * spacing + (pattern === "hexagon" && b % 2 !== 0 ? spacing / 2 : 0), b * row] as const;
    });
    let most = 0;
    for (let x = 0; x <= spacing; x += spacing / 120) {
      for (let y = 0; y <= row; y += row / 120) {
        most = Math.max(most, Math.min(...standing.map(([u, v]) => Math.hypot(x - u, y - v))));
      }
    }
    return most;
  }

  // Plane geometry, by brute force: what each overlap is said to mean.
  test.each(PATTERNS)("with no gap every point of a %s lies in a circle, and one on its edge", (pattern) => {
    const radius = 500;
    expect(furthest(pattern, spacingMm(pattern, "no-gap", 2 * radius))).toBeCloseTo(radius, 0);
    expect(furthest(pattern, spacingMm(pattern, "edge-to-edge", 2 * radius))).toBeGreaterThan(radius * 1.1);
    expect(furthest(pattern, spacingMm(pattern, "double", 2 * radius))).toBeLessThan(radius * 0.8);
  });

  test("less overlap is more spacing", () => {
    for (const pattern of PATTERNS) {
      const spacings = OVERLAPS.map((overlap) => spacingMm(pattern, overlap, 1000));
      expect(spacings).toEqual([...spacings].sort((a, b) => b - a));
    }
  });
});
