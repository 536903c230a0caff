import { describe, expect, test } from "vitest";
import type { Job } from "../../src/job.js";
import { mountedIn } from "../../src/listen/mounted.js";
import { fillAreas } from "../../src/place/cover/fill.js";
import { cableLabels } from "../../src/sheets/cable-labels.js";
import { cablePlan } from "../../src/sheets/cable-plan.js";
import { cableSchedule } from "../../src/sheets/cable-schedule.js";
import { checkLists } from "../../src/sheets/check-lists.js";
import { floorMarks } from "../../src/sheets/floor-marks.js";
import { grilleSchedule } from "../../src/sheets/grille-schedule.js";
import { listeningPlan } from "../../src/sheets/listening-plan.js";
import { listeningReport } from "../../src/sheets/listening-report.js";
import { markerSheets } from "../../src/sheets/marker-sheet.js";
import { openingTemplates } from "../../src/sheets/opening-template.js";
import { bracketSchedule, openingSchedule } from "../../src/sheets/schedules.js";
import { sideView } from "../../src/sheets/side-view.js";
import { soundCheck } from "../../src/sheets/sound-check.js";
import { surfaceMarks } from "../../src/sheets/surface-marks.js";
import { terminalCards } from "../../src/sheets/terminal-cards.js";
import { type Parts, room } from "../rooms/build.js";
import { bareHall } from "../rooms/halls.js";
import { job } from "../rooms/job.js";
import { letteringFaults } from "./no-collisions.js";
import { opened, orderFor, SOME_ASKED, wordsIn } from "./orders.js";

const SIZE = { width: 8025, length: 6025 };

/** A hall with its twelve frozen, ids and area's name as long as they may be, and more loudspeakers besides. */
function filledHall(more: readonly Parts[] = [], rest: Parts = {}): Job {
  const parts = bareHall(SIZE, { name: "main-hall-01", prefix: "OVERHEAD-" }, rest);
  const empty = room(parts);
  const places = fillAreas(empty, mountedIn(empty)).flatMap((one) =>
    one.kind === "filled" ? one.places : [],
  );
  const speakers = places.map(
    ({ mounted, tapes }): Parts => ({
      id: mounted.speaker.id,
      area: "main-hall-01",
      model: "straight",
      at: Object.fromEntries(tapes.map(({ from, mm }) => [from, `${mm} mm`])),
    }),
  );
  return job({ ...parts, speakers: [...speakers, ...more] });
}

const SHEETS = {
  openingTemplates,
  listeningReport,
  listeningPlan,
  sideView,
  soundCheck,
  terminalCards,
  markerSheets,
  surfaceMarks,
  openingSchedule,
  bracketSchedule,
  cableSchedule,
  grilleSchedule,
  cableLabels,
  cablePlan,
  checkLists,
  floorMarks,
};

describe("what is printed of an area", () => {
  const hall = filledHall();
  const order = orderFor(hall);
  const wired = filledHall([], { equipment: { at: { right: "0", back: "1 m" }, up: "1 m" } });

  test("one template serves all that are alike, each still drawn whole for the SVG folder", () => {
    const sheets = openingTemplates(order);
    const onPaper = sheets.filter(({ pages }) => pages.length > 0);
    expect(onPaper.map(({ name }) => name)).toEqual(["template-1-main-hall-01"]);
    expect(onPaper[0]?.alsoNamed).toContain("opening-OVERHEAD-7");
    const words = wordsIn(onPaper).join(" ").replaceAll("\u00a0", " ");
    for (const { speaker } of hall.openings) expect(words).toContain(`□ ${speaker.id}`);
    expect(words).toMatch(/160 mm/u);
    expect(words).not.toMatch(/joist|Gap/u);
    const whole = sheets.flatMap((sheet) => sheet.whole?.() ?? []);
    expect(whole).toHaveLength(12);
    for (const [index, { items }] of whole.entries()) {
      const cuts = opened(items).filter((item) => "mark" in item && item.mark?.role === "cut");
      expect(cuts).toMatchObject([
        { kind: "circle", radiusMm: 80, mark: { speaker: `OVERHEAD-${index + 1}` } },
      ]);
    }
  });

  test("one of which something else is to be said has a template of its own", () => {
    const beside = filledHall([{ id: "X", model: "round", at: { left: "1013 mm", front: "1200 mm" } }]);
    const names = openingTemplates(orderFor(beside)).flatMap(({ name, pages }) =>
      pages.length > 0 ? [name] : [],
    );
    expect(names).toEqual(["template-1-main-hall-01", "opening-OVERHEAD-1", "opening-X"]);
  });

  test("the sound check expects under each what the level of all makes there", () => {
    const words = wordsIn(soundCheck(order)).join("\n");
    const [coverage] = hall.coverage;
    expect(words).toContain("main-hall-01");
    expect(words).toMatch(/\+1\.\d\u00a0dB/u);
    expect(words).not.toMatch(/Delay/u);
    expect(coverage?.spread?.mostDb).toBeGreaterThan(1);
  });

  test("nobody is told where they are from one seat, and everybody how even they are", () => {
    const words = wordsIn([...listeningReport(order), ...listeningPlan(order), ...sideView(order)]).join(" ");
    expect(words).not.toMatch(/az -?\d|el -?\d/u);
    expect(words).toMatch(/standard deviation [\d.]+ dB/u);
  });

  test.each(SOME_ASKED)("words do not meet nor leave the page: %j", (asked) => {
    const each = orderFor(wired, asked);
    for (const [name, make] of Object.entries(SHEETS)) {
      const faults = make(each).flatMap(({ pages }) => pages.flatMap((page) => letteringFaults(each, page)));
      expect(faults, name).toEqual([]);
    }
  });
});
