import type { Item } from "../../src/drawing/drawing.js";
import type { Job } from "../../src/job.js";
import { orderOf } from "../../src/sheets/order.js";
import type { Body, Order, Sheet } from "../../src/sheets/sheet.js";
import { parsePaper, SAFE_MARGINS_MM } from "../../src/standards/paper.js";
import type { Language } from "../../src/units/language.js";
import { someOf } from "../how-many.js";
import type { Parts } from "../rooms/build.js";
import { textsOf } from "./no-collisions.js";

export interface Asked {
  readonly paper?: string;
  readonly languages?: readonly Language[];
}

/** An order for a job's sheets: A4 and English where the test does not say. */
export function orderFor(job: Job, { paper = "A4", languages = ["en"] }: Asked = {}): Order {
  const read = parsePaper(paper);
  if (!read.ok) throw new Error(`no paper ${paper}`);
  return orderOf(job, {
    paper: read.paper,
    languages,
    margins: SAFE_MARGINS_MM,
    correction: null,
    fullSize: false,
  });
}

/** Every paper and language that lettering is checked on. */
export const ASKED: readonly Asked[] = ["letter", "A4", "roll-36"].flatMap((paper) =>
  [["en"], ["es"], ["en", "es"]].map((languages) => ({ paper, languages: languages as Language[] })),
);

/** Those that are looked at: two languages are the longest words, and letter is the shortest page. */
export const SOME_ASKED = someOf(ASKED, ({ paper, languages = [] }) =>
  paper === "letter" ? languages[0] === "es" : languages.length === 2,
);

/** The words on a page, in the order in which they were drawn. */
export const wordsOn = (body: Body): string[] => textsOf(body.items).map(({ text }) => text.text);

export const wordsIn = (sheets: readonly Sheet[]): string[] =>
  sheets.flatMap(({ pages }) => pages.flatMap(wordsOn));

/** Items of a page with every group opened, shifts added; windows are not applied. */
export function opened(items: readonly Item[], shift = { x: 0, y: 0 }): Exclude<Item, { kind: "group" }>[] {
  return items.flatMap((item) => {
    if (item.kind !== "group") return [movedItem(item, shift)];
    const more = item.shift ?? { x: 0, y: 0 };
    return opened(item.items, { x: shift.x + more.x, y: shift.y + more.y });
  });
}

type Plain = Exclude<Item, { kind: "group" }>;

function movedItem(item: Plain, by: { x: number; y: number }): Plain {
  const moved = ({ x, y }: { x: number; y: number }) => ({ x: x + by.x, y: y + by.y });
  switch (item.kind) {
    case "line":
      return { ...item, from: moved(item.from), to: moved(item.to) };
    case "circle":
      return { ...item, centre: moved(item.centre) };
    case "rectangle":
      return { ...item, corner: moved(item.corner) };
    case "text":
      return { ...item, at: moved(item.at) };
    case "path":
      return {
        ...item,
        steps: item.steps.map((step) => (step.to === "close" ? step : { ...step, at: moved(step.at) })),
      };
  }
}

/** A room whose words are as long as a room file allows, with findings of every level, in inches. */
export const HARD: Parts = {
  job: {
    name: "A job whose name is as long as sixty characters may well be.",
    number: "NO-1234567890",
    revision: "ZZ-10",
    date: "2026-11-20",
  },
  units: "imperial",
  call: "Somebody with a long name, 555-0100, or the office",
  models: {
    "a-model-with-a-long-name": {
      opening: { width: '7 7/8"', height: '13 15/16"' },
      flange: { width: '9 1/16"', height: '15 1/16"' },
      depth: '3 5/16"',
      clamp_reach: '1/2"',
      terminal: "spring clip with a cover",
      strip: '5/16"',
      conductors: [
        { colour: "red", terminal: "low +", sign: "+" },
        { colour: "negro", terminal: "low -", sign: "-" },
        { colour: "WHBU", terminal: "high +", sign: "+" },
        { colour: "striped like a bee", terminal: "high -", sign: "-" },
      ],
    },
    deep: {
      opening: { round: '9 11/16"' },
      flange: { round: '10 11/16"' },
      depth: '14 3/16"',
      clamp_reach: '1/2"',
      baffle_tilt: "20 deg",
      coverage: "100 deg",
      weight: "17 lb",
    },
  },
  speakers: [
    {
      id: "LONG-ID-WALL",
      model: "a-model-with-a-long-name",
      on: "left",
      at: { front: "1.3 m", up: "1.2 m" },
      amplifier: "RACK-2-CH-11",
    },
    { id: "LONG-ID-0001", model: "deep", at: { left: "1003 mm", front: "2107 mm" } },
    {
      id: "LONG-ID-0002",
      model: "deep",
      at: { right: "1003 mm", front: "4819 mm" },
      cable: { gauge: 14, conductors: 4, length: "14.2 m" },
    },
    { id: "TL", channel: "LFE1", at: "best" },
  ],
  accept: [
    {
      code: "needs-second-support",
      speaker: "LONG-ID-0001",
      why: "a second support was hung by the carpenter, seen on site",
    },
  ],
};
