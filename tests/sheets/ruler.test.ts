import { describe, expect, it } from "vitest";
import type { Item } from "../../src/drawing/drawing.js";
import { printable } from "../../src/sheets/frame.js";
import { rulerPage, rulerSheet } from "../../src/sheets/ruler-page.js";
import { PAPERS, type Paper, parsePaper, SAFE_MARGINS_MM } from "../../src/standards/paper.js";
import { SHRUNK_PERCENT } from "../../src/standards/print-faults.js";
import type { Language } from "../../src/units/language.js";
import { wordsIn } from "../../src/words/words.js";
import { job } from "../rooms/job.js";
import { collisions, outside, textsOf } from "./no-collisions.js";
import { opened, orderFor, wordsOn } from "./orders.js";

const LANGUAGES: readonly (readonly Language[])[] = [["en"], ["es"], ["en", "es"]];

const pageOn = (paper: Paper, languages: readonly Language[] = ["en"], correction: string | null = null) =>
  rulerPage({ words: wordsIn(languages), language: "en", paper, margins: SAFE_MARGINS_MM, correction });

function paperNamed(name: string): Paper {
  const read = parsePaper(name);
  if (!read.ok) throw new Error(name);
  return read.paper;
}

type Line = Extract<Item, { kind: "line" }>;
const linesOn = (items: readonly Item[]): Line[] =>
  opened(items).filter((item): item is Line => item.kind === "line");

/** Lengths of level and of upright lines, longest first. */
function lengths(items: readonly Item[]): { across: number[]; down: number[] } {
  const down = linesOn(items).filter(({ from, to }) => from.x === to.x);
  const across = linesOn(items).filter(({ from, to }) => from.y === to.y);
  const sorted = (lines: Line[]) =>
    lines.map(({ from, to }) => Math.hypot(to.x - from.x, to.y - from.y)).sort((a, b) => b - a);
  return { across: sorted(across), down: sorted(down) };
}

/* ISO 216: A4 is 210 x 297 mm. ASME Y14.1: sizes A and B are 8.5 x 11 and 11 x 17 in. 1 in is 25.4 mm. */
const A4 = [210, 297] as const;
const LETTER = [8.5 * 25.4, 11 * 25.4] as const;
const TABLOID = [11 * 25.4, 17 * 25.4] as const;

/** What "fit to page" leaves of a length of 100 mm: the lesser of the two ratios. */
const fitted = (page: readonly [number, number], onto: readonly [number, number]): string =>
  Math.min((100 * onto[0]) / page[0], (100 * onto[1]) / page[1]).toFixed(1);

describe("the table of faults", () => {
  const words = wordsOn(pageOn(paperNamed("letter")));

  it("names what 94.1, 97.3 and 129.4 mean, as the paper's sizes give them", () => {
    expect([fitted(A4, LETTER), fitted(LETTER, A4), fitted(LETTER, TABLOID)]).toEqual([
      "94.1",
      "97.3",
      "129.4",
    ]);
    const rows = [
      [fitted(A4, LETTER), "a page of A4 fitted to letter"],
      [fitted(LETTER, A4), "a page of letter fitted to A4"],
      [fitted(LETTER, TABLOID), "a page of letter fitted to"],
    ];
    for (const [percent = "", meaning = ""] of rows) {
      expect(words).toContain(percent);
      expect(words.slice(words.indexOf(percent)).find((said) => said.startsWith("a page"))).toContain(
        meaning,
      );
    }
  });

  // Margins that real printers state over IPP (check values): 2.96, 3.0, 4.23 mm; 5 mm on top of them.
  it("covers what a dialog's shrink leaves with the margins that printers state", () => {
    const left = [2.96, 3, 4.23, 5].flatMap((margin) =>
      [A4, LETTER].map(
        ([width, height]) => 100 * Math.min((width - 2 * margin) / width, (height - 2 * margin) / height),
      ),
    );
    expect(Math.round(Math.min(...left))).toBe(SHRUNK_PERCENT.least);
    expect(Math.round(Math.max(...left))).toBe(SHRUNK_PERCENT.most);
    expect(words).toContain("95 to 97");
  });
});

describe("the ruler page", () => {
  it.each(PAPERS.map((paper) => ({ paper, name: paper.name })))(
    "has rulers along both sides of $name",
    ({ paper }) => {
      const page = pageOn(paper);
      const box = printable({ margins: SAFE_MARGINS_MM }, page);
      const { across, down } = lengths(page.items);
      for (const [longest = 0, side] of [
        [across[0], box.widthMm],
        [down[0], box.heightMm],
      ] as const) {
        expect(longest / 10).toBeCloseTo(Math.round(longest / 10), 9);
        expect(longest).toBeLessThanOrEqual(side);
        expect(longest).toBeGreaterThan(side - 37);
      }
      expect(wordsOn(page).join(" ")).toContain(`0 to ${Math.round(across[0] ?? 0)} mm`);
    },
  );

  it("has ticks every millimetre and every eighth of an inch from one zero", () => {
    const { items } = pageOn(paperNamed("letter"));
    const [ruler] = linesOn(items).filter(({ from, to }) => from.y === to.y && to.x - from.x > 150);
    if (ruler === undefined) throw new Error("no ruler");
    const ticks = linesOn(items).filter(({ from, to }) => from.x === to.x && from.y === ruler.from.y);
    const along = (below: boolean) =>
      ticks
        .filter(({ from, to }) => to.y > from.y === below)
        .map(({ from }) => from.x - ruler.from.x)
        .sort((a, b) => a - b);
    for (const [index, at] of along(true).entries()) expect(at).toBeCloseTo(index, 9);
    for (const [index, at] of along(false).entries()) expect(at).toBeCloseTo((index * 25.4) / 8, 9);
    expect(along(true).length).toBe(ruler.to.x - ruler.from.x + 1);
  });

  it("has a square of 100 mm, its circle and its diagonals", () => {
    const items = opened(pageOn(paperNamed("A4")).items);
    const square = items.find(
      (item) => item.kind === "rectangle" && item.widthMm === 100 && item.heightMm === 100,
    );
    const circle = items.find((item) => item.kind === "circle");
    expect(square).toBeDefined();
    expect(circle).toMatchObject({ radiusMm: 50 });
    const diagonals = linesOn(items).filter(({ from, to }) => from.x !== to.x && from.y !== to.y);
    for (const { from, to } of diagonals)
      expect(Math.hypot(to.x - from.x, to.y - from.y)).toBeCloseTo(141.42, 2);
    expect(diagonals).toHaveLength(2);
    expect(wordsOn(pageOn(paperNamed("A4"))).join(" ")).toContain("141.4 mm");
  });

  it.each(PAPERS.flatMap((paper) => LANGUAGES.map((languages) => ({ paper, name: paper.name, languages }))))(
    "on $name in $languages nothing meets, nothing leaves the page, nothing is dropped",
    ({ paper, languages }) => {
      const page = pageOn(paper, languages, "Corrected for printer OFFICE: x 1.0021, y 0.9987");
      const texts = textsOf(page.items);
      expect(collisions(texts)).toEqual([]);
      expect(outside(texts, printable({ margins: SAFE_MARGINS_MM }, page))).toEqual([]);
      expect(wordsOn(page)).toContain("129.4");
      expect(wordsOn(page).join(" ")).toContain("OFFICE");
    },
  );

  it("keeps its rulers on the smallest paper that there is", () => {
    const page = pageOn(paperNamed("125 mm x 125 mm"), ["en", "es"]);
    expect(lengths(page.items).across[0]).toBeGreaterThanOrEqual(70);
    expect(outside(textsOf(page.items), printable({ margins: SAFE_MARGINS_MM }, page))).toEqual([]);
  });

  it("drops nothing inside a packet: what the frame leaves no room for comes on a second page", () => {
    for (const languages of LANGUAGES) {
      const order = orderFor(job({ speakers: [] }), { paper: "letter", languages });
      const words = rulerSheet(order).flatMap(({ pages }) => pages.flatMap(wordsOn));
      expect(words).toContain("129.4");
    }
  });
});
