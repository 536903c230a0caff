import { spawnSync } from "node:child_process";
import { describe, expect, it } from "vitest";
import type { Page } from "../../src/drawing/drawing.js";
import { writePdf } from "../../src/output/pdf.js";
import { frameItems } from "../../src/sheets/frame.js";
import type { Order } from "../../src/sheets/sheet.js";
import { storyPoles } from "../../src/sheets/story-pole.js";
import { job } from "../rooms/job.js";
import { orderFor } from "../sheets/orders.js";
import { LAYER_NAMES } from "./drawings.js";
import { inkAt, type Picture, type Point } from "./picture.js";
import { byPdfJs, byPoppler } from "./renderers.js";
import { type Drawn, drawnOn } from "./vectors.js";

/*
 * Story poles as they come off the printer, joined the way a person joins them: trim line on trim line. Where a mark
 * has to be is what the room file says, not what the house computed from it.
 */

/** Over the whole length, from the first mark to the last. */
const TRUE_TO_MM = 0.1;
const VECTORS_TRUE_TO_MM = 0.01;

/** A ceiling 6000 mm long: joists with centres at these tapes from the front wall, openings at those. */
const JOISTS = [413, 811.2, 1222, 1637.5, 2051, 2466, 2899.9, 3300, 3712, 4129, 4533, 4951, 5377.7, 5790];
const OPENINGS = { TFL: 1430, TFR: 1430, TBL: 4330 };
const ROUND_MM = 200;

const ROOM = job({
  framing: { ceiling: { at: JOISTS.map((mm) => `${mm} mm`) } },
  speakers: Object.entries(OPENINGS).map(([id, mm]) => ({
    id,
    model: "tilted",
    at: { left: id.endsWith("L") ? "1 m" : "3 m", front: `${mm} mm` },
  })),
});

const orderOn = (paper: string): Order => ({ ...orderFor(ROOM, { paper }), poles: true });

interface Printed {
  readonly pages: readonly Page[];
  readonly pdf: Uint8Array;
}

/** The pages of the first pole, across the joists from the front wall, and on a roll those of all. */
async function printed(order: Order): Promise<Printed> {
  const bodies = storyPoles(order)[0]?.pages ?? [];
  const pages = bodies.map(
    (body): Page => ({
      ...body,
      language: "en",
      items: [...body.items, ...frameItems(order, body, { number: 1, of: 1 })],
    }),
  );
  return { pages, pdf: await writePdf(pages, { title: "pole", language: "en", layerNames: LAYER_NAMES }) };
}

interface Line {
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
  readonly lineMm: number;
}

/** Lines straight up and down, by their layer. */
const uprights = (drawn: readonly Drawn[], layer: string): Line[] =>
  drawn
    .filter((one) => one.layer === layer && one.painted === "stroke" && one.points.length === 2)
    .filter(({ points: [a, b] }) => Math.abs((a?.x ?? 0) - (b?.x ?? 9)) < 1e-3)
    .map(({ points, lineMm }) => {
      const ys = points.map(({ y }) => y);
      return { x: points[0]?.x ?? Number.NaN, top: Math.min(...ys), bottom: Math.max(...ys), lineMm };
    });

/** One part: what it shows, in the page's x, between its trim lines. */
interface Part {
  readonly page: number;
  readonly lowerLine: number;
  readonly drawn: readonly Drawn[];
  readonly trims: readonly number[];
}

/** The parts of a pole in their order, told apart by the lower lines that their marks stand on. */
async function partsOf({ pages, pdf }: Printed): Promise<Part[]> {
  const parts = await Promise.all(
    pages.map(async (_, index) => {
      const drawn = await drawnOn(pdf, index + 1);
      const isLower = ({ layer, painted, points: [a, b] }: Drawn): boolean =>
        layer === "Dimensions" && painted === "stroke" && Math.abs((a?.y ?? 0) - (b?.y ?? 9)) < 1e-3;
      const lowerLines = drawn.filter(isLower).map(({ points }) => points[0]?.y ?? Number.NaN);
      return lowerLines
        .sort((a, b) => a - b)
        .map((lowerLine): Part => {
          const trims = uprights(
            drawn.filter(({ dashed }) => dashed),
            "Notes",
          )
            .filter(({ top, bottom }) => top < lowerLine && bottom > lowerLine)
            .map(({ x }) => x)
            .sort((a, b) => a - b);
          return { page: index + 1, lowerLine, drawn, trims };
        });
    }),
  );
  return parts.flat();
}

/** Marks of a layer that stand on a part's lower line, as it shows them once trimmed. */
function marksOn(part: Part, isFirst: boolean, isLast: boolean, layer: string): Line[] {
  const [left = 0, right = left] = isFirst ? [0, ...part.trims] : part.trims;
  return uprights(part.drawn, layer)
    .filter(({ bottom }) => Math.abs(bottom - part.lowerLine) < 1e-2)
    .filter(({ x }) => (isFirst || x >= left) && (isLast || x < right));
}

interface Joined {
  readonly joists: readonly number[];
  readonly centres: readonly number[];
  readonly edges: readonly number[];
  readonly ends: readonly number[];
}

/** Every mark's place along the whole pole: each part is laid with its left trim line on the right one before it. */
function joined(parts: readonly Part[]): Joined {
  const found = {
    joists: [] as number[],
    centres: [] as number[],
    edges: [] as number[],
    ends: [] as number[],
  };
  let shift = 0;
  parts.forEach((part, index) => {
    const [isFirst, isLast] = [index === 0, index === parts.length - 1];
    const before = parts[index - 1];
    if (before !== undefined) shift += (before.trims.at(-1) ?? Number.NaN) - (part.trims[0] ?? Number.NaN);
    const at = (lines: readonly Line[]): number[] => lines.map(({ x }) => x + shift);
    const on = (layer: string) => marksOn(part, isFirst, isLast, layer);
    found.joists.push(...at(on("Framing")));
    found.centres.push(...at(on("Cut").filter(({ lineMm }) => lineMm > 0.6)));
    found.edges.push(...at(on("Cut").filter(({ lineMm }) => lineMm <= 0.6)));
    found.ends.push(...at(on("Dimensions")));
  });
  return found;
}

function expectTrue(found: readonly number[], expected: readonly number[], zero: number): void {
  const sorted = [...found].sort((a, b) => a - b).map((mm) => mm - zero);
  expect(sorted).toHaveLength(expected.length);
  expected.forEach((mm, index) => {
    expect(Math.abs((sorted[index] ?? Number.NaN) - mm), `${sorted[index]} for ${mm}`).toBeLessThanOrEqual(
      VECTORS_TRUE_TO_MM,
    );
  });
}

describe("from the file's vectors, part joined to part", () => {
  it.each(["letter", "A4", "tabloid", "A3", "arch-d", "7 in x 10 in"])("every mark on %s", async (paper) => {
    const print = await printed(orderOn(paper));
    const parts = await partsOf(print);
    expect(parts.length).toBeGreaterThan(paper === "arch-d" ? 5 : 10);
    const { joists, centres, edges, ends } = joined(parts);
    const [zero = Number.NaN] = ends;
    expectTrue(ends, [0, 6000], zero);
    expectTrue(joists, JOISTS, zero);
    expectTrue(centres, [1430, 4330], zero);
    expectTrue(
      edges,
      [1430, 4330].flatMap((mm) => [mm - ROUND_MM / 2, mm + ROUND_MM / 2]),
      zero,
    );
  });

  it("several parts stand over each other on a page, so that it takes fewer pages than parts", async () => {
    const print = await printed(orderOn("letter"));
    const parts = await partsOf(print);
    expect(print.pages.length).toBeLessThan(parts.length / 2);
  });
});

const poppler = spawnSync("pdftoppm", ["-v"]).status === 0;
const RENDERERS = [["pdf.js", byPdfJs], ...(poppler ? ([["poppler", byPoppler]] as const) : [])] as const;

describe.each(RENDERERS)("in pictures by %s", (_, render) => {
  /** The middle of an upright line that is looked for within 3 mm of a place, on rows between two heights. */
  function lineNear(picture: Picture, near: Point): number {
    const STEP_MM = 1 / 24;
    let [ink, moment] = [0, 0];
    for (let down = -3.5; down <= -1.5; down += STEP_MM) {
      for (let across = -3; across <= 3; across += STEP_MM) {
        // A measured member's box is filled with light grey.
        const here = (inkAt(picture, { x: near.x + across, y: near.y + down }) ?? 0) - 0.1;
        if (here <= 0) continue;
        ink += here;
        moment += here * across;
      }
    }
    expect(ink).toBeGreaterThan(0);
    return near.x + moment / ink;
  }

  it("first and last joist of one strip on a roll are as far apart as in the room", async () => {
    const print = await printed(orderOn("roll-914"));
    const [first, second] = await partsOf(print);
    if (first === undefined || second === undefined) throw new Error("two strips wanted");
    const marks = [marksOn(first, true, false, "Framing"), marksOn(second, false, true, "Framing")];
    for (const [index, part] of [first, second].entries()) {
      const xs = (marks[index] ?? []).map(({ x }) => x).sort((a, b) => a - b);
      const [start = 0, end = 0] = [xs[0], xs.at(-1)];
      const measured = await Promise.all(
        [start, end].map(async (x) => {
          const region = { x: x - 6, y: part.lowerLine - 6, widthMm: 12, heightMm: 10 };
          return lineNear(await render(print.pdf, part.page, region), { x, y: part.lowerLine });
        }),
      );
      const [from = Number.NaN, to = Number.NaN] = measured;
      const counted = xs.length;
      const expected =
        index === 0
          ? (JOISTS[counted - 1] ?? Number.NaN) - (JOISTS[0] ?? Number.NaN)
          : (JOISTS.at(-1) ?? Number.NaN) - (JOISTS[JOISTS.length - counted] ?? Number.NaN);
      expect(expected).toBeGreaterThan(2000);
      expect(Math.abs(to - from - expected), `${to - from} for ${expected}`).toBeLessThanOrEqual(TRUE_TO_MM);
    }
  });
});
