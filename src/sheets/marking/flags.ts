import type { Item, PagePoint } from "../../drawing/drawing.js";
import { WHITE } from "../../drawing/drawing.js";
import { PEN, point, text } from "../../drawing/pen.js";
import { measureText } from "../../drawing/text.js";
import { LINE_PITCH } from "../../drawing/text-block.js";
import type { LocatedFinding } from "../../job.js";
import type { Surface } from "../../room/room.js";
import { byLevel } from "../finding-lines.js";
import type { Order } from "../sheet.js";

/** A finding with the number that it has on one sheet: at the opening, and before its sentence. */
export interface Flag {
  readonly number: number;
  readonly finding: LocatedFinding;
}

/**
 * Findings about a surface and the openings on it, the gravest first, numbered from 1. That a place is computed is said
 * of all at once, where the openings are counted.
 */
export function flagsOf({ job }: Order, surface: Surface): readonly Flag[] {
  const ids = new Set(
    job.room.speakers.filter((speaker) => speaker.surface === surface.name).map(({ id }) => id),
  );
  const own = job.findings
    .filter(({ code }) => code !== "computed-not-frozen")
    .filter((finding) =>
      finding.speaker === null ? finding.surface === surface.name : ids.has(finding.speaker),
    );
  return byLevel(own).map((finding, index) => ({ number: index + 1, finding }));
}

/** Size of a flag whose number has capitals `capMm` high. */
export function flagSize({ number }: Flag, capMm: number): { widthMm: number; heightMm: number } {
  const heightMm = capMm * LINE_PITCH;
  const { widthMm } = measureText(String(number), { capMm, face: "bold" });
  return { widthMm: Math.max(heightMm, widthMm + capMm * 0.7), heightMm };
}

/** Flags side by side; their size is known before they have a place. */
export function flagRow(
  flags: readonly Flag[],
  capMm: number,
): { widthMm: number; heightMm: number; draw: (corner: PagePoint) => Item[] } {
  const sizes = flags.map((flag) => flagSize(flag, capMm));
  const lefts = sizes.map((_, index) =>
    sizes.slice(0, index).reduce((sum, { widthMm }) => sum + widthMm + APART_MM, 0),
  );
  return {
    widthMm: sizes.reduce((sum, { widthMm }) => sum + widthMm + APART_MM, 0),
    heightMm: Math.max(0, ...sizes.map(({ heightMm }) => heightMm)),
    draw: ({ x, y }) =>
      flags.flatMap((flag, index) => flagAt(flag, point(x + (lefts[index] ?? 0), y), capMm)),
  };
}

const APART_MM = 0.6;

/** The number in a box with round ends, on white; heavy where the finding forbids to cut. */
export function flagAt(flag: Flag, corner: PagePoint, capMm: number): Item[] {
  const box = { ...corner, ...flagSize(flag, capMm) };
  const middle = point(corner.x + box.widthMm / 2, corner.y + (box.heightMm + capMm) / 2);
  return [
    {
      kind: "rectangle",
      corner,
      widthMm: box.widthMm,
      heightMm: box.heightMm,
      cornerRadiusMm: box.heightMm / 2,
      stroke: flag.finding.level === "error" ? PEN.outline : PEN.fine,
      fill: WHITE,
    },
    text(middle, String(flag.number), { capMm, face: "bold", anchor: "middle" }),
  ];
}
