import { describe, expect, test } from "vitest";
import { findingText, fixText } from "../../src/words/finding-text.js";
import { measureIn } from "../../src/words/measure.js";
import { wordsIn } from "../../src/words/words.js";
import type { Parts } from "../rooms/build.js";
import { findingsOf, job } from "../rooms/job.js";
import { TOO_MANY_TO_MOVE, TOO_MANY_WAYS } from "../rooms/too-much.js";

const said = (parts: Parts, languages: readonly ("en" | "es")[] = ["en"]) =>
  findingsOf(parts).map((finding) => findingText(wordsIn(languages), measureIn("metric"), finding));

const cut: Parts = { speakers: [{ id: "TFL", at: { left: "2 m", front: "710 mm" } }] };

test("a finding is one plain sentence with its figures", () => {
  expect(said(cut)).toEqual(['TFL: the opening cuts joist 1 by 12.5 mm (1/2")']);
  expect(said(cut, ["es"])).toEqual(['TFL: el hoyo corta vigueta 1 por 12.5 mm (1/2")']);
});

test("in both languages the loudspeaker is named once", () => {
  expect(said(cut, ["en", "es"])).toEqual([
    'TFL: the opening cuts joist 1 by 12.5 mm (1/2") / el hoyo corta vigueta 1 por 12.5 mm (1/2")',
  ]);
});

test("the fix names its walls", () => {
  const [finding] = findingsOf(cut);
  if (finding === undefined) throw new Error("nothing found");
  expect(fixText(wordsIn(["en"]), measureIn("metric"), finding)).toBe(
    "nearest clear centre: 2000 mm from LEFT, 741 mm from FRONT",
  );
  expect(fixText(wordsIn(["es"]), measureIn("metric"), finding)).toBe(
    "centro libre más cercano: 2000 mm desde IZQUIERDA, 741 mm desde FRENTE",
  );
  expect(fixText(wordsIn(["en"]), measureIn("metric"), { fix: null })).toBeNull();
});

/** A room in which every code but the ones about neighbours stands somewhere. */
const MANY: Parts = {
  layout: "0+5+0",
  board: { sheets: { ceiling: { from: "front", first: "100 mm", width: "200 mm" } } },
  framing: {
    left: null,
    front: { at: null, first: "577.5 mm", spacing: "600 mm" },
    ceiling: { at: ["600 mm", "1200 mm", "1800 mm"] },
    right: { engineered: true, strapping: "19 mm" },
  },
  surfaces: { front: { rated: true }, ceiling: { rated: true, enclosure: true } },
  obstructions: [{ name: "duct", on: "ceiling", at: { left: "1 m", front: "1.5 m" }, round: "200 mm" }],
  models: {
    round: { weight: "9 kg", coverage: "60 deg", impedance: "4 ohm" },
    deep: {
      opening: { round: "100 mm" },
      flange: { round: "120 mm" },
      depth: "300 mm",
      clamp_reach: "12 mm",
      board_range: ["20 mm", "30 mm"],
    },
  },
  seats: [{ name: "middle", at: { left: "2 m", front: "900 mm" }, ear: "1.2 m", reference: true }],
  // WALL's wall is shut off over it, ACROSS is past studs on the equipment's wall, the bundle is thick and its wire thin.
  equipment: { at: { right: "0", back: "1 m" }, up: "500 mm" },
  labels: { stock: "letter-30", cable_diameter: "60 mm" },
  cable: {
    gauges: [24],
    avoid: [{ on: "left", corner: { front: "0", up: "1.5 m" }, opposite: { back: "0", up: "1.8 m" } }],
  },
  areas: [{ name: "shop", on: "ceiling", model: "round", ear: "1.2 m" }],
  accept: [{ code: "opening-near-member", speaker: "FAR", why: "seen" }],
  speakers: [
    { id: "CUT", at: { left: "1 m", front: "700 mm" } },
    { id: "CLAMP", at: { left: "3 m", front: "730 mm" } },
    { id: "NEAR", at: { left: "500 mm", front: "1338 mm" } },
    { id: "DUCT", at: { left: "1 m", front: "1.5 m" } },
    { id: "OUT", at: { left: "50 mm", front: "900 mm" } },
    { id: "FAR", at: { left: "2 m", front: "3 m" } },
    { id: "WALL", on: "left", at: { front: "1 m", up: "1 m" } },
    { id: "DEEP", channel: "U+045", model: "deep", on: "front", at: { left: "900 mm", up: "1 m" } },
    { id: "OVER", model: "tilted", at: { left: "2 m", front: "900 mm" } },
    { id: "TWIN", model: "tilted", at: { left: "2210 mm", front: "900 mm" } },
    { id: "BEST", channel: "U-030", at: "best", mirror: "WALL" },
    { id: "LOST", channel: "LFE1", at: "best" },
    { id: "ACROSS", channel: "M-110", model: "upright", on: "right", at: { front: "3300 mm", up: "1 m" } },
  ],
};

describe("every code", () => {
  const tooMuch = [TOO_MANY_WAYS, TOO_MANY_TO_MOVE].flatMap((hall) =>
    job(hall).findings.filter(({ code }) => code.endsWith("-not-looked-for")),
  );
  const many = { findings: [...job(MANY).findings, ...tooMuch] };

  test("comes up, so that none goes unread", () => {
    const codes = new Set<string>(many.findings.map(({ code }) => code));
    expect(Object.keys(wordsIn(["en"]).explain).filter((code) => !codes.has(code))).toEqual([]);
  });

  test.each(["en", "es"] as const)("reads as words and figures in %s", (language) => {
    for (const units of ["imperial", "metric"] as const) {
      for (const finding of many.findings) {
        const text = findingText(wordsIn([language]), measureIn(units), finding);
        expect(text, finding.code).not.toMatch(/undefined|NaN|null|Infinity|\[object| {2}/u);
        expect(text, finding.code).not.toMatch(/\.$/u);
      }
    }
  });

  test("has a page of its own in both languages", () => {
    for (const { code } of many.findings) {
      for (const language of ["en", "es"] as const) {
        const page = wordsIn([language]).explain[code];
        for (const part of Object.values(page)) expect(part.length, code).toBeGreaterThan(20);
      }
      expect(wordsIn(["en"]).explain[code].meaning).not.toBe(wordsIn(["es"]).explain[code].meaning);
    }
  });
});
