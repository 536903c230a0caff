import { createWriteStream, readFileSync } from "node:fs";
import { createRequire } from "node:module";

/* The same pages through pdfkit: its own drawing calls, the same faces. */
const [pages, out, installed, faces] = process.argv.slice(2);
const PDFDocument = createRequire(installed)("pdfkit");
const POINTS = 72 / 25.4;
const document = new PDFDocument({ autoFirstPage: false, font: `${faces}/regular.ttf` });
document.registerFont("regular", `${faces}/regular.ttf`);
document.registerFont("bold", `${faces}/bold.ttf`);
document.pipe(createWriteStream(out));

const colour = ({ red, green, blue }) => [red, green, blue].map((part) => Math.round(part * 255));

function paint({ stroke, fill }) {
  if (stroke !== undefined) {
    document.lineWidth(stroke.widthMm).strokeColor(colour(stroke.ink));
    if (stroke.dashMm === undefined) document.undash();
    else document.dash(stroke.dashMm[0], { space: stroke.dashMm[1] ?? stroke.dashMm[0] });
  }
  if (fill !== undefined) document.fillColor(colour(fill));
  if (stroke !== undefined && fill !== undefined) document.fillAndStroke();
  else if (stroke !== undefined) document.stroke();
  else if (fill !== undefined) document.fill();
}

const DRAW = {
  line: (item) => {
    document.moveTo(item.from.x, item.from.y).lineTo(item.to.x, item.to.y);
    paint(item);
  },
  path: (item) => {
    for (const step of item.steps) {
      if (step.to === "close") document.closePath();
      else if (step.to === "move") document.moveTo(step.at.x, step.at.y);
      else document.lineTo(step.at.x, step.at.y);
    }
    paint(item);
  },
  circle: (item) => {
    document.circle(item.centre.x, item.centre.y, item.radiusMm);
    paint(item);
  },
  rectangle: ({ corner, widthMm, heightMm, cornerRadiusMm, ...item }) => {
    if (cornerRadiusMm) document.roundedRect(corner.x, corner.y, widthMm, heightMm, cornerRadiusMm);
    else document.rect(corner.x, corner.y, widthMm, heightMm);
    paint(item);
  },
  text: ({ at, text, emMm, face, turnDeg, grey }) => {
    document
      .font(face)
      .fontSize(emMm)
      .fillColor(colour({ red: grey, green: grey, blue: grey }));
    if (turnDeg !== 0) document.save().rotate(turnDeg, { origin: [at.x, at.y] });
    document.text(text, at.x, at.y, { lineBreak: false, baseline: "alphabetic", features: [] });
    if (turnDeg !== 0) document.restore();
  },
  window: ({ x, y, widthMm, heightMm, items }) => {
    document.save().rect(x, y, widthMm, heightMm).clip();
    for (const item of items) DRAW[item.kind](item);
    document.restore();
  },
};

for (const { widthMm, heightMm, items } of JSON.parse(readFileSync(pages, "utf8"))) {
  document.addPage({ size: [widthMm * POINTS, heightMm * POINTS], margin: 0 }).scale(POINTS);
  for (const item of items) DRAW[item.kind](item);
}
document.end();
