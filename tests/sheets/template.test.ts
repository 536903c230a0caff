import { describe, expect, it } from "vitest";
import type { Item, PagePoint, Text } from "../../src/drawing/drawing.js";
import { printable } from "../../src/sheets/frame.js";
import { openingTemplates } from "../../src/sheets/opening-template.js";
import type { Body, Order, Sheet } from "../../src/sheets/sheet.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { textsOf } from "./no-collisions.js";
import { ASKED, opened, orderFor, wordsOn } from "./orders.js";

/*
 * The plain room: 4 x 6 m on framing faces, joists from left to right every 600 mm from the front wall, 45 mm wide.
 * Looking up with the front wall at the top of the page, the room's LEFT is at the page's right.
 */
const ROUND: Parts = { id: "TFL", model: "tilted", at: { left: "1 m", front: "2.1 m" } };
const SQUARE: Parts = { id: "SL", model: "upright", on: "left", at: { front: "1.5 m", up: "1.2 m" } };

const orderOf = (speakers: readonly Parts[], paper = "letter", more: Parts = {}): Order =>
  orderFor(job({ ...more, speakers }), { paper });

function sheetOf(order: Order, id: string): Sheet {
  const found = openingTemplates(order).find(({ name }) => name === `opening-${id}`);
  if (found === undefined) throw new Error(`no template of ${id}`);
  return found;
}

/** Pages with the drawing, and the drawing whole; a page of notes in front is none of them. */
const bodiesOf = ({ pages, whole }: Sheet): Body[] =>
  [...pages, ...(whole === null ? [] : [whole()])].filter((body) => marked(body, "cut").length > 0);

type Plain = Exclude<Item, { kind: "group" }>;

const marked = (body: Body, role: "cut" | "aim"): Plain[] =>
  opened(body.items).filter((item) => "mark" in item && item.mark?.role === role);

function only<T>(items: readonly T[]): T {
  const [first, ...more] = items;
  if (first === undefined || more.length > 0) throw new Error(`${items.length} instead of one`);
  return first;
}

/** Centre of the cut line on the page. */
function cutCentre(body: Body): PagePoint {
  const cut = only(marked(body, "cut"));
  if (cut.kind === "circle") return cut.centre;
  if (cut.kind !== "rectangle") throw new Error(`a cut line that is a ${cut.kind}`);
  return { x: cut.corner.x + cut.widthMm / 2, y: cut.corner.y + cut.heightMm / 2 };
}

const textNamed = (body: Body, words: string): Text => {
  const found = textsOf(body.items).find(({ text }) => text.text === words);
  if (found === undefined) throw new Error(`no words ${words} among ${wordsOn(body).join(" | ")}`);
  return found.text;
};

const plainWords = (body: Body): string => wordsOn(body).join(" ").replaceAll("\u00a0", " ");

/** Words in letters of 5 mm and more. */
const large = (body: Body): string[] =>
  textsOf(body.items)
    .filter(({ text }) => text.capMm >= 5)
    .map(({ text }) => text.text.replaceAll("\u00a0", " "));

describe("the cut line", () => {
  it.each(["letter", "A4", "tabloid", "A3", "roll-36"])(
    "is the real circle, at its real size, on %s",
    (paper) => {
      const sheet = sheetOf(orderOf([ROUND], paper), "TFL");
      for (const body of bodiesOf(sheet)) {
        const cut = only(marked(body, "cut"));
        expect(cut).toMatchObject({ kind: "circle", radiusMm: 100, mark: { role: "cut", speaker: "TFL" } });
        expect(cut).toMatchObject({ stroke: { widthMm: 0.7 } });
      }
    },
  );

  it("is the real rectangle, its sides as given, turned with the loudspeaker", () => {
    const upright = sheetOf(orderOf([SQUARE]), "SL");
    const turned = sheetOf(orderOf([{ ...SQUARE, turn: "90 deg" }]), "SL");
    for (const body of bodiesOf(upright)) {
      expect(only(marked(body, "cut"))).toMatchObject({ kind: "rectangle", widthMm: 180, heightMm: 300 });
    }
    for (const body of bodiesOf(turned)) {
      expect(only(marked(body, "cut"))).toMatchObject({ kind: "rectangle", widthMm: 300, heightMm: 180 });
    }
  });

  it("takes one page where the paper is large enough, several where it is not, and one on every roll", () => {
    const large: Parts = {
      models: { tilted: { opening: { round: '9 1/4"' }, flange: { round: '10 1/2"' } } },
    };
    const count = (paper: string): number => sheetOf(orderOf([ROUND], paper, large), "TFL").pages.length;
    expect(["tabloid", "A3", "arch-d", "roll-36", "roll-914"].map(count)).toEqual([1, 1, 1, 1, 1]);
    expect(count("letter")).toBeGreaterThan(1);
    expect(count("A4")).toBeGreaterThan(1);
  });

  it.each(["160 mm", '8 1/4"'])(
    "of %s has every figure on every piece, wherever they found room",
    (round) => {
      const model: Parts = { models: { tilted: { opening: { round }, flange: { round: '9 3/8"' } } } };
      for (const body of bodiesOf(sheetOf(orderOf([ROUND], "A4", model), "TFL"))) {
        const said = large(body).join(" ");
        const across = round === "160 mm" ? ["160 mm", "80 mm"] : ["209.6 mm", "104.8 mm"];
        for (const figure of [...across, "1000 mm", "2100 mm", "4th"]) expect(said).toContain(figure);
      }
    },
  );

  it("is seen whole on the pages together: every degree of it lies in some page's window", () => {
    const { pages } = sheetOf(orderOf([ROUND]), "TFL");
    const parts = pages.filter((body) => marked(body, "cut").length > 0);
    const windows = parts.map((body) => {
      const drawn = body.items.find((item) => item.kind === "group" && item.window !== undefined);
      if (drawn?.kind !== "group" || drawn.window === undefined) throw new Error("no window");
      return { window: drawn.window, centre: cutCentre(body) };
    });
    for (let turn = 0; turn < 360; turn += 1) {
      const way = { x: 100 * Math.cos((turn * Math.PI) / 180), y: 100 * Math.sin((turn * Math.PI) / 180) };
      const seen = windows.some(({ window, centre }) => {
        const at = { x: centre.x + way.x - window.x, y: centre.y + way.y - window.y };
        return at.x >= 0 && at.y >= 0 && at.x <= window.widthMm && at.y <= window.heightMm;
      });
      expect(seen, `${turn} degrees`).toBe(true);
    }
  });
});

describe("what stands around it", () => {
  it("has the joist's edges at their distance from the centre, toward the wall that they are toward", () => {
    // Joist 4 is centred at 2400 mm from the front, the opening at 2107: 293 mm toward the back, which is down.
    const near: Parts = { ...ROUND, at: { left: "1 m", front: "2.107 m" } };
    for (const body of sheetOf(orderOf([near], "arch-d"), "TFL").pages) {
      const { y } = cutCentre(body);
      const level = opened(body.items).flatMap((item) =>
        item.kind === "line" && item.from.y === item.to.y && item.stroke.widthMm === 0.35
          ? [item.from.y - y]
          : [],
      );
      const below = level.filter((each) => each > 200 && each < 400);
      expect(below.sort((a, b) => a - b)).toEqual([expect.closeTo(270.5, 9), expect.closeTo(315.5, 9)]);
    }
  });

  it("draws assumed framing in another line than measured, and says so", () => {
    const assumed: Parts = {
      framing: { ceiling: { first: "300 mm", spacing: "300 mm", at: null } },
    };
    const measured = only(sheetOf(orderOf([ROUND], "arch-d"), "TFL").pages);
    const guessed = only(sheetOf(orderOf([ROUND], "arch-d", assumed), "TFL").pages);
    const dashes = (body: Body): boolean =>
      opened(body.items).some(
        (item) => item.kind === "line" && item.stroke.widthMm === 0.35 && "dashMm" in item.stroke,
      );
    expect([dashes(measured), dashes(guessed)]).toEqual([false, true]);
    expect(plainWords(guessed)).toContain("joist 7, ASSUMED");
    expect(plainWords(measured)).not.toContain("ASSUMED");
  });

  it("puts what is nearer to the left wall on the right, what is nearer to the front above: looking up", () => {
    const around: Parts = {
      obstructions: [
        { name: "toward left", on: "ceiling", at: { left: "850 mm", front: "2.1 m" }, round: "20 mm" },
        { name: "toward front", on: "ceiling", at: { left: "1 m", front: "1.95 m" }, round: "20 mm" },
      ],
    };
    const body = only(sheetOf(orderOf([ROUND], "arch-d", around), "TFL").pages);
    const centre = cutCentre(body);
    const offsets = opened(body.items).flatMap((item) =>
      item.kind === "circle" && item.radiusMm === 10
        ? [{ x: item.centre.x - centre.x, y: item.centre.y - centre.y }]
        : [],
    );
    expect(offsets).toEqual([
      { x: expect.closeTo(150, 9), y: expect.closeTo(0, 9) },
      { x: expect.closeTo(0, 9), y: expect.closeTo(-150, 9) },
    ]);
    expect(textNamed(body, "LEFT").turnDeg).toBe(90);
    expect(textNamed(body, "RIGHT").turnDeg).toBe(-90);
    expect(textNamed(body, "BACK").at.y).toBeGreaterThan(centre.y);
    expect(textNamed(body, "↑ THIS EDGE TO THE FRONT WALL ↑").at.y).toBeLessThan(centre.y);
  });

  it("faces a wall with its ceiling up; on the left wall FRONT is on the right", () => {
    const body = only(sheetOf(orderOf([SQUARE], "A3"), "SL").pages);
    expect(textNamed(body, "FRONT").turnDeg).toBe(90);
    expect(textNamed(body, "BACK").turnDeg).toBe(-90);
    expect(textNamed(body, "FLOOR").at.y).toBeGreaterThan(cutCentre(body).y);
    expect(wordsOn(body)).toContain("↑ UP ↑");
    expect(body.frame).toMatchObject({ front: 90, view: "FACING the left wall" });
  });

  it("turns the arrow as the target lies in the room", () => {
    // The seat is at (2000 left, 3000 front), the opening at (1000, 2100): 1000 to the right, 900 to the back.
    const body = only(sheetOf(orderOf([ROUND], "A3"), "TFL").pages);
    const shaft = only(marked(body, "aim"));
    if (shaft.kind !== "line") throw new Error("no arrow");
    const [dx, dy] = [shaft.to.x - shaft.from.x, shaft.to.y - shaft.from.y];
    expect(dy / dx).toBeCloseTo(900 / -1000, 9);
    expect(dx).toBeLessThan(0);
  });

  it("marks the cross at the edges of what the printer prints", () => {
    const order = orderOf([ROUND], "A3");
    const body = only(sheetOf(order, "TFL").pages);
    const inside = printable(order, body);
    const { x, y } = cutCentre(body);
    const ends = opened(body.items).flatMap((item) => (item.kind === "line" ? [item.from, item.to] : []));
    const isThere = (at: PagePoint): boolean =>
      ends.some((end) => Math.abs(end.x - at.x) < 1e-9 && Math.abs(end.y - at.y) < 1e-9);
    expect(isThere({ x, y: inside.y })).toBe(true);
    expect(isThere({ x, y: inside.y + inside.heightMm })).toBe(true);
    expect(isThere({ x: inside.x, y })).toBe(true);
    expect(isThere({ x: inside.x + inside.widthMm, y })).toBe(true);
  });
});

describe("the figures, on every page", () => {
  it.each(["letter", "A4", "roll-36"])("say the hole and its place large enough on %s", (paper) => {
    const inches: Parts = { units: "imperial", models: { tilted: { opening: { round: '8 1/4"' } } } };
    for (const body of bodiesOf(sheetOf(orderOf([ROUND], paper, inches), "TFL"))) {
      expect(large(body)).toEqual(
        expect.arrayContaining(['8 1/4"', '4 1/8"', '−0 +1/8"', "≈3' 3 3/8\"", "≈6' 10 11/16\"", "4th"]),
      );
    }
  });

  it("say a rectangle's sides, half sides and diagonals", () => {
    for (const body of bodiesOf(sheetOf(orderOf([SQUARE]), "SL"))) {
      // 349.857 mm by Pythagoras; 12.5 mm of board on the front wall when a wall is cut.
      const said = large(body).join(" ");
      for (const figure of [
        "180 mm × 300 mm",
        "90 mm × 150 mm",
        "≈349.9 mm",
        "−0 +3 mm",
        "≈1488 mm",
        "1200 mm",
      ]) {
        expect(said).toContain(figure);
      }
    }
  });

  it("round a size up and never down, and the compass to 1/32 in", () => {
    // 201 mm is 7.913 in: 7 15/16 by sixteenths up. Its radius is 3.957 in: 3 31/32 by thirty-seconds up.
    const odd: Parts = { units: "imperial", models: { tilted: { opening: { round: "201 mm" } } } };
    const body = only(sheetOf(orderOf([ROUND], "A3", odd), "TFL").pages);
    expect(large(body)).toEqual(expect.arrayContaining(['≈7 15/16"', '≈3 31/32"']));
  });

  it("are from the faces that are there when it is cut; two sets of pages where both are asked for", () => {
    const both: Parts = { stage: { walls: "both" } };
    const { pages } = sheetOf(orderOf([ROUND], "A3", both), "TFL");
    expect(pages.map(({ frame }) => frame?.faces)).toEqual([
      "Dimensions from FRAMING faces (bare studs)",
      "Dimensions from FINISHED faces (board on)",
    ]);
    // 1 m from the left framing is 987.5 mm from 12.5 mm of board.
    expect(pages.map((body) => large(body).includes("1000 mm"))).toEqual([true, false]);
    expect(pages.map((body) => large(body).includes("≈988 mm"))).toEqual([false, true]);
  });
});

describe("under an error", () => {
  const deep: Parts = { models: { tilted: { depth: "400 mm" } } };

  it("breaks the line and forbids the cut across every page, with the reason", () => {
    const order = orderOf([ROUND], "letter", deep);
    for (const body of bodiesOf(sheetOf(order, "TFL"))) {
      expect(only(marked(body, "cut"))).toMatchObject({ stroke: { dashMm: [9, 6] } });
      expect(large(body)).toContain("DO NOT CUT");
      expect(plainWords(body)).toContain("needs 400 mm");
      expect(plainWords(body)).not.toContain("CUT INSIDE THE LINE");
      expect(plainWords(body)).not.toMatch(/DIAMETER|COMPASS|TOLERANCE/u);
    }
  });

  it("says where the nearest clear centre is", () => {
    // 1.8 m is the middle of joist 3: the nearest clear centre lies in the bay on either side, on the same line.
    const order = orderOf([{ ...ROUND, at: { left: "1 m", front: "1.8 m" } }], "letter");
    for (const body of bodiesOf(sheetOf(order, "TFL"))) {
      expect(plainWords(body)).toMatch(/nearest clear centre: 1000 mm .*from LEFT, \d+ mm .*from FRONT/u);
    }
  });

  it("does not where there is none", () => {
    for (const body of bodiesOf(sheetOf(orderOf([ROUND], "letter"), "TFL"))) {
      expect(only(marked(body, "cut"))).not.toHaveProperty("stroke.dashMm");
      expect(plainWords(body)).not.toContain("DO NOT CUT");
    }
  });
});

describe("the notes", () => {
  it.each(ASKED)("are all on the pages of one template on $paper in $languages", (asked) => {
    const order = orderFor(job({ speakers: [ROUND] }), asked);
    const { notes } = order.words.template;
    const { pages } = sheetOf(order, "TFL");
    const said = pages.map(plainWords).join(" ");
    const wanted = [notes.look, notes.cut(""), notes.check([], "", null), notes.done];
    const begins = wanted.flatMap((note) => note.split(" / ")).map((note) => note.slice(0, 9));
    expect(begins.filter((begin) => !said.includes(begin))).toEqual([]);
  });

  it("leave one box to tick for one opening, on however many parts", () => {
    const { pages } = sheetOf(orderOf([ROUND]), "TFL");
    expect(pages.length).toBeGreaterThan(1);
    expect(pages.map(plainWords).join(" ").match(/□/gu)).toHaveLength(1);
  });
});

it("says so where a template cannot be tiled", () => {
  const { pages } = sheetOf(orderOf([ROUND], "130 mm x 160 mm"), "TFL");
  expect(pages.flatMap((body) => marked(body, "cut"))).toEqual([]);
  expect(pages.map(plainWords).join(" ")).toMatch(/TOO LARGE for this paper|no room for a template/);
});
