import { describe, expect, it } from "vitest";
import { cover } from "../../src/sheets/cover.js";
import type { Listed } from "../../src/sheets/cover-contents.js";
import type { Order, Sheet } from "../../src/sheets/sheet.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { orderFor, wordsOn } from "./orders.js";

const CLEAR: Parts = { id: "OK", at: { left: "1500 mm", front: "2700 mm" } };
const ON_JOIST: Parts = { id: "BAD", at: { left: "2500 mm", front: "3000 mm" } };
const LOST: Parts = { id: "LOST", channel: "LFE1", at: "best" };

const order = (speakers: readonly Parts[], more: Parts = {}): Order => orderFor(job({ speakers, ...more }));

const said = (sheet: Sheet): string[] => sheet.pages.flatMap(wordsOn);
const all = (sheet: Sheet): string => said(sheet).join(" ");

const LISTED: readonly Listed[] = [
  { title: "Floor marks", trades: ["drywall", "installer"], pages: 1, first: 3 },
  { title: "Opening OK", trades: ["drywall"], pages: 4, first: 4 },
  { title: "Cable labels", trades: ["labels"], pages: 2, first: 8 },
  { title: "Nothing", trades: ["installer"], pages: 0, first: 10 },
];

describe("the list of sheets", () => {
  const words = said(cover(order([CLEAR]), LISTED));

  it("stands by trade, with the number where each begins and how many pages it has", () => {
    const headings = [
      "DRYWALL CREW, drywall.pdf: 5 p.",
      "INSTALLER, installer.pdf: 1 p.",
      "LABEL STOCK, labels.pdf: 2 p.",
    ];
    const [drywall, installer, labels] = headings.map((heading) => words.indexOf(heading));
    expect([drywall, installer, labels]).not.toContain(-1);
    expect(words.slice(drywall, installer)).toEqual(
      expect.arrayContaining(["3", "Floor marks", "1 p.", "4", "Opening OK", "4 p."]),
    );
    expect(words.slice(installer, labels)).toContain("Floor marks");
    expect(words.slice(installer, labels)).not.toContain("Opening OK");
    expect(words.slice(labels)).toEqual(expect.arrayContaining(["8", "Cable labels", "2 p."]));
  });

  it("leaves out a sheet without pages", () => {
    expect(words).not.toContain("Nothing");
  });
});

describe("how things stand", () => {
  it("says how many openings must not be cut, and how many are to be cut", () => {
    const words = said(cover(order([CLEAR, ON_JOIST, LOST]), []));
    expect(words).toContain("DO NOT CUT: 1 of 3 openings");
    expect(words).toContain("1 opening to cut");
    expect(words.join(" ")).toContain("No position yet, on no sheet to cut by: LOST");
  });

  it("says nothing of the kind where all is clear", () => {
    const words = all(cover(order([CLEAR]), []));
    expect(words).not.toMatch(/DO NOT CUT: \d/u);
    expect(words).toContain("FINDINGS STILL OPEN None.");
  });

  it("names who to call, or leaves a line to write on", () => {
    expect(all(cover(order([CLEAR], { call: "Site lead, 555-0100" }), []))).toContain("Site lead, 555-0100");
    expect(all(cover(order([CLEAR]), []))).toMatch(/stop, call _{10,}/iu);
  });
});

describe("the findings", () => {
  // Joist 4 is at 2400 mm: 138 - 45/2 - 200/2 leaves 15.5 mm, and the clamps (12 mm) want 1/4 in more.
  const NEAR: Parts = { id: "NEAR", at: { left: "1500 mm", front: "2538 mm" } };
  const accept = [{ code: "opening-near-member", speaker: "NEAR", why: "blocking was removed, seen 11-18" }];
  const framing = { left: { at: null, first: "600 mm", spacing: "600 mm" } };
  const one = order([NEAR, ON_JOIST, { id: "SL", on: "left", at: { front: "1500 mm", up: "1200 mm" } }], {
    accept,
    framing,
  });
  const words = said(cover(one, []));

  it("come gravest first, each with its sentence, its fix and where it stands", () => {
    const levels = words.flatMap((word) => /^(ERROR|WARNING|NOTE), line \d+$/u.exec(word)?.[1] ?? []);
    expect(levels).toEqual(["ERROR", "WARNING", "NOTE"]);
    const text = words.join(" ").replaceAll("\u00a0", " ");
    expect(text).toMatch(
      /ERROR, line 1 BAD: the opening cuts joist 5 .*nearest clear centre: .*WARNING, line 1 NEAR/u,
    );
  });

  it("say why one was accepted", () => {
    expect(words.join(" ")).toContain("Accepted: blocking was removed, seen 11-18");
  });
});

describe("cautions, print and ways of working", () => {
  // What the cautions must cover where the work can hurt someone.
  it.each([
    [/cables, pipes and ducts/iu],
    [/never cut, notch or over-bore/iu],
    [/maker's rules/iu],
    [/listed enclosure/iu],
    [/power off.*licensed/iu],
    [/ladder/iu],
    [/goggles/iu],
    [/lead or asbestos/iu],
    [/second support/iu],
    [/authority having jurisdiction/iu],
    [/100 %/u],
    [/BOTH rulers/u],
    [/BRACKET IN PLACE/u],
    [/NO BRACKET/u],
  ])("has %s", (pattern) => {
    expect(all(cover(order([CLEAR]), []))).toMatch(pattern);
  });
});
