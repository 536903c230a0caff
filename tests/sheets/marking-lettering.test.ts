import { describe, expect, it } from "vitest";
import { floorMarks } from "../../src/sheets/floor-marks.js";
import { surfaceMarks } from "../../src/sheets/surface-marks.js";
import { ROOMS } from "./marking-rooms.js";
import { letteringFaults } from "./no-collisions.js";
import { orderFor, SOME_ASKED } from "./orders.js";

/** Fitted sheets are printed on the reading paper where the job has a roll. Two languages are the longest words. */
const PAPERS = SOME_ASKED.filter(({ paper }) => paper !== "roll-36");

describe("no text of a marking sheet meets another or leaves its area", () => {
  for (const [name, make] of Object.entries(ROOMS)) {
    it.each(PAPERS)(`${name} on $paper in $languages`, (asked) => {
      const order = orderFor(make(), asked);
      const sheets = [...floorMarks(order), ...surfaceMarks(order)];
      expect(sheets.length).toBeGreaterThan(0);
      for (const { name: sheet, pages, whole } of sheets) {
        const bodies = [...pages, ...(whole === null ? [] : [whole()])];
        expect(
          bodies.flatMap((body) => letteringFaults(order, body)),
          sheet,
        ).toEqual([]);
      }
    });
  }
});
