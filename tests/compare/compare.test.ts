import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Comparison, compareJobs, isNothing } from "../../src/compare.js";
import { comparisonJson } from "../../src/compare-json.js";
import type { Parts, Value } from "../rooms/build.js";
import { job } from "../rooms/job.js";

/*
 * What a person did to the room file is what must be told, and nothing else. Expected figures are those typed.
 */

const SPEAKERS: readonly Parts[] = [
  { id: "TL", model: "tilted", at: { left: "1 m", front: "2.1 m" } },
  { id: "TR", model: "tilted", at: { right: "1 m", front: "2.1 m" } },
  { id: "WL", model: "upright", on: "left", at: { front: "2.1 m", up: "1.2 m" } },
];

const compared = (before: Parts, after: Parts): Comparison =>
  compareJobs(job({ speakers: SPEAKERS, ...before }), job({ speakers: SPEAKERS, ...after }));

/** The speakers with some keys of one of them otherwise. */
const otherwise = (id: string, keys: Parts): Value =>
  SPEAKERS.map((speaker) => (speaker.id === id ? { ...speaker, ...keys } : speaker));

const openingsOf = (after: Parts) => compared({}, after).openings;

describe("nothing", () => {
  it("is otherwise between a room and itself", () => {
    expect(isNothing(compared({}, {}))).toBe(true);
  });

  it("is otherwise where lines of the file trade places", () => {
    const turned = compared({}, { speakers: [...SPEAKERS].reverse() });
    expect(isNothing(turned)).toBe(true);
  });
});

describe("openings", () => {
  it("that moved are told by the tape that was pulled, and by no other", () => {
    const after = { speakers: otherwise("TL", { at: { left: "1 m", front: "2150 mm" } }) };
    expect(openingsOf(after).filter(({ what }) => what === "tape")).toEqual([
      { id: "TL", what: "tape", from: "front", beforeMm: 2100, afterMm: 2150 },
    ]);
  });

  it("are where they were when another wall moves away from them", () => {
    const wider = compared({}, { room: { width: "4.5 m", length: "6 m", height: "2.6 m" } });
    expect(wider.openings.filter(({ what }) => what === "tape")).toEqual([]);
    expect(wider.surfaces.filter(({ what }) => what === "size").map(({ surface }) => surface)).toEqual([
      "ceiling",
      "front",
      "back",
    ]);
    expect(wider.surfaces[0]).toEqual({
      surface: "ceiling",
      what: "size",
      before: { widthMm: 4000, heightMm: 6000 },
      after: { widthMm: 4500, heightMm: 6000 },
    });
  });

  it("measured from another wall are compared as that tape would have read", () => {
    const same = { speakers: otherwise("TL", { at: { right: "3 m", front: "2.1 m" } }) };
    expect(openingsOf(same)).toEqual([]);
    const other = { speakers: otherwise("TL", { at: { right: "2990 mm", front: "2.1 m" } }) };
    expect(openingsOf(other)).toContainEqual({
      id: "TL",
      what: "tape",
      from: "right",
      beforeMm: 3000,
      afterMm: 2990,
    });
  });

  it("on another surface are told with their new tapes and nothing to compare them with", () => {
    const after = { speakers: otherwise("WL", { on: "right" }) };
    expect(openingsOf(after)).toEqual([
      { id: "WL", what: "surface", before: "left", after: "right" },
      { id: "WL", what: "tape", from: "front", beforeMm: null, afterMm: 2100 },
      { id: "WL", what: "tape", from: "floor", beforeMm: null, afterMm: 1200 },
    ]);
  });

  it("of another model, size or other figures of the same model", () => {
    expect(openingsOf({ speakers: otherwise("WL", { model: "round" }) })).toEqual([
      { id: "WL", what: "model", before: "upright", after: "round" },
      {
        id: "WL",
        what: "size",
        before: { kind: "rectangle", widthMm: 180, heightMm: 300 },
        after: { kind: "round", diameterMm: 200 },
      },
    ]);
    const deeper = { models: { upright: { depth: "95 mm" } } };
    expect(openingsOf(deeper)).toEqual([{ id: "WL", what: "figures", model: "upright" }]);
  });

  it("that came or went", () => {
    const more = {
      speakers: [...SPEAKERS, { id: "TB", model: "tilted", at: { left: "1 m", front: "5.1 m" } }],
    };
    expect(openingsOf(more)).toEqual([
      {
        id: "TB",
        what: "added",
        surface: "ceiling",
        tapes: [
          { from: "left", mm: 1000 },
          { from: "front", mm: 5100 },
        ],
      },
    ]);
    expect(compared(more, {}).openings).toEqual([{ id: "TB", what: "gone", surface: "ceiling" }]);
  });

  it("that must not be cut any more, or may be cut now", () => {
    const onJoist = { speakers: otherwise("TL", { at: { left: "1 m", front: "2.4 m" } }) };
    expect(openingsOf(onJoist)).toContainEqual({ id: "TL", what: "cut", allowed: false });
    expect(compared(onJoist, {}).openings).toContainEqual({ id: "TL", what: "cut", allowed: true });
  });

  it("whose arrow turned because the seat moved", () => {
    const after = {
      seats: [{ name: "middle", at: { left: "2 m", front: "4 m" }, ear: "1.2 m", reference: true }],
    };
    const arrows = openingsOf(after).filter(({ what }) => what === "arrow");
    expect(arrows.map(({ id }) => id)).toEqual(["TL", "TR"]);
    expect(compared({}, after).seats).toEqual([
      {
        seat: "middle",
        what: "moved",
        before: { fromLeftMm: 2000, fromFrontMm: 3000, earMm: 1200 },
        after: { fromLeftMm: 2000, fromFrontMm: 4000, earMm: 1200 },
      },
    ]);
  });
});

describe("members", () => {
  const AT = ["600 mm", "1200 mm", "1800 mm", "2400 mm", "6000 mm"];
  const joists = (at: readonly string[], more: Parts = {}): Parts => ({
    framing: { ceiling: { at, ...more } },
  });
  const membersOf = (before: Parts, after: Parts) => compared(before, after).members;
  const joist = (number: number) => ({ surface: "ceiling", kind: "joist", number });

  it("that moved, by the tape from the wall that they are measured from", () => {
    expect(membersOf(joists(AT), joists(AT.with(2, "1812 mm")))).toEqual([
      { member: joist(3), what: "moved", from: "front", beforeMm: 1800, afterMm: 1812, wasNumber: 3 },
    ]);
  });

  it("that came in between do not move those behind them, whose numbers change", () => {
    expect(membersOf(joists(AT), joists(AT.toSpliced(2, 0, "1500 mm")))).toEqual([
      { member: joist(3), what: "added", from: "front", atMm: 1500, found: null },
    ]);
    expect(membersOf(joists(AT), joists(AT.toSpliced(1, 1)))).toEqual([
      { member: joist(2), what: "gone", from: "front", atMm: 1200, found: null },
    ]);
  });

  it("that somebody found missing, and one that is there besides, with who and when", () => {
    const lead = { by: "framing lead", on: "2026-11-18" };
    const laid = { at: null, first: "600 mm", spacing: "600 mm" };
    const found = [
      { missing: 2, ...lead },
      { extra: "4500 mm", ...lead },
    ];
    const joists = (more: Parts): Parts => ({ framing: { ceiling: { ...laid, ...more } } });
    expect(compared(joists({}), joists({ found })).members).toEqual([
      { member: joist(11), what: "added", from: "front", atMm: 4500, found: lead },
      { member: joist(2), what: "gone", from: "front", atMm: 1200, found: lead },
    ]);
  });

  it("found more than half a bay away are the same by their number, with who and when", () => {
    const found = { found: [{ member: 4, at: "2900 mm", by: "framing lead", on: "2026-11-18" }] };
    expect(membersOf(joists(AT), joists(AT, found))).toEqual([
      { member: joist(4), what: "moved", from: "front", beforeMm: 2400, afterMm: 2900, wasNumber: 4 },
      {
        member: joist(4),
        what: "basis",
        after: "measured",
        found: { by: "framing lead", on: "2026-11-18" },
      },
    ]);
  });

  it("found as a stretch, each by as much", () => {
    const found = { found: [{ from: 2, to: 4, shift: "6 mm", by: "framing lead", on: "2026-11-18" }] };
    const moved = membersOf(joists(AT), joists(AT, found)).filter(({ what }) => what === "moved");
    expect(moved.map((change) => change.what === "moved" && change.afterMm - change.beforeMm)).toEqual([
      6, 6, 6,
    ]);
  });

  it("of another size, or measured now", () => {
    const deeper = { member: { width: "45 mm", depth: "245 mm" } };
    expect(membersOf(joists(AT.slice(0, 1)), joists(AT.slice(0, 1), deeper))).toEqual([
      {
        member: joist(1),
        what: "size",
        before: { widthMm: 45, depthMm: 220 },
        after: { widthMm: 45, depthMm: 245 },
      },
    ]);
    const laid: Parts = { framing: { ceiling: { at: null, first: "600 mm", spacing: "600 mm" } } };
    const all = membersOf(laid, {});
    expect(all).toHaveLength(10);
    expect(all.every((change) => change.what === "basis" && change.after === "measured")).toBe(true);
  });

  it("counted from the other wall stand where they stood", () => {
    const back = AT.map((at) => `${6000 - Number.parseInt(at, 10)} mm`).reverse();
    const moved = membersOf(joists(AT), joists(back, { from: "back" }));
    expect(moved.filter(({ what }) => what === "moved")).toEqual([]);
    expect(moved.filter(({ what }) => what === "added" || what === "gone")).toEqual([]);
  });

  it("are not told one by one where the framing was unknown before", () => {
    const known = compared({ framing: { ceiling: null } }, {});
    expect(known.members).toEqual([]);
    expect(known.surfaces).toContainEqual({ surface: "ceiling", what: "framing", known: true });
  });
});

describe("the rest of the room", () => {
  it("stands where it stood when the wall across moves away", () => {
    const duct = (from: "front" | "back"): Parts => ({
      obstructions: [
        { name: "light", on: "ceiling", at: { left: "2 m", [from]: "1 m" }, round: "100 mm" },
        {
          name: "duct",
          on: "ceiling",
          corner: { left: "3 m", [from]: "2 m" },
          opposite: { left: "3.2 m", [from]: "3 m" },
        },
      ],
    });
    const longer = { room: { width: "4 m", length: "6.4 m", height: "2.6 m" } };
    for (const from of ["front", "back"] as const) {
      expect(compared(duct(from), { ...duct(from), ...longer }).obstructions).toEqual([]);
    }
    expect(compared(duct("front"), duct("back")).obstructions.map(({ what }) => what)).toEqual([
      "changed",
      "changed",
    ]);
  });

  it("board, ratings and obstructions", () => {
    const { surfaces, obstructions } = compared(
      {
        obstructions: [
          { name: "duct", on: "ceiling", at: { left: "2 m", front: "5 m" }, round: "100 mm" },
          { name: "light", on: "ceiling", at: { left: "2 m", front: "1 m" }, round: "100 mm" },
        ],
      },
      {
        board: { ceiling: "15 mm" },
        surfaces: { ceiling: { second_support: true } },
        obstructions: [
          { name: "duct", on: "ceiling", at: { left: "2 m", front: "5.1 m" }, round: "100 mm" },
          { name: "pipe", on: "left", at: { front: "1 m", up: "1 m" }, round: "50 mm" },
        ],
      },
    );
    expect(surfaces).toEqual([
      { surface: "ceiling", what: "board", beforeMm: 12.5, afterMm: 15 },
      { surface: "ceiling", what: "second-support", after: true },
    ]);
    expect(obstructions).toEqual([
      { surface: "ceiling", name: "duct", what: "changed" },
      { surface: "ceiling", name: "light", what: "gone" },
      { surface: "left", name: "pipe", what: "added" },
    ]);
  });

  it("seats that came, went, or are the reference now", () => {
    const seat = (name: string, reference: boolean): Parts => ({
      name,
      at: { left: "2 m", front: "3 m" },
      ear: "1.2 m",
      reference,
    });
    const { seats } = compared(
      { seats: [seat("middle", true), seat("left", false)] },
      { seats: [seat("middle", false), seat("right", true)] },
    );
    expect(seats).toEqual([
      { seat: "right", what: "added" },
      { seat: "left", what: "gone" },
    ]);
    const turned = compared(
      { seats: [seat("middle", true), seat("left", false)] },
      { seats: [seat("middle", false), seat("left", true)] },
    );
    expect(turned.seats).toEqual([{ seat: "left", what: "reference" }]);
  });

  it("findings that are new, gone or read otherwise, wherever they stand in the file", () => {
    const on = (front: string): Parts => ({ speakers: [{ id: "TL", at: { left: "1 m", front } }] });
    const codes = (findings: readonly { code: string }[]) => findings.map(({ code }) => code);
    const worse = compared(on("2.1 m"), on("2.4 m")).findings;
    expect(codes(worse.added)).toContain("opening-cuts-member");
    const other = compared(on("2.4 m"), on("2.38 m")).findings;
    expect(codes(other.added)).toEqual([]);
    expect(other.changed.map(({ after }) => after.code)).toContain("opening-cuts-member");
    expect(codes(compared(on("2.4 m"), on("2.1 m")).findings.gone)).toContain("opening-cuts-member");
  });
});

describe("whatever is moved by so much, in a room of any size and from any wall", () => {
  const whole = (min: number, max: number) => fc.integer({ min, max });
  const WALLS = { left: "width", right: "width", front: "length", back: "length" } as const;

  it("is told by so much and nothing else is told of where openings are", () => {
    const from = fc.constantFrom("left", "right", "front", "back");
    fc.assert(
      fc.property(from, whole(3000, 9000), whole(500, 1200), whole(1, 300), (wall, side, at, byMm) => {
        const other = wall === "left" || wall === "right" ? "front" : "left";
        const room = { width: "5 m", length: "7 m", height: "2.6 m", [WALLS[wall]]: `${side} mm` };
        const seats = [{ name: "middle", at: { left: "1 m", front: "1 m" }, ear: "1.2 m", reference: true }];
        const placed = (mm: number): Parts => ({
          room,
          seats,
          framing: null,
          speakers: [{ id: "TL", at: { [wall]: `${mm} mm`, [other]: "1300 mm" } }],
        });
        const { openings, surfaces, seats: moved } = compareJobs(job(placed(at)), job(placed(at + byMm)));
        expect(openings).toEqual([{ id: "TL", what: "tape", from: wall, beforeMm: at, afterMm: at + byMm }]);
        expect([...surfaces, ...moved]).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});

describe("cable", () => {
  /** Up the right wall's bay, in through two plates, 3 m along the joists' bay (tests/cable). */
  const wired: Parts = {
    equipment: { at: { right: "0", back: "700 mm" }, up: "500 mm" },
    cable: { loop: "1 m", spare: "0%", gauges: [16, 14, 12] },
    models: { round: { impedance: "8 ohm" } },
    speakers: [{ id: "S", at: { left: "1 m", front: "5300 mm" } }],
  };
  const changed = (after: Parts) => {
    const { cables, holes } = compareJobs(job(wired), job({ ...wired, ...after }));
    return { cables, holes };
  };

  it("that is otherwise in nothing is not told", () => {
    expect(changed({ job: { revision: "B" } })).toEqual({ cables: [], holes: [] });
  });

  it("longer by what its loudspeaker moved along the bay", () => {
    expect(changed({ speakers: [{ id: "S", at: { left: "700 mm", front: "5300 mm" } }] })).toEqual({
      cables: [
        { id: "S", what: "length", beforeMm: expect.closeTo(7270, 6), afterMm: expect.closeTo(7570, 6) },
      ],
      holes: [],
    });
  });

  it("that goes another way now takes holes where there were none", () => {
    const { cables, holes } = changed({ speakers: [{ id: "S", at: { left: "1 m", front: "3500 mm" } }] });
    expect(cables.map(({ what }) => what)).toEqual(["length", "way"]);
    // Along the right wall to the bay of the joists at 3000 and 3600: the studs at 3600, 4200 and 4800 are the sixth to
    // the eighth. One cable of 8 mm takes 11 mm, a bit of 1/2 in.
    expect(holes.filter(({ what }) => what === "added")).toEqual(
      [6, 7, 8].map((number) => ({
        member: { surface: "right", kind: "stud", number },
        what: "added",
        holes: 1,
        diameterMm: 12.7,
      })),
    );
  });

  it("of another size, with other conductors, through a larger hole", () => {
    const thick = { ...(wired.cable as Parts), gauges: [12], wiring: "doubled" };
    const { cables, holes } = changed({ cable: thick });
    expect(cables).toEqual([
      { id: "S", what: "size", before: { kind: "gauge", gauge: 16 }, after: { kind: "gauge", gauge: 12 } },
      { id: "S", what: "conductors", before: 2, after: 4 },
    ]);
    // 10 mm / sqrt(0.53) is 13.7 mm: the next eighth of an inch is 5/8.
    expect(holes).toEqual(
      [1, 2].map((number) => ({
        member: { surface: "right", kind: "top-plate", number },
        what: "bit",
        beforeMm: 12.7,
        afterMm: 15.875,
      })),
    );
  });

  it("that comes or goes with the equipment", () => {
    const none = { ...wired, equipment: null };
    const bare = compareJobs(job(none), job(wired));
    expect(bare.cables).toEqual([{ id: "S", what: "added", lengthMm: expect.closeTo(7270, 6) }]);
    const gone = compareJobs(job(wired), job(none));
    expect(gone.cables).toEqual([{ id: "S", what: "gone" }]);
    expect(gone.holes.map(({ what }) => what)).toEqual(["gone", "gone"]);
    expect(isNothing(gone)).toBe(false);
  });

  it("is told for machines in keys without units", () => {
    const [before, after] = [
      job(wired),
      job({ ...wired, speakers: [{ id: "S", at: { left: "1 m", front: "3500 mm" } }] }),
    ];
    const json = comparisonJson(compareJobs(before, after), before, after);
    expect(json.cables[0]).toEqual({
      id: "S",
      what: "length",
      before: expect.closeTo(7270, 6),
      after: expect.any(Number),
    });
    expect(json.holes[0]).toMatchObject({ what: "added", holes: 1, diameter: 12.7 });
  });
});
