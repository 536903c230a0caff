import type { Region } from "./clip.js";
import { sidesOf } from "./distance.js";
import { surfacePoint } from "./surface-point.js";
import type { SurfacePoint } from "./vector.js";

export interface Extent {
  readonly least: SurfacePoint;
  readonly most: SurfacePoint;
}

export function extentOf(region: Region): Extent {
  const corners = region.flat();
  const [us, vs] = [corners.map(({ u }) => u), corners.map(({ v }) => v)];
  return {
    least: surfacePoint(Math.min(...us), Math.min(...vs)),
    most: surfacePoint(Math.max(...us), Math.max(...vs)),
  };
}

/** Whether points lie in a region; even-odd over all its rings, so that holes are out. */
export function holdsTest(region: Region): (point: SurfacePoint) => boolean {
  const sides = region.flatMap(sidesOf);
  return ({ u, v }) => {
    let isIn = false;
    for (const { from, to } of sides) {
      if (from.v > v === to.v > v) continue;
      if (u < from.u + ((v - from.v) / (to.v - from.v)) * (to.u - from.u)) isIn = !isIn;
    }
    return isIn;
  };
}
