import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CSS_PIXELS_PER_INCH, PDF_UNITS_PER_INCH } from "../../src/standards/page-units.js";
import {
  MAX_PAGE_SIDE_MM,
  MIN_PAGE_SIDE_MM,
  PAPERS,
  type Paper,
  parsePaper,
  SAFE_MARGINS_MM,
} from "../../src/standards/paper.js";

function paperOf(text: string): Paper {
  const result = parsePaper(text);
  if (!result.ok) throw new Error(`${text}: ${result.problem.kind}`);
  return result.paper;
}

function sidesMm(paper: Paper): number[] {
  return paper.kind === "sheet" ? [paper.widthMm, paper.heightMm] : [paper.widthMm];
}

describe("sizes", () => {
  test.each([
    // ISO 216, in mm.
    ["A4", 210, 297],
    ["A3", 297, 420],
    ["A1", 594, 841],
    // ASME Y14.1 sizes A and B: 8.5 x 11 in, 11 x 17 in (from memory).
    ["letter", 215.9, 279.4],
    ["tabloid", 279.4, 431.8],
    // 8.5 x 14 in, and architectural D, 24 x 36 in (from memory).
    ["legal", 215.9, 355.6],
    ["arch-d", 609.6, 914.4],
  ])("%s", (name, widthMm, heightMm) => {
    const paper = paperOf(name);
    expect(paper.kind).toBe("sheet");
    const [width, height] = sidesMm(paper);
    expect(width).toBeCloseTo(widthMm, 10);
    expect(height).toBeCloseTo(heightMm, 10);
  });

  test("rolls have a width alone: 36 in and 914 mm are not the same", () => {
    expect(paperOf("roll-36")).toEqual({ kind: "roll", name: "roll-36", widthMm: 914.4 });
    expect(paperOf("roll-914")).toEqual({ kind: "roll", name: "roll-914", widthMm: 914 });
  });

  // ISO 216: the sides of an A size are 1 : √2, and A0 has one square metre (each side rounded to whole mm).
  test.each(["A4", "A3", "A1"])("%s is 1 : √2", (name) => {
    const [width = 0, height = 0] = sidesMm(paperOf(name));
    expect(Math.abs(height - width * Math.SQRT2)).toBeLessThan(1.5);
  });

  test("every sheet is portrait, within the limits, and named once", () => {
    for (const paper of PAPERS) {
      for (const side of sidesMm(paper)) {
        expect(side).toBeGreaterThanOrEqual(MIN_PAGE_SIDE_MM);
        expect(side).toBeLessThanOrEqual(MAX_PAGE_SIDE_MM);
      }
      if (paper.kind === "sheet") expect(paper.widthMm).toBeLessThan(paper.heightMm);
    }
    expect(new Set(PAPERS.map(({ name }) => name.toLowerCase())).size).toBe(PAPERS.length);
  });

  // ISO 32000-1, Annex C.2: 14 400 units, 200 in, 5080 mm.
  test("the longest page is 5080 mm", () => expect(MAX_PAGE_SIDE_MM).toBe(5080));

  // An A4 page is published as 595.276 x 841.890 PDF units; W3C: 96 px = 72 pt = 1 in.
  test("page units", () => {
    expect((210 / 25.4) * PDF_UNITS_PER_INCH).toBeCloseTo(595.276, 3);
    expect((297 / 25.4) * PDF_UNITS_PER_INCH).toBeCloseTo(841.89, 3);
    expect(CSS_PIXELS_PER_INCH / PDF_UNITS_PER_INCH).toBeCloseTo(4 / 3, 12);
  });

  test("the margins are those that printers state: 1/4 in, and 1/2 in at the bottom", () => {
    expect(SAFE_MARGINS_MM).toEqual({ topMm: 6.35, rightMm: 6.35, bottomMm: 12.7, leftMm: 6.35 });
  });
});

describe("parsePaper", () => {
  test.each([
    ["LETTER", "letter"],
    [" a4 ", "A4"],
    ["Arch D", "arch-d"],
    ["roll 914", "roll-914"],
  ])("%j is %s", (text, name) => expect(paperOf(text).name).toBe(name));

  test.each([
    ["13 in x 19 in", 330.2, 482.6],
    ['13" × 19"', 330.2, 482.6],
    ["330 mm x 483 mm", 330, 483],
    ['18"x24"', 457.2, 609.6],
    ["19 in x 13 in", 482.6, 330.2],
    ["200 in x 24 in", 5080, 609.6],
  ])("%s", (text, widthMm, heightMm) => {
    expect(paperOf(text)).toEqual({ kind: "sheet", name: text, widthMm, heightMm });
  });

  test("refuses what it does not know, and says what it knows", () => {
    for (const text of ["", "A", "A44", "folio", "x", "box", "13 in", "1 in x 2 in x 3 in", "letter x A4"]) {
      expect(parsePaper(text), text).toEqual({
        ok: false,
        problem: { kind: "unknown-paper", names: PAPERS.map(({ name }) => name) },
      });
    }
  });

  test("names the side that it cannot read", () => {
    expect(parsePaper("13 x 19 in")).toEqual({
      ok: false,
      problem: { kind: "bad-side", side: "13", problem: { kind: "no-unit", figure: "13" } },
    });
    expect(parsePaper("13 in x much")).toMatchObject({ problem: { kind: "bad-side", side: "much" } });
  });

  test("refuses sides that no page can have", () => {
    const refused = (text: string) => {
      const result = parsePaper(text);
      return result.ok ? "accepted" : result.problem.kind;
    };
    expect(refused("200 1/16 in x 24 in")).toBe("side-too-long");
    expect(refused("300 mm x 6 m")).toBe("side-too-long");
    expect(refused("124 mm x 300 mm")).toBe("side-too-short");
    expect(refused("0 x 300 mm")).toBe("side-too-short");
    expect(refused("-300 mm x 300 mm")).toBe("side-too-short");
    expect(refused("125 mm x 125 mm")).toBe("accepted");
  });

  test("any stated size within the limits comes back as its lengths", () => {
    const side = fc.integer({ min: 125, max: 5080 });
    fc.assert(
      fc.property(side, side, (width, height) => {
        const text = `${width} mm x ${height} mm`;
        expect(paperOf(text)).toEqual({ kind: "sheet", name: text, widthMm: width, heightMm: height });
      }),
    );
  });

  test("never throws, whatever it is given", () => {
    fc.assert(fc.property(fc.string(), (text) => typeof parsePaper(text).ok === "boolean"));
  });
});
