import { describe, expect, it } from "vitest";
import type { Item } from "../../src/drawing/drawing.js";
import type { Job } from "../../src/job.js";
import { surfaceNamed } from "../../src/room/room.js";
import { frameArea } from "../../src/sheets/frame.js";
import { evenLengthMm, fullSizeMarks } from "../../src/sheets/full-size-marks.js";
import { fullSizeDrawing } from "../../src/sheets/marking/full-size.js";
import { surfaceAt } from "../../src/sheets/marking/surface-stage.js";
import type { Body, Order, Sheet } from "../../src/sheets/sheet.js";
import { MAX_PAGE_SIDE_MM } from "../../src/standards/paper.js";
import { job } from "../rooms/job.js";
import { ROOMS } from "./marking-rooms.js";
import { collisions, letteringFaults, outside, textsOf } from "./no-collisions.js";
import { type Asked, orderFor, wordsOn } from "./orders.js";

const asked = (one: Job, more: Asked): Order => ({ ...orderFor(one, more), fullSize: true });

const SMALL = {
  speakers: [
    { id: "TL", model: "tilted", at: { left: "1 m", front: "2 m" } },
    { id: "WL", model: "upright", on: "left", at: { front: "2 m", up: "1.2 m" } },
  ],
};

/** Parts by the hundred: laid out once for all that look at them. */
const SMALL_ON_A4 = asked(job(SMALL), { paper: "A4" });
let partsOnA4: readonly Sheet[] | null = null;
function onA4(): readonly Sheet[] {
  partsOnA4 ??= fullSizeMarks(SMALL_ON_A4);
  return partsOnA4;
}

/** Groups that are seen through a window: where the drawing stands on a page, and which part of it. */
function views(items: readonly Item[]) {
  return items.flatMap((item) =>
    item.kind === "group" && item.window !== undefined && item.shift !== undefined
      ? [{ shift: item.shift, window: item.window, items: item.items }]
      : [],
  );
}

function cuts(items: readonly Item[]): Exclude<Item, { kind: "group" }>[] {
  return items.flatMap((item) => {
    if (item.kind === "group") return cuts(item.items);
    return "mark" in item && item.mark?.role === "cut" ? [item] : [];
  });
}

describe("marking sheets at full size", () => {
  it("are printed only when they are asked for", () => {
    expect(fullSizeMarks(orderFor(job(SMALL)))).toEqual([]);
    expect(onA4().map(({ name }) => name)).toEqual(["ceiling-full", "wall-left-full"]);
  });

  it.each(["roll-36", "roll-914"])(
    "are strips of the %s's width, none longer than a page may be",
    (paper) => {
      const widthMm = paper === "roll-914" ? 914 : 914.4;
      const sheets = fullSizeMarks(orderFor(job(SMALL), { paper }));
      expect(sheets.map(({ name }) => name)).toEqual(["ceiling-full", "wall-left-full"]);
      for (const page of sheets.flatMap(({ pages }) => pages)) {
        expect([page.widthMm, page.heightMm]).toContain(widthMm);
        expect(Math.max(page.widthMm, page.heightMm)).toBeLessThanOrEqual(MAX_PAGE_SIDE_MM);
        expect(page.frame?.scale).toBe("TRUE SCALE 1:1");
      }
    },
  );

  it.each(["roll-36", "A4", "arch-d"])(
    "hold the true size of every opening on %s, and its whole outline on the parts together",
    (paper) => {
      const [ceiling, wall] = paper === "A4" ? onA4() : fullSizeMarks(asked(job(SMALL), { paper }));
      const circles = (ceiling?.pages ?? []).flatMap(({ items }) => cuts(items));
      expect(circles.length).toBeGreaterThan(0);
      for (const cut of circles) expect(cut).toMatchObject({ kind: "circle", radiusMm: 100 });
      const rectangles = (wall?.pages ?? []).flatMap(({ items }) => cuts(items));
      expect(rectangles.length).toBeGreaterThan(0);
      for (const cut of rectangles)
        expect(cut).toMatchObject({ kind: "rectangle", widthMm: 180, heightMm: 300 });
      expect(unseen(ceiling?.pages ?? [])).toBe(0);
    },
  );

  /** Points all round the circle that no part shows. */
  function unseen(pages: readonly Body[]): number {
    const seen = pages.flatMap(({ items }) => views(items));
    const circle = seen.flatMap(({ items }) => cuts(items)).find((cut) => cut.kind === "circle");
    if (circle?.kind !== "circle") throw new Error("no circle");
    const round = Array.from({ length: 360 }, (_, index) => (index * Math.PI) / 180).map((turn) => ({
      x: circle.centre.x + circle.radiusMm * Math.cos(turn),
      y: circle.centre.y + circle.radiusMm * Math.sin(turn),
    }));
    return round.filter(
      ({ x, y }) =>
        !seen.some(
          ({ shift, window }) =>
            x + shift.x >= window.x &&
            x + shift.x <= window.x + window.widthMm &&
            y + shift.y >= window.y &&
            y + shift.y <= window.y + window.heightMm,
        ),
    ).length;
  }

  it("keep each part inside its frame", () => {
    for (const page of onA4().flatMap(({ pages }) => pages)) {
      if (page.frame === null) throw new Error("no frame");
      const area = frameArea(SMALL_ON_A4, page.frame, page);
      for (const { window } of views(page.items)) {
        expect(window.x).toBeGreaterThanOrEqual(area.x - 1e-9);
        expect(window.y).toBeGreaterThanOrEqual(area.y - 1e-9);
        expect(window.x + window.widthMm).toBeLessThanOrEqual(area.x + area.widthMm + 1e-9);
        expect(window.y + window.heightMm).toBeLessThanOrEqual(area.y + area.heightMm + 1e-9);
      }
    }
  });

  it("are refused, with the number of parts, where nobody would join so many", () => {
    const [ceiling] = fullSizeMarks(asked(ROOMS.hall?.() ?? job(SMALL), { paper: "A4" }));
    expect(ceiling?.pages).toHaveLength(1);
    const [page] = ceiling?.pages ?? [];
    expect(page === undefined ? "" : wordsOn(page).join(" ")).toMatch(
      /TOO LARGE for this paper: \d{3} x \d{3}/,
    );
  });

  it("say DO NOT CUT across an opening under an error, which is broken", () => {
    const wrong = job({ speakers: [{ id: "TL", at: { left: "1 m", front: "1.8 m" } }] });
    const order = asked(wrong, { paper: "roll-36" });
    const { items } = fullSizeDrawing(order, surfaceAt(order, surfaceNamed(wrong.room, "ceiling"), "bare"));
    const [cut] = cuts(items);
    if (cut?.kind !== "circle") throw new Error("no circle");
    expect(cut.stroke?.dashMm).toBeDefined();
    const across = textsOf(items).filter(({ text }) => text.text === "DO NOT CUT");
    expect(across).toHaveLength(1);
    const [said] = across;
    const middle = (values: readonly number[]): number => (Math.min(...values) + Math.max(...values)) / 2;
    expect(middle(said?.corners.map(({ x }) => x) ?? [])).toBeCloseTo(cut.centre.x, 6);
    expect(Math.abs(middle(said?.corners.map(({ y }) => y) ?? []) - cut.centre.y)).toBeLessThan(10);
  });

  it.each(Object.entries(ROOMS).filter(([name]) => name !== "hall"))(
    "have no words that meet or leave the surface: %s",
    (_, make) => {
      const one = make();
      const order = asked(one, { paper: "roll-36", languages: ["en", "es"] });
      const surfaces = one.room.surfaces.filter(({ name }) =>
        one.openings.some(({ surface }) => surface.name === name),
      );
      expect(surfaces.length).toBeGreaterThan(0);
      for (const surface of surfaces) {
        const { items, extent } = fullSizeDrawing(order, surfaceAt(order, surface, "bare"));
        const texts = textsOf(items);
        expect(texts.length).toBeGreaterThan(0);
        expect(collisions(texts)).toEqual([]);
        expect(outside(texts, extent)).toEqual([]);
      }
    },
  );
});

it.each(["gallery", "loft"])(
  "the parts on a roll: no words meet the frame, a joint's letter or each other: %s",
  (name) => {
    const one = ROOMS[name]?.() ?? job(SMALL);
    const order = orderFor(one, { paper: "roll-36", languages: ["en", "es"] });
    const pages = fullSizeMarks(order).flatMap((sheet) => sheet.pages);
    expect(pages.length).toBeGreaterThan(20);
    const meeting = pages
      .flatMap((page) => letteringFaults(order, page))
      .filter((fault) => fault.startsWith("collision"));
    expect(meeting).toEqual([]);
  },
);

describe("pages of one length", () => {
  it("are one where a page holds it, else as few and as short as may be", () => {
    expect(evenLengthMm(3000, 100)).toBe(3100);
    const two = evenLengthMm(8000, 100);
    expect(two).toBeLessThanOrEqual(MAX_PAGE_SIDE_MM);
    // Two pages with 100 mm of frame each, 10 mm in common: 2 (L - 100) - 10 covers 8000.
    expect(2 * (two - 100) - 10).toBeGreaterThanOrEqual(8000);
    expect(2 * (two - 1 - 100) - 10).toBeLessThan(8000);
  });
});
