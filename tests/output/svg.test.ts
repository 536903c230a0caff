import { GlobalFonts } from "@napi-rs/canvas";
import { Resvg } from "@resvg/resvg-js";
import { describe, expect, it } from "vitest";
import { BLACK, type Item, type Page } from "../../src/drawing/drawing.js";
import { InternalError } from "../../src/findings/internal-error.js";
import { writePdf } from "../../src/output/pdf.js";
import { writeSvg } from "../../src/output/svg.js";
import type { Picture } from "../paper/picture.js";
import { byPdfJs, byResvg, PIXELS_PER_MM } from "../paper/renderers.js";
import { HOSTILE, PDF_OPTIONS, SAMPLE } from "./sample.js";

const svg = writeSvg(SAMPLE);

const withText = (text: string): Page => ({
  ...SAMPLE,
  items: [{ kind: "text", at: { x: 9, y: 9 }, text, capMm: 3, face: "regular", anchor: "start", ink: BLACK }],
});

/** Attributes of every element of a kind, as they are written. */
const elements = (name: string, text = svg): Record<string, string>[] =>
  [...text.matchAll(new RegExp(`<${name}((?: [\\w:-]+="[^"]*")*)>`, "gu"))].map(([, attributes = ""]) =>
    Object.fromEntries(
      [...attributes.matchAll(/ ([\w:-]+)="([^"]*)"/gu)].map(([, key, value]) => [key, value]),
    ),
  );

describe("an SVG", () => {
  it("has its size in millimetres and a unit of one", () => {
    expect(elements("svg")).toMatchObject([
      { width: "210mm", height: "297mm", viewBox: "0 0 210 297", "xml:lang": "en" },
    ]);
  });

  it("marks openings and arrows as real elements", () => {
    expect(elements("circle")).toMatchObject([
      { cx: "60", cy: "60", r: "30", class: "cut", "data-speaker": "TFL", "stroke-width": "0.7" },
    ]);
    expect(elements("rect")).toContainEqual(
      expect.objectContaining({
        ...{ x: "110", y: "30", width: "60", height: "40", rx: "5", "stroke-dasharray": "3 1" },
        ...{ class: "cut", "data-speaker": "T&quot;&lt;&amp;&gt;" },
      }),
    );
    expect(elements("line")).toMatchObject([{ x1: "20", y1: "120", x2: "100", y2: "160", class: "aim" }]);
  });

  it("has its layers as groups with ids that stand once", () => {
    const groups = elements("g").filter((group) => group.class === "layer");
    expect(groups.map(({ id }) => id)).toEqual(["cut", "aim", "aim-2"]);
    const ids = [...svg.matchAll(/ id="([^"]*)"/gu)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("has text as text, by cap height", () => {
    // A capital of DejaVu Sans is 1493 of 2048 units high (the font's glyph H).
    expect(elements("text")[0]).toMatchObject({ "font-size": String(Math.round((3e4 * 2048) / 1493) / 1e4) });
    expect(svg).toContain(">HOLD OVERHEAD / SOSTENGA ARRIBA ½⅛⌀→′″</text>");
  });

  it("is always the same, whatever was written before", () => {
    writeSvg({ ...SAMPLE, items: [...SAMPLE.items, ...SAMPLE.items] });
    expect(writeSvg(SAMPLE)).toBe(svg);
    writeSvg({ ...SAMPLE, items: [] });
    expect(writeSvg(SAMPLE)).toBe(svg);
  });

  it("rounds its figures and writes none with an exponent", () => {
    const line: Item = {
      kind: "line",
      from: { x: 1 / 3, y: 1e-9 },
      to: { x: -1e-7, y: 12.00004 },
      stroke: { widthMm: 0.1 + 0.2, ink: BLACK },
    };
    expect(elements("line", writeSvg({ ...SAMPLE, items: [line] }))).toMatchObject([
      { x1: "0.3333", y1: "0", x2: "0", y2: "12", "stroke-width": "0.3" },
    ]);
  });

  it("refuses a figure that is none", () => {
    const circle: Item = { kind: "circle", centre: { x: Number.NaN, y: 1 }, radiusMm: 3, fill: BLACK };
    expect(() => writeSvg({ ...SAMPLE, items: [circle] })).toThrow(InternalError);
  });
});

describe("hostile text", () => {
  const parse = (text: string): Resvg => new Resvg(text, { font: { loadSystemFonts: false } });

  it("never leaves its place: resvg's strict XML parser reads every drawing", () => {
    expect(() => parse(svg)).not.toThrow();
    expect(svg).not.toContain("<script>");
    for (let code = 0; code < 0x20; code++) {
      const character = String.fromCharCode(code);
      const page = { ...withText(`a${character}b`), title: `t${character}`, language: `e${character}n` };
      expect(() => parse(writeSvg(page))).not.toThrow();
    }
    const page = { ...withText(HOSTILE), title: HOSTILE, language: HOSTILE };
    expect(() => parse(writeSvg(page))).not.toThrow();
  });

  it("and that parser does refuse what is not XML", () => {
    expect(() => parse(svg.replace("HOLD", "HOLD & <b>"))).toThrow();
    expect(() => parse(svg.replace("HOLD", "\u0007"))).toThrow();
  });
});

describe("the face in the drawing", () => {
  const facesOf = (text: string): Buffer[] =>
    [...text.matchAll(/url\(data:font\/ttf;base64,([^)]*)\)/gu)].map(([, data = ""]) =>
      Buffer.from(data, "base64"),
    );

  it("is a font that Skia reads, one for each face in use", () => {
    expect(facesOf(svg)).toHaveLength(2);
    expect(facesOf(writeSvg(withText("A")))).toHaveLength(1);
    for (const [index, font] of facesOf(svg).entries()) {
      expect(GlobalFonts.register(font, `embedded-${index}`)).not.toBeNull();
    }
  });

  it("is the small cut unless the text needs the whole one", () => {
    const [small, large] = [
      facesOf(writeSvg(withText("Techo ½")))[0],
      facesOf(writeSvg(withText("Žižka")))[0],
    ];
    expect(small?.length ?? 0).toBeLessThan(30_000);
    expect(large?.length ?? 0).toBeGreaterThan(60_000);
  });

  it("stands in no drawing without text", () => {
    expect(writeSvg({ ...SAMPLE, items: [] })).not.toContain("<style>");
  });
});

describe("both back ends", () => {
  /** Mean ink of each square of 2 mm. */
  function squares({ ink, widthPx, heightPx }: Picture): number[] {
    const side = 2 * PIXELS_PER_MM;
    const across = Math.floor(widthPx / side);
    const sums = new Array<number>(across * Math.floor(heightPx / side)).fill(0);
    for (let index = 0; index < ink.length; index++) {
      const [row, column] = [Math.floor(index / widthPx / side), Math.floor((index % widthPx) / side)];
      const square = row * across + column;
      if (column < across && square < sums.length) sums[square] = (sums[square] ?? 0) + (ink[index] ?? 0);
    }
    return sums.map((sum) => sum / (255 * side * side));
  }

  it("draw the same picture: pdf.js of the one, resvg of the other", async () => {
    const region = { x: 0, y: 0, widthMm: 210, heightMm: 250 };
    const bySvg = squares(byResvg(svg, region));
    const byPdf = squares(await byPdfJs(await writePdf([SAMPLE], PDF_OPTIONS), 1, region));
    const apart = bySvg.map((ink, index) => Math.abs(ink - (byPdf[index] ?? Number.NaN)));
    expect(Math.max(...apart)).toBeLessThan(0.03);
    expect(bySvg.filter((ink) => ink > 0.05).length).toBeGreaterThan(500);
  });
});
