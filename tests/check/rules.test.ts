import { describe, expect, test } from "vitest";
import type { Parts } from "../rooms/build.js";
import { codesOf, findingsOf, job, openingNamed } from "../rooms/job.js";

/** A clear spot of the plain room's ceiling, the middle of its second bay. */
const CLEAR = { left: "2 m", front: "900 mm" };
const one = (more: Parts = {}, speaker: Parts = {}): Parts => ({
  ...more,
  speakers: [{ id: "S", at: CLEAR, ...speaker }],
});

test("nothing is found in the plain room", () => {
  expect(codesOf(one())).toEqual([]);
  expect(openingNamed(job(one())).mustNotCut).toBe(false);
});

describe("depth behind the finished face, against cavity and board", () => {
  const deep = (depth: string, ceiling: Parts = {}): Parts =>
    one({ models: { round: { depth } }, framing: { ceiling } });

  test("220 of cavity and 12.5 of board: 232.5 passes and 233 does not", () => {
    expect(codesOf(deep("232.5 mm"))).toEqual([]);
    expect(findingsOf(deep("233 mm"))).toMatchObject([
      {
        code: "too-deep",
        level: "error",
        figures: { neededMm: 233, availableMm: 232.5, memberDepthMm: 220, boardMm: 12.5 },
        fix: null,
      },
    ]);
  });

  test("a measured cavity counts instead of the member, an open one never ends", () => {
    expect(codesOf(deep("233 mm", { cavity: "230 mm" }))).toEqual([]);
    expect(codesOf(deep("160 mm", { cavity: "140 mm" }))).toEqual(["too-deep"]);
    expect(codesOf(deep("900 mm", { cavity: "open" }))).toEqual([]);
  });
});

describe("neighbours", () => {
  const pair = (apartMm: number): Parts => ({
    speakers: [
      { id: "A", at: CLEAR },
      { id: "B", at: { left: `${2000 + apartMm} mm`, front: "900 mm" } },
    ],
  });

  test("openings 200 across that overlap are an error on both", () => {
    expect(findingsOf(pair(180))).toMatchObject([
      {
        code: "openings-too-close",
        level: "error",
        speaker: "A",
        figures: { other: "B", distanceMm: expect.closeTo(-20, 9), edges: "openings" },
      },
      { code: "openings-too-close", level: "error", speaker: "B" },
    ]);
  });

  test("openings that just touch leave no board between them, but neither is cut into: a warning", () => {
    expect(findingsOf(pair(200))).toMatchObject([
      { level: "warning", figures: { distanceMm: expect.closeTo(0, 9) } },
      { level: "warning" },
    ]);
  });

  test("nearer than both clamps' reach and the gap asked for is a warning: 12 + 12 + 6.35 = 30.35", () => {
    expect(findingsOf(pair(225))[0]).toMatchObject({
      level: "warning",
      figures: { distanceMm: expect.closeTo(25, 9), wantedMm: expect.closeTo(30.35, 9), edges: "openings" },
    });
    expect(codesOf(pair(230.35))).toEqual([]);
  });

  test("flanges that overlap where the openings do not are a warning", () => {
    const wide = { models: { round: { flange: { round: "260 mm" } } } };
    expect(findingsOf({ ...pair(250), ...wide })[0]).toMatchObject({
      level: "warning",
      figures: { distanceMm: expect.closeTo(-10, 9), wantedMm: 0, edges: "flanges" },
    });
  });

  /** Openings of 200 in a row at `apartMm`, S0 first. */
  const inRow = (count: number, apartMm: number): Parts => ({
    speakers: Array.from({ length: count }, (_, index) => ({
      id: `S${index}`,
      at: { left: `${1000 + index * apartMm} mm`, front: "900 mm" },
    })),
  });
  const ofFirst = (parts: Parts) => findingsOf(parts).filter(({ speaker }) => speaker === "S0");
  const others = (found: ReturnType<typeof findingsOf>) =>
    found.flatMap((one) =>
      one.code === "openings-too-close" && "other" in one.figures ? [one.figures.other] : [],
    );

  test("eight too near are told one by one", () => {
    const found = ofFirst(inRow(9, 20));
    expect(others(found)).toEqual(["S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8"]);
    expect(found).toHaveLength(8);
  });

  test("of more the eight nearest, and how many more and how many of these overlap: 200 / 20 leaves the tenth clear", () => {
    // S10 touches, 200 off; S11 is 220 off, less than 230.35; S12 is not too near.
    const found = ofFirst(inRow(13, 20));
    expect(others(found)).toEqual(["S1", "S2", "S3", "S4", "S5", "S6", "S7", "S8"]);
    expect(found[8]).toMatchObject({
      code: "openings-too-close",
      level: "error",
      figures: { others: 3, errors: 1 },
      fix: null,
    });
    expect(found).toHaveLength(9);
  });

  test("where none of the others overlap, that is a warning: nine round one", () => {
    const round = (index: number) => {
      const turn = (index * 2 * Math.PI) / 9;
      // The first eight overlap it, the ninth is 10 off.
      const awayMm = index < 8 ? 190 : 210;
      return {
        left: `${2000 + awayMm * Math.cos(turn)} mm`,
        front: `${900 + awayMm * Math.sin(turn)} mm`,
      };
    };
    const speakers = [
      { id: "S0", at: CLEAR },
      ...Array.from({ length: 9 }, (_, index) => ({ id: `R${index}`, at: round(index) })),
    ];
    // An acceptance of what is too near speaks of these too.
    const accept = [{ code: "openings-too-close", speaker: "S0", why: "shown to the owner" }];
    const found = ofFirst({ speakers, accept }).filter(({ code }) => code === "openings-too-close");
    expect(others(found)).toHaveLength(8);
    expect(found[8]).toMatchObject({
      level: "warning",
      figures: { others: 1, errors: 0 },
      accepted: "shown to the owner",
    });
  });
});

test("board outside the clamps' range is an error, at either end passes", () => {
  const range = (least: string, most: string) => one({ models: { round: { board_range: [least, most] } } });
  expect(codesOf(range("12.5 mm", "30 mm"))).toEqual([]);
  expect(codesOf(range("6 mm", "12.5 mm"))).toEqual([]);
  expect(findingsOf(range("13 mm", "30 mm"))).toMatchObject([
    {
      code: "board-out-of-clamp-range",
      level: "error",
      figures: { boardMm: 12.5, leastMm: 13, mostMm: 30 },
    },
  ]);
  expect(codesOf(range("6 mm", "12 mm"))).toEqual(["board-out-of-clamp-range"]);
});

describe("aim", () => {
  // The ear is 1387.5 under the ceiling; 1 degree off the normal is 24.2.
  test("square over the target a tilted one has no aim: a note", () => {
    const over = (model: string) => one({}, { model, at: { left: "2 m", front: "3.3 m" } });
    const beneath = { seats: [{ name: "below", at: { left: "2 m", front: "3.3 m" }, ear: "1.2 m" }] };
    expect(findingsOf({ ...over("tilted"), ...beneath })).toMatchObject([
      { code: "aim-undefined", level: "note", figures: { target: "below" } },
    ]);
    expect(codesOf({ ...over("round"), ...beneath })).toEqual([]);
  });

  test("off axis by more than half the coverage is a warning, at the limit passes", () => {
    // Straight, 1387.5 to the side of the ear and as far below: 45 degrees.
    const at = { left: "2 m", front: `${3000 + 1387.5} mm` };
    const clearBays = { framing: { ceiling: { at: ["300 mm", "6 m"] } } };
    const covering = (coverage: string): Parts => ({
      ...clearBays,
      models: { round: { coverage } },
      speakers: [{ id: "S", at }],
    });
    expect(codesOf(covering("90 deg"))).toEqual([]);
    expect(findingsOf(covering("89 deg"))).toMatchObject([
      {
        code: "aim-past-tilt",
        level: "warning",
        figures: { target: "middle", offAxisDeg: expect.closeTo(45, 9), limitDeg: 44.5 },
      },
    ]);
  });

  test("aimed at nothing, nothing is said", () => {
    const far = { left: "500 mm", front: "900 mm" };
    const narrow: Parts = { models: { round: { coverage: "40 deg" } } };
    expect(codesOf(one(narrow, { at: far }))).toEqual(["aim-past-tilt"]);
    expect(codesOf(one(narrow, { at: far, aim: "none" }))).toEqual([]);
  });
});

describe("rated surfaces", () => {
  test("without an enclosure it is an error on the surface, and none of its openings is cut", () => {
    const rated = job({ ...one(), surfaces: { ceiling: { rated: true } } });
    expect(rated.findings).toMatchObject([
      {
        code: "rated-assembly",
        level: "error",
        surface: "ceiling",
        speaker: null,
        path: ["surfaces", "ceiling"],
      },
    ]);
    expect(openingNamed(rated).mustNotCut).toBe(true);
  });

  test("with one it is a note", () => {
    const boxed = job({ ...one(), surfaces: { ceiling: { rated: true, enclosure: true } } });
    expect(boxed.findings).toMatchObject([{ code: "rated-assembly", level: "note" }]);
    expect(openingNamed(boxed).mustNotCut).toBe(false);
  });

  test("a rated wall does not keep the ceiling from being cut", () => {
    const both = job({
      surfaces: { front: { rated: true } },
      speakers: [
        { id: "C", at: CLEAR },
        { id: "W", on: "front", at: { left: "900 mm", up: "1 m" } },
      ],
    });
    expect(openingNamed(both, "C").mustNotCut).toBe(false);
    expect(openingNamed(both, "W").mustNotCut).toBe(true);
  });
});

test("from 5 kg on, our own choice, what hangs overhead wants a second support", () => {
  const heavy = (weight: string, more: Parts = {}, speaker: Parts = {}): Parts =>
    one({ models: { round: { weight } }, ...more }, speaker);
  expect(codesOf(heavy("4.9 kg"))).toEqual([]);
  expect(findingsOf(heavy("5 kg"))).toMatchObject([
    { code: "needs-second-support", level: "warning", figures: { weightKg: 5 } },
  ]);
  expect(codesOf(heavy("9 kg", { surfaces: { ceiling: { second_support: true } } }))).toEqual([]);
  expect(codesOf(heavy("9 kg", {}, { on: "front", at: { left: "900 mm", up: "1 m" } }))).toEqual([]);
});

describe("a position that is asked for", () => {
  const best = (speaker: Parts, more: Parts = {}) => job(one(more, { at: "best", ...speaker }));

  test("is not there where no direction says where to look: low-frequency effects", () => {
    const asked = best({ channel: "LFE1" });
    expect(asked.findings).toMatchObject([
      {
        code: "not-placed-yet",
        level: "warning",
        speaker: "S",
        path: ["speakers", 0, "at"],
        figures: { because: "no-direction" },
      },
    ]);
    expect(asked.openings).toEqual([]);
  });

  test("is not there where nobody knows the framing, and where nothing is clear", () => {
    const unknown = best({ channel: "U+045" }, { framing: { ceiling: null } });
    expect(unknown.findings).toMatchObject([
      { code: "framing-unknown", level: "error", figures: { surface: "ceiling", beyondMeasured: false } },
    ]);
    // Between 45 mm joists every 600 mm there are 555 mm, and 600 are asked for.
    const narrow = best(
      { channel: "U+045" },
      { models: { round: { opening: { round: "600 mm" }, flange: { round: "620 mm" } } } },
    );
    expect(narrow.findings).toMatchObject([
      {
        code: "not-placed-yet",
        level: "error",
        figures: { because: "nothing-clear", surface: "ceiling", isHeld: false },
      },
    ]);
    const held = best({ channel: "U+045", hold: { front: "600 mm" } });
    expect(held.findings).toMatchObject([
      { code: "not-placed-yet", level: "error", figures: { because: "nothing-clear", isHeld: true } },
    ]);
  });

  test("that is found is cut like any other, with a note that it stands in no file", () => {
    const found = best({ channel: "U+045" });
    expect(found.findings).toMatchObject([
      { code: "computed-not-frozen", level: "note", speaker: "S", path: ["speakers", 0, "at"] },
    ]);
    expect(found.openings).toMatchObject([{ placed: "best", mustNotCut: false }]);
  });
});

describe("accepted", () => {
  const near: Parts = { at: { left: "2 m", front: "738 mm" } };
  const cut: Parts = { at: { left: "2 m", front: "700 mm" } };
  const accepting = (speaker: Parts, accept: Parts): Parts =>
    one({ accept: [{ why: "seen on site", ...accept }] }, speaker);

  test("a warning keeps its level and gets the reason", () => {
    expect(findingsOf(accepting(near, { code: "opening-near-member", speaker: "S" }))).toMatchObject([
      { code: "opening-near-member", level: "warning", accepted: "seen on site" },
    ]);
  });

  test("without a loudspeaker it is for all", () => {
    expect(findingsOf(accepting(near, { code: "opening-near-member" }))[0]?.accepted).toBe("seen on site");
  });

  test("an error is never accepted, and that is said", () => {
    expect(findingsOf(accepting(cut, { code: "opening-cuts-member", speaker: "S" }))).toMatchObject([
      { code: "opening-cuts-member", level: "error", accepted: null },
      {
        code: "accept-matches-nothing",
        level: "note",
        figures: { accepted: "opening-cuts-member", speaker: "S", because: "not-a-warning" },
        path: ["accept", 0],
      },
    ]);
    expect(openingNamed(job(accepting(cut, { code: "opening-cuts-member" }))).mustNotCut).toBe(true);
  });

  test("what accepts nothing is a note", () => {
    expect(findingsOf(accepting({}, { code: "opening-near-member" }))).toMatchObject([
      { code: "accept-matches-nothing", level: "note", figures: { because: "nothing-found" } },
    ]);
  });
});
