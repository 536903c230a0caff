import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { BLACK, type Item, type Page } from "../../src/drawing/drawing.js";
import { InternalError } from "../../src/findings/internal-error.js";
import { writePdf } from "../../src/output/pdf.js";
import { PAPERS } from "../../src/standards/paper.js";
import { openPdf } from "../paper/open-pdf.js";
import { drawnOn } from "../paper/vectors.js";
import { PDF_OPTIONS, SAMPLE } from "./sample.js";

const blank = (widthMm: number, heightMm: number, title = ""): Page => ({
  widthMm,
  heightMm,
  title,
  language: "en",
  items: [],
});

const withItem = (item: Item): Page => ({ ...blank(210, 297), items: [item] });

describe("a PDF read back by pdf.js", () => {
  const pages = [SAMPLE, { ...SAMPLE, title: "Wall / Pared" }, { ...SAMPLE, title: "Wall / Pared" }];
  let document: PDFDocumentProxy;
  beforeAll(async () => {
    document = await openPdf(await writePdf(pages, { ...PDF_OPTIONS, author: "A & B \ud800" }));
  });
  afterAll(() => document.destroy());

  it("asks for no scaling, the tray by page size and one side", async () => {
    expect(await document.getViewerPreferences()).toMatchObject({
      PrintScaling: "None",
      PickTrayByPDFSize: true,
      Duplex: "Simplex",
    });
  });

  it("says its title, author, language and maker, and no date", async () => {
    const { info } = await document.getMetadata();
    expect(info).toMatchObject({
      Title: PDF_OPTIONS.title,
      Author: "A & B \ufffd",
      Creator: "baymark",
      Producer: "baymark",
      Language: "es",
    });
    expect(Object.keys(info).filter((key) => /date/iu.test(key))).toEqual([]);
  });

  it("has a bookmark for each sheet, at its first page", async () => {
    const outline = await document.getOutline();
    expect(outline.map(({ title }) => title)).toEqual([SAMPLE.title, "Wall / Pared"]);
    const pages = outline.map(({ dest }) => (Array.isArray(dest) ? dest[0] : null));
    expect(await Promise.all(pages.map((page) => document.getPageIndex(page)))).toEqual([0, 1]);
  });

  it("has the layers that are drawn on, all of them on", async () => {
    const layers = await document.getOptionalContentConfig();
    const groups = [...layers].map(([, { name, visible }]) => ({ name, visible }));
    expect(groups).toEqual([
      { name: "Cut / Corte", visible: true },
      { name: "Aim / Apunte", visible: true },
    ]);
  });

  it("gives its text back, hostile or not", async () => {
    const { items } = await (await document.getPage(1)).getTextContent();
    const texts = items.flatMap((item) => ("str" in item ? [item.str] : []));
    expect(texts).toContain("HOLD OVERHEAD / SOSTENGA ARRIBA ½⅛⌀→′″");
    expect(texts).toContain("CUT HERE / CORTE AQUÍ");
    expect(texts).toContain("Žižka αβγ Ṽ");
    expect(texts.join(" ")).toContain(`</text><script>alert("1' & 2")</script> ]]>`);
  });

  it("has its text upright, and turned clockwise where it is turned", async () => {
    const { items } = await (await document.getPage(1)).getTextContent();
    const matrixOf = (start: string): readonly number[] =>
      items.flatMap((item) => ("str" in item && item.str.startsWith(start) ? item.transform : []));
    const [a, b, c, d] = matrixOf("HOLD")
      .slice(0, 4)
      .map((value) => Math.sign(value));
    expect([a, b, c, d]).toEqual([1, 0, 0, 1]);
    // y is up here, so a clockwise turn is negative.
    const [along = 0, up = 0] = matrixOf("AIM");
    expect((Math.atan2(up, along) * 180) / Math.PI).toBeCloseTo(-30, 3);
  });
});

describe("pages", () => {
  it.each(PAPERS.filter((paper) => paper.kind === "sheet"))(
    "$name is exact, without a unit of its own",
    async (paper) => {
      const pdf = await writePdf([blank(paper.widthMm, paper.heightMm)], PDF_OPTIONS);
      const document = await openPdf(pdf);
      const page = await document.getPage(1);
      const [left, bottom, right = 0, top = 0] = page.view;
      expect([left, bottom]).toEqual([0, 0]);
      expect((right / 72) * 25.4).toBeCloseTo(paper.widthMm, 4);
      expect((top / 72) * 25.4).toBeCloseTo(paper.heightMm, 4);
      expect(page.userUnit).toBe(1);
      await document.destroy();
    },
  );

  it("may be 5080 mm long and no longer", async () => {
    const document = await openPdf(await writePdf([blank(914, 200 * 25.4)], PDF_OPTIONS));
    expect((await document.getPage(1)).view[3]).toBe(14_400);
    await document.destroy();
    await expect(writePdf([blank(914, 5080.1)], PDF_OPTIONS)).rejects.toThrow(InternalError);
    await expect(writePdf([blank(0, 100)], PDF_OPTIONS)).rejects.toThrow(InternalError);
  });
});

describe("what only we can cause is refused", () => {
  const stroke = { widthMm: 0.5, ink: BLACK };
  const at = { x: 1, y: 1 };
  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e30])("a circle at %d", async (x) => {
    const circle: Item = { kind: "circle", centre: { x, y: 1 }, radiusMm: 3, stroke };
    await expect(writePdf([withItem(circle)], PDF_OPTIONS)).rejects.toThrow(InternalError);
  });

  it("text turned by no angle", async () => {
    const rest = { at, capMm: 3, face: "regular", anchor: "start", ink: BLACK } as const;
    const text: Item = { kind: "text", text: "A", turnDeg: Number.NaN, ...rest };
    await expect(writePdf([withItem(text)], PDF_OPTIONS)).rejects.toThrow(InternalError);
  });

  it.each([0, -1, Number.NaN])("a printer's correction of %d", async (x) => {
    await expect(writePdf([SAMPLE], { ...PDF_OPTIONS, correction: { x, y: 1 } })).rejects.toThrow(
      InternalError,
    );
  });

  it("but very small figures are written without an exponent", async () => {
    const line: Item = { kind: "line", from: { x: 1e-7, y: -1e-9 }, to: { x: 0.00012, y: 3 }, stroke };
    const [drawn] = await drawnOn(await writePdf([withItem(line)], PDF_OPTIONS), 1);
    expect(drawn?.points[1]?.x).toBeCloseTo(0.0001, 6);
  });
});

describe("a printer's correction", () => {
  it("stretches the content about the page's centre and leaves the page as it is", async () => {
    const line: Item = {
      kind: "line",
      from: { x: 55, y: 148.5 },
      to: { x: 155, y: 248.5 },
      stroke: { widthMm: 0.5, ink: BLACK },
    };
    const pdf = await writePdf([withItem(line)], { ...PDF_OPTIONS, correction: { x: 1.01, y: 0.98 } });
    const [from, to] = (await drawnOn(pdf, 1))[0]?.points ?? [];
    expect(from?.x).toBeCloseTo(105 - 50 * 1.01, 3);
    expect(from?.y).toBeCloseTo(148.5, 3);
    expect(to?.x).toBeCloseTo(105 + 50 * 1.01, 3);
    expect(to?.y).toBeCloseTo(148.5 + 100 * 0.98, 3);
    const document = await openPdf(pdf);
    expect((await document.getPage(1)).view[3]).toBeCloseTo((297 / 25.4) * 72, 3);
    await document.destroy();
  });

  it("of one printer is not kept for the next", async () => {
    const plain = await writePdf([SAMPLE], PDF_OPTIONS);
    const corrected = await writePdf([SAMPLE], { ...PDF_OPTIONS, correction: { x: 1.01, y: 1 } });
    expect(Buffer.compare(corrected, plain)).not.toBe(0);
    expect(Buffer.compare(await writePdf([SAMPLE], PDF_OPTIONS), plain)).toBe(0);
  });
});

describe("the same pages", () => {
  const hash = async (): Promise<string> =>
    Buffer.from(await writePdf([SAMPLE], PDF_OPTIONS)).toString("base64");

  it("give the same bytes, at another time and in another time zone", async () => {
    const first = await hash();
    const zone = process.env.TZ;
    process.env.TZ = "Pacific/Kiritimati";
    await new Promise((done) => setTimeout(done, 1100));
    expect(await hash()).toBe(first);
    process.env.TZ = zone ?? "";
  });

  it("but other pages have another identifier", async () => {
    const identifierOf = async (page: Page): Promise<string | null> => {
      const document = await openPdf(await writePdf([page], PDF_OPTIONS));
      const [identifier = null] = document.fingerprints;
      await document.destroy();
      return identifier;
    };
    expect(await identifierOf(SAMPLE)).not.toBe(
      await identifierOf({ ...SAMPLE, items: SAMPLE.items.slice(1) }),
    );
  });
});

const installed = spawnSync("pdfinfo", ["-v"]).status === 0;

describe.skipIf(!installed)("a PDF read back by poppler", () => {
  let folder = "";
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "baymark-"));
    writeFileSync(join(folder, "sample.pdf"), await writePdf([SAMPLE], PDF_OPTIONS));
  });
  afterAll(() => rmSync(folder, { recursive: true }));
  const ask = (program: string, ...options: string[]): string =>
    execFileSync(program, [...options, join(folder, "sample.pdf")], { encoding: "utf8", stdio: "pipe" });

  it("has both faces embedded as subsets with their text", () => {
    const rows = ask("pdffonts").trim().split("\n").slice(2);
    expect(rows).toHaveLength(2);
    for (const row of rows)
      expect(row).toMatch(/^BAYMRK\+DejaVuSansCondensed\S* +CID TrueType +Identity-H +yes yes yes/u);
  });

  it("is sound: no reader's complaint, the page's size, no script", () => {
    const { stdout, stderr } = spawnSync("pdfinfo", ["-box", join(folder, "sample.pdf")], {
      encoding: "utf8",
    });
    expect(stderr).toBe("");
    expect(stdout).toMatch(/^Page size: +595\.276 x 841\.89 pts \(A4\)$/mu);
    expect(stdout).toMatch(/^JavaScript: +no$/mu);
    expect(stdout).toMatch(/^PDF version: +1\.7$/mu);
  });

  it("gives its text back", () => {
    expect(execFileSync("pdftotext", [join(folder, "sample.pdf"), "-"], { encoding: "utf8" })).toContain(
      "HOLD OVERHEAD / SOSTENGA ARRIBA ½⅛⌀→′″",
    );
  });
});
