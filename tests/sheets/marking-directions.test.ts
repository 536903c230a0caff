import { cross, dot, type MathArray, norm, subtract } from "mathjs";
import { describe, expect, it } from "vitest";
import { textBox } from "../../src/drawing/text.js";
import { surfaceNamed } from "../../src/room/room.js";
import { floorMarks } from "../../src/sheets/floor-marks.js";
import { drawSketch } from "../../src/sheets/marking/sketch.js";
import { surfaceSketch } from "../../src/sheets/marking/surface-sketch.js";
import { surfaceAt } from "../../src/sheets/marking/surface-stage.js";
import type { Body, Sheet } from "../../src/sheets/sheet.js";
import { surfaceMarks } from "../../src/sheets/surface-marks.js";
import { job } from "../rooms/job.js";
import { opened, orderFor } from "./orders.js";

/*
 * Which way round, from three-dimensional points alone. The world here is the test's own: x from the left wall to the
 * right, y from the back wall to the front, z up; the room is 4 x 6 x 2.6 m. What a person sees is a projection: with
 * the head's crown toward `up` and the eyes toward `look`, right is look x up (the cross product by mathjs). Nothing
 * of the house's own frames is used.
 */

type Point = readonly [x: number, y: number, z: number];
type Seen = { readonly x: number; readonly y: number };

const vector = (value: unknown): number[] => (value as MathArray).map(Number);

interface Eyes {
  readonly look: Point;
  readonly up: Point;
}

/** On paper held before those eyes: x to the right, y down. */
function seen(eyes: Eyes, direction: Point): Seen {
  const right = vector(cross([...eyes.look], [...eyes.up]));
  return { x: dot(right, [...direction]), y: -dot([...eyes.up], [...direction]) };
}

const from = (a: Point, b: Point): Point => {
  const [x = 0, y = 0, z = 0] = vector(subtract([...b], [...a]));
  return [x, y, z];
};

const TOWARD = {
  front: [0, 1, 0],
  back: [0, -1, 0],
  left: [-1, 0, 0],
  right: [1, 0, 0],
  up: [0, 0, 1],
  down: [0, 0, -1],
} as const satisfies Record<string, Point>;

const LOOKING_UP: Eyes = { look: TOWARD.up, up: TOWARD.front };
const LOOKING_DOWN: Eyes = { look: TOWARD.down, up: TOWARD.front };
const WALLS = ["left", "front", "right", "back"] as const;
const facing = (wall: (typeof WALLS)[number]): Eyes => ({ look: TOWARD[wall], up: TOWARD.up });

/** Where each loudspeaker is, in the file's tapes and, worked out by hand, in the world. */
const SPEAKERS = [
  {
    id: "TA",
    on: "ceiling",
    model: "tilted",
    at: { left: "700 mm", front: "1100 mm" },
    world: [700, 4900, 2600],
  },
  {
    id: "TB",
    on: "ceiling",
    model: "tilted",
    at: { right: "900 mm", back: "1500 mm" },
    world: [3100, 1500, 2600],
  },
  { id: "LA", on: "left", model: "upright", at: { front: "900 mm", up: "1000 mm" }, world: [0, 5100, 1000] },
  { id: "LB", on: "left", model: "upright", at: { front: "3300 mm", up: "1500 mm" }, world: [0, 2700, 1500] },
  {
    id: "RA",
    on: "right",
    model: "upright",
    at: { front: "900 mm", up: "1000 mm" },
    world: [4000, 5100, 1000],
  },
  {
    id: "RB",
    on: "right",
    model: "upright",
    at: { back: "900 mm", down: "900 mm" },
    world: [4000, 900, 1700],
  },
  {
    id: "FA",
    on: "front",
    model: "upright",
    at: { left: "900 mm", up: "1000 mm" },
    world: [900, 6000, 1000],
  },
  {
    id: "FB",
    on: "front",
    model: "upright",
    at: { right: "900 mm", up: "1400 mm" },
    world: [3100, 6000, 1400],
  },
  { id: "BA", on: "back", model: "upright", at: { left: "900 mm", up: "1000 mm" }, world: [900, 0, 1000] },
  { id: "BB", on: "back", model: "upright", at: { right: "1500 mm", up: "1400 mm" }, world: [2500, 0, 1400] },
] as const;
/** The seat's ear, which the tilted ones are turned to. */
const EAR: Point = [2000, 3000, 1200];

const order = orderFor(job({ speakers: SPEAKERS.map(({ id, on, model, at }) => ({ id, on, model, at })) }));
const sheets = [...floorMarks(order), ...surfaceMarks(order)];

function pageOf(name: string): Body {
  const page = sheets.find((sheet: Sheet) => sheet.name === name)?.pages[0];
  if (page === undefined) throw new Error(`no sheet ${name}`);
  return page;
}

const ratioOf = ({ frame }: Body): number => Number(/1:(\d+)/.exec(frame?.scale ?? "")?.[1]);

/** Middle of what stands for a loudspeaker on a page: its cut line, or its mark on the floor. */
function middleOn(page: Body, id: string, role: "cut" | "mark"): Seen {
  const middles = opened(page.items).flatMap((item): Seen[] => {
    if (item.kind === "circle" && item.mark?.role === role && item.mark.speaker === id) return [item.centre];
    if (item.kind === "rectangle" && item.mark?.role === role && item.mark.speaker === id) {
      const { corner, widthMm, heightMm } = item;
      return [{ x: corner.x + widthMm / 2, y: corner.y + heightMm / 2 }];
    }
    return [];
  });
  expect(middles, id).toHaveLength(1);
  return middles[0] ?? { x: Number.NaN, y: Number.NaN };
}

function arrowOn(page: Body, id: string): Seen {
  const arrows = opened(page.items).flatMap((item) =>
    item.kind === "line" && item.mark?.role === "aim" && item.mark.speaker === id ? [item] : [],
  );
  expect(arrows).toHaveLength(1);
  const [arrow] = arrows;
  if (arrow === undefined) throw new Error(`no arrow for ${id}`);
  return { x: arrow.to.x - arrow.from.x, y: arrow.to.y - arrow.from.y };
}

/** Middle of the words that are exactly these and the largest such, from the middle of the outline. */
function nameOn(page: Body, words: string): Seen {
  const items = opened(page.items);
  const texts = items
    .flatMap((item) => (item.kind === "text" && item.text === words ? [item] : []))
    .sort((a, b) => b.capMm - a.capMm);
  const [name] = texts;
  if (name === undefined) throw new Error(`no ${words} on ${page.title}`);
  const box = textBox(name);
  const centre = outlineCentre(page);
  return { x: box.x + box.widthMm / 2 - centre.x, y: box.y + box.heightMm / 2 - centre.y };
}

/** The first closed path of a drawing is its outline. */
function outlineCentre(page: Body): Seen {
  const path = opened(page.items).find((item) => item.kind === "path");
  const points =
    path?.kind === "path" ? path.steps.flatMap((step) => (step.to === "close" ? [] : [step.at])) : [];
  const middle = (values: readonly number[]): number => (Math.min(...values) + Math.max(...values)) / 2;
  return { x: middle(points.map(({ x }) => x)), y: middle(points.map(({ y }) => y)) };
}

const worldOf = (id: string): Point => SPEAKERS.find((speaker) => speaker.id === id)?.world ?? [0, 0, 0];

function expectSeen(page: Body, eyes: Eyes, [a, b]: readonly [string, string], role: "cut" | "mark"): void {
  const [first, second] = [middleOn(page, a, role), middleOn(page, b, role)];
  const expected = seen(eyes, from(worldOf(a), worldOf(b)));
  expect((second.x - first.x) * ratioOf(page)).toBeCloseTo(expected.x, 6);
  expect((second.y - first.y) * ratioOf(page)).toBeCloseTo(expected.y, 6);
}

/** Names of what stands round a drawing lie on the side on which the eyes see it. */
function expectNames(page: Body, eyes: Eyes, names: Readonly<Record<string, Point>>): void {
  for (const [words, toward] of Object.entries(names)) {
    const expected = seen(eyes, toward);
    const name = nameOn(page, words);
    if (Math.abs(expected.x) > 0.5) expect(Math.sign(name.x), words).toBe(Math.sign(expected.x));
    else expect(Math.sign(name.y), words).toBe(Math.sign(expected.y));
  }
}

const AROUND = { LEFT: TOWARD.left, RIGHT: TOWARD.right, FRONT: TOWARD.front, BACK: TOWARD.back };

describe("the ceiling sheet, held overhead", () => {
  const page = pageOf("ceiling");

  it("shows two openings as they are seen looking up, at the scale that it says", () => {
    expect(ratioOf(page)).toBeGreaterThan(1);
    expectSeen(page, LOOKING_UP, ["TA", "TB"], "cut");
  });

  it.each(["TA", "TB"])("points %s's arrow at the seat", (id) => {
    const [dx, dy] = from(worldOf(id), EAR);
    const expected = seen(LOOKING_UP, [dx, dy, 0]);
    const arrow = arrowOn(page, id);
    const [long, wanted] = [Number(norm([arrow.x, arrow.y])), Number(norm([expected.x, expected.y]))];
    expect(arrow.x / long).toBeCloseTo(expected.x / wanted, 9);
    expect(arrow.y / long).toBeCloseTo(expected.y / wanted, 9);
  });

  it("names every edge with the wall that is seen there", () => expectNames(page, LOOKING_UP, AROUND));

  it("says how it is looked at and held, with FRONT up the page", () => {
    expect(page.frame).toMatchObject({ view: "LOOKING UP", front: 0 });
    expect(page.frame?.hold).toContain("HOLD OVERHEAD");
  });
});

describe("the floor sheet, lying on the floor", () => {
  const page = pageOf("floor");

  it("shows the marks as they are seen looking down", () => {
    expectSeen(page, LOOKING_DOWN, ["TA", "TB"], "mark");
    expect(page.frame).toMatchObject({ view: "LOOKING DOWN", hold: null, front: 0 });
  });

  it("names every edge with the wall that is seen there", () => expectNames(page, LOOKING_DOWN, AROUND));

  it("lies mirrored, left for right, against the ceiling sheet", () => {
    const ceiling = pageOf("ceiling");
    const apart = (body: Body, role: "cut" | "mark"): Seen => {
      const [a, b] = [middleOn(body, "TA", role), middleOn(body, "TB", role)];
      return { x: (b.x - a.x) * ratioOf(body), y: (b.y - a.y) * ratioOf(body) };
    };
    const [up, down] = [apart(ceiling, "cut"), apart(page, "mark")];
    expect(up.x).toBeCloseTo(-down.x, 6);
    expect(up.y).toBeCloseTo(down.y, 6);
    expect(Math.abs(up.x)).toBeGreaterThan(1000);
  });
});

describe.each(WALLS)("the sheet of the %s wall, as one faces it", (wall) => {
  const page = pageOf(`wall-${wall}`);
  const eyes = facing(wall);
  const ids = SPEAKERS.filter(({ on }) => on === wall).map(({ id }) => id);

  it("shows two openings as they are seen", () => {
    expectSeen(page, eyes, [ids[0] ?? "", ids[1] ?? ""], "cut");
  });

  it("names floor, ceiling and the walls at either hand", () => {
    const sides = Object.entries(AROUND).filter(([, toward]) => dot([...toward], [...eyes.look]) === 0);
    expect(sides).toHaveLength(2);
    expectNames(page, eyes, {
      FLOOR: TOWARD.down,
      CEILING: TOWARD.up,
      ...Object.fromEntries(sides),
    });
  });

  it("says which way FRONT is", () => {
    const ahead = dot([...eyes.look], [...TOWARD.front]);
    const { x, y } = seen(eyes, TOWARD.front);
    const clockwise = (Math.atan2(x, -y) * 180) / Math.PI;
    const expected = ahead > 0.5 ? "away" : ahead < -0.5 ? "behind" : (clockwise + 360) % 360;
    expect(page.frame?.front).toEqual(expected);
    expect(page.frame?.view).toBe(`FACING the ${wall} wall`);
    expect(page.frame?.hold).toBeNull();
  });
});

describe("scale", () => {
  const HEIGHTS = { smallMm: 2.5, wallMm: 3.5, idMm: 3.5 };
  const ceiling = surfaceNamed(order.job.room, "ceiling");
  const sketch = surfaceSketch(order, surfaceAt(order, ceiling, "bare"), []);

  it.each([10, 20, 24, 48])("at 1:%i a hole of 200 mm has the radius 200 / 2 / ratio, exactly", (ratio) => {
    const { items } = drawSketch(sketch, { ratio, heights: HEIGHTS }, { x: 30, y: 40 });
    const radii = opened(items).flatMap((item) =>
      item.kind === "circle" && item.mark?.role === "cut" ? [item.radiusMm] : [],
    );
    expect(radii).toEqual([200 / 2 / ratio, 200 / 2 / ratio]);
  });

  it.each(["letter", "A4", "tabloid", "arch-d"])(
    "the page on %s says the scale that it is drawn at",
    (paper) => {
      const pages = surfaceMarks(orderFor(order.job, { paper })).flatMap((sheet) => sheet.pages.slice(0, 1));
      expect(pages).toHaveLength(5);
      for (const page of pages) {
        const cuts = opened(page.items).flatMap((item): number[] => {
          if (!("mark" in item) || item.mark?.role !== "cut") return [];
          return item.kind === "circle"
            ? [(2 * item.radiusMm) / 200]
            : item.kind === "rectangle"
              ? [item.heightMm / 300]
              : [];
        });
        expect(cuts).toHaveLength(2);
        for (const cut of cuts) expect(cut * ratioOf(page)).toBeCloseTo(1, 12);
        expect([10, 20, 25, 50, 100]).toContain(ratioOf(page));
      }
    },
  );

  it("is larger on larger paper", () => {
    const ratios = ["A4", "A1"].map((paper) => {
      const [sheet] = surfaceMarks(orderFor(order.job, { paper }));
      return sheet?.pages[0] === undefined ? Number.NaN : ratioOf(sheet.pages[0]);
    });
    expect(ratios[0]).toBeGreaterThan(ratios[1] ?? Number.NaN);
  });
});
