import { describe, expect, it } from "vitest";
import type { Item } from "../../src/drawing/drawing.js";
import { aimStrips } from "../../src/sheets/aim-strip.js";
import { markerSheets } from "../../src/sheets/marker-sheet.js";
import type { Body, Order } from "../../src/sheets/sheet.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { textsOf } from "./no-collisions.js";
import { opened, orderFor, wordsOn } from "./orders.js";

/** In the plain room the seat is at 2 m from the left and 3 m from the front, the joists run from left to right. */
const TILTED: Parts = { id: "TFL", model: "tilted", at: { left: "1 m", front: "2.1 m" } };
const STRAIGHT: Parts = { id: "C", model: "round", at: { left: "2 m", front: "900 mm" } };
/** Straight over the ear: 2 m from the left, 3 m from the front. */
const OVER: Parts = { id: "TC", model: "tilted", at: { left: "2 m", front: "3 m" } };

const orderOf = (speakers: readonly Parts[], more: Parts = {}): Order => orderFor(job({ ...more, speakers }));

const said = (body: Body): string => wordsOn(body).join(" ").replaceAll("\u00a0", " ");

const arrowsOf = (body: Body): Extract<Item, { kind: "line" }>[] =>
  opened(body.items).flatMap((item) => (item.kind === "line" && item.mark?.role === "aim" ? [item] : []));

describe("aim strips", () => {
  const [packed, single, ...more] = aimStrips(orderOf([TILTED, STRAIGHT]));

  it("are one sheet of strips and, for each arrow, one drawing whole", () => {
    expect([packed?.name, single?.name, more.length]).toEqual(["aim-strips", "aim-TFL", 0]);
    expect(packed?.whole).toBeNull();
    expect(single?.pages).toEqual([]);
    expect(packed?.pages.length).toBe(1);
  });

  it("are none where every loudspeaker is straight", () => {
    expect(aimStrips(orderOf([STRAIGHT]))).toEqual([]);
  });

  it("point as the target lies, looking up with the front at the top", () => {
    const bodies = [packed?.pages[0], single?.whole?.()].filter((body) => body !== undefined);
    expect(bodies.length).toBe(2);
    for (const body of bodies) {
      const [arrow, ...others] = arrowsOf(body);
      if (arrow === undefined) throw new Error("no arrow");
      expect(others).toEqual([]);
      // From (1000, 2100) to (2000, 3000): 1000 mm to the right, which is left on the page, 900 mm to the back, down.
      const [dx, dy] = [arrow.to.x - arrow.from.x, arrow.to.y - arrow.from.y];
      expect(dx).toBeLessThan(0);
      expect(dy / dx).toBeCloseTo(-0.9, 9);
      expect(arrow.mark).toEqual({ role: "aim", speaker: "TFL" });
    }
  });

  it("say the angle from the joists' run and where to sight to", () => {
    const words = packed === undefined ? "" : packed.pages.map(said).join(" ");
    // atan(900 / 1000) is 41.99 degrees.
    expect(words).toContain("42° from the joist's RIGHT end toward BACK");
    // Its line leaves the ceiling (framing) at the right wall, 3000 mm further right: 2100 + 2700 = 4800 mm from the
    // front, 1200 mm from the back.
    expect(words).toContain("1200 mm");
    expect(words).toContain(
      "SIGHT MARK on the RIGHT wall at the ceiling line, from its corner at BACK (bare framing)",
    );
  });

  it("say so where no way to turn is better, and draw no arrow", () => {
    const sheets = aimStrips(orderOf([TILTED, OVER]));
    expect(sheets.map(({ name }) => name)).toEqual(["aim-strips", "aim-TFL"]);
    const pages = sheets.flatMap((sheet) => sheet.pages);
    expect(pages.flatMap(arrowsOf).length).toBe(1);
    expect(pages.map(said).join(" ")).toContain("NO ARROW");
  });

  it("keep several to a page and strips of different surfaces apart", () => {
    const wall: Parts = { id: "SL", model: "tilted", on: "left", at: { front: "1.5 m", up: "1.2 m" } };
    const [all] = aimStrips(
      orderOf([TILTED, wall, { ...TILTED, id: "TBL", at: { left: "1 m", front: "4.5 m" } }]),
    );
    expect(all?.pages.map((body) => arrowsOf(body).map(({ mark }) => mark?.speaker))).toEqual([
      ["TFL", "TBL"],
      ["SL"],
    ]);
  });

  it("forbid the cut where an error stands", () => {
    const [all] = aimStrips(orderOf([TILTED], { models: { tilted: { depth: "400 mm" } } }));
    expect(all?.pages.map(said).join(" ")).toMatch(/DO NOT CUT .*needs 400 mm/);
  });
});

describe("marker sheets", () => {
  const finish: Parts = { room: { measured_to: "finish" } };

  it("are one page for each opening", () => {
    const sheets = markerSheets(orderOf([TILTED, STRAIGHT]));
    expect(sheets.map(({ name, pages }) => [name, pages.length])).toEqual([
      ["marker-TFL", 1],
      ["marker-C", 1],
    ]);
  });

  it("have the id in the largest letters of the page, to be read from the floor", () => {
    for (const { pages } of markerSheets(orderOf([TILTED, { ...STRAIGHT, id: "TWELVE-CHARS" }]))) {
      const texts = pages.flatMap((body) => textsOf(body.items)).map(({ text }) => text);
      const [largest] = [...texts].sort((a, b) => b.capMm - a.capMm);
      expect(["TFL", "TWELVE-CHARS"]).toContain(largest?.text);
      expect(largest?.capMm).toBeGreaterThan(10);
    }
  });

  it("measure from bare framing, which is what stands at rough-in, whatever the file's tapes hook on", () => {
    const [sheet] = markerSheets(orderOf([TILTED], finish));
    const [body] = sheet?.pages ?? [];
    if (body === undefined) throw new Error("no page");
    // 1000 mm and 2100 mm from 12.5 mm of board.
    expect(said(body)).toMatch(/≈1013 mm .*≈2113 mm/);
    expect(body.frame?.faces).toBe("Dimensions from FRAMING faces (bare studs)");
  });

  it("say that an opening is to be cut there, or that none may be", () => {
    const words = (more: Parts): string =>
      markerSheets(orderOf([TILTED], more))
        .flatMap(({ pages }) => pages)
        .map(said)
        .join(" ");
    expect(words({})).toContain("OPENING TO BE CUT HERE");
    expect(words({})).not.toContain("DO NOT CUT");
    const deep = words({ models: { tilted: { depth: "400 mm" } } });
    expect(deep).toMatch(/DO NOT CUT NO OPENING TO BE CUT HERE YET .*needs 400 mm/);
    expect(deep).not.toMatch(/(?<!NO )OPENING TO BE CUT HERE/);
  });
});
