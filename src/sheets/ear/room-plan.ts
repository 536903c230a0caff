import { isInside } from "../../geometry/distance.js";
import { toWorld } from "../../geometry/frame.js";
import type { Polygon } from "../../geometry/shape.js";
import { levelAt } from "../../listen/coverage.js";
import type { Room } from "../../room/room.js";
import { extentOf } from "../marking/view.js";
import type { Cut } from "./curves.js";

/** No two points of a room are further apart, in mm. */
export function widestMm({ surfaces }: Room, outline: Polygon): number {
  const { widthMm, heightMm } = extentOf(outline);
  const highMm = Math.max(
    ...surfaces.flatMap(({ frame, edges }) => edges.map(({ from }) => toWorld(frame, from).z)),
  );
  return Math.hypot(widthMm, heightMm, highMm);
}

/** The level plane at the reference seat's ear, within the room's walls. */
export function earPlaneCut(room: Room, outline: Polygon): Cut {
  return {
    plane: levelAt(room.reference.ear.z),
    holds: (at) => isInside(at, outline),
    drawn: (at) => at,
    outline,
    mostMm: widestMm(room, outline),
  };
}
