import { describe, expect, it } from "vitest";
import { countedWhenAsked, drawnWhenAsked, pageCountOf } from "../../src/sheets/page-count.js";
import type { Body } from "../../src/sheets/sheet.js";

const blank: Body = { widthMm: 210, heightMm: 297, title: "blank", frame: null, items: [] };
const announced = (pageCount: number) => ({
  name: "blank",
  trades: [],
  title: "blank",
  whole: null,
  pageCount,
});

describe("a sheet whose number of pages is known before they are drawn", () => {
  it("is counted without drawing, drawn once when its pages are asked for, and kept", () => {
    let times = 0;
    const sheet = drawnWhenAsked(announced(2), () => {
      times += 1;
      return [blank, blank];
    });
    expect(pageCountOf(sheet)).toBe(2);
    expect(times).toBe(0);
    expect(sheet.pages).toHaveLength(2);
    expect(sheet.pages[0]).toBe(blank);
    expect(times).toBe(1);
  });

  it("stops the run where it has another number of pages: those after it would be wrongly numbered", () => {
    const sheet = drawnWhenAsked(announced(3), () => [blank]);
    expect(() => sheet.pages).toThrow(/3 pages and has 1/u);
  });
});

describe("a sheet whose pages take work to count", () => {
  const { pageCount: _, ...sheet } = announced(0);

  it("is not counted otherwise once it is drawn", () => {
    const count = (): number => {
      throw new Error("counted");
    };
    const drawn = countedWhenAsked(sheet, { count, draw: () => [blank, blank] });
    expect(drawn.pages).toHaveLength(2);
    expect(pageCountOf(drawn)).toBe(2);
  });

  it("is drawn where it cannot be counted otherwise, once", () => {
    let times = 0;
    const draw = (): Body[] => {
      times += 1;
      return [blank];
    };
    const drawn = countedWhenAsked(sheet, { count: () => null, draw });
    expect(pageCountOf(drawn)).toBe(1);
    expect(drawn.pages[0]).toBe(blank);
    expect(times).toBe(1);
  });

  it("stops the run where it was counted wrongly before", () => {
    const drawn = countedWhenAsked(sheet, { count: () => 3, draw: () => [blank] });
    expect(pageCountOf(drawn)).toBe(3);
    expect(() => drawn.pages).toThrow(/3 pages and has 1/u);
  });
});
