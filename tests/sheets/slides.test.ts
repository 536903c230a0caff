import { describe, expect, test } from "vitest";
import { slideIn } from "../../src/sheets/slides.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";

/** A ceiling of 100 m with thin joists, and so many kinds of loudspeakers between them: sizes by the millimetre. */
const hall = (kinds: number, spacing: string) =>
  job({
    room: { width: "4 m", length: "100 m" },
    framing: {
      ceiling: { at: null, first: "10 mm", spacing, member: { width: "5 mm", depth: "220 mm" } },
      ...{ left: null, right: null, front: null, back: null },
    },
    models: Object.fromEntries(Array.from({ length: kinds }, (_, index) => [`kind ${index}`, sized(index)])),
    speakers: Array.from({ length: 2 * kinds }, (_, index) => ({
      ...{ id: `S${index}`, model: `kind ${index % kinds}` },
      at: { left: `${1 + (index % 2)} m`, front: `${1 + Math.floor(index / 2)} m` },
    })),
  });

const sized = (index: number): Parts => ({
  ...{ opening: { round: `${20 + index} mm` }, flange: { round: `${30 + index} mm` } },
  ...{ depth: "90 mm", clamp_reach: "2 mm" },
});

describe("slides are drawn", () => {
  test("among as many members as a building may have, for ten kinds of loudspeakers", () => {
    const large = hall(10, "100 mm");
    for (const opening of large.openings) expect(slideIn(large, opening)?.piece.length).toBe(1);
  });

  test("and for none of a surface where twenty thousand times something would have to be looked at", () => {
    const slip = hall(10, "45 mm");
    for (const opening of slip.openings) expect(slideIn(slip, opening)).toBeNull();
  });
});
