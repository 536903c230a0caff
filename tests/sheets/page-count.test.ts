import { describe, expect, it } from "vitest";
import { drawnWhenAsked, pageCountOf } from "../../src/sheets/page-count.js";
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
