import { describe, expect, it } from "vitest";
import type { Page } from "../../src/drawing/drawing.js";
import { someOf } from "../how-many.js";
import {
  type Cut,
  EVERY_PAPER,
  nearCircle,
  nearRectangle,
  RECTANGULAR,
  ROUND,
  regionOn,
  scaled,
  sizeOf,
  tilesOf,
} from "./drawings.js";
import { type Measured, measureArc, measureCircle, measureRectangle } from "./measure.js";
import { moved, type Picture, type Point, type Region } from "./picture.js";

/** What true scale means on paper: a cut line of 235 mm is 235 mm to this, in x and in y. */
const TRUE_TO_MM = 0.1;

/** A renderer under test: pages in, the regions asked for as pictures out. */
export type Render = (pages: readonly Page[], regions: readonly Region[]) => Promise<readonly Picture[]>;

const measure = (cut: Cut, pictures: readonly Picture[], centre: Point): Measured =>
  cut.kind === "circle"
    ? measureCircle(pictures, nearCircle(cut, centre))
    : measureRectangle(pictures, nearRectangle(cut, centre));

export function expectTrue(measured: Measured, cut: Cut): void {
  const { widthMm, heightMm } = sizeOf(cut);
  expect(Math.abs(measured.widthMm - widthMm), `${measured.widthMm} in x`).toBeLessThanOrEqual(TRUE_TO_MM);
  expect(Math.abs(measured.heightMm - heightMm), `${measured.heightMm} in y`).toBeLessThanOrEqual(TRUE_TO_MM);
}

function expectInPlace({ centre }: Measured, place: Point): void {
  // The page's own edge falls between two pixels on most papers.
  expect(Math.abs(centre.x - place.x)).toBeLessThanOrEqual(TRUE_TO_MM);
  expect(Math.abs(centre.y - place.y)).toBeLessThanOrEqual(TRUE_TO_MM);
}

/** Tiles, one page, and the longest page that there is. */
const PAPERS = someOf(EVERY_PAPER, ({ name }) => ["letter", "A3", "roll-914"].includes(name));

/** Every paper, round and rectangular, tiled where it must be, and at 1:20, each measured in pictures at 304.8 dpi. */
export function everyPaperIsTrue(render: Render): void {
  describe.each(PAPERS.map((paper) => ({ name: paper.name, paper })))("$name", ({ paper }) => {
    it.each([ROUND, RECTANGULAR])("a $kind at 1:1", async (cut) => {
      const { tiles, centre } = tilesOf(cut, paper);
      const regions = tiles.map((tile) => regionOn(tile, cut, centre));
      const pictures = await render(
        tiles.map((tile) => tile.page),
        regions,
      );
      const joined = pictures.map((picture, index) => moved(picture, tiles[index]?.offset ?? centre));
      const measured = measure(cut, joined, centre);
      expectTrue(measured, cut);
      expectInPlace(measured, centre);
      if (tiles.length > 1 && cut.kind === "circle") {
        expectTrue(measureArc(joined.slice(-1), nearCircle(cut, centre)), cut);
      }
    });
  });

  it.each([scaled(ROUND, 20), scaled(RECTANGULAR, 20)])("a $kind at 1:20 on A3", async (cut) => {
    const paper = EVERY_PAPER.find(({ name }) => name === "A3");
    if (paper === undefined) throw new Error("no A3");
    const { tiles, centre } = tilesOf(cut, paper);
    expect(tiles).toHaveLength(1);
    const pictures = await render(
      tiles.map((tile) => tile.page),
      tiles.map((tile) => regionOn(tile, cut, centre)),
    );
    const offset = tiles[0]?.offset ?? centre;
    expectTrue(
      measure(
        cut,
        pictures.map((picture) => moved(picture, offset)),
        centre,
      ),
      cut,
    );
  });
}
