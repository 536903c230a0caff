import { describe, expect, test } from "vitest";
import { cablingOf } from "../../src/cable/cabling.js";
import { mountedIn } from "../../src/listen/mounted.js";
import { surfaceNamed } from "../../src/room/room.js";
import { templateDrawing } from "../../src/sheets/template/template-drawing.js";
import { type Parts, room } from "../rooms/build.js";
import { codesOf, job, openingNamed } from "../rooms/job.js";

/*
 * I-joists and trusses by flange and web. The flange is the widest part and lies at the board: what clears it clears
 * the web over it, whatever the depth of the loudspeaker. The plain room has joists every 600 mm from the front.
 */

const framed = (member: Parts | string): Parts => ({ framing: { ceiling: { member } } });
const I_JOIST: Parts = { width: null, flange: "58 mm", web: "10 mm", depth: "300 mm" };
const TRUSS: Parts = { width: null, flange: "89 mm", web: "open", depth: "360 mm" };
const at = (front: string): Parts => ({ speakers: [{ id: "S", at: { left: "1 m", front } }] });

describe("openings keep from the flange", () => {
  // 100 of the opening and 29 of the flange: at 600 + 130 it is 1 away, at 600 + 128 it is cut by 1.
  test.each([
    ["728 mm", "opening-cuts-member"],
    ["730 mm", "clamps-blocked"],
    // 12 of the clamps and 6.35 beyond: 147.35.
    ["747 mm", "opening-near-member"],
  ])("at %s: %s", (front, code) => {
    expect(codesOf({ ...framed(I_JOIST), ...at(front) })).toEqual([code]);
  });

  test("and from nothing more, however deep the loudspeaker reaches past it", () => {
    const deep: Parts = { models: { round: { depth: "310 mm" } } };
    expect(codesOf({ ...framed(I_JOIST), ...at("748 mm"), ...deep })).toEqual([]);
    // As deep as the whole joist and the board, 312.5, and no more.
    const deeper: Parts = { models: { round: { depth: "313 mm" } } };
    expect(codesOf({ ...framed(I_JOIST), ...at("748 mm"), ...deeper })).toEqual(["too-deep"]);
  });

  test("a web makes no difference to any gap", () => {
    const gap = (member: Parts) => job({ ...framed(member), ...at("800 mm") }).openings[0]?.gap?.mm;
    expect(gap(I_JOIST)).toBeCloseTo(71, 9);
    expect(gap({ width: "58 mm", depth: "300 mm" })).toBeCloseTo(71, 9);
  });
});

describe("cable", () => {
  const wired = (member: Parts): Parts => ({
    ...framed(member),
    speakers: [{ id: "S", at: { left: "2 m", front: "900 mm" } }],
    equipment: { at: { left: "2 m", back: "0" }, up: "500 mm" },
  });
  const holes = (member: Parts) => {
    const one = room(wired(member));
    return cablingOf(one, mountedIn(one))?.holes.filter(({ surface }) => surface === "ceiling") ?? [];
  };

  test("bores an I-joist only as its maker says", () => {
    // From the back wall to 900 mm from the front: joists at 1200 to 5400 mm, and the one at the wall.
    const bored = holes(I_JOIST);
    expect(bored.map(({ member }) => member.number)).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(new Set(bored.map(({ verdict }) => verdict.kind))).toEqual(new Set(["by-maker"]));
    expect(codesOf(wired(I_JOIST))).toContain("engineered-member-bored");
  });

  test("passes between the webs of a truss without a hole", () => {
    expect(holes(TRUSS)).toEqual([]);
    expect(codesOf(wired(TRUSS))).not.toContain("engineered-member-bored");
  });
});

test("members with a flange are engineered unless the file says otherwise", () => {
  const engineered = (more: Parts) => {
    const { framing } = surfaceNamed(room({ framing: { ceiling: { member: I_JOIST, ...more } } }), "ceiling");
    return framing.kind === "known" && framing.engineered;
  };
  expect(engineered({})).toBe(true);
  expect(engineered({ engineered: false })).toBe(false);
});

test("a template shows the web behind the flange, as far apart as it is thick", () => {
  const items = templateDrawing(openingNamed(job({ ...framed(I_JOIST), ...at("748 mm") })));
  const across = items
    .flatMap((item) => (item.kind === "group" && item.layer === "framing" ? item.items : []))
    .flatMap((item) => (item.kind === "line" ? [item] : []))
    .filter(({ from, to }) => Math.abs(from.y - to.y) < 1e-9 && Math.abs(to.x - from.x) > 1000)
    .map(({ from }) => from.y);
  const apart = across.flatMap((y, index) => across.slice(index + 1).map((other) => other - y));
  for (const wanted of [10, 58]) {
    expect(apart.some((mm) => Math.abs(Math.abs(mm) - wanted) < 1e-6)).toBe(true);
  }
});
