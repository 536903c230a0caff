import { describe, expect, test } from "vitest";
import type { Framing, Member } from "../../src/room/room.js";
import { surfaceNamed } from "../../src/room/room.js";
import { type Parts, room } from "../rooms/build.js";

type Known = Extract<Framing, { kind: "known" }>;

/** The framing of one surface of a plain room, 4000 x 6000 x 2600 on framing faces, with this entry alone. */
function framingOf(surface: string, entry: Parts, said: Parts = {}): Known {
  const plain = { ceiling: null, left: null, right: null, front: null, back: null };
  // Two steps, since a map given for a surface goes into the plain one.
  const text = room({ ...said, framing: { ...plain, [surface]: fresh(entry) } });
  const { framing } = surfaceNamed(text, surface);
  if (framing.kind === "unknown") throw new Error(`${surface} is unknown`);
  return framing;
}

/** The plain room's framing is given one by one; an entry that is laid out takes that away. */
const fresh = (entry: Parts): Parts => ("first" in entry ? { at: null, ...entry } : entry);

const repeating = ({ members }: Known): readonly Member[] =>
  members.filter(({ kind }) => kind === "joist" || kind === "stud");

const numbered = (framing: Known, axis: "u" | "v"): readonly (readonly [number, number])[] =>
  repeating(framing).map(({ number, from }) => [number, from[axis]]);

describe("members are numbered from the wall that they are measured from", () => {
  const at = ["500 mm", "1100 mm", "1700 mm"];

  test("joists across the room, from the front and from the back", () => {
    const front = framingOf("ceiling", { run: "left-right", from: "front", at });
    expect(front.run).toBe("u");
    // v is counted from the back wall: 6000 less the tape from the front.
    expect(numbered(front, "v")).toEqual([
      [1, 5500],
      [2, 4900],
      [3, 4300],
    ]);
    expect(repeating(front).map(({ from, to }) => [from.u, to.u])).toEqual([
      [0, 4000],
      [0, 4000],
      [0, 4000],
    ]);
    const back = framingOf("ceiling", { run: "left-right", from: "back", at });
    expect(numbered(back, "v")).toEqual([
      [1, 500],
      [2, 1100],
      [3, 1700],
    ]);
  });

  test("joists along the room, from the left and from the right", () => {
    const left = framingOf("ceiling", { run: "front-back", from: "left", at });
    expect(left.run).toBe("v");
    // u is counted from the right wall for somebody who looks up.
    expect(numbered(left, "u")).toEqual([
      [1, 3500],
      [2, 2900],
      [3, 2300],
    ]);
    const right = framingOf("ceiling", { run: "front-back", from: "right", at });
    expect(numbered(right, "u")).toEqual([
      [1, 500],
      [2, 1100],
      [3, 1700],
    ]);
  });

  test("studs of each wall, from both of its ends", () => {
    // As one faces it: the left end of the front wall is at the left wall, that of the back wall at the right wall,
    // that of the left wall at the back wall, that of the right wall at the front wall.
    const leftEnds = { front: "left", back: "right", left: "back", right: "front" };
    const rightEnds = { front: "right", back: "left", left: "front", right: "back" };
    for (const [wall, from] of Object.entries(leftEnds)) {
      expect(numbered(framingOf(wall, { from, at }), "u"), wall).toEqual([
        [1, 500],
        [2, 1100],
        [3, 1700],
      ]);
    }
    for (const [wall, from] of Object.entries(rightEnds)) {
      const length = wall === "front" || wall === "back" ? 4000 : 6000;
      expect(numbered(framingOf(wall, { from, at }), "u"), wall).toEqual([
        [1, length - 500],
        [2, length - 1100],
        [3, length - 1700],
      ]);
    }
  });
});

describe("laid out from a first member and a spacing", () => {
  const laid = { run: "left-right", from: "back", first: "400 mm", spacing: "600 mm" };

  test("one after the other, to the end of the surface", () => {
    const framing = framingOf("ceiling", laid);
    const places = numbered(framing, "v").map(([, v]) => v);
    expect(places).toEqual([400, 1000, 1600, 2200, 2800, 3400, 4000, 4600, 5200, 5800]);
    expect(framing.layout).toEqual({
      from: "back",
      zero: { at: { u: 0, v: 0 }, away: { u: 0, v: 1 } },
      spacingMm: 600,
      basis: "assumed",
      markedToNearEdge: false,
    });
    expect(framing.unknown).toEqual([]);
    expect(new Set(framing.members.map(({ basis }) => basis))).toEqual(new Set(["assumed"]));
  });

  test("a member counts while any of it is inside", () => {
    // 45 mm wide: at 6020 its near edge is 2.5 mm inside, at 6023 it is 0.5 mm outside.
    const last = (first: string) => numbered(framingOf("ceiling", { ...laid, first }), "v").at(-1)?.[1];
    expect(last("20 mm")).toBe(6020);
    expect(last("23 mm")).toBe(5423);
  });

  test("a mark struck to the near edge is half a member nearer to its wall", () => {
    // room-file.md's own figure: 15 1/4 in to the edge of a 1 1/2 in joist is 16 in to its centre.
    const framing = framingOf("ceiling", {
      run: "left-right",
      from: "front",
      member: "2x10",
      first: `15 1/4"`,
      spacing: `16"`,
      mark: "near-edge",
    });
    const [first, second] = numbered(framing, "v");
    expect(6000 - (first?.[1] ?? 0)).toBeCloseTo(16 * 25.4, 9);
    expect(6000 - (second?.[1] ?? 0)).toBeCloseTo(32 * 25.4, 9);
    expect(framing.layout.markedToNearEdge).toBe(true);
  });

  test("as found, to the near edge", () => {
    const framing = framingOf("ceiling", {
      run: "left-right",
      from: "back",
      at: ["500 mm"],
      mark: "near-edge",
    });
    expect(numbered(framing, "v")).toEqual([[1, 522.5]]);
  });
});

describe("what nobody has measured is unknown", () => {
  test("past the last measured member's far edge, over the whole of the other side", () => {
    const front = framingOf("ceiling", { run: "left-right", from: "front", at: ["500 mm", "1100 mm"] });
    // 1100 + 22.5 from the front wall, so v from 0 to 6000 - 1122.5.
    expect(front.unknown).toEqual([
      [
        { u: 0, v: 0 },
        { u: 4000, v: 0 },
        { u: 4000, v: 4877.5 },
        { u: 0, v: 4877.5 },
      ],
    ]);
    const wall = framingOf("back", { from: "left", at: ["500 mm"] });
    // The back wall's left end, as one faces it, is at the right wall.
    expect(wall.unknown).toEqual([
      [
        { u: 0, v: 0 },
        { u: 3477.5, v: 0 },
        { u: 3477.5, v: 2600 },
        { u: 0, v: 2600 },
      ],
    ]);
  });

  test("nothing where the last one reaches the wall", () => {
    expect(framingOf("back", { from: "left", at: ["500 mm", "3990 mm"] }).unknown).toEqual([]);
  });

  test("a surface without an entry, and a file without framing", () => {
    expect(surfaceNamed(room({ framing: { left: null } }), "left").framing).toEqual({ kind: "unknown" });
    const kinds = room({ framing: null }).surfaces.map(({ framing }) => framing.kind);
    expect(kinds).toEqual(["unknown", "unknown", "unknown", "unknown", "unknown"]);
  });
});

describe("what does not repeat", () => {
  const entry = { from: "left", at: ["500 mm"] };
  const inShort = ({ kind, number, from, to, widthMm, basis }: Member) => ({
    kind,
    number,
    line: [from.u, from.v, to.u, to.v],
    widthMm,
    basis,
  });

  test("a wall has one plate below, two above and a stud at each end, assumed, where nothing is said", () => {
    const { members } = framingOf("front", entry);
    // decisions.md: one below, two above, 1 1/2 in (38.1 mm) each; the stud is 45 mm wide.
    const stands = { widthMm: 45, basis: "assumed" };
    const lies = { widthMm: 38.1, basis: "assumed" };
    expect(members.map(inShort)).toEqual([
      { kind: "stud", number: 1, line: [500, 38.1, 500, 2600 - 76.2], widthMm: 45, basis: "measured" },
      { kind: "bottom-plate", number: 1, line: [0, 19.05, 4000, 19.05], ...lies },
      { kind: "top-plate", number: 1, line: [0, 2600 - 19.05, 4000, 2600 - 19.05], ...lies },
      {
        kind: "top-plate",
        number: 2,
        line: [0, 2600 - 57.150000000000006, 4000, 2600 - 57.150000000000006],
        ...lies,
      },
      { kind: "end-stud", number: 1, line: [22.5, 38.1, 22.5, 2600 - 76.2], ...stands },
      { kind: "end-stud", number: 2, line: [3977.5, 38.1, 3977.5, 2600 - 76.2], ...stands },
    ]);
    for (const { depthMm } of members) expect(depthMm).toBe(120);
  });

  test("as the file says, and then it counts as measured", () => {
    const plates = { below: 2, above: 1, thickness: "45 mm" };
    const { members } = framingOf("front", { ...entry, plates, end_studs: true });
    const others = members.filter(({ kind }) => kind !== "stud");
    expect(others.map(({ kind }) => kind)).toEqual([
      "bottom-plate",
      "bottom-plate",
      "top-plate",
      "end-stud",
      "end-stud",
    ]);
    expect(new Set(others.map(({ basis }) => basis))).toEqual(new Set(["measured"]));
    expect(others.map(({ from }) => from.v).slice(0, 3)).toEqual([22.5, 67.5, 2577.5]);
    expect(members[0]).toMatchObject({ kind: "stud", from: { v: 90 }, to: { v: 2555 } });
  });

  test("none where the file says none", () => {
    const { members } = framingOf("front", { ...entry, plates: { below: 0, above: 0 }, end_studs: false });
    expect(members.map(inShort)).toEqual([
      { kind: "stud", number: 1, line: [500, 0, 500, 2600], widthMm: 45, basis: "measured" },
    ]);
  });

  test("the first end stud stands at the end that is measured from", () => {
    const ends = framingOf("front", { from: "right", at: ["500 mm"] }).members.filter(
      ({ kind }) => kind === "end-stud",
    );
    expect(ends.map(({ number, from }) => [number, from.u])).toEqual([
      [1, 3977.5],
      [2, 22.5],
    ]);
  });

  test("a ceiling has joists alone", () => {
    const { members } = framingOf("ceiling", { run: "left-right", from: "front", at: ["500 mm"] });
    expect(members.map(({ kind }) => kind)).toEqual(["joist"]);
  });
});

describe("what a member measures, and what is behind the board", () => {
  const entry = { run: "left-right", from: "front", at: ["500 mm"] };

  test("lumber by its nominal name", () => {
    // American Softwood Lumber Standard PS 20, dressed dry: 2x8 is 1 1/2 x 7 1/4 in.
    for (const member of ["2x8", "2X8", "2 x 8", "2×8"]) {
      const [joist] = framingOf("ceiling", { ...entry, member }).members;
      expect(joist).toMatchObject({ widthMm: 38.1, depthMm: 184.15 });
    }
  });

  test("the cavity is the member's depth, or as found, or without a bottom", () => {
    const cavity = (said: Parts): number => framingOf("ceiling", { ...entry, ...said }).cavityMm;
    expect(cavity({})).toBe(220);
    expect(cavity({ cavity: "160 mm" })).toBe(160);
    expect(cavity({ cavity: "open" })).toBe(Number.POSITIVE_INFINITY);
  });
});
