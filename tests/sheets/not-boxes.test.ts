import { describe, expect, it } from "vitest";
import type { SurfacePoint } from "../../src/geometry/vector.js";
import { floorPlanOf, floorTapesOf } from "../../src/sheets/marking/floor-plan.js";
import { tapesOf } from "../../src/sheets/tapes.js";
import { type Parts, TRAY_CORNERS } from "../rooms/build.js";
import { job, openingNamed } from "../rooms/job.js";
import { ANGLED, L_ROOM, L_WITH_SOFFIT, sloped } from "../rooms/not-boxes.js";
import { orderFor } from "./orders.js";

const inRoom = (said: Parts, ...speakers: readonly Parts[]) => job({ ...said, speakers });
/** Joists from left to right every 600 mm. */
const FRAMED: Parts = {
  ceiling: { at: null, first: "600 mm", spacing: "600 mm" },
  left: null,
  right: null,
  front: null,
  back: null,
};

const tapes = (one: ReturnType<typeof job>, id: string, stage: "bare" | "boarded" = "bare") => {
  const { governing, checks } = tapesOf(one.room, openingNamed(one, id), stage);
  const short = (tape: { from: string; mm: number } | null) =>
    tape === null ? null : `${tape.from} ${tape.mm.toFixed(1)}`;
  return { governing: governing.map(short), checks: checks.map(short) };
};

describe("tapes in an L: 4 m wide in front, 7 m behind the step at 6 m from the front", () => {
  it("are those that were typed where they can be held, the opposite ones from what is across there", () => {
    const one = inRoom(
      L_ROOM,
      { id: "FRONT", at: { left: "1 m", front: "2 m" } },
      { id: "LEG", at: { end: "1 m", back: "500 mm" } },
    );
    expect(tapes(one, "FRONT")).toEqual({
      governing: ["left 1000.0", "front 2000.0"],
      checks: ["right 3000.0", "back 7000.0"],
    });
    // Across from the back wall in the leg is the step, 3 m away; from the end the left wall, 7 m.
    expect(tapes(one, "LEG")).toEqual({
      governing: ["end 1000.0", "back 500.0"],
      checks: ["left 6000.0", "step 2500.0"],
    });
  });

  it("give way to the wall before one that no tape reaches inside the room", () => {
    // x = 4000 - 1000, but 8 m from the front, past the end of the right wall: from the end 7000 - 3000.
    // In the leg 8 m from the front, at x = 6000, the front wall lies behind the step: 8000 - 6000.
    const one = inRoom(
      L_ROOM,
      { id: "PAST", at: { right: "1 m", front: "8 m" } },
      { id: "LEG", at: { left: "6 m", front: "8 m" } },
    );
    expect(tapes(one, "PAST").governing).toEqual(["end 4000.0", "front 8000.0"]);
    expect(tapes(one, "LEG").governing).toEqual(["left 6000.0", "step 2000.0"]);
  });

  it("never run outside the room, wherever the opening is", () => {
    const inside = ({ x, y }: { x: number; y: number }): boolean =>
      x >= -1e-6 && y >= -1e-6 && y <= 9000 + 1e-6 && x <= (y <= 3000 + 1e-6 ? 7000 : 4000) + 1e-6;
    const spots = [500, 1500, 3500, 3900, 4100, 5500, 6500].flatMap((left) =>
      [500, 2500, 5900, 6100, 7500, 8500].flatMap((front) =>
        inside({ x: left, y: 9000 - front }) ? [{ left, front }] : [],
      ),
    );
    expect(spots.length).toBeGreaterThan(25);
    const one = inRoom(
      L_ROOM,
      ...spots.map(({ left, front }, index) => ({
        id: `S${index}`,
        at: {
          [index % 2 === 0 ? "left" : "right"]: `${index % 2 === 0 ? left : Math.max(0, 4000 - left)} mm`,
          front: `${front} mm`,
        },
      })),
    );
    for (const opening of one.openings) {
      const { frame } = opening.surface;
      const world = ({ u, v }: SurfacePoint) => ({ x: frame.origin.x - u, y: v });
      if (!inside(world(opening.centre))) continue;
      for (const tape of tapesOf(one.room, opening, "bare").governing) {
        for (const part of [0, 0.25, 0.5, 0.75, 1]) {
          const at = {
            u: tape.foot.u + (opening.centre.u - tape.foot.u) * part,
            v: tape.foot.v + (opening.centre.v - tape.foot.v) * part,
          };
          expect(inside(world(at)), `${opening.speaker.id} from ${tape.from}`).toBe(true);
        }
      }
    }
  });

  it("over the floor are such too", () => {
    const one = inRoom(
      L_ROOM,
      { id: "A", at: { right: "1 m", front: "2 m" } },
      { id: "B", at: { right: "1500 mm", front: "2 m" } },
      { id: "LEG", at: { end: "1 m", back: "500 mm" } },
    );
    const plan = floorPlanOf(orderFor(one));
    if (plan === null) throw new Error("no plan");
    expect(plan.control.map(({ name }) => name)).toEqual(["front", "right"]);
    const { governing } = floorTapesOf(plan, openingNamed(one, "LEG"));
    expect(governing.map(({ from, mm }) => `${from} ${mm.toFixed(0)}`)).toEqual(["step 2500", "end 1000"]);
  });
});

describe("what stands on each side of an opening in an L", () => {
  const said = (at: Parts) =>
    openingNamed(inRoom({ ...L_ROOM, framing: FRAMED }, { id: "S", model: "tilted", at })).aim?.fromRun;

  it("is what is straight ahead there, not the wall of another leg that looks the same way", () => {
    // The seat is at (2000, 6000) of the world; from (3200, 7500) the arrow goes left and back, from (800, 7500) right.
    expect(said({ left: "3200 mm", front: "1500 mm" })).toMatchObject({ end: "left", toward: "back" });
    expect(said({ left: "800 mm", front: "2700 mm" })).toMatchObject({ end: "right", toward: "back" });
    // In the leg, 8 m from the front at x = 6000, what lies toward the front is the step.
    expect(said({ left: "6 m", front: "8 m" })).toMatchObject({ end: "left", toward: "step" });
  });
});

describe("tapes beside a soffit of 800 mm along the left wall", () => {
  it("hook on the soffit's side where it stands before the wall, on its board once that is there", () => {
    const one = inRoom(
      { ...L_WITH_SOFFIT, stage: { walls: "both" } },
      { id: "C", at: { left: "1800 mm", front: "2 m" } },
      { id: "S", on: "soffit", at: { left: "300 mm", front: "2 m" } },
    );
    expect(tapes(one, "C").governing).toEqual(["soffit 1000.0", "front 2000.0"]);
    expect(tapes(one, "C", "boarded").governing).toEqual(["soffit 987.5", "front 1987.5"]);
    // On the soffit the wall is there to hook on; across from it is the soffit's edge, which its board makes wider.
    expect(tapes(one, "S")).toEqual({
      governing: ["left 300.0", "front 2000.0"],
      checks: ["ceiling 500.0", "back 7000.0"],
    });
    expect(tapes(one, "S", "boarded").checks[0]).toBe("ceiling 512.5");
  });
});

describe("tapes in a tray and beside it", () => {
  const TRAY: Parts = {
    room: {
      ceilings: [
        {
          name: "tray",
          corners: TRAY_CORNERS,
          height: "2800 mm",
        },
      ],
    },
  };
  const one = inRoom(
    TRAY,
    { id: "IN", on: "tray", at: { left: "1500 mm", front: "2700 mm" } },
    { id: "BESIDE", at: { right: "400 mm", front: "2700 mm" } },
  );

  it("say which side of it they hook on, since the same ceiling is on all four", () => {
    expect(tapes(one, "IN")).toEqual({
      governing: ["ceiling.left 500.0", "ceiling.front 700.0"],
      checks: ["ceiling.right 1500.0", "ceiling.back 1300.0"],
    });
    // Beside it on the right: from the tray's own right side 600 to where 400 from the right wall is.
    expect(tapes(one, "BESIDE").checks[0]).toBe("tray.right 600.0");
  });

  it("say it in words in both languages", () => {
    const { words } = orderFor(one);
    expect(words.frame.hook("ceiling.left")).toBe("the CEILING, LEFT SIDE");
    expect(words.frame.wall("tray.right")).toBe("TRAY, RIGHT SIDE");
    expect(orderFor(one, { languages: ["es"] }).words.frame.hook("ceiling.left")).toBe(
      "el CIELO RASO, LADO IZQUIERDA",
    );
  });
});

describe("tapes from walls at an angle", () => {
  it("are square to them, and check only against what faces them", () => {
    const one = inRoom(ANGLED, { id: "S", at: { slant: "1 m", back: "3 m" } });
    // The right wall stands at 18.4 degrees to the slant: near enough to check it. x = (1000 sqrt 40 + 6000) / 6.
    const x = (1000 * Math.sqrt(40) + 2 * 3000) / 6;
    expect(tapes(one, "S")).toEqual({
      governing: ["slant 1000.0", "back 3000.0"],
      checks: [`right ${(5000 - x).toFixed(1)}`, "front 3000.0"],
    });
  });
});

describe("tapes on a slope", () => {
  it("lie on its board: while walls are bare they differ from the framing's by what the slant of the board makes", () => {
    // 2 m of rise over 6 m: the board, 12.5 square to the slope, reaches 12.5 x tan less toward the low wall it leans over.
    const one = inRoom(sloped("front"), { id: "S", on: "slope", at: { left: "1 m", front: "2 m" } });
    expect(tapes(one, "S").governing).toEqual([
      "left 1000.0",
      `front ${(2000 + (12.5 * 2000) / 6000).toFixed(1)}`,
    ]);
    const other = inRoom(sloped("back"), { id: "S", on: "slope", at: { left: "1 m", front: "2 m" } });
    expect(tapes(other, "S").governing[1]).toBe(`front ${(2000 - (12.5 * 2000) / 6000).toFixed(1)}`);
  });
});
