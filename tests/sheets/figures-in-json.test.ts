import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { jobJson, type RoomJson } from "../../src/job-json.js";
import { cablePlan } from "../../src/sheets/cable-plan.js";
import { cableSchedule } from "../../src/sheets/cable-schedule.js";
import { checkLists } from "../../src/sheets/check-lists.js";
import { grilleSchedule } from "../../src/sheets/grille-schedule.js";
import { listeningPlan } from "../../src/sheets/listening-plan.js";
import { listeningReport } from "../../src/sheets/listening-report.js";
import type { Order, Sheet } from "../../src/sheets/sheet.js";
import { sideView } from "../../src/sheets/side-view.js";
import { soundCheck } from "../../src/sheets/sound-check.js";
import { roomOf } from "../rooms/build.js";
import { answer } from "../rooms/job.js";
import { orderFor, wordsIn } from "./orders.js";

/*
 * Every figure on the sheets of cable and sound stands under a key of the JSON: what the sheets print is read off them
 * and looked up among what the JSON's numbers are when rounded as a sheet rounds, reckoned here once more.
 */

type Kind = "angle" | "level" | "time" | "power" | "share" | "length" | "temperature";

/** Keys by what their numbers are. */
const KEYS: Readonly<Record<Kind, readonly string[]>> = {
  angle: ["azimuth", "elevation", "off_axis", "angle"],
  level: ["level", "headroom", "target", "loss", "loss_limit", "limit", "trim"],
  time: ["delay"],
  power: ["power", "stated"],
  share: ["share", "spare", "percent"],
  length: [
    "distance",
    "length",
    "left",
    "diameter",
    "width",
    "height",
    "most",
    "long",
    "short",
    "loop",
    "rack_loop",
    "two",
    "four",
    "z",
  ],
  temperature: ["temperature", "celsius"],
};

/** Every number of the object by the key that it stands under, those of lists under the list's. */
function numbersOf(value: unknown, key = ""): readonly (readonly [string, number])[] {
  if (typeof value === "number") return [[key, value]];
  if (Array.isArray(value)) return value.flatMap((each) => numbersOf(each, key));
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => numbersOf(each, name));
}

const MM_PER_INCH = 25.4;

/** Feet, inches and sixteenths, nearest. */
function feetAndInches(mm: number): string {
  const sixteenths = Math.round((mm / MM_PER_INCH) * 16);
  const [inches, rest] = [Math.floor(sixteenths / 16), sixteenths % 16];
  const feet = Math.floor(inches / 12);
  const parts = [2, 4, 8, 16].find((by) => (rest * by) % 16 === 0) ?? 16;
  const fraction = rest === 0 ? "" : `${(rest * parts) / 16}/${parts}`;
  const whole =
    inches % 12 === 0 && (feet > 0 || rest > 0) && !(feet > 0 && rest === 0)
      ? feet > 0
        ? "0"
        : ""
      : String(inches % 12);
  const inch = [whole, fraction].filter((part) => part !== "").join(" ");
  return feet > 0 ? `${feet}' ${inch}"` : `${inch}"`;
}

function inchesAlone(mm: number): string {
  const sixteenths = Math.round((mm / MM_PER_INCH) * 16);
  const [inches, rest] = [Math.floor(sixteenths / 16), sixteenths % 16];
  const parts = [2, 4, 8, 16].find((by) => (rest * by) % 16 === 0) ?? 16;
  const fraction = rest === 0 ? "" : `${(rest * parts) / 16}/${parts}`;
  return `${[inches === 0 && rest > 0 ? "" : String(inches), fraction].filter((part) => part !== "").join(" ")}"`;
}

/** A number as sheets may write it. */
const WRITTEN: Readonly<Record<Kind, (value: number) => readonly string[]>> = {
  angle: (deg) => [`${(Number(deg.toFixed(1)) + 0).toFixed(1)}°`],
  level: (db) => [
    `${Number(db.toFixed(1)) + 0} dB`,
    `${(Number(db.toFixed(1)) + 0).toFixed(1)} dB`,
    `${db.toFixed(2)} dB`,
  ],
  time: (ms) => [`${ms.toFixed(2)} ms`],
  power: (watts) => [`${watts.toFixed(watts < 10 ? 1 : 0)} W`],
  share: (share) => [`${(100 * share).toFixed(1)} %`, `${100 * share} %`, `${share} %`],
  // As read off a tape; what is cut or laid over a hole up to the next tenth, cable up to the next inch.
  length: (mm) => [
    feetAndInches(mm),
    inchesAlone(mm),
    `${Math.round(mm)} mm`,
    `${(Math.ceil(mm * 10 - 1e-9) / 10).toFixed(1)} mm`,
    feetAndInches(Math.ceil(mm / MM_PER_INCH - 1e-9) * MM_PER_INCH),
    inchesAlone(Math.ceil(mm / MM_PER_INCH - 1e-9) * MM_PER_INCH),
  ],
  temperature: (celsius) => [`${celsius} °C`],
};

const READ: Readonly<Record<Kind, RegExp>> = {
  angle: /-?\d+\.\d°/gu,
  level: /-?\d+(?:\.\d+)? dB/gu,
  time: /-?\d+\.\d+ ms/gu,
  power: /\d+(?:\.\d+)? W(?![a-z])/gu,
  share: /\d+(?:\.\d+)? %/gu,
  length: /\d+' (?:\d+ )?\d+(?:\/\d+)?"|(?<![\d'/] ?)(?:\d+ )?\d+(?:\/\d+)?"|\d+(?:\.\d+)? mm/gu,
  temperature: /-?\d+ °C/gu,
};

/** What stands on sheets and is no figure of a room. */
const OF_THE_WORDS = new Set(["-6 dB"]);

const SHEETS: Readonly<Record<string, (order: Order) => readonly Sheet[]>> = {
  cableSchedule,
  cablePlan,
  listeningReport,
  listeningPlan,
  sideView,
  soundCheck,
  checkLists,
  grilleSchedule,
};

let order: Order;
let json: RoomJson;
let known: ReadonlyMap<Kind, ReadonlySet<string>>;

beforeAll(() => {
  const den = readFileSync(join(import.meta.dirname, "..", "..", "examples", "quarry-lane-den.yaml"), "utf8");
  order = orderFor(answer(roomOf(den)), { paper: "letter" });
  json = jobJson(order.job);
  const numbers = numbersOf(json);
  const kinds = Object.keys(KEYS) as Kind[];
  known = new Map(
    kinds.map((kind) => [
      kind,
      new Set(
        numbers.filter(([key]) => KEYS[kind].includes(key)).flatMap(([, value]) => WRITTEN[kind](value)),
      ),
    ]),
  );
});

const figuresOn = (sheets: readonly Sheet[], kind: Kind): readonly string[] =>
  wordsIn(sheets).flatMap((words) => words.replaceAll("\u00a0", " ").match(READ[kind]) ?? []);

describe("the den's figures", () => {
  it.each(Object.keys(SHEETS))("on %s are all in the JSON", (name) => {
    const sheets = SHEETS[name]?.(order) ?? [];
    expect(sheets.length).toBeGreaterThan(0);
    const strange = [...known].flatMap(([kind, written]) =>
      figuresOn(sheets, kind).filter((figure) => !OF_THE_WORDS.has(figure) && !written.has(figure)),
    );
    expect(strange).toEqual([]);
  });

  it("are read at all: of each kind there are some", () => {
    const sheets = Object.values(SHEETS).flatMap((make) => make(order));
    for (const kind of Object.keys(READ) as Kind[])
      expect(figuresOn(sheets, kind).length, kind).toBeGreaterThan(0);
    expect(figuresOn(soundCheck(order), "length").length).toBeGreaterThanOrEqual(order.job.openings.length);
  });

  it("that are counts are there too: samples, holes, grilles", () => {
    const words = wordsIn([...soundCheck(order), ...listeningReport(order), ...cableSchedule(order)]);
    for (const { seats, cable } of json.speakers) {
      for (const { samples } of seats) expect(words).toContain(String(samples));
      expect(words).toContain(String(cable?.bored));
    }
    const grilles = wordsIn(grilleSchedule(order));
    const sizes = new Set(
      json.speakers.map(({ flange, model, surface }) => JSON.stringify([flange, model, surface])),
    );
    for (const size of sizes) {
      const alike = json.speakers.filter(
        ({ flange, model, surface }) => JSON.stringify([flange, model, surface]) === size,
      );
      expect(grilles).toContain(String(alike.length));
    }
  });

  it("would not all be there under other keys: one that is changed is missed", () => {
    const [first] = figuresOn(listeningReport(order), "time");
    const other = `${(Number.parseFloat(first ?? "") + 77.77).toFixed(2)} ms`;
    expect(known.get("time")?.has(first ?? "")).toBe(true);
    expect(known.get("time")?.has(other)).toBe(false);
  });
});
