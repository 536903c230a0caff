import { expect, it } from "vitest";
import { surfaceNamed } from "../../src/room/room.js";
import { insideSpans } from "../../src/sheets/marking/spans.js";
import { stepParts } from "../../src/sheets/marking/steps.js";
import { surfaceAt } from "../../src/sheets/marking/surface-stage.js";
import { job } from "../rooms/job.js";
import { L_ROOM } from "../rooms/not-boxes.js";
import { textsOf } from "./no-collisions.js";
import { orderFor } from "./orders.js";

/* The L is 4 m wide in front and 7 m behind the step, which stands 6 m from the front wall; it is 9 m long. */

const one = job({ ...L_ROOM, speakers: [{ id: "S", at: { left: "1 m", front: "2 m" } }] });
const ceiling = surfaceNamed(one.room, "ceiling");

it("of an L are the longest straight lines from corner to corner that stay inside and touch no other corner", () => {
  // Front left to back right would leave the L past the step's corner; front right to back left is hypot(4, 9),
  // left front to the step's corner hypot(4, 6). The leg's far corner to the front is shut off by the step.
  const spans = insideSpans(ceiling.edges);
  expect(spans.map(({ mm }) => Math.round(mm))).toEqual([9849, 7211]);
  expect(spans[0]).toMatchObject({ from: ["front", "right"], to: ["back", "left"] });
  expect(spans[1]).toMatchObject({ from: ["left", "front"], to: ["right", "step"] });
});

it("stand on the sheet with the corners by their walls, instead of two diagonals", () => {
  const order = orderFor(one);
  const parts = stepParts(order, surfaceAt(order, ceiling, "bare"));
  const items = parts.flatMap(
    (part) => part({ x: 0, y: 0, widthMm: 150, heightMm: 900 }, true)?.draw() ?? [],
  );
  const said = textsOf(items)
    .map(({ text }) => text.text)
    .join(" ")
    .replaceAll("\u00a0", " ");
  expect(said).toContain("FRONT/RIGHT to BACK/LEFT ≈9849 mm");
  expect(said).not.toContain("SQUARE");
});
