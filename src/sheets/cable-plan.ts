import { boxOfArea } from "../cable/box.js";
import type { Cabling } from "../cable/cabling.js";
import { isBehindStraps } from "../cable/field.js";
import type { Leg } from "../cable/route.js";
import type { CableRun } from "../cable/run.js";
import type { Item, PagePoint, Window } from "../drawing/drawing.js";
import { label } from "../drawing/label.js";
import { boxAbout } from "../drawing/label-places.js";
import { circle, dashed, dot, line, outline, PEN, point, rectangle } from "../drawing/pen.js";
import { toWorld } from "../geometry/frame.js";
import type { SurfacePoint, Vector } from "../geometry/vector.js";
import type { Room } from "../room/room.js";
import { beside } from "./marking/beside.js";
import { fittedPages } from "./marking/fitted.js";
import { below } from "./marking/floor-plan.js";
import type { Piece } from "./marking/piece.js";
import { planOutline } from "./marking/plan-outline.js";
import type { Sketch } from "./marking/sketch.js";
import { boxOf, type View } from "./marking/view.js";
import { countedWhenAsked } from "./page-count.js";
import { saying } from "./reading-pages.js";
import type { Order, Sheet } from "./sheet.js";

/** The ways of all cables on the plan LOOKING DOWN. No sheet where no equipment is given. */
export function cablePlan(order: Order): Sheet[] {
  const { cabling, room } = order.job;
  if (cabling === null || room.equipment === null || cabling.runs.length === 0) return [];
  const { plan } = order.words.cabling;
  const facts = {
    title: plan.title,
    view: order.words.frame.lookingDown,
    hold: null,
    front: 0,
    faces: order.words.frame.faces.framing,
  };
  const making = fittedPages(order, {
    facts,
    figuresTitle: plan.figures,
    forms: [
      {
        sketch: sketchOf(order, cabling, room.equipment.at),
        parts: [saying(plan.use, "bold"), saying(plan.inWall)],
      },
    ],
    allFigures: () => [],
  });
  const sheet = {
    name: "cable-plan",
    trades: ["installer"],
    title: plan.title,
    whole: null,
  } as const;
  return [countedWhenAsked(sheet, making)];
}

function sketchOf(order: Order, cabling: Cabling, rack: Vector): Sketch {
  const { room } = order.job;
  return {
    ...planOutline(order),
    chains: [],
    caption: null,
    inside: (view) => [
      joistsPiece(room, view),
      obstructionsPiece(room, view),
      waysPiece(cabling.runs, view),
      rackPiece(order, rack, view),
      endsPiece(order, view),
    ],
  };
}

/** Joists as broken lines: what the cables cross. */
function joistsPiece({ surfaces }: Room, view: View): Piece {
  const items = surfaces.flatMap(({ kind, framing, frame }): Item[] => {
    if (kind !== "ceiling" || framing.kind === "unknown") return [];
    return framing.members
      .filter(isBehindStraps)
      .map(({ from, to }) =>
        line(
          view.place(below(toWorld(frame, from))),
          view.place(below(toWorld(frame, to))),
          dashed(PEN.fine, 2, 1.5),
        ),
      );
  });
  return { layer: "framing", rank: 9, items };
}

/** What stands in or behind a ceiling, with nothing kept off it: the ways go round it. */
function obstructionsPiece({ surfaces }: Room, view: View): Piece {
  const items = surfaces.flatMap(({ kind, obstructions, frame }): Item[] =>
    kind === "ceiling"
      ? obstructions.map(({ area }) => {
          const { min, max } = boxOfArea(area);
          const corners = [min, { u: max.u, v: min.v }, max, { u: min.u, v: max.v }];
          return outline(
            corners.map((corner) => view.place(below(toWorld(frame, corner)))),
            { stroke: dashed(PEN.thin, 0.6, 0.8) },
          );
        })
      : [],
  );
  return { layer: "obstructions", rank: 9, items };
}

/** As it lies behind the face: in a wall outside the room's line. */
const ends = ({ field, from, to }: Leg): readonly [SurfacePoint, SurfacePoint] => [
  below(toWorld(field.surface.frame, from, -field.levelMm)),
  below(toWorld(field.surface.frame, to, -field.levelMm)),
];

/** Every leg once however many cables lie in it; one that goes up or down a wall is a spot on it. */
function waysPiece(runs: readonly CableRun[], view: View): Piece {
  const drawn = new Map<string, Item>();
  for (const leg of runs.flatMap(({ legs }) => legs)) {
    const [from, to] = ends(leg).map(view.place);
    if (from === undefined || to === undefined) continue;
    drawn.set(keyOf(from, to), isSpot(from, to) ? dot(from, SPOT_MM) : line(from, to, PEN.outline));
  }
  return { layer: "notes", rank: 8, items: [...drawn.values()], taken: inWalls(runs, view) };
}

const AIR_MM = 0.6;

/** Legs in walls lie where the walls' names would: those keep off them. */
const inWalls = (runs: readonly CableRun[], view: View): Window[] =>
  runs
    .flatMap(({ legs }) => legs)
    .filter(({ field }) => field.surface.kind === "wall")
    .map((leg) => {
      const box = boxOf(ends(leg).map(view.place));
      return {
        x: box.x - AIR_MM,
        y: box.y - AIR_MM,
        widthMm: box.widthMm + 2 * AIR_MM,
        heightMm: box.heightMm + 2 * AIR_MM,
      };
    });

const SPOT_MM = 0.9;

const isSpot = (from: PagePoint, to: PagePoint): boolean => Math.hypot(to.x - from.x, to.y - from.y) < 0.1;

const keyOf = (...points: readonly PagePoint[]): string =>
  points
    .map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`)
    .sort()
    .join(" ");

const RACK_MM = 4;
const RING_MM = 1.6;

function rackPiece({ words }: Order, rack: Vector, view: View): Piece {
  const at = view.place(below(rack));
  const box = boxAbout(at, { widthMm: RACK_MM, heightMm: RACK_MM });
  const name = label([{ words: words.cabling.plan.rack, capMm: view.heights.smallMm, face: "bold" }]);
  return {
    layer: "notes",
    rank: 0,
    items: [rectangle(box, PEN.cut)],
    wishes: [beside({ box, reachMm: [0.5, 2, 4, 8], next: "further" }, [name, name], view)],
    taken: [box],
  };
}

/** A ring at each loudspeaker, with its id. */
function endsPiece({ job }: Order, view: View): Piece {
  const places = job.openings.map(({ speaker, position }) => ({
    id: speaker.id,
    at: view.place(below(position)),
  }));
  const ringBox = (at: PagePoint) => boxAbout(at, { widthMm: 2 * RING_MM, heightMm: 2 * RING_MM });
  return {
    layer: "notes",
    rank: 1,
    items: places.map(({ at }) => circle(point(at.x, at.y), RING_MM, PEN.outline)),
    wishes: places.map(({ id, at }) => {
      const name = label([{ words: id, capMm: view.heights.idMm, face: "bold" }]);
      return beside({ box: ringBox(at), reachMm: [0.5, 2, 4, 8, 12], next: "further" }, [name, name], view);
    }),
    taken: places.map(({ at }) => ringBox(at)),
  };
}
