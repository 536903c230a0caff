import { describe, expect, test } from "vitest";
import { Effort } from "../../src/effort.js";
import { jobJson } from "../../src/job-json.js";
import { alternativesOf, type OtherBays } from "../../src/place/alternatives.js";
import { bayOf } from "../../src/place/bay.js";
import { type Parts, room } from "../rooms/build.js";
import { answer } from "../rooms/job.js";
import { isClear, type Standing } from "./best/by-hand.js";

/*
 * What if a loudspeaker were in another bay. The plain room: joists from left to right every 600 mm, so that its bays
 * are strips; the best of each strip is looked for again by trying every 3 mm.
 */

const UPPER: readonly Parts[] = [
  { id: "TFL", channel: "U+045", at: "best" },
  { id: "TBR", channel: "U-135", at: "best" },
];

interface Asking {
  readonly count: number;
  readonly locked: readonly string[];
  readonly looks: number;
}

function asked(
  parts: Parts,
  { count = 3, locked = [], looks = Number.POSITIVE_INFINITY }: Partial<Asking> = {},
) {
  const one = room(parts);
  const { openings } = answer(one);
  const effort = new Effort(looks);
  return {
    one,
    openings,
    effort,
    found: alternativesOf({ room: one, mounted: openings, count, locked, effort }),
  };
}

const bays = (alternatives: OtherBays | undefined): readonly (number | undefined)[] =>
  (alternatives ?? []).map(({ places: [own] }) => own && bayOf(own.mounted)?.number);

describe("other bays", () => {
  const { one, openings, found } = asked({ speakers: UPPER }, { count: 20 });

  test("come each once, the best first, and never the one that it is in", () => {
    const alternatives = found.get("TFL") ?? [];
    const costs = alternatives.map(({ places: [own] }) => own?.cost.offDeg ?? Number.NaN);
    expect(costs.length).toBeGreaterThan(5);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
    const own = openings.find(({ speaker }) => speaker.id === "TFL")?.bay?.number;
    const all = [own, ...bays(alternatives)];
    expect(new Set(all).size).toBe(all.length);
    // Ten bays between eleven edges, and the last joist stands against the wall.
    expect([...all].sort((a, b) => (a ?? 0) - (b ?? 0))).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });

  test("hold the best clear place of each bay", () => {
    const ceiling = one.surfaces.find(({ name }) => name === "ceiling");
    const ear = one.reference.ear;
    const other = openings.filter(({ speaker }) => speaker.id === "TBR");
    for (const {
      places: [own],
    } of found.get("TFL") ?? []) {
      if (own === undefined || ceiling === undefined) throw new Error("no place");
      const { speaker, centre } = own.mounted;
      const bay = Math.floor(centre.v / 600);
      let least = Number.POSITIVE_INFINITY;
      for (let u = 100; u < 3900; u += 3) {
        for (let v = bay * 600; v < bay * 600 + 600; v += 3) {
          const standing: Standing = { speaker, surface: ceiling, centre: { u, v } };
          const [x, y, z] = [4000 - u - ear.x, v - ear.y, 2587.5 - ear.z];
          // U+045: half to the left, half ahead, and half of all of it up.
          const level = Math.sqrt(3) / 2 / Math.SQRT2;
          const cosine = (-x * level + y * level + z / 2) / Math.hypot(x, y, z);
          const offDeg = (Math.acos(Math.min(1, cosine)) * 180) / Math.PI;
          if (offDeg < least && isClear(one, standing, other)) least = offDeg;
        }
      }
      expect(own.cost.offDeg).toBeLessThanOrEqual(least + 1e-6);
    }
  });
});

test("no more than asked for", () => {
  expect(asked({ speakers: UPPER }, { count: 2 }).found.get("TFL")).toHaveLength(2);
});

test("a locked one is not told of, and the others are placed beside it", () => {
  const { found } = asked({ speakers: UPPER }, { locked: ["TFL"] });
  expect([...found.keys()]).toEqual(["TBR"]);
});

test("a given one has other bays too; low-frequency effects have none", () => {
  const speakers = [
    { id: "GIVEN", channel: "U+045", at: { left: "900 mm", front: "900 mm" } },
    { id: "SUB", channel: "LFE1", at: { left: "900 mm", front: "2.1 m" } },
  ];
  const { found } = asked({ speakers });
  expect([...found.keys()]).toEqual(["GIVEN"]);
  expect(bays(found.get("GIVEN"))).not.toContain(2);
});

test("a pair goes together, unless one of it is locked", () => {
  const speakers = [
    { id: "L", channel: "U+045", at: "best", mirror: "R" },
    { id: "R", channel: "U-045", at: "best", mirror: "L" },
  ];
  const { found } = asked({ speakers });
  expect(found.get("L")).toBe(found.get("R"));
  for (const { places } of found.get("L") ?? []) {
    const [left, right] = places.map(({ mounted }) => mounted.position);
    expect((left?.x ?? 0) + (right?.x ?? 0)).toBeCloseTo(4000, 9);
    expect(left?.y).toBe(right?.y);
  }
  const locked = asked({ speakers }, { locked: ["R"] }).found;
  expect([...locked.keys()]).toEqual(["L"]);
  for (const { places } of locked.get("L") ?? []) expect(places).toHaveLength(1);
});

test("those for which there is too much to look at are told as such, and the others as ever", () => {
  const speakers = [...UPPER, { id: "SUB", channel: "LFE1", at: { left: "900 mm", front: "2.1 m" } }];
  const looks = 1e6;
  const { effort, found: all } = asked({ speakers }, { looks });
  const needed = looks - effort.unspent;
  const { found } = asked({ speakers }, { looks: needed - 1 });
  expect([...found.keys()]).toEqual(["TFL", "TBR"]);
  expect(bays(found.get("TFL"))).toEqual(bays(all.get("TFL")));
  expect(bays(found.get("TFL")).length).toBeGreaterThan(0);
  expect(found.get("TBR")).toBeNull();
  expect([...asked({ speakers }, { looks: 10 }).found]).toEqual([
    ["TFL", null],
    ["TBR", null],
  ]);
});

test("where there is one bay there is no other", () => {
  const { found } = asked({ framing: { ceiling: { at: ["6 m"] } }, speakers: UPPER });
  expect(found.get("TFL")).toEqual([]);
});

test("the answer about the room says of a best place what it says of a given one", () => {
  const parts: Parts = { layout: "4+7+0", speakers: UPPER };
  const [first] = jobJson(answer(room(parts))).speakers;
  expect(first).toMatchObject({ id: "TFL", placed: "best", window: { inside: true } });
  expect(first?.gap?.mm).toBeGreaterThanOrEqual(12 + 6.35 - 0.01);
});
