import { describe, expect, it } from "vitest";
import type { Item } from "../../src/drawing/drawing.js";
import { floorMarks } from "../../src/sheets/floor-marks.js";
import { diagonalsWithinMm } from "../../src/sheets/marking/steps.js";
import type { Body, Sheet } from "../../src/sheets/sheet.js";
import { surfaceMarks } from "../../src/sheets/surface-marks.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { type Asked, opened, orderFor, wordsIn, wordsOn } from "./orders.js";

const overhead = (more: Parts = {}): Parts => ({
  id: "TL",
  model: "tilted",
  at: { left: "1000 mm", front: "2000 mm" },
  ...more,
});

const sheetsOf = (parts: Parts, asked: Asked = {}): Sheet[] => surfaceMarks(orderFor(job(parts), asked));

function named(sheets: readonly Sheet[], name: string): Sheet {
  const sheet = sheets.find((each) => each.name === name);
  if (sheet === undefined) throw new Error(`no sheet ${name} among ${sheets.map((each) => each.name)}`);
  return sheet;
}

/** All words as running text: lines joined, unbreakable spaces as plain ones. */
const said = (sheets: readonly Sheet[]): string => wordsIn(sheets).join(" ").replaceAll("\u00a0", " ");
const saidOn = (body: Body): string => wordsOn(body).join(" ").replaceAll("\u00a0", " ");

function layerItems(body: Body, name: string): Exclude<Item, { kind: "group" }>[] {
  const groups = (items: readonly Item[]): Item[] =>
    items.flatMap((item) => (item.kind !== "group" ? [] : item.layer === name ? [item] : groups(item.items)));
  return opened(groups(body.items));
}

const first = ({ pages }: Sheet): Body => {
  const [page] = pages;
  if (page === undefined) throw new Error("no page");
  return page;
};

/** Square boxes to tick: beside the count and in the table. Flags are square too, but round at their ends. */
const ticksOn = (sheets: readonly Sheet[]): number =>
  sheets
    .flatMap(({ pages }) => pages.flatMap(({ items }) => opened(items)))
    .filter(
      (item) =>
        item.kind === "rectangle" &&
        item.widthMm === item.heightMm &&
        item.stroke !== undefined &&
        item.cornerRadiusMm === undefined,
    ).length;

describe("which sheets there are", () => {
  it("is one for each surface with openings, ceilings first, and none for the others", () => {
    const sheets = sheetsOf({
      speakers: [{ id: "W", model: "upright", on: "right", at: { front: "2 m", up: "1 m" } }, overhead()],
    });
    expect(sheets.map(({ name }) => name)).toEqual(["ceiling", "wall-right"]);
  });

  it("is no floor sheet where nothing is overhead", () => {
    const walls = { speakers: [{ id: "W", model: "upright", on: "right", at: { front: "2 m", up: "1 m" } }] };
    expect(floorMarks(orderFor(job(walls)))).toEqual([]);
    expect(floorMarks(orderFor(job({ speakers: [overhead()] }))).map(({ name }) => name)).toEqual(["floor"]);
  });

  it("is one before and one after board where both are used, each from the faces that the tape touches then", () => {
    const sheets = sheetsOf({ stage: { walls: "both" }, speakers: [overhead()] });
    expect(sheets.map(({ name }) => name)).toEqual(["ceiling", "ceiling-after"]);
    const [before, after] = sheets;
    // 12.5 mm of board on each wall: the tapes become shorter by as much.
    expect(said([named(sheets, "ceiling")])).toContain("1000 mm");
    expect(said([named(sheets, "ceiling-after")])).toContain("≈988 mm");
    expect(before?.pages[0]?.frame?.faces).toContain("FRAMING");
    expect(after?.pages[0]?.frame?.faces).toContain("FINISHED");
    expect(before?.title).not.toBe(after?.title);
  });
});

describe("figures", () => {
  const sheets = sheetsOf({
    speakers: [overhead(), overhead({ id: "TR", at: { right: "1100 mm", front: "2000 mm" } })],
  });
  const page = first(named(sheets, "ceiling"));

  it("are the tapes as typed, in the three notations of the site", () => {
    // 2000 mm = 78.740 in = 6 ft 6.740 in: to the nearest 1/16 in 78 3/4 (NIST SP 811: 25.4 mm to the inch).
    expect(said(sheets)).toContain(`2000 mm ≈6' 6 3/4" · ≈78 3/4"`);
    expect(said(sheets)).toContain("FROM the LEFT wall 1000 mm");
    expect(said(sheets)).toContain("FROM the RIGHT wall 1100 mm");
  });

  it("give the size of the hole, its compass and its tolerance", () => {
    // 200 mm = 7.874 in, up to the next 1/16: 7 7/8; half of it up to the next 1/32: 3 15/16.
    expect(said(sheets)).toContain(`DIAMETER 200 mm ≈7 7/8"`);
    expect(said(sheets)).toContain(`Compass radius 100 mm (≈3 15/16")`);
    expect(said(sheets)).toContain("−0 +3 mm");
  });

  it("call the opposite tapes a check", () => {
    expect(said(sheets)).toContain("CHECK ± 12 mm, else STOP, from: RIGHT 3000 mm");
    expect(said(sheets)).toContain("; BACK 4000 mm");
  });

  it("run from one zero on each axis, with its wall; one that another wall governs stands in brackets", () => {
    const words = wordsOn(page).map((each) => each.replaceAll("\u00a0", " "));
    expect(words.filter((each) => each === "0 LEFT")).toHaveLength(1);
    expect(words.filter((each) => each.startsWith("0 "))).toHaveLength(3);
    expect(words).toContain("1000 mm");
    expect(words).toContain("(2900 mm)");
    // One figure for the line that both are on, beside the direct one.
    expect(words).toContain("2000 mm");
  });

  it("give both proofs of place and the gap on each side", () => {
    // Joists every 600 mm, 45 mm wide: 2000 mm is after the third (1800) and before the fourth (2400); a hole of 200
    // reaches from 1900 to 2100, so 1900 - 1822.5 and 2377.5 - 2100 are left.
    expect(said(sheets)).toContain("4th bay from the FRONT wall");
    expect(said(sheets)).toContain(`≈78 mm (≈3 1/16") to joist 3 toward FRONT`);
    expect(said(sheets)).toContain(`≈278 mm (≈10 15/16") to joist 4 toward BACK`);
  });

  it("say the aim so that it fits one arrow only, with the mark to sight to", () => {
    // From (1000, 2000) to the seat at (2000, 3000), in tapes from left and front: 45 degrees to the right and back.
    expect(said(sheets)).toContain("AIM: from the joist's RIGHT end, 45° toward the BACK wall");
    // The line goes on 3 m to the right until it meets the right wall at 5 m from the front, 1 m from the back.
    expect(said(sheets)).toContain(`Sight mark: on the RIGHT wall, 1000 mm`);
  });

  it("prove the room square by both diagonals", () => {
    // A right triangle of 4 and 6 m (Pythagoras): 7211.1 mm.
    expect(said(sheets)).toContain("≈7211 mm");
  });

  it("in inches come first where the room is in inches", () => {
    const imperial = sheetsOf({
      units: "imperial",
      speakers: [overhead({ at: { left: `3' 4"`, front: `6' 6"` } })],
    });
    expect(said(imperial)).toContain(`FROM the LEFT wall 3' 4" 40" · 1016 mm`);
    expect(said(imperial)).toContain(`CHECK ± 1/2"`);
  });
});

describe("the count", () => {
  const sheets = sheetsOf({
    speakers: [
      overhead(),
      overhead({ id: "TR", at: { right: "1 m", front: "2 m" } }),
      { id: "W", model: "upright", on: "left", at: { front: "2 m", up: "1 m" } },
    ],
  });

  it("is of the surface and of the room, with a box to tick for each opening", () => {
    const page = first(named(sheets, "ceiling"));
    expect(saidOn(page)).toContain("OPENINGS HERE: 2.  IN THE ROOM: 3.");
    const boxes = opened(page.items).filter(
      (item) => item.kind === "rectangle" && item.widthMm === 4 && item.heightMm === 4,
    );
    expect(boxes).toHaveLength(2);
  });
});

describe("an opening under an error", () => {
  // Its centre stands on the third joist.
  const sheets = sheetsOf({ speakers: [overhead({ at: { left: "1000 mm", front: "1800 mm" } })] });
  const page = first(named(sheets, "ceiling"));
  const cut = layerItems(page, "cut");

  it("has a broken cut line, struck out, without a centre cross", () => {
    const circles = cut.filter((item) => item.kind === "circle" && item.mark?.role === "cut");
    expect(circles).toHaveLength(1);
    expect(circles[0]).toMatchObject({ stroke: { dashMm: expect.any(Array) } });
    const lines = cut.flatMap((item) => (item.kind === "line" ? [item] : []));
    expect(lines).toHaveLength(2);
    for (const { from, to } of lines) expect(from.x === to.x || from.y === to.y).toBe(false);
  });

  it("says DO NOT CUT and why, on the drawing and in the table", () => {
    expect(saidOn(page)).toContain("DO NOT CUT cuts into framing");
    expect(said(sheets)).toContain("DO NOT CUT: cuts into framing");
    expect(said(sheets)).toContain("TL: the opening cuts joist 3");
    expect(said(sheets)).toContain("nearest clear centre:");
  });

  it("gives no size to cut and nothing to tick", () => {
    expect(said(sheets)).not.toContain("DIAMETER");
    expect(said(sheets)).not.toContain("Compass");
    expect(ticksOn(sheets)).toBe(0);
    expect(ticksOn(sheetsOf({ speakers: [overhead()] }))).toBe(2);
  });

  it("stays one to cut where it stands clear", () => {
    const clear = sheetsOf({ speakers: [overhead()] });
    expect(said(clear)).not.toContain("DO NOT CUT");
    const items = layerItems(first(named(clear, "ceiling")), "cut");
    expect(items.find((item) => item.kind === "circle")).not.toHaveProperty("stroke.dashMm");
  });
});

describe("framing", () => {
  const assumed: Parts = {
    units: "imperial",
    framing: { left: { member: "2x4", at: null, first: '15 1/4"', spacing: '16"', mark: "near-edge" } },
    speakers: [{ id: "W", model: "upright", on: "left", at: { front: "2 m", up: "1 m" } }],
  };
  const members = (parts: Parts, sheet: string) =>
    layerItems(first(named(sheetsOf(parts), sheet)), "framing").filter((item) => item.kind === "path");

  it("prints full lines where it was measured and broken ones, with the word, where it is assumed", () => {
    const measured = sheetsOf({ speakers: [overhead()] });
    const drawn = layerItems(first(named(measured, "ceiling")), "framing").filter(
      (item) => item.kind === "path",
    );
    expect(drawn.length).toBeGreaterThanOrEqual(10);
    for (const item of drawn) expect(item).not.toHaveProperty("stroke.dashMm");
    expect(said(measured)).not.toContain("ASSUMED");
    for (const item of members(assumed, "wall-left")) expect(item).toHaveProperty("stroke.dashMm");
    expect(saidOn(first(named(sheetsOf(assumed), "wall-left")))).toContain("ASSUMED");
  });

  it("gives a box to write the found figure in for each assumed member", () => {
    const page = first(named(sheetsOf(assumed), "wall-left"));
    const boxes = layerItems(page, "dimensions").filter(
      (item) => item.kind === "rectangle" && item.stroke !== undefined,
    );
    // 6 m of wall, the first centre at 16 in, one every 16 in: 14 of them.
    expect(boxes).toHaveLength(14);
  });

  it("prints both the centre and the near edge where the layout was struck to the edge", () => {
    // A 2x4 is 1 1/2 in across (PS 20): an edge struck at 15 1/4 is a centre at 16. The wall is boarded when it is cut,
    // so that a tape hooked on the front wall's board (12.5 mm, just under 1/2 in) reads 15 1/2 and 14 3/4.
    const page = first(named(sheetsOf(assumed), "wall-left"));
    expect(saidOn(page)).toContain(`1 · ≈1' 3 1/2" [≈1' 2 3/4"]`);
  });

  it("hatches what is unknown and says so", () => {
    const sheets = sheetsOf({ framing: { ceiling: null }, speakers: [overhead()] });
    const page = first(named(sheets, "ceiling"));
    expect(saidOn(page)).toContain("FRAMING UNKNOWN");
    const lines = layerItems(page, "framing").flatMap((item) => (item.kind === "line" ? [item] : []));
    expect(lines.length).toBeGreaterThan(10);
    for (const { from, to } of lines) expect(to.y - from.y).toBeCloseTo(-(to.x - from.x), 9);
    expect(saidOn(page)).toContain("DO NOT CUT framing not known");
  });
});

describe("obstructions", () => {
  const page = first(
    named(
      sheetsOf({
        obstructions: [
          { name: "vent", on: "ceiling", at: { left: "3 m", front: "5 m" }, round: "100 mm", keep: "50 mm" },
          {
            name: "drain",
            on: "ceiling",
            corner: { left: "0.2 m", front: "4 m" },
            opposite: { left: "1.2 m", front: "4.1 m" },
            keep: "25 mm",
            behind: "60 mm",
          },
        ],
        speakers: [overhead()],
      }),
      "ceiling",
    ),
  );
  const ratio = Number(/1:(\d+)/.exec(page.frame?.scale ?? "")?.[1]);

  it("have their outline, the outline to keep off and their name", () => {
    const circles = layerItems(page, "obstructions").flatMap((item) =>
      item.kind === "circle" ? [item.radiusMm] : [],
    );
    expect(circles.map((radius) => radius * ratio)).toEqual([50, 100]);
    expect(saidOn(page)).toContain("vent keep 50 mm off");
  });

  it("are said to lie behind where they do, in another line", () => {
    expect(saidOn(page)).toContain("drain keep 25 mm off, lies 60 mm behind");
    const rectangles = layerItems(page, "obstructions").flatMap((item) =>
      item.kind === "rectangle" && item.stroke !== undefined ? [item] : [],
    );
    expect(rectangles.map(({ widthMm }) => Math.round(widthMm * ratio))).toEqual([1000, 1050]);
    expect(rectangles[0]).toHaveProperty("stroke.dashMm");
  });
});

describe("the order of work", () => {
  it("has each caution at its step, and who to call", () => {
    const words = said(sheetsOf({ call: "the office, 555-0100", speakers: [overhead()] }));
    expect(words).toContain("Call the office, 555-0100");
    expect(words).toContain("hooked on the BARE STUDS");
    expect(words.indexOf("4 LOOK before cutting")).toBeLessThan(words.indexOf("5 CUT on the waste side"));
    expect(words).toContain("NEVER cut, notch or bore a joist");
    expect(words).not.toContain("RATED SURFACE");
  });

  it("says what a wall's tape hooks on, and that a rated surface needs its enclosure", () => {
    const words = said(
      sheetsOf({
        surfaces: { left: { rated: true } },
        speakers: [{ id: "W", model: "upright", on: "left", at: { front: "2 m", up: "1 m" } }],
      }),
    );
    expect(words).toContain("hooked on the BOARD");
    expect(words).toContain("RATED SURFACE: no opening without its listed enclosure");
  });

  it("allows the diagonals what a skew that moves the far end by the check tolerance makes of them", () => {
    // A frame 4 x 6 m racked by 12.7 mm along its long side: its diagonals by the law of cosines.
    const [a, b] = [4000, 6000];
    const skew = Math.asin(12.7 / b);
    const diagonal = (angle: number): number => Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(angle));
    const apart = Math.abs(diagonal(Math.PI / 2 + skew) - diagonal(Math.PI / 2 - skew));
    expect(diagonalsWithinMm(a, b)).toBeCloseTo(apart, 3);
  });
});

describe("floor marks", () => {
  const order = orderFor(
    job({
      room: { measured_to: "finish" },
      speakers: [overhead(), overhead({ id: "TR", at: { right: "1 m", front: "2 m" } })],
    }),
  );
  const sheets = floorMarks(order);

  it("are from bare framing whatever the file's tapes hook on, and say so", () => {
    // The file's 1000 and 2000 mm are from board of 12.5 mm.
    expect(said(sheets)).toContain("≈1013 mm");
    expect(said(sheets)).toContain("≈2013 mm");
    expect(first(named(sheets, "floor")).frame?.faces).toContain("FRAMING");
    expect(said(sheets)).toContain("plumb it up with a laser");
  });

  it("go to both trades that work by them", () => {
    expect(sheets.map(({ trades }) => trades)).toEqual([["drywall", "installer"]]);
  });

  it("show the seats by name", () => {
    expect(saidOn(first(named(sheets, "floor")))).toContain("middle");
  });
});

describe("what is left out", () => {
  it("stands in the table, and the sheet says so", () => {
    // Members every 50 mm: their figures do not all fit beside the drawing.
    const dense = sheetsOf({
      framing: { ceiling: { at: null, first: "50 mm", spacing: "100 mm" } },
      speakers: [overhead()],
    });
    const page = first(named(dense, "ceiling"));
    expect(said(dense)).toContain("had no room on the drawing: see the table");
    const onDrawing = wordsOn(page).filter((each) => /^\d+ · /.test(each)).length;
    const all = wordsIn([named(dense, "ceiling")]).filter((each) => /^\d+ · /.test(each)).length;
    expect(onDrawing).toBeLessThan(59);
    expect(all - onDrawing).toBeGreaterThanOrEqual(59);
  });
});
