import type { Polygon } from "./shape.js";
import { minus, outer } from "./surface-point.js";
import type { SurfacePoint } from "./vector.js";

/** Share of a line's length by which it may touch a wall at its own start. */
const AT_START = 1e-9;

/** Whether a straight line from a point in or on an outline reaches another without crossing the outline. */
export function isInSight(outline: Polygon, from: SurfacePoint, to: SurfacePoint): boolean {
  const along = minus(to, from);
  return outline.every((corner, index) => {
    const wall = minus(outline[(index + 1) % outline.length] ?? corner, corner);
    const turn = outer(along, wall);
    if (turn === 0) return true;
    const toWall = minus(corner, from);
    const share = outer(toWall, wall) / turn;
    const onWall = outer(toWall, along) / turn;
    return share <= AT_START || share > 1 || onWall < 0 || onWall > 1;
  });
}
