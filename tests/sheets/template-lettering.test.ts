import { describe, expect, it } from "vitest";
import { aimStrips } from "../../src/sheets/aim-strip.js";
import { markerSheets } from "../../src/sheets/marker-sheet.js";
import { openingTemplates } from "../../src/sheets/opening-template.js";
import type { Order, Sheet } from "../../src/sheets/sheet.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { letteringFaults } from "./no-collisions.js";
import { HARD, orderFor, SOME_ASKED } from "./orders.js";

const MAKERS: Readonly<Record<string, (order: Order) => readonly Sheet[]>> = {
  openingTemplates,
  aimStrips,
  markerSheets,
};

/** Nothing stands against cutting here: notes and labels where HARD has the plate that forbids it. */
const CLEAR: Parts = {
  ...HARD,
  stage: { walls: "both" },
  models: { tilted: { opening: { round: '9 1/4"' }, flange: { round: '10 1/2"' } } },
  speakers: [
    { id: "LONG-ID-0001", model: "tilted", at: { left: "1 m", front: "2.1 m" } },
    { id: "T", model: "tilted", at: { right: "1003 mm", front: "4819 mm" } },
    { id: "LONG-ID-WALL", model: "upright", on: "left", at: { front: "1.5 m", up: "1.2 m" } },
  ],
  accept: [],
};

/** Framing assumed, and things in the way that cross the page. */
const CROWDED: Parts = {
  ...CLEAR,
  stage: { walls: "boarded" },
  units: "metric",
  framing: {
    ceiling: {
      run: "front-back",
      member: "2x10",
      from: "left",
      first: "300 mm",
      spacing: "300 mm",
      at: null,
    },
  },
  obstructions: [
    {
      name: "a duct with a long name",
      on: "ceiling",
      at: { left: "1.1 m", front: "2.25 m" },
      round: "120 mm",
    },
    {
      name: "pipe",
      on: "left",
      corner: { front: "1.3 m", up: "1.3 m" },
      opposite: { front: "1.6 m", up: "1.4 m" },
    },
  ],
};

/** The same under joists that run at an angle. */
const SLANTED: Parts = {
  ...CROWDED,
  framing: {
    ceiling: { run: "37 deg", from: { right: 0, front: 0 }, first: "300 mm", spacing: "300 mm", at: null },
  },
};

const ROOMS = { HARD, CLEAR, CROWDED };

function expectNoFaults(order: Order, make: (order: Order) => readonly Sheet[]): void {
  const bodies = make(order).flatMap(({ pages, whole }) => [...pages, ...(whole === null ? [] : [whole()])]);
  expect(bodies.length).toBeGreaterThan(0);
  expect(bodies.flatMap((body) => letteringFaults(order, body))).toEqual([]);
}

describe("no text meets another or leaves its area", () => {
  for (const [room, parts] of Object.entries(ROOMS)) {
    for (const [name, make] of Object.entries(MAKERS)) {
      it.each(SOME_ASKED)(`${name} of ${room} on $paper in $languages`, (asked) =>
        expectNoFaults(orderFor(job(parts), asked), make),
      );
    }
  }

  it.each(["letter", "roll-36"])("templates under joists at an angle on %s", (paper) =>
    expectNoFaults(orderFor(job(SLANTED), { paper, languages: ["en", "es"] }), openingTemplates),
  );
});
