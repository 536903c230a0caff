import { describe, expect, it } from "vitest";
import type { LabelStock } from "../../src/room/room.js";
import {
  flagLengthMm,
  labelBox,
  labelsPerSheet,
  stockOf,
  zoneOnPage,
  zonesOf,
} from "../../src/sheets/label-stock.js";
import { LABEL_STOCK } from "../../src/standards/label-stock.js";
import { job } from "../rooms/job.js";
import { orderFor } from "./orders.js";

/*
 * Where a label lies on its sheet and where words may stand on it, in figures worked by hand. Words keep 1.5 mm off a
 * label's edge (our own choice).
 */

/** Three across and four down, 50 x 40 mm each, 60 and 45 mm from one to the next. */
const STOCK: LabelStock = {
  kind: "flat",
  pageWidthMm: 210,
  pageHeightMm: 297,
  labelWidthMm: 50,
  labelHeightMm: 40,
  columns: 3,
  rows: 4,
  leftMm: 20,
  topMm: 15,
  pitchXMm: 60,
  pitchYMm: 45,
  printedHeightMm: null,
  used: 0,
};
const box = (x: number, y: number, widthMm: number, heightMm: number) => ({ x, y, widthMm, heightMm });

describe("labels on their sheet", () => {
  it("lie in rows from the top left", () => {
    expect(labelsPerSheet(STOCK)).toBe(12);
    const corners = [0, 1, 2, 3, 11].map((index) => labelBox(STOCK, index));
    expect(corners).toEqual([
      box(20, 15, 50, 40),
      box(80, 15, 50, 40),
      box(140, 15, 50, 40),
      box(20, 60, 50, 40),
      box(140, 150, 50, 40),
    ]);
  });

  // ISO 216: sides as 1 to the root of 2. Letter, legal and the architectural series are not.
  it.each([
    ["A4", "A4-24"],
    ["A3", "A4-24"],
    ["A1", "A4-24"],
    ["letter", "letter-30"],
    ["legal", "letter-30"],
    ["tabloid", "letter-30"],
    ["arch-d", "letter-30"],
    ["13 in x 19 in", "letter-30"],
    // On its side, and two sizes about 2 % off the root of 2 to either side.
    ["297 mm x 210 mm", "letter-30"],
    ["210 mm x 303 mm", "letter-30"],
    ["210 mm x 291 mm", "letter-30"],
  ])("are those that go with the paper where the room names none: %s, %s", (paper, name) => {
    const stock = stockOf(orderFor(job({}), { paper }));
    expect(stock).toMatchObject(LABEL_STOCK[name as keyof typeof LABEL_STOCK]);
    expect(stock).toMatchObject({ kind: "flat", printedHeightMm: null, used: 0 });
  });

  it("are the room's own where it names them, whatever the paper", () => {
    const stock = stockOf(orderFor(job({ labels: { stock: "A4-65", used: 7 } }), { paper: "letter" }));
    expect(stock).toMatchObject({ ...LABEL_STOCK["A4-65"], used: 7 });
  });
});

describe("where words may stand", () => {
  it("on a flat label is all of it but its edge, whatever the cable", () => {
    const zones = { kind: "zones", boxes: [box(1.5, 1.5, 47, 37)], remarks: [], flagMm: null };
    expect(zonesOf(STOCK, null)).toEqual(zones);
    expect(zonesOf(STOCK, 7)).toEqual(zones);
  });

  describe("on a label that is wrapped round the cable, 20 mm of it printed, 20 mm clear", () => {
    const wrap: LabelStock = { ...STOCK, kind: "wrap", printedHeightMm: 20 };
    /** Outside diameter of a cable that is so far round. */
    const round = (aroundMm: number): number => aroundMm / Math.PI;

    it("is the printed part, where that goes just once round", () => {
      const zones = zonesOf(wrap, round(20));
      expect(zones).toMatchObject({ boxes: [box(1.5, 1.5, 47, expect.closeTo(17, 9))], flagMm: null });
    });

    it("is one turn of it where it laps, and says so", () => {
      expect(zonesOf(wrap, round(18))).toMatchObject({
        boxes: [box(1.5, 1.5, 47, expect.closeTo(15, 9))],
        remarks: [{ kind: "laps", printedMm: 20, aroundMm: expect.closeTo(18, 9) }],
      });
    });

    it("is the printed part where the tail is too short to go round, and says so", () => {
      expect(zonesOf(wrap, round(25))).toMatchObject({
        boxes: [box(1.5, 1.5, 47, 17)],
        remarks: [{ kind: "short-tail", tailMm: 20, aroundMm: expect.closeTo(25, 9) }],
      });
    });

    it("warns of nothing where both go just once round", () => {
      // 20 / pi times pi is 20 to the last digit.
      expect(Math.PI * round(20)).toBe(20);
      expect(zonesOf(wrap, round(20))).toMatchObject({ remarks: [] });
    });

    it("without a diameter is the printed part, with the cables that it goes round", () => {
      const range = { kind: "diameter-not-given", leastMm: 20 / Math.PI, mostMm: 20 / Math.PI };
      expect(zonesOf(wrap, null)).toMatchObject({ boxes: [box(1.5, 1.5, 47, 17)], remarks: [range] });
      expect(zonesOf({ ...wrap, printedHeightMm: 21 }, null)).toMatchObject({
        remarks: [{ kind: "no-cable-fits", printedMm: 21, tailMm: 19 }],
      });
    });

    it("is nowhere while nobody says how much of the label is printed", () => {
      expect(zonesOf({ ...wrap, printedHeightMm: null }, 7)).toEqual({
        kind: "refused",
        why: "wrap-without-printed-part",
      });
    });
  });

  describe("on a label that is folded into two flags", () => {
    const flags: LabelStock = { ...STOCK, kind: "flag" };

    it("is both ends, the cable between them: (50 - 14) / 2 = 18", () => {
      expect(flagLengthMm(50, 14 / Math.PI)).toBeCloseTo(18, 9);
      expect(zonesOf(flags, 14 / Math.PI)).toEqual({
        kind: "zones",
        boxes: [
          box(1.5, 1.5, expect.closeTo(15, 9), 37),
          box(expect.closeTo(33.5, 9), 1.5, expect.closeTo(15, 9), 37),
        ],
        remarks: [],
        flagMm: expect.closeTo(18, 9),
      });
    });

    it("is nowhere without the cable's diameter", () => {
      expect(zonesOf(flags, null)).toEqual({ kind: "refused", why: "flag-without-diameter" });
    });
  });
});

describe("a zone on the page", () => {
  /** Prints from 6.35 mm to 203.65 mm across and from 6.35 mm to 284.3 mm down an A4 sheet. */
  const order = orderFor(job({}));
  const whole = box(0, 0, 50, 40);

  it("lies where its label does", () => {
    expect(zoneOnPage(order, STOCK, 4, box(2, 3, 20, 10))).toEqual(box(82, 63, 20, 10));
  });

  it("ends where the printer does, on every side", () => {
    const near: LabelStock = { ...STOCK, leftMm: 2, topMm: 3 };
    expect(zoneOnPage(order, near, 0, whole)).toEqual(
      box(6.35, 6.35, expect.closeTo(45.65, 9), expect.closeTo(36.65, 9)),
    );
    const far: LabelStock = { ...STOCK, leftMm: 38, topMm: 120 };
    expect(zoneOnPage(order, far, 11, whole)).toEqual(
      box(158, 255, expect.closeTo(45.65, 9), expect.closeTo(29.3, 9)),
    );
  });

  it("is nothing where the printer does not reach it at all", () => {
    const off: LabelStock = { ...STOCK, leftMm: 205, topMm: 290 };
    expect(zoneOnPage(order, off, 0, whole)).toMatchObject({ widthMm: 0, heightMm: 0 });
  });
});
