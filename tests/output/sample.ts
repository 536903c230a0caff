import { BLACK, grey, type Item, type Page } from "../../src/drawing/drawing.js";
import type { PdfOptions } from "../../src/output/pdf.js";

export const PDF_OPTIONS: PdfOptions = {
  title: "Den “north” / Estudio",
  language: "es",
  layerNames: {
    cut: "Cut / Corte",
    clear: "Clear area / Zona libre",
    framing: "Framing / Estructura",
    obstructions: "Obstructions / Obstáculos",
    dimensions: "Dimensions / Medidas",
    aim: "Aim / Apunte",
    notes: "Notes / Notas",
  },
};

const stroke = { widthMm: 0.35, ink: BLACK };

/** Text that would break a careless writer. */
export const HOSTILE = `</text><script>alert("1' & 2")</script> ]]> \u0000\u0007\ud800\uffff 9 1/2" <é>`;

const text = (words: string, y: number, rest: { capMm?: number; turnDeg?: number } = {}): Item => ({
  kind: "text",
  at: { x: 105, y },
  text: words,
  capMm: 3,
  face: "regular",
  anchor: "middle",
  ink: BLACK,
  ...rest,
});

/** A page with one of everything that the display list knows. */
export const SAMPLE: Page = {
  widthMm: 210,
  heightMm: 297,
  title: "Ceiling / Techo <1>",
  language: "en",
  items: [
    {
      kind: "group",
      layer: "cut",
      items: [
        {
          kind: "circle",
          centre: { x: 60, y: 60 },
          radiusMm: 30,
          stroke: { widthMm: 0.7, ink: BLACK },
          mark: { role: "cut", speaker: "TFL" },
        },
        {
          kind: "rectangle",
          corner: { x: 110, y: 30 },
          widthMm: 60,
          heightMm: 40,
          cornerRadiusMm: 5,
          stroke: { widthMm: 0.7, ink: BLACK, dashMm: [3, 1] },
          fill: grey(0.9),
          mark: { role: "cut", speaker: 'T"<&>' },
        },
      ],
    },
    {
      kind: "group",
      layer: "aim",
      shift: { x: 20, y: 120 },
      window: { x: 20, y: 120, widthMm: 50, heightMm: 40 },
      items: [
        {
          kind: "line",
          from: { x: 0, y: 0 },
          to: { x: 80, y: 40 },
          stroke,
          mark: { role: "aim", speaker: "TFL" },
        },
        {
          kind: "path",
          steps: [
            { to: "move", at: { x: 10, y: 10 } },
            { to: "line", at: { x: 20, y: 10 } },
            { to: "line", at: { x: 10, y: 20 } },
            { to: "close" },
          ],
          fill: { red: 0.8, green: 0, blue: 0 },
        },
      ],
    },
    { kind: "group", layer: "aim", items: [text("AIM / APUNTAR", 180, { turnDeg: 30 })] },
    text("HOLD OVERHEAD / SOSTENGA ARRIBA ½⅛⌀→′″", 200),
    text(HOSTILE, 210),
    text("Žižka αβγ Ṽ", 220),
    { ...text("CUT HERE / CORTE AQUÍ", 240), face: "bold" } as Item,
  ],
};
