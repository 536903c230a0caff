import { describe, expect, it } from "vitest";
import { cablePlan } from "../../src/sheets/cable-plan.js";
import { cableSchedule } from "../../src/sheets/cable-schedule.js";
import { checkLists } from "../../src/sheets/check-lists.js";
import { cablesCsv } from "../../src/sheets/csv.js";
import { frameArea } from "../../src/sheets/frame.js";
import { grilleSchedule } from "../../src/sheets/grille-schedule.js";
import { listeningReport } from "../../src/sheets/listening-report.js";
import type { Order, Sheet } from "../../src/sheets/sheet.js";
import { soundCheck } from "../../src/sheets/sound-check.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { collisions, outside, textsOf } from "./no-collisions.js";
import { ASKED, HARD, opened, orderFor, wordsIn } from "./orders.js";

const plain = (words: string): string => words.replaceAll("\u00a0", " ");
const said = (sheets: readonly Sheet[]): string[] => wordsIn(sheets).map(plain);

const SHEETS = { cableSchedule, cablePlan, listeningReport, checkLists, soundCheck, grilleSchedule };

/** Up the right wall's bay, in through two plates, 3 m along the joists' bay (tests/cable). */
const WIRED: Parts = {
  equipment: { at: { right: "0", back: "700 mm" }, up: "500 mm" },
  cable: { loop: "1 m", spare: "0%", gauges: [16] },
  models: {
    round: {
      impedance: "8 ohm",
      sensitivity: "88 dB",
      power: "100 W",
      coverage: "90 deg",
    },
  },
  speakers: [
    { id: "NEAR", channel: "U+030", at: { left: "2 m", front: "2.7 m" } },
    { id: "FAR", channel: "M+030", at: { left: "1 m", front: "5300 mm" }, amplifier: "A1" },
  ],
};

const order = (more: Parts = {}): Order => orderFor(job({ ...WIRED, ...more }));

const wires = { equipment: { at: { right: "0", back: "700 mm" }, up: "500 mm" } };
const many: Parts = {
  ...WIRED,
  speakers: Array.from({ length: 40 }, (_, index) => ({
    id: `LONG-ID-${1000 + index}`,
    at: { left: `${300 + 400 * (index % 8)} mm`, front: `${300 + 600 * Math.floor(index / 8)} mm` },
  })),
};

const ANSWERS = [WIRED, { ...HARD, ...wires }, many].map(job);

describe.each(Object.entries(SHEETS))("%s", (_, make) => {
  it.each(ASKED)("has no words on others or out of the page: %o", (asked) => {
    for (const answer of ANSWERS) {
      const one = orderFor(answer, asked);
      for (const page of make(one).flatMap(({ pages }) => pages)) {
        const texts = textsOf(page.items);
        expect(collisions(texts)).toEqual([]);
        if (page.frame === null) throw new Error("without a frame");
        expect(outside(texts, frameArea(one, page.frame, page))).toEqual([]);
        for (const item of opened(page.items)) {
          if (item.kind === "text") expect(item.capMm, item.text).toBeGreaterThanOrEqual(2.5);
        }
      }
    }
  });

  it("is no sheet for a room without loudspeakers", () => {
    expect(make(orderFor(job({ ...WIRED, speakers: [] })))).toEqual([]);
  });
});

describe("the cable schedule", () => {
  it("says what to cut, of what, what it loses and which way it goes", () => {
    const words = said(cableSchedule(order()));
    // 2100 + 170 + 3000 and two loops of 1 m: 7270 mm; 2 x 13.174 ohm/km over 8 ohm.
    const share = (2 * 13.174 * 7.27) / 1000 / 8;
    expect(words).toEqual(
      expect.arrayContaining([
        "FAR",
        "A1",
        "AWG 16-2",
        "7270 mm",
        `${(20 * Math.log10(1 + share)).toFixed(2)} dB`,
        `${(100 * share).toFixed(1)} %`,
      ]),
    );
    expect(words.join(" ")).toContain("right wall up 2100 mm, between studs 8 and 9, through 2 top plates");
    expect(words.join(" ")).toContain("1000 mm left at the loudspeaker");
  });

  it("without equipment leaves lines to write on and no ways", () => {
    const words = said(cableSchedule(order({ equipment: null })));
    expect(words.join(" ")).toContain("write in what is pulled");
    expect(words).not.toContain("Holes to bore");
    expect(words.join(" ")).not.toContain("top plates");
  });

  it("marks what was assumed: the bits, and in words all that the file leaves open", () => {
    const words = said(cableSchedule(order()));
    expect(words.join(" ")).toMatch(
      /ASSUMED, as the room file does not say: cable 8 mm \(2\), 10 mm \(4\) across/u,
    );
    expect(words.join(" ")).toContain("* For cable of ASSUMED diameter: 8 mm (2), 10 mm (4)");
    expect(words.some((each) => /^[≈\d./ ]+ mm \*$/u.test(each))).toBe(true);
    const measured = said(cableSchedule(order({ labels: { stock: "A4-24", cable_diameter: "7 mm" } })));
    expect(measured.join(" ")).not.toMatch(/cable 8 mm|ASSUMED diameter/u);
    expect(measured.some((each) => each.endsWith("mm *"))).toBe(false);
    const [head = "", row = ""] = cablesCsv(order()).split("\r\n");
    const cell = (name: string) => row.split(",")[head.split(",").indexOf(name)];
    expect([cell("cable_diameter_mm"), cell("cable_diameter_from"), cell("conductors_from")]).toEqual([
      "8",
      "assumed",
      "assumed",
    ]);
  });

  it("forbids holes past the code, and asks for nail plates where the edge is near", () => {
    // Not along the right wall's studs, so that the joists are crossed.
    const shallow = {
      framing: { ceiling: { member: { width: "38 mm", depth: "89 mm" } } },
      cable: {
        avoid: [{ on: "right", corner: { front: "0", up: "0" }, opposite: { front: "5 m", up: "2.6 m" } }],
      },
    };
    expect(said(cableSchedule(order(shallow))).join(" ")).toContain("TOO LARGE: at most 0 mm");
    const thin = { framing: { right: { member: { width: "38 mm", depth: "64 mm" } } } };
    expect(said(cableSchedule(order(thin))).join(" ")).toContain("NAIL PLATES");
    expect(said(cableSchedule(order())).join(" ")).not.toContain("TOO LARGE");
  });
});

describe("the cable plan", () => {
  const lines = (one: Order) =>
    cablePlan(one)
      .flatMap(({ pages }) => pages)
      .flatMap(({ items }) => opened(items))
      .flatMap((item) => (item.kind === "line" && item.stroke.widthMm === 0.5 ? [item] : []));

  it("draws the way looking down: the rack on the right, the loudspeaker to its left in front or behind as it is", () => {
    const [only] = lines(order({ speakers: [{ id: "S", at: { left: "1 m", front: "5300 mm" } }] })).filter(
      ({ from, to }) => Math.abs(from.x - to.x) > 1 && Math.abs(from.y - to.y) < 0.01,
    );
    if (only === undefined) throw new Error("no way");
    const texts = cablePlan(order()).flatMap(({ pages }) => pages.flatMap(({ items }) => textsOf(items)));
    expect(texts.length).toBeGreaterThan(5);
    // 3 m along the joists at a round ratio.
    const shown = Math.abs(only.to.x - only.from.x);
    expect([10, 20, 25, 50, 100].some((ratio) => Math.abs(shown - 3000 / ratio) < 0.01)).toBe(true);
  });

  it("is no sheet without equipment", () => {
    expect(cablePlan(order({ equipment: null }))).toEqual([]);
  });
});

describe("the sound-check sheet", () => {
  it("expects distance and delay by hand, and trims to the softest", () => {
    const words = said(soundCheck(order()));
    // From the ear (2000, 3000, 1200): NEAR 300 in front and 1387.5 up, FAR 2300 behind, 1000 to the left.
    const near = Math.hypot(300, 1387.5);
    const far = Math.hypot(1000, 2300, 1387.5);
    const delay = (far - near) / 343.2;
    expect(words).toContain(`${delay.toFixed(2)} ms`);
    expect(words).toContain("0.00 ms");
    expect(words).toContain(`${Math.round(delay * 48)} samples`);
    const lobe = (across: number) => 6 * ((Math.atan2(across, 1387.5) * 180) / Math.PI / 45) ** 2;
    const trim = 20 * Math.log10(far / near) + Math.min(20, lobe(Math.hypot(1000, 2300))) - lobe(300);
    expect(words).toContain(`${(-trim).toFixed(1)} dB`);
    expect(words).toContain("0.0 dB");
  });

  it("has a line to write on for each of three measured figures of each loudspeaker", () => {
    const dotted = soundCheck(order())
      .flatMap(({ pages }) => pages)
      .flatMap(({ items }) => opened(items))
      .filter((item) => item.kind === "line" && item.stroke.dashMm !== undefined);
    expect(dotted).toHaveLength(6);
  });
});

it("the listening report tells every seat, and the model with its limits", () => {
  const seats = [
    { name: "middle", at: { left: "2 m", front: "3 m" }, ear: "1.2 m", reference: true },
    { name: "back", at: { left: "2 m", front: "4 m" }, ear: "1.2 m" },
  ];
  const words = said(listeningReport(order({ seats })));
  expect(words).toEqual(expect.arrayContaining(["Seat: middle", "Seat: back", "FAR", "NEAR"]));
  expect(words.join(" ")).toMatch(/MODEL of the stated coverage.*-6 dB at half the coverage angle/u);
  // 105 dB at NEAR's distance and angle from 88 dB for 1 W.
  const lobe = 6 * ((Math.atan2(300, 1387.5) * 180) / Math.PI / 45) ** 2;
  const watts = 10 ** ((105 - 88 + 20 * Math.log10(Math.hypot(300, 1387.5) / 1000) + lobe) / 10);
  expect(words).toContain(`${watts.toFixed(0)} W`);
});

it("the grille schedule counts alike ones once", () => {
  const words = said(grilleSchedule(order()));
  expect(words).toEqual(expect.arrayContaining(["2", "⌀ 230 mm", "NEAR, FAR"]));
});

it("the check lists have a tick box for every item of every visit", () => {
  const one = order();
  const items = Object.values(one.words.checks.visits).flatMap((visit) => visit.items);
  const ticks = checkLists(one)
    .flatMap(({ pages }) => pages)
    .flatMap((page) => opened(page.items))
    .filter((item) => item.kind === "rectangle" && item.widthMm === 5);
  expect(ticks).toHaveLength(items.length);
});
