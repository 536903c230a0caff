import { createRequire } from "node:module";
import { createCanvas, GlobalFonts } from "@napi-rs/canvas";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { drawable, hasGlyph, isEveryday, missingGlyphs } from "../../src/drawing/coverage.js";
import { BLACK, type Face, type Text } from "../../src/drawing/drawing.js";
import {
  emMm,
  fitText,
  measureText,
  textBox,
  textCorners,
  textWidthMm,
  wrapText,
} from "../../src/drawing/text.js";
import { typeface } from "../../src/drawing/typeface.js";
import { EPSILON_MM } from "../../src/geometry/epsilon.js";

const FONTS: Readonly<Record<Face, string>> = {
  regular: "dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf",
  bold: "dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf",
};
const SAMPLE = "TFL 9′ 3 1/2″ — agujero ⌀ 235 mm ½⅛⅞ ÁÑü → Ωµ ±";

const PIXELS_PER_EM = 200;

function canvasFor(face: Face, size: { width: number; height: number }) {
  const canvas = createCanvas(size.width, size.height).getContext("2d");
  canvas.font = `${PIXELS_PER_EM}px whole-${face}`;
  canvas.fontKerning = "none";
  return canvas;
}

/** Width of a text in ems, by Skia from the fonts as they were before we cut them; it leaves out space at the ends. */
function widthByCanvas(text: string, face: Face): number {
  const canvas = canvasFor(face, { width: 10, height: 10 });
  return (canvas.measureText(`|${text}|`).width - canvas.measureText("||").width) / PIXELS_PER_EM;
}

/** Ink above and below the baseline in ems, from the pixels that Skia draws. */
function inkByCanvas(text: string, face: Face) {
  const size = { width: 30 * PIXELS_PER_EM, height: 2 * PIXELS_PER_EM };
  const canvas = canvasFor(face, size);
  canvas.fillText(text, 0, PIXELS_PER_EM);
  const { data } = canvas.getImageData(0, 0, size.width, size.height);
  const inked = data.reduce<number[]>((rows, value, index) => {
    if (index % 4 === 3 && value > 127) rows.push(Math.floor(index / 4 / size.width));
    return rows;
  }, []);
  const top = inked[0] ?? Number.NaN;
  const bottom = (inked.at(-1) ?? Number.NaN) + 1;
  return { up: 1 - top / PIXELS_PER_EM, down: bottom / PIXELS_PER_EM - 1 };
}

beforeAll(() => {
  const { resolve } = createRequire(import.meta.url);
  for (const face of ["regular", "bold"] as const) {
    GlobalFonts.registerFromPath(resolve(FONTS[face]), `whole-${face}`);
  }
});

describe("measuring text agrees with Skia on the fonts before they were cut", () => {
  for (const face of ["regular", "bold"] as const) {
    it(`${face}: width, height and depth`, () => {
      const em = emMm({ capMm: 100, face });
      const measured = measureText(SAMPLE, { capMm: 100, face });
      const ink = inkByCanvas(SAMPLE, face);
      expect(measured.widthMm / em).toBeCloseTo(widthByCanvas(SAMPLE, face), 3);
      expect(Math.abs(100 / em - inkByCanvas("H", face).up)).toBeLessThanOrEqual(1 / PIXELS_PER_EM);
      expect(Math.abs(measured.ascentMm / em - ink.up)).toBeLessThanOrEqual(1 / PIXELS_PER_EM);
      expect(Math.abs(measured.descentMm / em - ink.down)).toBeLessThanOrEqual(1 / PIXELS_PER_EM);
    });

    it(`${face}: every single character's advance`, () => {
      const { unitsPerEm, rows } = typeface(face);
      for (const [codePoint, , advance] of rows) {
        const width = widthByCanvas(String.fromCodePoint(codePoint), face);
        expect(advance / unitsPerEm).toBeCloseTo(width, 3);
      }
    });
  }

  it("a cap height of 5 mm makes a capital of 5 mm", () => {
    const { ascentMm, descentMm } = measureText("H", { capMm: 5, face: "bold" });
    expect(ascentMm).toBeCloseTo(5, 9);
    expect(descentMm).toBe(0);
  });
});

describe("coverage", () => {
  it("holds what the trade and two languages need, in the small cut too", () => {
    const needed = "áéíóúüñÁÉÍÓÚÜÑ¿¡½¼¾⅓⅔⅛⅜⅝⅞′″‘’“”–—…•←↑→↓↖↗↘↙±×÷°⌀Ø≈≤≥Ωµ−☐☑✓✗⚠";
    expect(missingGlyphs(needed)).toEqual([]);
    expect([...needed].filter((character) => !isEveryday(character))).toEqual([]);
  });

  it("names what has no glyph, once each", () => {
    expect(missingGlyphs("a\u05d0b\u{1f600}\u05d0\u0007")).toEqual(["\u05d0", "\u{1f600}", "\u0007"]);
    expect(hasGlyph(0x10ffff)).toBe(false);
  });

  it("draws something visible for what it cannot draw, and never a control character", () => {
    expect(drawable("a\u{1f600}\u0000\ud800\uffff\n")).toBe("a\ufffd \ufffd\ufffd ");
    expect(drawable("e\u0301")).toBe("é");
    const drawn = fc.property(
      fc.string({ unit: "binary" }),
      (text) => missingGlyphs(drawable(text)).length === 0,
    );
    fc.assert(drawn);
  });
});

describe("fitting", () => {
  it("gives the largest height that fits, within the two limits", () => {
    const capMmFor = (widthMm: number): number =>
      fitText("TFL", { face: "bold", widthMm, leastMm: 5, mostMm: 40 });
    expect(measureText("TFL", { capMm: capMmFor(50), face: "bold" }).widthMm).toBeCloseTo(50, 9);
    expect(capMmFor(1000)).toBe(40);
    expect(capMmFor(1)).toBe(5);
  });
});

describe("wrapping", () => {
  const column = { capMm: 3, face: "regular", widthMm: 30 } as const;
  const widths = (lines: readonly string[]) => lines.map((line) => measureText(line, column).widthMm);

  it("leaves alone what fits", () => {
    expect(wrapText("CUT / CORTE", column)).toEqual(["CUT / CORTE"]);
  });

  it("breaks between the languages before it breaks at spaces", () => {
    expect(wrapText("DO NOT CUT / NO CORTAR", column)).toEqual(["DO NOT CUT", "NO CORTAR"]);
  });

  it("breaks a word only where it is too wide by itself", () => {
    expect(wrapText("an overhead-loudspeaker-opening is", column)).toEqual([
      "an",
      "overhead-louds",
      "peaker-opening",
      "is",
    ]);
  });

  it("keeps every letter and never leaves the column", () => {
    const text = fc.string({ unit: "grapheme-ascii", maxLength: 120 });
    fc.assert(
      fc.property(text, fc.double({ min: 6, max: 80, noNaN: true }), (words, widthMm) => {
        const lines = wrapText(words, { ...column, widthMm });
        const letters = (some: string) => some.replaceAll(/ +(\/ +)?/gu, "");
        expect(letters(lines.join(" "))).toBe(letters(words));
        for (const width of widths(lines)) expect(width).toBeLessThanOrEqual(widthMm + EPSILON_MM);
      }),
    );
  });
});

describe("boxes of text", () => {
  const text: Text = {
    kind: "text",
    at: { x: 50, y: 60 },
    text: "Hg",
    capMm: 5,
    face: "regular",
    anchor: "end",
    ink: BLACK,
  };
  const { widthMm, ascentMm, descentMm } = measureText("Hg", text);

  it("stands on its baseline and ends at its anchor", () => {
    const box = textBox(text);
    expect(box.x + box.widthMm).toBeCloseTo(50, 9);
    expect(box.y).toBeCloseTo(60 - ascentMm, 9);
    expect(box.y + box.heightMm).toBeCloseTo(60 + descentMm, 9);
    expect(descentMm).toBeGreaterThan(0);
  });

  it("turned clockwise by a quarter, its end is below its start", () => {
    const turned: Text = { ...text, anchor: "start", turnDeg: 90 };
    const [, topRight] = textCorners(turned);
    expect(topRight.x).toBeCloseTo(50 + ascentMm, 9);
    expect(topRight.y).toBeCloseTo(60 + widthMm, 9);
    expect(textBox(turned).heightMm).toBeCloseTo(widthMm, 9);
  });
});

describe("what is worked out in a shorter way", () => {
  const lettered = fc.record({
    at: fc.record({
      x: fc.double({ min: -500, max: 900, noNaN: true }),
      y: fc.double({ min: -500, max: 900, noNaN: true }),
    }),
    text: fc.string({ maxLength: 30 }),
    capMm: fc.double({ min: 0.5, max: 40, noNaN: true }),
    face: fc.constantFrom<Face>("regular", "bold"),
    anchor: fc.constantFrom<Text["anchor"]>("start", "middle", "end"),
  });

  it("is the same: the box of a text that is not turned, from its corners", () => {
    fc.assert(
      fc.property(lettered, (given) => {
        const item: Text = { kind: "text", ink: BLACK, ...given };
        const corners = textCorners(item);
        const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
        const [x, y] = [Math.min(...xs), Math.min(...ys)];
        const heightMm = Math.max(...ys) - y;
        expect(textBox(item)).toEqual({ x, y, widthMm: Math.max(...xs) - x, heightMm });
      }),
    );
  });

  it("is the same: a text's width by itself", () => {
    fc.assert(
      fc.property(lettered, ({ text, ...size }) => {
        expect(textWidthMm(text, size)).toBe(measureText(text, size).widthMm);
      }),
    );
  });
});
