import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { cablePlan } from "../../src/sheets/cable-plan.js";
import { cableSchedule } from "../../src/sheets/cable-schedule.js";
import { checkLists } from "../../src/sheets/check-lists.js";
import { coverListing } from "../../src/sheets/cover.js";
import { floorMarks } from "../../src/sheets/floor-marks.js";
import { listeningPlan } from "../../src/sheets/listening-plan.js";
import { listeningReport } from "../../src/sheets/listening-report.js";
import { markerSheets } from "../../src/sheets/marker-sheet.js";
import { openingTemplates } from "../../src/sheets/opening-template.js";
import { pageCountOf } from "../../src/sheets/page-count.js";
import { openingSchedule } from "../../src/sheets/schedules.js";
import type { Order, Sheet } from "../../src/sheets/sheet.js";
import { sideView } from "../../src/sheets/side-view.js";
import { terminalCards } from "../../src/sheets/terminal-cards.js";
import type { Language } from "../../src/units/language.js";
import { howMany, someOf } from "../how-many.js";
import { job } from "../rooms/job.js";
import { randomRoom } from "../rooms/random.js";
import { ROOMS } from "./marking-rooms.js";
import { ASKED, orderFor } from "./orders.js";

/** Sheets that say how many pages they have before anything is drawn; the fitted ones unless that hangs on the drawing. */
const MAKERS = {
  floorMarks,
  openingSchedule,
  openingTemplates,
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

/** What a sheet said, and what it then had: its pages throw where these differ. True where it was said before any was drawn. */
function expectPages(sheet: Sheet): boolean {
  const asked = vi.spyOn(sheet, "pages", "get");
  const said = pageCountOf(sheet);
  const isBefore = asked.mock.calls.length === 0;
  asked.mockRestore();
  expect(sheet.pages, sheet.name).toHaveLength(said);
  return isBefore;
}

/**
 * Every sheet, and a cover that lists them: their numbers get a second and a third digit after its own pages, or not.
 * Returns the names of those that were counted before they were drawn.
 */
function expectCounted(order: Order): string[] {
  const sheets = sheetsFor(order);
  const covers = [8, 98].map((from) =>
    coverListing(order, (coverPages) =>
      sheets.map(({ title, trades }, index) => ({
        title,
        trades,
        pages: 1,
        first: from + index + coverPages,
      })),
    ),
  );
  return [...sheets, ...covers].filter(expectPages).map(({ name }) => name);
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

  it.each(["125 mm x 400 mm", "roll-36"])("a room on %s", (paper) => {
    expectCounted(orderFor(job({ speakers: [{ id: "A", at: { left: "1 m", front: "2.1 m" } }] }), { paper }));
  });

  it("rooms with everything anywhere", () => {
    const before: string[] = [];
    fc.assert(
      fc.property(randomRoom, asked, (parts, on) => {
        before.push(...expectCounted(orderFor(job(parts), on)));
      }),
      { numRuns: howMany(12, 100) },
    );
    // Were none of the fitted counted before, all would pass whatever the count says.
    for (const name of ["floor", "listening-plan", "side-view", "cover"]) {
      expect(before.filter((each) => each === name).length, name).toBeGreaterThan(3);
    }
  });
});
