import { describe, expect, test } from "vitest";
import { findingText } from "../../src/words/finding-text.js";
import { measureIn } from "../../src/words/measure.js";
import { wordsIn } from "../../src/words/words.js";
import type { Parts } from "../rooms/build.js";
import { job } from "../rooms/job.js";
import { TOO_MANY_WAYS } from "../rooms/too-much.js";

const USUAL = { at: null, first: "600 mm", spacing: "600 mm" };

describe("more cables among more than one run looks through", () => {
  const { cabling, findings, openings } = job(TOO_MANY_WAYS);

  test("none is led, rather than some of them by chance", () => {
    expect(cabling?.isTooMuch).toBe(true);
    expect(cabling?.runs).toEqual([]);
    expect(cabling?.holes).toEqual([]);
    expect(cabling?.unreached).toHaveLength(openings.length);
  });

  test("it is said once, by the equipment, and not that everything is shut off", () => {
    const told = findings.filter(({ code }) => code === "cables-not-looked-for");
    expect(told).toMatchObject([{ level: "warning", speaker: null, figures: { cables: openings.length } }]);
    expect(findings.filter(({ code }) => code === "cable-without-way")).toEqual([]);
    const texts = told.map((finding) => findingText(wordsIn(["en"]), measureIn("metric"), finding));
    expect(texts).toEqual([expect.stringContaining("give parts of the room files of their own")]);
  });

  test("under joists at the usual distance a hundred of them are led", () => {
    const framing = { ...(TOO_MANY_WAYS.framing as Parts), ceiling: USUAL };
    const speakers = (TOO_MANY_WAYS.speakers as readonly Parts[]).slice(0, 100);
    const fewer = job({ ...TOO_MANY_WAYS, framing, speakers });
    expect(fewer.cabling?.isTooMuch).toBe(false);
    expect(fewer.cabling?.runs).toHaveLength(100);
  });
});
