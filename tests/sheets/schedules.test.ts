import { describe, expect, it } from "vitest";
import type { Text } from "../../src/drawing/drawing.js";
import { bracketSchedule, openingSchedule } from "../../src/sheets/schedules.js";
import type { Body, Order, Sheet } from "../../src/sheets/sheet.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { opened, orderFor, wordsIn, wordsOn } from "./orders.js";

/** Spaces that keep a figure together, as the plain ones that a test is written with. */
const plain = (words: string): string => words.replaceAll("\u00a0", " ");

const said = (sheets: readonly Sheet[]): string[] => wordsIn(sheets).map(plain);

const pagesOf = (sheets: readonly Sheet[]): readonly Body[] => sheets.flatMap(({ pages }) => pages);

const textsOf = (sheets: readonly Sheet[]): Text[] =>
  pagesOf(sheets).flatMap(({ items }) => opened(items).filter((item): item is Text => item.kind === "text"));

const ticksOf = (sheets: readonly Sheet[]) =>
  pagesOf(sheets).flatMap(({ items }) =>
    opened(items).filter((item) => item.kind === "rectangle" && item.widthMm === 5 && item.heightMm === 5),
  );

/** Middle of the plain room's fifth bay from the front: joists every 600 mm. */
const CLEAR: Parts = { id: "OK", at: { left: "1500 mm", front: "2700 mm" } };
/** On the joist at 3000 mm. */
const ON_JOIST: Parts = { id: "BAD", at: { left: "2500 mm", front: "3000 mm" } };
/** Middle of the bay between the studs at 1200 and 1800 mm from the front. */
const ON_WALL: Parts = { id: "SL", on: "left", at: { front: "1500 mm", up: "1200 mm" } };

const order = (speakers: readonly Parts[], more: Parts = {}): Order => orderFor(job({ speakers, ...more }));

describe("the tapes of a schedule", () => {
  it("touch bare studs on a ceiling and boarded walls on a wall, each on pages of their own", () => {
    const sheets = openingSchedule(order([CLEAR, ON_WALL]));
    const faces = new Map(pagesOf(sheets).map((page) => [page.frame?.faces ?? "", wordsOn(page).map(plain)]));
    expect([...faces.keys()]).toEqual([
      "Dimensions from FRAMING faces (bare studs)",
      "Dimensions from FINISHED faces (board on)",
    ]);
    const [bare = [], boarded = []] = [...faces.values()];
    expect(bare).toContain("OK");
    expect(bare).not.toContain("SL");
    expect(bare).toEqual(expect.arrayContaining(["from LEFT", "1500 mm", "from FRONT", "2700 mm"]));
    // The front wall's board, 12.5 mm, stands in front of the studs: 1500 - 12.5 = 1487.5, rounded away from zero.
    expect(boarded).toEqual(
      expect.arrayContaining(["SL", "from FRONT", "≈1488 mm", "from FLOOR", "1200 mm"]),
    );
  });

  it("touch bare framing in the bracket schedule, whatever the room file's tapes hook on", () => {
    const finish = { room: { measured_to: "finish" } };
    const sheets = bracketSchedule(order([CLEAR], finish));
    // From finished faces 1500 and 2700 mm; the studs stand 12.5 mm behind them.
    expect(said(sheets)).toEqual(expect.arrayContaining(["≈1513 mm", "≈2713 mm"]));
    expect(pagesOf(sheets)[0]?.frame?.faces).toContain("FRAMING");
    expect(said(openingSchedule(order([CLEAR], { ...finish, stage: { walls: "boarded" } })))).toContain(
      "1500 mm",
    );
  });

  it("are printed for both states of the walls where both are used", () => {
    const sheets = openingSchedule(order([CLEAR], { stage: { walls: "both" } }));
    const holds = pagesOf(sheets).map(({ frame }) => frame?.hold);
    expect(holds).toEqual([
      "Use while the walls are BARE: tape to the studs",
      "Use when the walls are BOARDED: tape to the board",
    ]);
  });
});

describe("what a row says", () => {
  it("gives size, radius, tolerance and tapes, large, in three notations", () => {
    const inches: Parts = {
      units: "imperial",
      models: { round: { opening: { round: '9 1/4"' }, flange: { round: '10 1/2"' } } },
      speakers: [CLEAR],
    };
    const sheets = openingSchedule(orderFor(job(inches)));
    const words = said(sheets);
    // Half of 9 1/4 in is 4 5/8 in; 1500 mm is 59.06 in, 4' 11 1/16"; 9 1/4 in is 234.95 mm.
    expect(words).toContain('⌀ 9 1/4"');
    expect(words.some((line) => line.startsWith('radius 4 5/8"'))).toBe(true);
    expect(words.some((line) => line.includes("≈235.0 mm") && line.includes('−0 +1/8"'))).toBe(true);
    expect(words).toContain("≈4' 11 1/16\"");
    expect(words.some((line) => line.includes('59 1/16"') && line.includes("1500 mm"))).toBe(true);
    for (const figure of ["OK", '⌀ 9 1/4"', "≈4' 11 1/16\""]) {
      const sizes = textsOf(sheets)
        .filter(({ text }) => plain(text) === figure)
        .map(({ capMm }) => capMm);
      expect(Math.max(...sizes), figure).toBeGreaterThanOrEqual(5);
    }
  });

  it("gives bay, gaps, depth and arrow as the second proof", () => {
    const tilted = { ...CLEAR, model: "tilted" };
    const line = said(openingSchedule(order([tilted]))).join(" ");
    // The bay between joists 4 (2400) and 5 (3000): half of 600 - 45 - 200 is 177.5 mm on each side.
    expect(line).toContain("5th bay from FRONT.");
    expect(line).toMatch(/≈178 mm \(.*\) to joist 4 toward FRONT; ≈178 mm \(.*\) to joist 5 toward BACK/u);
    expect(line).toContain("Depth needed: 150 mm");
    expect(line).toMatch(/Arrow: from the joist's/u);
    expect(said(bracketSchedule(order([tilted]))).join(" ")).not.toContain("Arrow:");
  });
});

describe("an opening under an error", () => {
  const stopped = order([CLEAR, ON_JOIST]);

  it("has neither size nor tick box, says DO NOT CUT and why", () => {
    const sheets = openingSchedule(stopped);
    const words = said(sheets);
    expect(words).toContain("DO NOT CUT");
    expect(words.filter((line) => line === "⌀ 200 mm")).toHaveLength(1);
    expect(words.some((line) => line.startsWith("BAD: the opening cuts joist 5"))).toBe(true);
    expect(ticksOf(sheets)).toHaveLength(1);
    const tapes = textsOf(sheets).filter(({ text }) => plain(text) === "3000 mm");
    expect(Math.max(...tapes.map(({ capMm }) => capMm))).toBeLessThan(5);
  });

  it("is not to be fixed either", () => {
    const sheets = bracketSchedule(stopped);
    expect(said(sheets)).toContain("DO NOT FIX");
    expect(ticksOf(sheets)).toHaveLength(1);
  });

  it("stands where a surface's own error forbids every opening on it", () => {
    const sheets = openingSchedule(order([CLEAR], { framing: { ceiling: null } }));
    expect(said(sheets)).toContain("DO NOT CUT");
    expect(ticksOf(sheets)).toHaveLength(0);
  });
});

describe("the count", () => {
  const speakers = [CLEAR, ON_JOIST, ON_WALL, { id: "LOST", channel: "LFE1", at: "best" }];

  it("counts the surface and the room: openings, to cut, not to cut", () => {
    const [ceiling, room] = countRows(openingSchedule(order(speakers)));
    expect(ceiling).toEqual(["ceiling", "3", "1", "1"]);
    expect(room).toEqual(["IN THE ROOM", "4", "2", "1"]);
  });

  it("lists what has no position yet, without tapes", () => {
    const words = said(openingSchedule(order(speakers)));
    expect(words).toContain("LOST");
    expect(words.some((line) => line.includes("NO POSITION"))).toBe(true);
  });
});

/** First four cells of each row of the table of counts, which comes first: by what stands on one height. */
function countRows(sheets: readonly Sheet[]): string[][] {
  const [page] = pagesOf(sheets);
  const texts = opened(page?.items ?? []).filter((item): item is Text => item.kind === "text");
  const rows = texts.filter(({ text }) => text === "ceiling" || text === "IN THE ROOM").slice(0, 2);
  return rows.map((first) => {
    const beside = texts.filter(({ at }) => Math.abs(at.y - first.at.y) < 2).sort((a, b) => a.at.x - b.at.x);
    return beside.slice(0, 4).map(({ text }) => text);
  });
}

describe("cautions", () => {
  it("name rated surfaces only where there are openings in one", () => {
    const rated = { surfaces: { ceiling: { rated: true, enclosure: true } } };
    expect(said(openingSchedule(order([CLEAR]))).join(" ")).not.toContain("listed enclosure");
    expect(said(openingSchedule(order([CLEAR], rated))).join(" ")).toContain("listed enclosure");
  });
});
