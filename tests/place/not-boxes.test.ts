import fc from "fast-check";
import { expect, test } from "vitest";
import { clearTest } from "../../src/place/clear.js";
import { fittingOf } from "../../src/place/fitting.js";
import { surfaceNamed } from "../../src/room/room.js";
import { type Parts, room, speakerNamed, TRAY_CORNERS } from "../rooms/build.js";
import { clearArea } from "../rooms/clear-area.js";
import { contains } from "../rooms/clipped.js";
import { codesOf } from "../rooms/job.js";
import { L_ROOM } from "../rooms/not-boxes.js";

/*
 * Clear area in rooms that are no boxes, against the plainest arithmetic: 4 m wide in front, 7 m behind the step at 6 m
 * from the front wall, 9 m long; boards of 12.5 mm; a round flange of 230 and a hole of 200 mm with clamps of 12.
 */

const JOIST: Parts = { width: "40 mm", depth: "200 mm" };
const framed = (from: string, run: string): Parts => ({
  ceiling: { run, member: JOIST, from, at: null, first: "1 m", spacing: "1 m" },
  left: null,
  right: null,
  front: null,
  back: null,
});

/** Distance from a point to a rectangle's border, below 0 inside. */
function toBox(x: number, y: number, [x0, y0, x1, y1]: readonly [number, number, number, number]): number {
  const [dx, dy] = [Math.max(x0 - x, x - x1), Math.max(y0 - y, y - y1)];
  return dx > 0 && dy > 0 ? Math.hypot(dx, dy) : Math.max(dx, dy);
}

const spot = fc.record({ x: fc.integer({ min: 0, max: 7000 }), y: fc.integer({ min: 0, max: 9000 }) });

test("an L: inside by the flange, also round the corner that stands out, and clear of its joists", () => {
  const one = room({
    ...L_ROOM,
    framing: framed("front", "left-right"),
    checks: { clear: "8 mm" },
    speakers: [{ id: "S", at: { left: "1 m", front: "1500 mm" } }],
  });
  const ceiling = surfaceNamed(one, "ceiling");
  const fitting = fittingOf(speakerNamed(one, "S"), one.checks);
  const isClear = clearTest(ceiling, fitting, []);
  const area = clearArea(ceiling, fitting, []);
  // What is outside the L: four half-planes, and the quarter that it leaves out (boards stand inside).
  const flange = 115;
  const wanted = 100 + 12 + 8;
  const byHand = (x: number, y: number): number =>
    Math.min(
      x - 12.5 - flange,
      y - 12.5 - flange,
      8987.5 - y - flange,
      6987.5 - x - flange,
      toBox(x, y, [3987.5, 2987.5, 20_000, 20_000]) - flange,
      ...[1, 2, 3, 4, 5, 6, 7, 8, 9].map((count) => Math.abs(9000 - 1000 * count - y) - 20 - wanted),
    );
  fc.assert(
    fc.property(spot, ({ x, y }) => {
      const slack = byHand(x, y);
      const at = { u: ceiling.frame.origin.x - x, v: y };
      if (Math.abs(slack) < 0.05) return;
      expect(isClear(at)).toBe(slack > 0);
      expect(contains(area, at)).toBe(slack > 0);
    }),
    { numRuns: 2000 },
  );
});

test("a tray is no part of the ceiling round it", () => {
  const tray: Parts = {
    room: {
      ceilings: [
        {
          name: "tray",
          corners: TRAY_CORNERS,
          height: "2800 mm",
        },
      ],
    },
  };
  const at = (left: string, front: string, on = "ceiling"): Parts => ({
    ...tray,
    speakers: [{ id: "S", on, at: { left, front } }],
  });
  // Joists every 600 from the front: 900 and 2700 lie between two.
  expect(codesOf(at("500 mm", "2700 mm"))).not.toContain("opening-outside-surface");
  expect(codesOf(at("2 m", "2700 mm"))).toContain("opening-outside-surface");
  expect(codesOf(at("2 m", "2700 mm", "tray"))).not.toContain("opening-outside-surface");
  // The ceiling's board ends 12.5 inside the hole: a flange of 115 from 1012.5 - 115 on hangs over it.
  expect(codesOf(at("897 mm", "2700 mm"))).not.toContain("opening-outside-surface");
  expect(codesOf(at("898 mm", "2700 mm"))).toContain("opening-outside-surface");
});
