import type { Item, PagePoint, Window } from "../../drawing/drawing.js";
import { dot, line } from "../../drawing/pen.js";
import type { Opening } from "../../job.js";
import { type Window as Allowed, windowOf } from "../../listen/window.js";
import type { Room } from "../../room/room.js";
import { AZIMUTH_COMPARED_TO_DEG } from "../../standards/house-limits.js";
import type { Piece } from "../marking/piece.js";
import type { View } from "../marking/view.js";
import { away, azimuthOnPlan, band, bandTaken, elevationOnSide, type Ring, type Turned } from "./dial.js";
import { LINES } from "./lines.js";

/** Layers of ITU-R BS.2051 by the first letter of a channel's label, from the outermost ring inward. */
const LAYERS = ["upper", "middle", "lower"] as const;
export type Layer = (typeof LAYERS)[number];

function layerOf({ speaker }: Opening): Layer {
  const [letter] = speaker.channel;
  if (letter === "B") return "lower";
  return letter === "U" || letter === "T" ? "upper" : "middle";
}

const RING_MM = 3;
const APART_MM = 1;

/** The layers that the openings are in, upper first. */
export const layersOf = (openings: readonly Opening[]): readonly Layer[] =>
  LAYERS.filter((layer) => openings.some((opening) => layerOf(opening) === layer));

/** A ring for each layer, the outermost ending at `outerMm`. */
function ringsOf(openings: readonly Opening[], outerMm: number): ReadonlyMap<Layer, Ring> {
  return new Map(
    layersOf(openings).map((layer, index) => {
      const toMm = outerMm - index * (RING_MM + APART_MM);
      return [layer, { fromMm: toMm - RING_MM, toMm }] as const;
    }),
  );
}

const MOST_MM = 24;
const LEAST_MM = 14;

/** As far from the seat as there is room up to the outline's box on the page, within bounds. */
export function dialMm(centre: PagePoint, { box }: View): number {
  const free = Math.min(
    centre.x - box.x,
    box.x + box.widthMm - centre.x,
    centre.y - box.y,
    box.y + box.heightMm - centre.y,
  );
  return Math.max(LEAST_MM, Math.min(MOST_MM, free - 1));
}

interface Sighted {
  readonly opening: Opening;
  readonly window: Allowed | null;
  readonly ring: Ring;
}

function sighted(room: Room, openings: readonly Opening[], outerMm: number): Sighted[] {
  const rings = ringsOf(openings, outerMm);
  return openings.flatMap((opening) => {
    const ring = rings.get(layerOf(opening));
    return ring === undefined ? [] : [{ opening, ring, window: windowOf(room, opening.speaker.channel) }];
  });
}

/**
 * Round the reference seat on the plan: what the layout allows each channel as a part of its layer's ring, the line to
 * each loudspeaker, and a dot where this crosses the ring.
 */
export function azimuthsPiece(
  room: Room,
  openings: readonly Opening[],
  { view, centre, ends }: { view: View; centre: PagePoint; ends: readonly PagePoint[] },
): Piece {
  const all = sighted(room, openings, dialMm(centre, view));
  const compared = all.filter(({ opening }) => opening.direction.elevationDeg <= AZIMUTH_COMPARED_TO_DEG);
  const bands = compared.flatMap(({ window, ring }) =>
    window === null ? [] : [{ ring, range: window.azimuthDeg }],
  );
  return {
    layer: "notes",
    rank: 9,
    items: [
      ...bands.map(({ ring, range }) => band(centre, ring, range, azimuthOnPlan)),
      ...ends.map((end) => line(centre, end, LINES.direction)),
      ...compared.flatMap(({ opening, ring, window }) =>
        window === null ? [] : crossing(centre, ring, azimuthOnPlan(opening.direction.azimuthDeg)),
      ),
    ],
    taken: bands.flatMap(({ ring, range }) => bandTaken(centre, ring, range, azimuthOnPlan)),
  };
}

const DOT_MM = 0.8;

const crossing = (centre: PagePoint, { fromMm, toMm }: Ring, way: PagePoint): Item =>
  dot(away(centre, way, (fromMm + toMm) / 2), DOT_MM);

/** A ray of the dial on a side view, for all loudspeakers that are seen under one elevation. */
export interface Ray {
  readonly openings: readonly Opening[];
  readonly elevationDeg: number;
  readonly from: PagePoint;
  readonly tip: PagePoint;
  readonly way: PagePoint;
}

/** True where one looks to the front to see it. */
const isAhead = ({ direction }: Opening): boolean => Math.abs(direction.azimuthDeg) <= 90;

const RAY_PAST_MM = 2;

export interface Dial {
  readonly items: readonly Item[];
  readonly taken: readonly Window[];
  readonly rays: readonly Ray[];
}

/**
 * Round the reference seat on a side view: the elevations that the layout allows, and a ray at the true elevation of
 * each loudspeaker, turned about the seat into the plane of the drawing. `front` is where the front wall is.
 */
export function elevationDial(
  room: Room,
  openings: readonly Opening[],
  { centre, outerMm, front }: { centre: PagePoint; outerMm: number; front: 1 | -1 },
): Dial {
  const ring = { fromMm: outerMm - 2 * RING_MM, toMm: outerMm };
  const turned = (opening: Opening): Turned =>
    elevationOnSide(isAhead(opening) ? front : front === 1 ? -1 : 1);
  const bands = openings.flatMap((opening) => {
    const window = windowOf(room, opening.speaker.channel);
    return window === null ? [] : [{ range: window.elevationDeg, turned: turned(opening) }];
  });
  const rays = raysOf(openings).map(({ openings: alike, first }): Ray => {
    const { elevationDeg } = first.direction;
    const way = turned(first)(elevationDeg);
    return {
      openings: alike,
      elevationDeg,
      way,
      from: away(centre, way, 3),
      tip: away(centre, way, outerMm + RAY_PAST_MM),
    };
  });
  return {
    items: [
      ...bands.map(({ range, turned: by }) => band(centre, ring, range, by)),
      ...rays.map(({ from, tip }) => line(from, tip, LINES.direction)),
    ],
    taken: bands.flatMap(({ range, turned: by }) => bandTaken(centre, ring, range, by)),
    rays,
  };
}

interface Alike {
  readonly first: Opening;
  readonly openings: readonly Opening[];
}

/** Those that are seen on one side under one elevation, to the tenth of a degree that is written. */
function raysOf(openings: readonly Opening[]): Alike[] {
  const keyOf = (opening: Opening): string =>
    `${isAhead(opening)} ${opening.direction.elevationDeg.toFixed(1)}`;
  const groups = new Map<string, Alike>();
  for (const opening of openings) {
    const key = keyOf(opening);
    const group = groups.get(key);
    groups.set(key, { first: group?.first ?? opening, openings: [...(group?.openings ?? []), opening] });
  }
  return [...groups.values()];
}
