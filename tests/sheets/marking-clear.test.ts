import { describe, expect, it } from "vitest";
import type { Item } from "../../src/drawing/drawing.js";
import type { Region } from "../../src/geometry/clip.js";
import { distanceToSegmentMm, sidesOf } from "../../src/geometry/distance.js";
import { EPSILON_MM } from "../../src/geometry/epsilon.js";
import { directionOf, minus, plus, quarterTurn, times } from "../../src/geometry/surface-point.js";
import type { SurfacePoint } from "../../src/geometry/vector.js";
import type { Job, Opening } from "../../src/job.js";
import { clearTest } from "../../src/place/clear.js";
import { fittingOf, neighboursOf } from "../../src/place/fitting.js";
import { fullSizeMarks } from "../../src/sheets/full-size-marks.js";
import type { Body, Order } from "../../src/sheets/sheet.js";
import { surfaceMarks } from "../../src/sheets/surface-marks.js";
import { isClearByHand } from "../rooms/by-hand.js";
import { contains } from "../rooms/clipped.js";
import { job } from "../rooms/job.js";
import { ROOMS } from "./marking-rooms.js";
import { opened, orderFor, wordsOn } from "./orders.js";

type Plain = ReturnType<typeof opened>[number];
type Drawn = Extract<Plain, { kind: "path" }>;

const clearPaths = (body: Body): Drawn[] =>
  opened(body.items).flatMap((item) => (item.kind === "path" && item.mark?.role === "clear" ? [item] : []));

/** The middle of an opening's cut line on the page. */
function middleOnPage(body: Body, id: string): { x: number; y: number } {
  const [cut] = opened(body.items).filter(
    (item) => "mark" in item && item.mark?.role === "cut" && item.mark.speaker === id,
  );
  if (cut?.kind === "circle") return cut.centre;
  if (cut?.kind !== "rectangle") throw new Error(`no cut line of ${id}`);
  return { x: cut.corner.x + cut.widthMm / 2, y: cut.corner.y + cut.heightMm / 2 };
}

/** The area as it is read back from the page: by the scale that the page states and where it shows the opening. */
function readBack(body: Body, path: Drawn, opening: Opening): Region {
  const stated = body.frame?.scale.match(/1:(\d+)/u)?.[1];
  if (stated === undefined) throw new Error("no scale");
  const ratio = Number(stated);
  const zero = middleOnPage(body, opening.speaker.id);
  const rings: SurfacePoint[][] = [];
  for (const step of path.steps) {
    if (step.to === "move") rings.push([]);
    if (step.to === "close") continue;
    rings.at(-1)?.push({
      u: opening.centre.u + (step.at.x - zero.x) * ratio,
      v: opening.centre.v - (step.at.y - zero.y) * ratio,
    });
  }
  return rings;
}

/** A fixed sequence in [0, 1) that fills it evenly. */
const share = (index: number, base: number): number => {
  let [sum, part, rest] = [0, 1 / base, index];
  while (rest > 0) {
    sum += (rest % base) * part;
    rest = Math.floor(rest / base);
    part /= base;
  }
  return sum;
};

function pointsIn(area: Region, count: number): SurfacePoint[] {
  const us = area.flat().map(({ u }) => u);
  const vs = area.flat().map(({ v }) => v);
  const [left, bottom] = [Math.min(...us), Math.min(...vs)];
  return Array.from({ length: count }, (_, index) => ({
    u: left + share(index + 1, 2) * (Math.max(...us) - left),
    v: bottom + share(index + 1, 3) * (Math.max(...vs) - bottom),
  })).filter((at) => contains(area, at));
}

const isAtBorder = (area: Region, at: SurfacePoint): boolean =>
  area.flatMap(sidesOf).some((side) => distanceToSegmentMm(at, side) < 0.1);

/** Points a millimetre outside of the border, beside the middle of every side that is longer than that. */
function pointsBeside(area: Region): SurfacePoint[] {
  return area.flatMap((ring) =>
    ring.flatMap((from, index) => {
      const to = ring[(index + 1) % ring.length] ?? from;
      const along = minus(to, from);
      if (Math.hypot(along.u, along.v) < 1) return [];
      const outward = times(quarterTurn(directionOf(along)), -1);
      return [plus(plus(from, times(along, 0.5)), outward)];
    }),
  );
}

const openingOf = ({ openings }: Job, id: string): Opening => {
  const found = openings.find(({ speaker }) => speaker.id === id);
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
};

function holdsTo(order: Order, bodies: readonly Body[]): string[] {
  const { job: one } = order;
  return bodies.flatMap((body) =>
    clearPaths(body).map((path) => {
      const id = path.mark?.speaker ?? "";
      const opening = openingOf(one, id);
      const neighbours = neighboursOf(opening, one.openings);
      const isClear = clearTest(opening.surface, fittingOf(opening.speaker, one.room.checks), neighbours);
      const area = readBack(body, path, opening);
      const within = pointsIn(area, 60);
      expect(within.length).toBeGreaterThan(0);
      // Arcs are drawn to a tenth of a millimetre: points by so little nearer to one are not counted.
      for (const at of within.filter((each) => !isAtBorder(area, each)))
        expect(isClear(at), `${id} ${JSON.stringify(at)}`).toBe(true);
      expect(pointsBeside(area).filter(isClear)).toEqual([]);
      return id;
    }),
  );
}

const drawn = (order: Order): Body[] => surfaceMarks(order).flatMap(({ pages }) => pages);

describe("the clear area on a marking sheet, read back from the page", () => {
  const names = ["den", "gallery", "loft", "a tray in the middle", "walls and joists at an angle"];

  it.each(names)("%s: inside every point passes the rule, a millimetre outside none", (name) => {
    const one = ROOMS[name]?.();
    if (one === undefined) throw new Error(`no room ${name}`);
    const order = orderFor(one);
    expect(holdsTo(order, drawn(order)).sort()).toEqual(
      one.openings
        .filter(({ surface }) => surface.framing.kind === "known")
        .map(({ speaker }) => speaker.id)
        .sort(),
    );
  });

  it("holds to arithmetic of our own in a box", () => {
    const one = job({
      speakers: [
        { id: "A", model: "tilted", at: { left: "1 m", front: "2 m" } },
        { id: "B", model: "tilted", at: { left: "2 m", front: "2 m" } },
        { id: "W", model: "upright", on: "left", at: { front: "2.1 m", up: "1.2 m" } },
      ],
    });
    const order = orderFor(one, { paper: "letter" });
    for (const body of drawn(order)) {
      for (const path of clearPaths(body)) {
        const opening = openingOf(one, path.mark?.speaker ?? "");
        const area = readBack(body, path, opening);
        const clear = (at: SurfacePoint, slackMm: number) =>
          isClearByHand(one.room, opening.speaker, at, slackMm);
        for (const at of pointsIn(area, 80)) expect(clear(at, 0.1 + EPSILON_MM)).toBe(true);
        for (const at of pointsBeside(area)) expect(clear(at, -1e-3)).toBe(false);
      }
    }
  });

  it("is drawn at full size too", () => {
    const speakers = [
      { id: "A", model: "tilted", at: { left: "1 m", front: "2 m" } },
      { id: "B", model: "tilted", at: { left: "2 m", front: "2 m" } },
    ];
    const one = job({ speakers });
    const order = { ...orderFor(one, { paper: "roll-36" }), fullSize: true };
    const bodies = fullSizeMarks(order).flatMap(({ pages }) => pages);
    const withBoth = bodies.filter((body) => {
      const cut = opened(body.items).flatMap((item) =>
        "mark" in item && item.mark?.role === "cut" ? [item.mark.speaker] : [],
      );
      return cut.includes("A") && cut.includes("B");
    });
    expect(withBoth.length).toBeGreaterThan(0);
    const scaled = withBoth.map((body) => ({ ...body, items: withoutOther(body.items, ["A", "B"]) }));
    expect(new Set(holdsTo(order, scaled))).toEqual(new Set(["A", "B"]));
  });

  it("is under everything, in a layer of its own, and the key says what it is", () => {
    const order = orderFor(job({ speakers: [{ at: { left: "1 m", front: "2 m" } }] }));
    const [page] = drawn(order);
    const layers = (page?.items ?? []).flatMap((item) => (item.kind === "group" ? [item.layer] : []));
    expect(layers.indexOf("clear")).toBeGreaterThanOrEqual(0);
    expect(layers.indexOf("clear")).toBeLessThan(layers.indexOf("framing"));
    expect(page && wordsOn(page).join(" ")).toContain(order.words.marking.key.clear);
  });

  it("is not drawn, nor spoken of, where the framing is unknown", () => {
    const one = job({ framing: { ceiling: null }, speakers: [{ at: { left: "1 m", front: "2 m" } }] });
    const order = orderFor(one);
    const bodies = drawn(order);
    expect(bodies.flatMap(clearPaths)).toEqual([]);
    expect(bodies.flatMap(wordsOn).join(" ")).not.toContain(order.words.marking.key.clear);
  });
});

/** Items of these loudspeakers and of none. */
function withoutOther(items: readonly Item[], ids: readonly string[]): Item[] {
  return opened(items).filter(
    (item) => !("mark" in item) || item.mark === undefined || ids.includes(item.mark.speaker),
  );
}

/*
 * By hand: between the joists at 1800 and 2400 (45 wide) a centre may lie from 1940.85 to 2259.15 off the front wall,
 * and no nearer to a side wall's framing than 12.5 + 115; the tapes hook on framing.
 */
it("says in figures how far each way, never more than is clear", () => {
  const order = orderFor(job({ speakers: [{ id: "A", at: { left: "1 m", front: "2 m" } }] }));
  const said = drawn(order).flatMap(wordsOn).join(" ").replaceAll("\u00a0", " ");
  expect(said).toContain("MAY SLIDE (others stay): FRONT 59 mm; BACK 259 mm; ");
  expect(said).toMatch(/LEFT 872 mm/u);
  expect(said).toMatch(/RIGHT 2872 mm/u);
});
