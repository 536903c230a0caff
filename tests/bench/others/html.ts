import type { Plain, PlainPage } from "../pages.js";

/** The pages as one HTML document of drawings, for a browser to print; made before the clock runs. */
export function htmlOf(pages: readonly PlainPage[], faces: string): string {
  const sizes = pages.map(
    ({ widthMm, heightMm }, index) => `@page p${index}{size:${widthMm}mm ${heightMm}mm;margin:0}`,
  );
  const rules = (["regular", "bold"] as const).map(
    (face) => `@font-face{font-family:${face};src:url("file://${faces}/${face}.ttf")}`,
  );
  const style = `<style>${[...sizes, ...rules].join("")}svg{display:block;font-kerning:none}body{margin:0}</style>`;
  const bodies = pages.map(
    ({ widthMm, heightMm, items }, index) =>
      `<div style="page:p${index}"><svg width="${widthMm}mm" height="${heightMm}mm" viewBox="0 0 ${widthMm} ${heightMm}" fill="none">${items.map(drawn).join("")}</svg></div>`,
  );
  return `<!doctype html><meta charset="utf-8">${style}${bodies.join("\n")}`;
}

let windows = 0;

const percent = (part: number): string => `${(part * 100).toFixed(1)}%`;
const colour = (ink: { red: number; green: number; blue: number }): string =>
  `rgb(${percent(ink.red)} ${percent(ink.green)} ${percent(ink.blue)})`;

function paint({ stroke, fill }: Partial<Extract<Plain, { kind: "path" }>>): string {
  const dash = stroke?.dashMm === undefined ? "" : ` stroke-dasharray="${stroke.dashMm.join(" ")}"`;
  const line =
    stroke === undefined ? "" : ` stroke="${colour(stroke.ink)}" stroke-width="${stroke.widthMm}"${dash}`;
  return `${line}${fill === undefined ? "" : ` fill="${colour(fill)}"`}`;
}

function drawn(item: Plain): string {
  switch (item.kind) {
    case "line":
      return `<path d="M${item.from.x} ${item.from.y}L${item.to.x} ${item.to.y}"${paint({ stroke: item.stroke })}/>`;
    case "path": {
      const steps = item.steps.map((step) =>
        step.to === "close" ? "Z" : `${step.to === "move" ? "M" : "L"}${step.at.x} ${step.at.y}`,
      );
      return `<path d="${steps.join("")}"${paint(item)}/>`;
    }
    case "circle":
      return `<circle cx="${item.centre.x}" cy="${item.centre.y}" r="${item.radiusMm}"${paint({ ...item, kind: "path", steps: [] })}/>`;
    case "rectangle":
      return `<rect x="${item.corner.x}" y="${item.corner.y}" width="${item.widthMm}" height="${item.heightMm}" rx="${item.cornerRadiusMm ?? 0}"${paint({ ...item, kind: "path", steps: [] })}/>`;
    case "text": {
      const { x, y } = item.at;
      const words = item.text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
      return `<text x="${x}" y="${y}" font-family="${item.face}" font-size="${item.emMm}" fill="${colour({ red: item.grey, green: item.grey, blue: item.grey })}" transform="rotate(${item.turnDeg} ${x} ${y})">${words}</text>`;
    }
    case "window": {
      windows += 1;
      const { x, y, widthMm, heightMm } = item;
      const clip = `<clipPath id="w${windows}"><rect x="${x}" y="${y}" width="${widthMm}" height="${heightMm}"/></clipPath>`;
      return `${clip}<g clip-path="url(#w${windows})">${item.items.map(drawn).join("")}</g>`;
    }
  }
}
