import { describe, expect, it } from "vitest";
import type { Item } from "../../src/drawing/drawing.js";
import { textBox } from "../../src/drawing/text.js";
import { cableLabels } from "../../src/sheets/cable-labels.js";
import { cover } from "../../src/sheets/cover.js";
import { flagLengthMm, zonesOf } from "../../src/sheets/label-stock.js";
import { labellingOf } from "../../src/sheets/labelling.js";
import type { Body, Order } from "../../src/sheets/sheet.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { letteringFaults } from "./no-collisions.js";
import { ASKED, opened, orderFor, wordsOn } from "./orders.js";

const speakers = (...ids: readonly string[]): Parts[] =>
  ids.map((id, index) => ({ id, at: { left: "1.5 m", front: `${900 + index * 700} mm` } }));

const stock = (parts: Parts, more: Parts = {}): Parts => ({ labels: { stock: parts, ...more } });

/** Label stock of 38.1 x 21.2 mm, 65 to an A4 sheet. */
const SIXTY_FIVE: Parts = {
  page: "A4",
  label: { width: "38.1 mm", height: "21.2 mm" },
  columns: 5,
  rows: 13,
  left: "4.75 mm",
  top: "10.7 mm",
  pitch: { across: "40.6 mm", down: "21.2 mm" },
};

function pagesOf(order: Order): readonly Body[] {
  return cableLabels(order).find(({ name }) => name === "cable-labels")?.pages ?? [];
}

function testPage(order: Order): Body {
  const page = cableLabels(order).find(({ name }) => name === "cable-labels-test")?.pages[0];
  if (page === undefined) throw new Error("no test page");
  return page;
}

const said = (page: Body): string => wordsOn(page).join(" ");

const textsOn = (page: Body) => opened(page.items).filter((item) => item.kind === "text");
const linesOn = (page: Body) => opened(page.items).filter((item) => item.kind === "line");

/** How far a text reaches, on the page. */
const reach = (item: Item) => {
  if (item.kind !== "text") throw new Error("not a text");
  const { x, y, widthMm, heightMm } = textBox(item);
  return { left: x, right: x + widthMm, top: y, bottom: y + heightMm };
};

describe("cable labels", () => {
  it("are two for each run, whatever findings stand, and say which end", () => {
    const order = orderFor(job({ speakers: speakers("A1", "B2"), framing: { ceiling: null } }));
    expect(order.job.findings.some(({ level }) => level === "error")).toBe(true);
    const words = pagesOf(order).flatMap(wordsOn);
    for (const id of ["A1", "B2"]) expect(words.filter((each) => each === id)).toHaveLength(2);
    expect(words.filter((each) => each === "RACK END")).toHaveLength(2);
    expect(words.filter((each) => each === "SPEAKER END")).toHaveLength(2);
  });

  it("are printed for a loudspeaker without a position too", () => {
    const order = orderFor(job({ speakers: [{ id: "LOST", channel: "LFE1", at: "best" }] }));
    expect(order.job.openings).toHaveLength(0);
    expect(
      pagesOf(order)
        .flatMap(wordsOn)
        .filter((each) => each === "LOST"),
    ).toHaveLength(2);
  });

  it("guess nothing: what is not given is a line to write on", () => {
    const blank = orderFor(job({ speakers: speakers("A1") }));
    const [page] = pagesOf(blank);
    if (page === undefined) throw new Error("no labels");
    // On each of both labels: amplifier channel, gauge, conductors, length.
    expect(linesOn(page)).toHaveLength(8);
    expect(wordsOn(page).filter((each) => /\d/u.test(each) && each !== "A1" && each !== "M+000")).toEqual([]);

    const [one = {}] = speakers("A1");
    const given = { ...one, amplifier: "7", cable: { gauge: 14, conductors: 2, length: "14.2 m" } };
    const [full] = pagesOf(orderFor(job({ speakers: [given] })));
    if (full === undefined) throw new Error("no labels");
    expect(linesOn(full)).toHaveLength(0);
    for (const words of ["AMP 7", "AWG 14-2", "LENGTH 14200\u00a0mm", "RACK → ceiling"]) {
      expect(wordsOn(full)).toContain(words);
    }
  });

  it("say what was computed where equipment is given, and that it was", () => {
    const wired = job({
      equipment: { at: { right: "0", back: "700 mm" }, up: "500 mm" },
      cable: { loop: "1 m", spare: "0%", gauges: [16] },
      models: { round: { impedance: "8 ohm" } },
      speakers: [{ id: "A1", at: { left: "1 m", front: "5301 mm" } }],
    });
    const [page] = pagesOf(orderFor(wired));
    if (page === undefined) throw new Error("no labels");
    // 2099 + 1 up the bay and back to the lane, as in tests/cable, and two loops: 7271 mm, cut to the centimetre.
    expect(wordsOn(page).filter((each) => /^(AWG|LENGTH)/u.test(each))).toEqual([
      "AWG\u00a016-2 (calc.)",
      "LENGTH 7280\u00a0mm (calc.)",
      "AWG\u00a016-2 (calc.)",
      "LENGTH 7280\u00a0mm (calc.)",
    ]);
  });

  it("carry no frame, and the test page beside them does", () => {
    const order = orderFor(job({ speakers: speakers("A1") }));
    expect(pagesOf(order).map(({ frame }) => frame)).toEqual([null]);
    expect(testPage(order).frame).not.toBeNull();
    expect(said(testPage(order))).toContain("to the light");
  });

  // Geometry of both sheets: check values, "Label stock, by geometry only".
  it.each([
    {
      paper: "letter",
      page: [215.9, 279.4],
      first: [4.7625, 12.7],
      pitch: [69.85, 25.4],
      columns: 3,
      label: [66.675, 25.4],
    },
    {
      paper: "A4",
      page: [210, 297],
      first: [7.25, 12.9],
      pitch: [66, 33.9],
      columns: 3,
      label: [63.5, 33.9],
    },
  ])(
    "lie inside their labels and the printer's margins on $paper",
    ({ paper, page, first, pitch, columns, label }) => {
      const ids = ["A1", "B2", "C3", "D4"];
      const order = orderFor(job({ speakers: speakers(...ids) }), { paper });
      const [body] = pagesOf(order);
      if (body === undefined) throw new Error("no labels");
      expect([body.widthMm, body.heightMm]).toEqual(page);
      for (const item of textsOn(body)) {
        const { left, right, top, bottom } = reach(item);
        const column = Math.floor((left - (first[0] ?? 0)) / (pitch[0] ?? 1));
        const row = Math.floor((top - (first[1] ?? 0)) / (pitch[1] ?? 1));
        expect(column).toBeLessThan(columns);
        expect(right).toBeLessThanOrEqual((first[0] ?? 0) + column * (pitch[0] ?? 0) + (label[0] ?? 0));
        expect(bottom).toBeLessThanOrEqual((first[1] ?? 0) + row * (pitch[1] ?? 0) + (label[1] ?? 0));
        // Safe margins: 6.35 mm at the sides, 12.7 mm at the bottom.
        expect(left).toBeGreaterThanOrEqual(6.35 - 1e-9);
        expect(right).toBeLessThanOrEqual((page[0] ?? 0) - 6.35 + 1e-9);
        expect(bottom).toBeLessThanOrEqual((page[1] ?? 0) - 12.7 + 1e-9);
      }
    },
  );

  it("begin behind the used labels of the first sheet, and go on to the next", () => {
    const all = { speakers: speakers("A1", "B2") };
    const order = orderFor(job({ ...all, labels: { stock: "A4-24", used: 22 } }));
    const [first, second, none] = pagesOf(order);
    expect(none).toBeUndefined();
    const ids = (page: Body | undefined) =>
      page === undefined ? [] : wordsOn(page).filter((words) => words === "A1" || words === "B2");
    expect(ids(first)).toEqual(["A1", "A1"]);
    expect(ids(second)).toEqual(["B2", "B2"]);
    // Labels 23 and 24 are the last two of the last row, the eighth: top 12.9, pitch 33.9.
    for (const item of first === undefined ? [] : textsOn(first)) {
      expect(reach(item).top).toBeGreaterThan(12.9 + 7 * 33.9);
      expect(reach(item).left).toBeGreaterThan(7.25 + 66);
    }
  });
});

describe("flag labels", () => {
  // Check values, "Late additions": 65-up stock on 10 mm cable leaves 3.3 mm.
  it("are as long as half of what the cable does not take", () => {
    expect(flagLengthMm(38.1, 10)).toBeCloseTo(3.342, 3);
    expect(flagLengthMm(66.675, 7)).toBeCloseTo((66.675 - 21.991) / 2, 3);
  });

  const flags = (diameter: string | null, parts: Parts = SIXTY_FIVE) =>
    orderFor(
      job({
        speakers: speakers("A1"),
        ...stock({ ...parts, kind: "flag" }, diameter === null ? {} : { cable_diameter: diameter }),
      }),
    );

  it("are refused where a flag cannot hold the id, in words and with its length", () => {
    const order = flags("10 mm");
    expect(labellingOf(order).kind).toBe("refused");
    expect(pagesOf(order)).toEqual([]);
    expect(said(testPage(order))).toMatch(/NO LABELS ON THIS STOCK.*3 mm.*A1/u);
    expect(cover(order, []).pages.map(said).join(" ")).toMatch(/NO LABELS ON THIS STOCK.*3 mm.*A1/u);
  });

  it("are refused where the cable's diameter is not given: nothing is guessed", () => {
    const order = flags(null);
    expect(pagesOf(order)).toEqual([]);
    expect(said(testPage(order))).toContain("outside diameter, which is not given");
  });

  it("stand at both ends of the label, and what the cable takes stays blank", () => {
    const wide: Parts = {
      ...SIXTY_FIVE,
      label: { width: "95 mm", height: "25 mm" },
      columns: 2,
      rows: 10,
      pitch: { across: "98 mm", down: "26 mm" },
    };
    const order = flags("6 mm", wide);
    const [page] = pagesOf(order);
    if (page === undefined) throw new Error("no labels");
    const around = Math.PI * 6;
    const flag = (95 - around) / 2;
    const onFirstLabel = textsOn(page)
      .map(reach)
      .filter(({ left, top }) => left < 4.75 + 95 && top < 10.7 + 25);
    for (const { left, right } of onFirstLabel) {
      const isLeft = right <= 4.75 + flag;
      const isRight = left >= 4.75 + flag + around;
      expect(isLeft || isRight).toBe(true);
    }
    expect(textsOn(page).filter(({ text }) => text === "A1")).toHaveLength(4);
  });
});

describe("wrap labels", () => {
  // Rule of the trade, from memory: printed part at most pi OD, clear tail at least pi OD. OD 7 mm: 21.99 mm.
  const wrap = (diameter: string | null, printed: string, height: string) =>
    orderFor(
      job({
        speakers: speakers("A1"),
        ...stock(
          {
            page: "A4",
            label: { width: "50 mm", height },
            columns: 3,
            rows: 4,
            left: "20 mm",
            top: "15 mm",
            pitch: { across: "60 mm", down: "65 mm" },
            kind: "wrap",
            printed,
          },
          diameter === null ? {} : { cable_diameter: diameter },
        ),
      }),
    );

  it("keep their words in the printed part", () => {
    const order = wrap("7 mm", "20 mm", "60 mm");
    const [page] = pagesOf(order);
    if (page === undefined) throw new Error("no labels");
    for (const { bottom } of textsOn(page).map(reach)) expect(bottom).toBeLessThanOrEqual(15 + 20);
    expect(labellingOf(order)).toMatchObject({ kind: "printed", zones: { remarks: [] } });
  });

  it("keep their words inside one turn round the cable where the printed part is longer, and say so", () => {
    const order = wrap("5 mm", "25 mm", "60 mm");
    const [page] = pagesOf(order);
    if (page === undefined) throw new Error("no labels");
    for (const { bottom } of textsOn(page).map(reach)) expect(bottom).toBeLessThanOrEqual(15 + Math.PI * 5);
    expect(said(testPage(order))).toContain("laps over itself");
  });

  it("warn where the clear tail does not go once round", () => {
    expect(said(testPage(wrap("7 mm", "20 mm", "40 mm")))).toContain("clear tail");
    expect(said(testPage(wrap("7 mm", "20 mm", "42 mm")))).not.toContain("clear tail");
  });

  it("say that no cable fits where the tail is shorter than the printed part", () => {
    expect(said(testPage(wrap(null, "30 mm", "50 mm")))).toContain("on no cable");
  });

  it("say which cables fit where the diameter is not given", () => {
    const zones = zonesOf({ ...SIZES, kind: "wrap", labelHeightMm: 60, printedHeightMm: 20 }, null);
    expect(zones).toMatchObject({
      remarks: [{ kind: "diameter-not-given", leastMm: 20 / Math.PI, mostMm: 40 / Math.PI }],
    });
  });
});

const SIZES = {
  pageWidthMm: 210,
  pageHeightMm: 297,
  labelWidthMm: 50,
  labelHeightMm: 60,
  columns: 3,
  rows: 4,
  leftMm: 20,
  topMm: 15,
  pitchXMm: 60,
  pitchYMm: 65,
  printedHeightMm: null,
  used: 0,
} as const;

describe("small labels", () => {
  it("hold less, and the test page says what is left off", () => {
    const order = orderFor(job({ speakers: speakers("A1"), ...stock(SIXTY_FIVE) }), {
      languages: ["en", "es"],
    });
    expect(labellingOf(order)).toMatchObject({ kind: "printed" });
    expect(said(testPage(order))).toContain("No room on these labels");
  });

  it("are refused where even the longest id does not fit", () => {
    const tiny = { ...SIXTY_FIVE, label: { width: "14 mm", height: "8 mm" } };
    const order = orderFor(job({ speakers: speakers("A1", "LONG-ID-0001"), ...stock(tiny) }));
    expect(labellingOf(order)).toMatchObject({
      kind: "refused",
      why: { why: "too-small", id: "LONG-ID-0001" },
    });
  });

  it.each(ASKED)("meet no other words, on $paper in $languages", (asked) => {
    for (const parts of [
      stock(SIXTY_FIVE),
      stock({ ...SIXTY_FIVE, page: "125 mm x 175 mm", columns: 2, rows: 6 }),
    ]) {
      const order = orderFor(job({ speakers: speakers("A1", "B2"), ...parts }), asked);
      const faults = cableLabels(order).flatMap(({ pages }) =>
        pages.flatMap((page) => letteringFaults(order, page)),
      );
      expect(faults).toEqual([]);
    }
  });
});
