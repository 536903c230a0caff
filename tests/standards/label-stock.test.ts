import { describe, expect, it } from "vitest";
import { LABEL_STOCK, LABEL_STOCK_NAMES } from "../../src/standards/label-stock.js";

describe("label stock by geometry", () => {
  // Both agree in two public data files: 66.675 x 25.4 mm, pitch 69.85 x 25.4, left 4.7625, top 12.7.
  it("30 to a letter sheet, in millimetres", () => {
    const stock = LABEL_STOCK["letter-30"];
    expect(stock.labelWidthMm).toBeCloseTo(66.675, 9);
    expect(stock.labelHeightMm).toBeCloseTo(25.4, 9);
    expect(stock.pitchXMm).toBeCloseTo(69.85, 9);
    expect(stock.leftMm).toBeCloseTo(4.7625, 9);
    expect(stock.topMm).toBeCloseTo(12.7, 9);
    expect(stock.columns * stock.rows).toBe(30);
  });

  // Closing is arithmetic: a sheet is cut so that what is left over lies on both sides alike.
  it.each(LABEL_STOCK_NAMES)(
    "%s leaves as much at the right as at the left, at the bottom as at the top",
    (name) => {
      const stock = LABEL_STOCK[name];
      const usedAcross = (stock.columns - 1) * stock.pitchXMm + stock.labelWidthMm;
      const usedDown = (stock.rows - 1) * stock.pitchYMm + stock.labelHeightMm;
      expect(stock.pageWidthMm - usedAcross - stock.leftMm).toBeCloseTo(stock.leftMm, 6);
      expect(stock.pageHeightMm - usedDown - stock.topMm).toBeCloseTo(stock.topMm, 6);
    },
  );
});
