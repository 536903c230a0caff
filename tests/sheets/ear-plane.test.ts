import { acos, dot, norm, subtract } from "mathjs";
import { describe, expect, it } from "vitest";
import type { Item } from "../../src/drawing/drawing.js";
import type { Opening } from "../../src/job.js";
import { jobJson } from "../../src/job-json.js";
import { coneOf } from "../../src/listen/coverage.js";
import { listeningPlan } from "../../src/sheets/listening-plan.js";
import type { Body, Order } from "../../src/sheets/sheet.js";
import { sideView } from "../../src/sheets/side-view.js";
import { someOf } from "../how-many.js";
import { type Parts, TRAY_CORNERS } from "../rooms/build.js";
import { job, openingNamed } from "../rooms/job.js";
import { L_ROOM, L_WITH_SOFFIT, sloped } from "../rooms/not-boxes.js";
import { ROOMS } from "./marking-rooms.js";
import { letteringFaults } from "./no-collisions.js";
import { ASKED, opened, orderFor, wordsOn } from "./orders.js";

type Line = Extract<Item, { kind: "line" }>;
type Path = Extract<Item, { kind: "path" }>;

/** A box of 4 x 6 m (the plain room), the reference ear at (2000, 3000, 1200). */
const HEARD: Parts = {
  models: { tilted: { coverage: "90 deg" }, upright: { coverage: "80 deg" } },
  layout: "4+5+0",
  speakers: [
    { id: "TFL", channel: "U+030", model: "tilted", at: { left: "900 mm", front: "1.4 m" } },
    { id: "TBR", channel: "U-110", model: "tilted", at: { left: "3.1 m", front: "4.2 m" } },
    { id: "SL", channel: "M+110", model: "upright", on: "left", at: { front: "4 m", up: "1.5 m" } },
    { id: "C", channel: "M+000", model: "upright", on: "front", at: { left: "2 m", up: "1.2 m" } },
  ],
};

const page = (order: Order, make: typeof listeningPlan, title: string, nth = 0): Body => {
  const found = make(order)
    .flatMap(({ pages }) => pages)
    .filter((body) => body.title.startsWith(title))[nth];
  if (found === undefined) throw new Error(`no page ${title}`);
  return found;
};

const itemsOf = (body: Body): readonly Item[] => opened(body.items);
const linesOf = (body: Body): Line[] => itemsOf(body).flatMap((item) => (item.kind === "line" ? [item] : []));

/** Open lines of many points that are not filled: curves of coverage. */
const curvesOf = (body: Body): { x: number; y: number }[][] =>
  itemsOf(body)
    .flatMap((item): Path[] => (item.kind === "path" && item.fill === undefined ? [item] : []))
    .filter(({ steps }) => steps.every(({ to }) => to !== "close"))
    .map(({ steps }) => steps.flatMap((step) => (step.to === "close" ? [] : [step.at])));

/** From a point of the page back to millimetres of the room, by the room's outline on it and the ratio in its scale. */
function readBack(body: Body, outlined: { u: number; v: number }) {
  const ratio = Number(body.frame?.scale.split(":")[1]);
  const outline = itemsOf(body).find(
    (item): item is Path => item.kind === "path" && item.steps.at(-1)?.to === "close",
  );
  const corners = (outline?.steps ?? []).flatMap((step) => (step.to === "close" ? [] : [step.at]));
  const left = Math.min(...corners.map(({ x }) => x));
  const bottom = Math.max(...corners.map(({ y }) => y));
  return ({ x, y }: { x: number; y: number }) => ({
    u: (x - left) * ratio + outlined.u,
    v: (bottom - y) * ratio + outlined.v,
  });
}

function offAxisDeg(opening: Opening, at: readonly [number, number, number]): number {
  const cone = coneOf(opening);
  if (cone === null) throw new Error("no cone");
  const { apex, axis } = cone;
  const ray = subtract([...at], [apex.x, apex.y, apex.z]);
  const cosine = dot(ray, [axis.x, axis.y, axis.z]) / (norm(ray) as number);
  return ((acos(Math.min(1, cosine)) as number) * 180) / Math.PI;
}

const order = orderFor(job(HEARD));
const said = (body: Body): string[] => wordsOn(body).map((words) => words.replaceAll("\u00a0", " "));
const openings = order.job.openings;

describe("the plan of directions", () => {
  const body = page(order, listeningPlan, "Directions");
  const back = readBack(body, { u: 0, v: 0 });

  it("draws a line from the reference seat to each loudspeaker under the azimuth of the report, and writes it", () => {
    const rays = linesOf(body).filter(({ from }) => {
      const { u, v } = back(from);
      return Math.hypot(u - 2000, v - 3000) < 1e-6;
    });
    expect(rays).toHaveLength(openings.length);
    const drawn = rays.map(({ to }) => {
      const { u, v } = back(to);
      return (Math.atan2(-(u - 2000), v - 3000) * 180) / Math.PI;
    });
    const reported = jobJson(order.job).speakers.map(({ direction }) => direction?.azimuth ?? Number.NaN);
    for (const [index, azimuth] of reported.entries()) expect(drawn[index]).toBeCloseTo(azimuth, 8);
    for (const azimuth of reported)
      expect(said(body)).toContain(`az ${(Number(azimuth.toFixed(1)) + 0).toFixed(1)}°`);
  });

  it("shows what the layout allows as parts of rings: U+030 from 30 to 45 degrees, M+110 from 100 to 120", () => {
    const bands = itemsOf(body).flatMap((item): Path[] =>
      item.kind === "path" && item.fill !== undefined && item.stroke !== undefined ? [item] : [],
    );
    const spans = bands.map(({ steps }) => {
      const azimuths = steps.flatMap((step) => {
        if (step.to === "close") return [];
        const { u, v } = back(step.at);
        return [Number(((Math.atan2(-(u - 2000), v - 3000) * 180) / Math.PI).toFixed(6))];
      });
      return [Math.min(...azimuths), Math.max(...azimuths)];
    });
    expect(spans).toEqual(
      expect.arrayContaining([
        [30, 45],
        [-135, -100],
        [100, 120],
        [-5, 5],
      ]),
    );
  });

  it("says which seat, its ear, the axes' signs, and OUTSIDE where the layout is not met", () => {
    expect(said(body).join(" ")).toContain("+ to the LEFT");
    expect(said(body)).toContain("ear 1200 mm");
    // TFL 1.1 m to the left and 1.6 m ahead: 34.5°; SL 2 m to the left and 1 m back: 117°; C ahead; TBR at -137°.
    expect(said(body).filter((words) => words === "OUTSIDE")).toHaveLength(1);
  });
});

describe("the plan of coverage", () => {
  const isWall = (opening: Opening): boolean => opening.surface.kind === "wall";

  it.each([
    ["Coverage on the ear plane: overhead", false],
    ["Coverage on the ear plane: in walls", true],
  ])(
    "%s: every point drawn is half the coverage off its loudspeaker's axis at ear height",
    (title, walls) => {
      const body = page(order, listeningPlan, title);
      const back = readBack(body, { u: 0, v: 0 });
      const curves = curvesOf(body);
      expect(curves.length).toBeGreaterThanOrEqual(2);
      const own = openings.filter((opening) => isWall(opening) === walls);
      const hit = new Set<string>();
      for (const curve of curves) {
        const errors = own.map((opening) => {
          const half = (opening.speaker.model.coverageDeg ?? 0) / 2;
          const off = curve
            .map(back)
            // A line that begins at a loudspeaker at ear height begins at no angle.
            .filter(({ u, v }) => Math.hypot(u - opening.position.x, v - opening.position.y) > 1e-6)
            .map(({ u, v }) => Math.abs(offAxisDeg(opening, [u, v, 1200]) - half));
          return { id: opening.speaker.id, worst: Math.max(...off) };
        });
        const best = errors.sort((a, b) => a.worst - b.worst)[0];
        expect(best?.worst).toBeLessThan(1e-9);
        hit.add(best?.id ?? "");
      }
      expect([...hit].sort()).toEqual(own.map(({ speaker }) => speaker.id).sort());
      expect(said(body).join(" ")).toMatch(/MODEL.*-6 dB angle.*No reflections/u);
    },
  );

  it("stays in the room, and behind a corner no wall is heard through", () => {
    const inL = orderFor(
      job({
        ...L_ROOM,
        models: { upright: { coverage: "170 deg" } },
        speakers: [
          { id: "S", channel: "M+090", model: "upright", on: "left", at: { front: "3 m", up: "1.5 m" } },
        ],
      }),
    );
    const body = page(inL, listeningPlan, "Coverage on the ear plane: in walls");
    const points = curvesOf(body)
      .flat()
      .map(readBack(body, { u: 0, v: 0 }));
    expect(points.length).toBeGreaterThan(4);
    for (const { u, v } of points) {
      expect(u).toBeGreaterThanOrEqual(-1e-6);
      expect(u).toBeLessThanOrEqual((v <= 3000 ? 7000 : 4000) + 1e-6);
      expect(v).toBeGreaterThanOrEqual(-1e-6);
      expect(v).toBeLessThanOrEqual(9000 + 1e-6);
    }
  });

  it("names those whose coverage nobody stated", () => {
    const some = orderFor(job({ ...HEARD, models: { tilted: { coverage: "90 deg" } } }));
    const titles = listeningPlan(some).flatMap(({ pages }) => pages.map(({ title }) => title));
    expect(titles).not.toContain("Coverage on the ear plane: in walls");
    expect(titles).toContain("Coverage on the ear plane: overhead");
  });
});

describe("the side view", () => {
  const left = page(order, sideView, "Side view", 0);
  const right = page(order, sideView, "Side view", 1);

  it("looks at the left wall with FRONT on the right, and at the right wall with FRONT on the left", () => {
    expect(left.frame?.view).toBe("FACING the left wall");
    expect(left.frame?.front).toBe(90);
    expect(right.frame?.view).toBe("FACING the right wall");
    expect(right.frame?.front).toBe(270);
    expect(said(left)).toEqual(expect.arrayContaining(["TFL", "SL", "C"]));
    expect(said(left)).not.toContain("TBR");
    expect(said(right)).toEqual(expect.arrayContaining(["TBR", "C"]));
    expect(said(right)).not.toContain("SL");
  });

  it("draws a ray under the true elevation of each, and writes the report's figure", () => {
    const back = readBack(left, { u: 0, v: 0 });
    const rays = linesOf(left).flatMap(({ from, to }) => {
      const [a, b] = [back(from), back(to)];
      const along = (at: { u: number; v: number }) => Math.hypot(at.u - 3000, at.v - 1200);
      const turn = (b.u - a.u) * (1200 - a.v) - (b.v - a.v) * (3000 - a.u);
      const isRay = Math.abs(turn) < 1e-3 && along(a) > 1 && along(b) > along(a) && along(b) < 2000;
      return isRay ? [(Math.atan2(b.v - 1200, Math.abs(b.u - 3000)) * 180) / Math.PI] : [];
    });
    for (const id of ["TFL", "SL", "C"]) {
      const { elevationDeg } = openingNamed(order.job, id).direction;
      expect(
        rays.some((ray) => Math.abs(ray - elevationDeg) < 1e-6),
        `${id} ${elevationDeg} ${rays}`,
      ).toBe(true);
      expect(said(left)).toContain(`el ${elevationDeg.toFixed(1)}°`);
    }
  });

  it("cuts the coverage: every point in the upright plane through the seat is half the coverage off the axis", () => {
    const back = readBack(left, { u: 0, v: 0 });
    const seen = openings.filter(({ speaker }) => speaker.id !== "TBR");
    const curves = curvesOf(left);
    expect(curves.length).toBeGreaterThanOrEqual(3);
    for (const curve of curves) {
      const worst = seen.map((opening) => {
        const half = (opening.speaker.model.coverageDeg ?? 0) / 2;
        const { x, y, z } = opening.position;
        return Math.max(
          ...curve
            .map(back)
            .filter(({ u, v }) => Math.hypot(2000 - x, u - y, v - z) > 1e-6)
            .map(({ u, v }) => Math.abs(offAxisDeg(opening, [2000, u, v]) - half)),
        );
      });
      expect(Math.min(...worst)).toBeLessThan(1e-9);
    }
  });

  const outlineOf = (answer: ReturnType<typeof job>): (readonly [number, number])[] => {
    const body = page(orderFor(answer), sideView, "Side view", 0);
    const path = itemsOf(body).find(
      (item): item is Path => item.kind === "path" && item.steps.at(-1)?.to === "close",
    );
    const back = readBack(body, { u: 0, v: 0 });
    return (path?.steps ?? []).flatMap((step) => {
      if (step.to === "close") return [];
      const { u, v } = back(step.at);
      return [[Math.round(u), Math.round(v)] as const];
    });
  };

  it("follows the ceiling: a slope, a tray over the seat, a soffit over it", () => {
    const speakers = [
      { id: "W", channel: "M+090", on: "left", model: "upright", at: { front: "3 m", up: "1 m" } },
    ];
    // 2000 mm at the front wall (y = 6000), 4000 mm at the back one.
    expect(outlineOf(job({ ...sloped("front"), speakers }))).toEqual([
      [0, 0],
      [6000, 0],
      [6000, 2000],
      [0, 4000],
    ]);
    // A tray of 2 x 2 m over the seat, 300 mm higher, 2 to 4 m from the front wall.
    const tray = {
      name: "tray",
      corners: TRAY_CORNERS,
      height: "2.9 m",
    };
    expect(outlineOf(job({ room: { ceilings: [tray] }, speakers }))).toEqual([
      [0, 0],
      [6000, 0],
      [6000, 2600],
      [4000, 2600],
      [4000, 2900],
      [2000, 2900],
      [2000, 2600],
      [0, 2600],
    ]);
    // Under the soffit along the left wall of the L all is 2300 mm high.
    const seats = [{ name: "middle", at: { left: "500 mm", front: "3 m" }, ear: "1.2 m", reference: true }];
    expect(outlineOf(job({ ...L_WITH_SOFFIT, seats, speakers }))).toEqual([
      [0, 0],
      [9000, 0],
      [9000, 2300],
      [0, 2300],
    ]);
  });
});

describe("lettering", () => {
  const few = ["an L with a soffit", "long words", "crowded"];
  const rooms = someOf(Object.keys(ROOMS), (name) => few.includes(name));
  const asked = someOf(ASKED, ({ paper, languages }) => paper === "letter" && languages?.length === 2);

  it.each(rooms)("has no words on others or out of the page: %s", (name) => {
    const answer = ROOMS[name]?.();
    if (answer === undefined) throw new Error(`no room ${name}`);
    for (const each of asked) {
      const one = orderFor(answer, each);
      for (const body of [listeningPlan, sideView]
        .flatMap((make) => make(one))
        .flatMap(({ pages }) => pages)) {
        expect(letteringFaults(one, body), `${name} ${JSON.stringify(each)} ${body.title}`).toEqual([]);
      }
    }
  });

  it("is no sheet for a room without loudspeakers", () => {
    const none = orderFor(job({ ...HEARD, speakers: [] }));
    expect([...listeningPlan(none), ...sideView(none)]).toEqual([]);
  });
});
