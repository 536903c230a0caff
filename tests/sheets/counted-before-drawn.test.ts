import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cablePlan } from "../../src/sheets/cable-plan.js";
import { cableSchedule } from "../../src/sheets/cable-schedule.js";
import { checkLists } from "../../src/sheets/check-lists.js";
import { floorMarks } from "../../src/sheets/floor-marks.js";
import { listeningPlan } from "../../src/sheets/listening-plan.js";
import { listeningReport } from "../../src/sheets/listening-report.js";
import { markerSheets } from "../../src/sheets/marker-sheet.js";
import { pageCountOf } from "../../src/sheets/page-count.js";
import { openingSchedule } from "../../src/sheets/schedules.js";
import type { Order, Sheet } from "../../src/sheets/sheet.js";
import { sideView } from "../../src/sheets/side-view.js";
import { surfaceMarks } from "../../src/sheets/surface-marks.js";
import { terminalCards } from "../../src/sheets/terminal-cards.js";
import type { Language } from "../../src/units/language.js";
import { howMany, someOf } from "../how-many.js";
import { job } from "../rooms/job.js";
import { randomRoom } from "../rooms/random.js";
import { ROOMS } from "./marking-rooms.js";
import { ASKED, orderFor } from "./orders.js";

/** Sheets that say how many pages they have before anything is drawn. */
const MAKERS = {
  floorMarks,
  openingSchedule,
  surfaceMarks,
  cableSchedule,
  cablePlan,
  markerSheets,
  terminalCards,
  checkLists,
  listeningReport,
  listeningPlan,
  sideView,
};

const sheetsFor = (order: Order): Sheet[] => Object.values(MAKERS).flatMap((make) => make(order));

/** Little room for many words. */
const LOOKED_AT = someOf(ASKED, ({ paper, languages = [] }) => paper === "letter" && languages.length === 2);

/** What a sheet said, and what it then had: its pages throw where these differ. */
function expectCounted(order: Order): void {
  for (const sheet of sheetsFor(order)) {
    const said = pageCountOf(sheet);
    expect(sheet.pages, sheet.name).toHaveLength(said);
  }
}

describe("as many pages are drawn as were counted before", () => {
  const asked = fc.record({
    paper: fc.constantFrom("letter", "A4", "tabloid"),
    languages: fc.constantFrom<Language[]>(["en"], ["es"], ["en", "es"]),
  });

  it.each(Object.keys(ROOMS))("%s", (name) => {
    const answered = ROOMS[name]?.();
    if (answered === undefined) throw new Error(`no room ${name}`);
    for (const on of LOOKED_AT) expectCounted(orderFor(answered, on));
  });

  it("rooms with everything anywhere", () => {
    fc.assert(
      fc.property(randomRoom, asked, (parts, on) => {
        expectCounted(orderFor(job(parts), on));
      }),
      { numRuns: howMany(12, 100) },
    );
  });
});
