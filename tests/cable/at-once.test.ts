import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { allAtOnce, routeTo, type Ways, waysIn } from "../../src/cable/cabling.js";
import type { Route } from "../../src/cable/route.js";
import { type Mounted, mountedIn } from "../../src/listen/mounted.js";
import { type Parts, room, TRAY_CORNERS } from "../rooms/build.js";
import { L_WITH_SOFFIT, sloped } from "../rooms/not-boxes.js";
import { block, costByLibrary, grid, HOLE, inWood, key, place } from "./grid.js";

/*
 * Where loudspeakers and what is in the way of their cables are many, one search finds the ways of all.
 */

const BORING = { isForbidden: () => false, unwanted: () => 1, everyBay: false };

function wired(said: Parts): { readonly ways: Ways; readonly all: readonly Mounted[] } {
  const one = room(said);
  const all = mountedIn(one);
  if (one.equipment === null) throw new Error("no equipment");
  return { ways: waysIn(one, all, one.equipment.at), all };
}

const bored = ({ legs }: Route): number => legs.reduce((sum, { crossed }) => sum + crossed.length, 0);

/** With its clamps 200 mm square, so that its sides lie on the grid of 100 mm. */
const SQUARE: Parts = {
  square: {
    opening: { width: "176 mm", height: "176 mm" },
    flange: { width: "200 mm", height: "200 mm" },
    depth: "90 mm",
    clamp_reach: "12 mm",
  },
};
const HALF = 100;
/** A graph for each takes its time. */
const COMPARED = 6;

/** Off the wood with its opening. */
const midBay = (mostMm: number) =>
  place(mostMm).filter((mm) => mm > HALF && mm < mostMm - HALF && ![mm - HALF, mm, mm + HALF].some(inWood));

const at = (left: number, front: number) => ({ left: `${left} mm`, front: `${front} mm` });

describe("all ways at once", () => {
  test("are as a general graph library finds them, among many boxes and openings", () => {
    let compared = 0;
    const spot = fc.record({ left: place(4000).filter((mm) => mm > HALF && mm < 3900), front: midBay(6000) });
    fc.assert(
      fc.property(
        fc.record({
          rack: fc.record({ front: place(6000), up: place(2400) }),
          spots: fc.array(spot, { minLength: 20, maxLength: 30 }),
          blocks: fc.array(block, { minLength: 5, maxLength: 25 }),
        }),
        ({ rack, spots, blocks }) => {
          const { ways, all } = wired({
            models: SQUARE,
            equipment: { at: { right: "0", front: `${rack.front} mm` }, up: `${rack.up} mm` },
            obstructions: blocks.map((each, index) => ({
              name: `b${index}`,
              on: "ceiling",
              corner: at(each.left, each.front),
              opposite: at(each.right, each.back),
            })),
            speakers: spots.map(({ left, front }, index) => ({
              id: `S${index}`,
              model: "square",
              at: at(left, front),
            })),
          });
          const routes = allAtOnce(ways, all, BORING);
          const boxes = [
            ...blocks,
            ...spots.map(({ left, front }) => ({
              left: left - HALF,
              right: left + HALF,
              front: front - HALF,
              back: front + HALF,
            })),
          ];
          spots.slice(0, COMPARED).forEach(({ left, front }, index) => {
            const holding = boxes.filter(
              (box) => left > box.left && left < box.right && front > box.front && front < box.back,
            );
            // In its own opening alone: what is cut into a duct or into another opening is a finding of its own.
            if (holding.length > 1) return;
            const graph = grid(
              boxes
                .filter((box) => !holding.includes(box))
                .map((box) => ({
                  u: [4000 - box.right, 4000 - box.left],
                  v: [6000 - box.back, 6000 - box.front],
                })),
            );
            const cost = costByLibrary(
              graph,
              key("right", rack.front, rack.up),
              key("ceiling", 4000 - left, 6000 - front),
            );
            const route = routes[index] ?? null;
            expect(route === null).toBe(cost === null);
            if (route === null || cost === null) return;
            compared += 1;
            expect(route.lengthMm).toBeCloseTo(Math.floor(cost), 6);
            expect(bored(route)).toBe(Math.round((cost - Math.floor(cost)) / HOLE));
          });
        },
      ),
      { numRuns: 3 },
    );
    expect(compared).toBeGreaterThan(8);
  });
});

const SPOTS: readonly Parts[] = [
  { id: "A", at: { left: "700 mm", front: "900 mm" } },
  { id: "B", at: { left: "1500 mm", front: "2100 mm" } },
  { id: "C", at: { left: "3300 mm", front: "3300 mm" } },
  { id: "D", at: { left: "2700 mm", front: "5100 mm" } },
  { id: "E", on: "left", model: "upright", at: { front: "3300 mm", up: "1.2 m" } },
  { id: "F", on: "right", model: "upright", at: { front: "2100 mm", up: "1.2 m" } },
  // Over a joist and in front of a stud.
  { id: "G", at: { left: "2 m", front: "2400 mm" } },
  { id: "H", on: "left", model: "upright", at: { front: "4200 mm", up: "1.5 m" } },
];
const RACK: Parts = { equipment: { at: { right: "0", front: "2700 mm" }, up: "500 mm" } };
const DUCTS: Parts = {
  obstructions: [
    { name: "duct", on: "ceiling", corner: at(300, 1300), opposite: at(2500, 1700) },
    { name: "shaft", on: "ceiling", corner: at(2900, 2500), opposite: at(3700, 3100) },
    {
      name: "pipe",
      on: "left",
      corner: { front: "3800 mm", up: "0.2 m" },
      opposite: { front: "3900 mm", up: "2.2 m" },
    },
  ],
};
const ANGLED: Parts = {
  framing: {
    ceiling: { run: "45 deg", from: { right: 0, front: 0 }, at: null, first: "1000 mm", spacing: "1000 mm" },
  },
};

describe("all ways at once are as long as each by itself, and take as many holes", () => {
  const own = (which: readonly string[]): readonly Parts[] =>
    SPOTS.filter(({ id }) => which.includes(String(id)));
  test.each<{ readonly what: string; readonly said: Parts }>([
    { what: "in a box", said: { ...RACK, ...DUCTS, speakers: SPOTS } },
    {
      what: "over an open attic",
      said: { ...RACK, ...DUCTS, framing: { ceiling: { cavity: "open" } }, speakers: SPOTS },
    },
    {
      what: "by way of a tray",
      said: {
        ...RACK,
        room: { ceilings: [{ name: "tray", corners: TRAY_CORNERS, height: "2.9 m" }] },
        framing: {
          tray: {
            run: "left-right",
            member: { width: "45 mm", depth: "95 mm" },
            from: "front",
            first: "600 mm",
            spacing: "600 mm",
          },
        },
        speakers: [...own(["A", "D", "E", "F"]), { id: "T", on: "tray", at: at(2000, 3300) }],
      },
    },
    {
      what: "under a soffit of an L, past framing that nobody measured",
      said: {
        ...L_WITH_SOFFIT,
        ...RACK,
        speakers: [
          { id: "S", on: "soffit", at: at(400, 2700) },
          { id: "T", on: "soffit", at: at(400, 6900) },
          { id: "U", at: at(5100, 6500) },
          { id: "V", on: "left", model: "upright", at: { front: "2700 mm", up: "1.2 m" } },
          { id: "W", on: "end", model: "upright", at: { step: "1500 mm", up: "1.2 m" } },
        ],
      },
    },
    {
      what: "under a slope",
      said: {
        ...sloped("left"),
        equipment: { at: { front: "0", left: "1500 mm" }, up: "500 mm" },
        framing: {
          ceiling: null,
          slope: {
            run: "left-right",
            member: { width: "45 mm", depth: "220 mm" },
            from: "front",
            at: ["600 mm", "1200 mm", "6 m"],
          },
        },
        speakers: [
          { id: "S", on: "slope", at: at(1500, 900) },
          { id: "T", on: "slope", at: at(3100, 300) },
          { id: "U", on: "left", model: "upright", at: { front: "3300 mm", up: "1 m" } },
        ],
      },
    },
    {
      what: "under joists at an angle",
      said: { ...RACK, ...ANGLED, speakers: own(["A", "B", "C", "D", "E"]) },
    },
    {
      what: "by points that are given",
      said: {
        ...RACK,
        ...DUCTS,
        speakers: SPOTS.map((each) => ({
          ...each,
          cable: {
            via: [
              { on: "right", at: { front: "900 mm", up: "2 m" } },
              { on: "ceiling", at: at(2700, 2100) },
            ],
          },
        })),
      },
    },
    {
      what: "by points in their own openings, and by their centres",
      said: {
        ...RACK,
        ...DUCTS,
        speakers: [
          { id: "I", at: at(700, 900), cable: { via: [{ on: "ceiling", at: at(650, 940) }] } },
          { id: "J", at: at(1500, 2100), cable: { via: [{ on: "ceiling", at: at(1500, 2060) }] } },
          { id: "K", at: at(3300, 3300), cable: { via: [{ on: "ceiling", at: at(3300, 3300) }] } },
        ],
      },
    },
  ])("$what", ({ said }) => {
    const { ways, all } = wired(said);
    const routes = allAtOnce(ways, all, BORING);
    expect(all.length).toBeGreaterThan(2);
    all.forEach((mounted, index) => {
      const alone = routeTo(ways, mounted, BORING);
      const route = routes[index] ?? null;
      expect(route?.lengthMm, mounted.speaker.id).toBeCloseTo(alone?.lengthMm ?? Number.NaN, 6);
      if (route !== null && alone !== null) expect(bored(route), mounted.speaker.id).toBe(bored(alone));
    });
  });
});
