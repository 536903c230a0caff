import { describe, expect, it } from "vitest";
import { fullSizeMarks } from "../../src/sheets/full-size-marks.js";
import { openingTemplates } from "../../src/sheets/opening-template.js";
import { surfaceMarks } from "../../src/sheets/surface-marks.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { letteringFaults } from "./no-collisions.js";
import { ASKED, opened, orderFor, wordsIn } from "./orders.js";

const LEAD = { by: "J., framing lead", on: "2026-11-18" };

/** Joists every 400 mm, laid out; the fifth to the seventh and the ninth found since. */
const FOUND: Parts = {
  framing: {
    ceiling: {
      at: null,
      first: "400 mm",
      spacing: "400 mm",
      found: [
        { from: 5, to: 7, shift: "6 mm", ...LEAD },
        { member: 9, at: "3611 mm", by: "installer", on: "2026-11-20" },
      ],
    },
  },
  speakers: [{ id: "TL", model: "tilted", at: { left: "1 m", front: "2.6 m" } }],
};

describe("members found since on the sheets", () => {
  it("stand in a note with who and when, and are marked in the chain, where the others stay assumed", () => {
    const said = wordsIn(surfaceMarks(orderFor(job(FOUND))))
      .join("\n")
      .replaceAll("\u00a0", " ");
    expect(said.replaceAll(/\s+/gu, " ")).toContain(
      "* FOUND there: 5–7 by J., framing lead, 2026-11-18; 9 by installer, 2026-11-20.",
    );
    expect(said).toMatch(/^7\* · 2806 mm/mu);
    expect(said).toMatch(/^9\* · 3611 mm/mu);
    expect(said).toMatch(/^8 · 3200 mm/mu);
  });

  it("are drawn with full lines among broken ones", () => {
    const [sheet] = surfaceMarks(orderFor(job(FOUND)));
    const bands = opened(sheet?.pages[0]?.items ?? []).filter(
      (item) => item.kind === "path" && item.steps.length === 5 && item.stroke !== undefined,
    );
    const full = bands.filter((band) => band.kind === "path" && band.fill !== undefined);
    const broken = bands.filter((band) => band.kind === "path" && band.stroke?.dashMm !== undefined);
    // The sample of each line in the key counts once.
    expect(full).toHaveLength(4 + 1);
    expect(broken).toHaveLength(15 - 4);
  });

  it("say so at full size and on a template that they cross", () => {
    const order = { ...orderFor(job(FOUND), { paper: "roll-36" }), fullSize: true };
    expect(wordsIn(fullSizeMarks(order)).join("\n")).toContain("FOUND by J., framing lead, 2026-11-18");
    const wide = orderFor(job(FOUND), { paper: "arch-d" });
    expect(wordsIn(openingTemplates(wide)).join("\n")).toContain("joist 7, FOUND");
  });

  it("that are not there are dotted and said so, ones besides are told of", () => {
    const [found, laid] = [
      [
        { missing: 3, ...LEAD },
        { extra: "3000 mm", ...LEAD },
      ],
      FOUND.framing as Parts,
    ];
    const one = job({ ...FOUND, framing: { ceiling: { ...(laid.ceiling as Parts), found } } });
    const [sheet] = surfaceMarks(orderFor(one));
    const said = wordsIn(sheet === undefined ? [] : [sheet])
      .join(" ")
      .replaceAll(/\s+/gu, " ");
    expect(said).toContain("3 NOT THERE");
    expect(said).toContain("* FOUND, one more than laid out: 16 by J., framing lead, 2026-11-18.");
    expect(said).toContain("NOT THERE: 3 by J., framing lead, 2026-11-18.");
    expect(said).toMatch(/16\* · 3000 mm/u);
    expect(said).not.toMatch(/ 3 · 1200 mm/u);
  });

  it.each(ASKED)("collide with nothing on $paper in $languages", (asked) => {
    const order = orderFor(job(FOUND), asked);
    const pages = [...surfaceMarks(order), ...openingTemplates(order)].flatMap((sheet) => sheet.pages);
    expect(pages.flatMap((body) => letteringFaults(order, body))).toEqual([]);
  });
});
