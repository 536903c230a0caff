import { describe, expect, test } from "vitest";
import { job } from "../rooms/job.js";
import { TOO_MANY_TO_MOVE } from "../rooms/too-much.js";

describe("more openings to move than one run looks for places of", () => {
  const { findings, openings } = job(TOO_MANY_TO_MOVE);
  const meeting = findings.filter(({ code }) => code === "opening-meets-obstruction");
  const unmoved = new Set(meeting.filter(({ fix }) => fix === null).map(({ speaker }) => speaker));

  test("each is told that it meets what it meets", () => {
    expect(new Set(meeting.map(({ speaker }) => speaker)).size).toBe(openings.length);
  });

  test("the first are told where to move, and of how many others nothing was looked for is said once", () => {
    expect(unmoved.size).toBeGreaterThan(0);
    expect(unmoved.size).toBeLessThan(openings.length);
    const told = findings.filter(({ code }) => code === "centres-not-looked-for");
    expect(told).toMatchObject([{ level: "note", speaker: null, figures: { openings: unmoved.size } }]);
  });

  test("a few alone are all told, and nothing is said of others", () => {
    const speakers = TOO_MANY_TO_MOVE.speakers;
    if (!Array.isArray(speakers)) throw new Error("no list");
    const few = job({ ...TOO_MANY_TO_MOVE, speakers: speakers.slice(0, FEW) }).findings;
    expect(few.filter(({ code }) => code === "centres-not-looked-for")).toEqual([]);
    expect(few.filter(({ code, fix }) => code === "opening-meets-obstruction" && fix === null)).toEqual([]);
  });
});

const FEW = 5;
