import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname } from "node:path";

/* The same pages through the typst compiler: each item placed, the same faces. */
const [pages, out, installed, faces] = process.argv.slice(2);
const { NodeCompiler } = createRequire(installed)("@myriaddreamin/typst-ts-node-compiler");

const mm = (value) => `${value.toFixed(4)}mm`;
const ink = ({ red, green, blue }) =>
  `rgb(${[red, green, blue].map((part) => `${(part * 100).toFixed(2)}%`)})`;
const point = ({ x, y }) => `(${mm(x)}, ${mm(y)})`;

function stroke({ stroke: pen }) {
  if (pen === undefined) return "none";
  const dash = pen.dashMm === undefined ? "" : `, dash: (${pen.dashMm.map(mm).join(", ")},)`;
  return `(paint: ${ink(pen.ink)}, thickness: ${mm(pen.widthMm)}${dash})`;
}

const fill = ({ fill: paint }) => (paint === undefined ? "none" : ink(paint));
const paints = (item) => `stroke: ${stroke(item)}, fill: ${fill(item)}`;
const placed = ({ x, y }, what) => `#place(top + left, dx: ${mm(x)}, dy: ${mm(y)}, ${what})`;

const DRAW = {
  line: (item) =>
    placed(
      { x: 0, y: 0 },
      `line(start: ${point(item.from)}, end: ${point(item.to)}, stroke: ${stroke(item)})`,
    ),
  path: (item) => {
    const steps = item.steps.map((step) => {
      if (step.to === "close") return 'curve.close(mode: "straight")';
      return `curve.${step.to}(${point(step.at)})`;
    });
    return placed({ x: 0, y: 0 }, `curve(${paints(item)}, ${steps.join(", ")})`);
  },
  circle: (item) => {
    const corner = { x: item.centre.x - item.radiusMm, y: item.centre.y - item.radiusMm };
    return placed(corner, `circle(radius: ${mm(item.radiusMm)}, ${paints(item)})`);
  },
  rectangle: (item) => {
    const radius = item.cornerRadiusMm ? `, radius: ${mm(item.cornerRadiusMm)}` : "";
    return placed(
      item.corner,
      `rect(width: ${mm(item.widthMm)}, height: ${mm(item.heightMm)}, ${paints(item)}${radius})`,
    );
  },
  text: ({ at, text, emMm, face, turnDeg, grey }) => {
    const weight = face === "bold" ? ', weight: "bold"' : "";
    const words = `box(text(size: ${mm(emMm)}, fill: luma(${(grey * 100).toFixed(1)}%)${weight}, ${JSON.stringify(text)}))`;
    return placed(at, turnDeg === 0 ? words : `rotate(${turnDeg}deg, origin: top + left, ${words})`);
  },
  window: ({ x, y, widthMm, heightMm, items }) => {
    const inside = items.map((item) => DRAW[item.kind](item)).join("\n");
    const box = `box(clip: true, width: ${mm(widthMm)}, height: ${mm(heightMm)})`;
    return placed({ x, y }, `${box}[#place(top + left, dx: ${mm(-x)}, dy: ${mm(-y)})[${inside}]]`);
  },
};

const SETTING = `#set text(font: "DejaVu Sans", stretch: 75%, top-edge: "baseline", bottom-edge: "baseline", kerning: false, ligatures: false)\n`;
const sheets = JSON.parse(readFileSync(pages, "utf8")).map(
  ({ widthMm, heightMm, items }) =>
    `#page(width: ${mm(widthMm)}, height: ${mm(heightMm)}, margin: 0mm)[${items.map((item) => DRAW[item.kind](item)).join("\n")}]`,
);
const main = `${pages}.typ`;
writeFileSync(main, SETTING + sheets.join("\n"));
const compiler = NodeCompiler.create({ workspace: dirname(main), fontArgs: [{ fontPaths: [faces] }] });
writeFileSync(out, compiler.pdf({ mainFilePath: main }));
