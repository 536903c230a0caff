import { describe, expect, test } from "vitest";
import { type Framing, type Member, surfaceNamed } from "../../src/room/room.js";
import { type Parts, room, type Value } from "../rooms/build.js";
import { codesOf, job } from "../rooms/job.js";

type Known = Extract<Framing, { kind: "known" }>;

const LEAD = { by: "framing lead", on: "2026-11-18" };
const LAID: Parts = { at: null, first: "400 mm", spacing: "400 mm" };

/** Joists across a ceiling 6000 mm long, from the front wall: 15 of them where they are laid out every 400 mm. */
function joists(found: Value, layout: Parts = LAID, said: Parts = {}): Known {
  const { framing } = surfaceNamed(room({ ...said, framing: { ceiling: { ...layout, found } } }), "ceiling");
  if (framing.kind === "unknown") throw new Error("unknown framing");
  return framing;
}

/** Where each is from the front wall: v counts from the back one. */
const placesOf = ({ members }: Known): readonly number[] => members.map(({ from }) => 6000 - from.v);

const shortly = ({ number, basis, found }: Member) => [number, basis, found?.by ?? null];

describe("members as found since", () => {
  test("one by its own tape: there, measured, with who and when; the others as they were", () => {
    const framing = joists([{ member: 7, at: "2815 mm", ...LEAD }]);
    expect(placesOf(framing).slice(5, 8)).toEqual([2400, 2815, 3200]);
    expect(framing.members.slice(5, 8).map(shortly)).toEqual([
      [6, "assumed", null],
      [7, "measured", "framing lead"],
      [8, "assumed", null],
    ]);
    expect(framing.members[6]?.found).toEqual(LEAD);
    expect(framing.layout.basis).toBe("assumed");
  });

  test("a stretch, moved alike: further from the wall that they count from, nearer with a minus", () => {
    const further = joists([{ from: 5, to: 7, shift: "6 mm", ...LEAD }]);
    expect(placesOf(further).slice(3, 8)).toEqual([1600, 2006, 2406, 2806, 3200]);
    const nearer = joists([{ from: 7, to: 5, shift: "-6 mm", ...LEAD }]);
    expect(placesOf(nearer).slice(3, 8)).toEqual([1600, 1994, 2394, 2794, 3200]);
  });

  test("from the back wall, further is toward the front", () => {
    const framing = joists([{ from: 1, to: 1, shift: "10 mm", ...LEAD }], { ...LAID, from: "back" });
    expect(framing.members[0]?.from.v).toBe(410);
  });

  test("every entry counts from the layout as given, and the last word on a member holds", () => {
    const stretch = { from: 5, to: 7, shift: "6 mm", ...LEAD };
    const one = { member: 6, at: "2399 mm", by: "installer", on: "2026-11-19" };
    expect(placesOf(joists([stretch, one])).slice(4, 7)).toEqual([2006, 2399, 2806]);
    expect(placesOf(joists([one, stretch])).slice(4, 7)).toEqual([2006, 2406, 2806]);
    const twice = joists([stretch, { ...stretch, shift: "2 mm" }]);
    expect(placesOf(twice).slice(4, 7)).toEqual([2002, 2402, 2802]);
  });

  test("is measured as the layout is: to near edges, and from finished faces", () => {
    const edges = joists([{ member: 2, at: "800 mm", ...LEAD }], { ...LAID, mark: "near-edge" });
    expect(placesOf(edges)[1]).toBe(800 + 45 / 2);
    const finished = joists([{ member: 2, at: "800 mm", ...LEAD }], LAID, {
      room: { measured_to: "finish" },
    });
    // Framing faces stand 6000 + 2 x 12.5 mm apart.
    expect(finished.members[1]?.from.v).toBe(6025 - (800 + 12.5));
  });

  test("a shift of nothing confirms: with all members found nothing is assumed any more", () => {
    const framing = joists([{ from: 1, to: 15, shift: "0", ...LEAD }]);
    expect(framing.layout.basis).toBe("measured");
    expect(framing.unknown).toEqual([]);
    expect(placesOf(framing)).toEqual(placesOf(joists([{ member: 1, at: "400 mm", ...LEAD }])));
  });

  test("the last of a measured list found elsewhere: unknown begins behind where it is now", () => {
    const framing = joists([{ member: 3, at: "1250 mm", ...LEAD }], { at: ["400 mm", "800 mm", "1200 mm"] });
    const [stretch] = framing.unknown;
    expect(Math.max(...(stretch ?? []).map(({ v }) => v))).toBe(6000 - (1250 + 45 / 2));
  });
});

describe("everything is checked again", () => {
  const speakers = [{ id: "S1", at: { left: "2 m", front: "2.6 m" } }];
  const framed = (found: Value): Parts => ({ speakers, framing: { ceiling: { ...LAID, found } } });

  test("a joist found under an opening that was clear stops it", () => {
    expect(codesOf({ speakers, framing: { ceiling: LAID } })).toEqual([]);
    expect(codesOf(framed([{ member: 6, at: "2500 mm", ...LEAD }]))).toContain("opening-cuts-member");
  });

  test("the note on assumed framing goes when every joist was found, and still counts from the layout before", () => {
    const assumed = (found: Value) =>
      job(framed(found)).findings.filter(({ code }) => code === "framing-assumed");
    expect(assumed([{ from: 1, to: 15, shift: "0", ...LEAD }])).toEqual([]);
    expect(assumed([{ member: 1, at: "390 mm", ...LEAD }])).toMatchObject([
      { figures: { firstMm: 400, spacingMm: 400 } },
    ]);
  });
});

describe("what is not there, and what is there besides", () => {
  test("a missing one is gone, and the others keep their numbers", () => {
    const framing = joists([{ missing: 7, ...LEAD }]);
    expect(framing.members.map(({ number }) => number)).toEqual([
      1, 2, 3, 4, 5, 6, 8, 9, 10, 11, 12, 13, 14, 15,
    ]);
    expect(framing.missing.map((one) => [one.number, 6000 - one.from.v, one.found])).toEqual([
      [7, 2800, LEAD],
    ]);
    // 2400 to 3200 is one bay now.
    const { openings } = job({
      framing: { ceiling: { ...LAID, found: [{ missing: 7, ...LEAD }] } },
      speakers: [{ id: "S1", at: { left: "1 m", front: "2800 mm" } }],
    });
    expect(openings[0]?.bay).toEqual({ number: 7, from: "front" });
    expect(openings[0]?.gap?.mm).toBeCloseTo(400 - 22.5 - 100, 9);
  });

  test("one that the layout does not have stands where it was found, and takes the next number", () => {
    const framing = joists([
      { extra: "2600 mm", ...LEAD },
      { member: 2, at: "810 mm", by: "installer", on: "2026-11-19" },
      { extra: "1000 mm", by: "installer", on: "2026-11-19" },
    ]);
    expect(placesOf(framing).slice(0, 4)).toEqual([400, 810, 1000, 1200]);
    expect(framing.extra).toEqual([16, 17]);
    const [first] = framing.members.filter(({ number }) => number === 16);
    expect(6000 - (first?.from.v ?? 0)).toBe(2600);
    expect(first).toMatchObject({ basis: "measured", found: LEAD });
    expect(
      codesOf({
        framing: { ceiling: { ...LAID, found: [{ extra: "2600 mm", ...LEAD }] } },
        speakers: [{ id: "S1", at: { left: "1 m", front: "2600 mm" } }],
      }),
    ).toEqual(["opening-cuts-member"]);
  });

  test("past the last of a list nobody has looked, even where one is missing or one more was found", () => {
    const listed: Parts = { at: ["600 mm", "1200 mm", "1800 mm"] };
    const from = ({ unknown }: Known) => Math.min(...unknown.flat().map(({ v }) => 6000 - v));
    expect(from(joists(null, listed))).toBe(1822.5);
    expect(from(joists([{ missing: 3, ...LEAD }], listed))).toBe(1822.5);
    expect(from(joists([{ extra: "2500 mm", ...LEAD }], listed))).toBe(1822.5);
  });

  test("the last word on a member holds here too", () => {
    const there = { member: 7, at: "2815 mm", ...LEAD };
    const gone = { missing: 7, ...LEAD };
    expect(joists([there, gone]).missing).toHaveLength(1);
    expect(joists([gone, there]).missing).toEqual([]);
  });
});
