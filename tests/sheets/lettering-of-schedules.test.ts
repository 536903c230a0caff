import { describe, expect, it } from "vitest";
import { cableLabels } from "../../src/sheets/cable-labels.js";
import { cover } from "../../src/sheets/cover.js";
import { rulerSheet } from "../../src/sheets/ruler-page.js";
import { bracketSchedule, openingSchedule } from "../../src/sheets/schedules.js";
import type { Order, Sheet } from "../../src/sheets/sheet.js";
import { terminalCards } from "../../src/sheets/terminal-cards.js";
import { job } from "../rooms/job.js";
import { letteringFaults } from "./no-collisions.js";
import { ASKED, HARD, orderFor } from "./orders.js";

const MAKERS: Readonly<Record<string, (order: Order) => readonly Sheet[]>> = {
  cover: (order) => [
    cover(order, [
      {
        title: "A sheet whose title takes more than a line of its column",
        trades: ["drywall"],
        pages: 12,
        first: 188,
      },
      ...Array.from({ length: 40 }, (_, index) => ({
        title: `Opening LONG-ID-${index}`,
        trades: ["installer"] as const,
        pages: 1,
        first: 200 + index,
      })),
    ]),
  ],
  cableLabels,
  terminalCards,
  openingSchedule,
  bracketSchedule,
  rulerSheet,
};

describe("no text meets another or leaves its area", () => {
  for (const [name, make] of Object.entries(MAKERS)) {
    it.each(ASKED)(`${name} on $paper in $languages`, (asked) => {
      const order = orderFor(job(HARD), asked);
      const pages = make(order).flatMap((sheet) => sheet.pages);
      expect(pages.length).toBeGreaterThan(0);
      expect(pages.flatMap((page) => letteringFaults(order, page))).toEqual([]);
    });
  }
});
