import type { Area } from "../geometry/shape.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Obstruction, Surface } from "../room/room.js";
import { isNear } from "./near.js";

export interface ObstructionChange {
  readonly surface: string;
  readonly name: string;
  readonly what: "added" | "gone" | "changed";
}

/** By name; those of one name on one surface in their order. */
export function obstructionChanges(was: Surface, is: Surface): readonly ObstructionChange[] {
  const surface = is.name;
  const left = [...was.obstructions];
  const now = is.obstructions.flatMap((obstruction): readonly ObstructionChange[] => {
    const { name } = obstruction;
    const index = left.findIndex((other) => other.name === name);
    const [old] = index < 0 ? [] : left.splice(index, 1);
    if (old === undefined) return [{ surface, name, what: "added" }];
    const isSame =
      isSameObstruction(old, obstruction) &&
      standsAsBefore({ surface: was, area: old.area }, { surface: is, area: obstruction.area });
    return isSame ? [] : [{ surface, name, what: "changed" }];
  });
  return [...now, ...left.map(({ name }) => ({ surface, name, what: "gone" }) as const)];
}

function isSameObstruction(a: Obstruction, b: Obstruction): boolean {
  const behind = ({ behindMm }: Obstruction): number => behindMm ?? Number.NEGATIVE_INFINITY;
  const [first, second] = [a, b].map(({ area }) => boxOf(area));
  return (
    a.area.kind === b.area.kind &&
    isNear(a.keepMm, b.keepMm) &&
    isNear(behind(a), behind(b)) &&
    first !== undefined &&
    second !== undefined &&
    AXES.every((axis) => isNear(first.max[axis] - first.min[axis], second.max[axis] - second.min[axis]))
  );
}

interface Box {
  readonly min: SurfacePoint;
  readonly max: SurfacePoint;
}

const AXES = ["u", "v"] as const;

function boxOf(area: Area): Box {
  if (area.kind === "rectangle") return area;
  const { centre, diameterMm } = area;
  const half = diameterMm / 2;
  return {
    min: { u: centre.u - half, v: centre.v - half },
    max: { u: centre.u + half, v: centre.v + half },
  };
}

interface Standing {
  readonly surface: Surface;
  readonly area: Area;
}

/** As far as before from one end of the surface at least, along each axis: the other end may have moved away. */
function standsAsBefore(before: Standing, after: Standing): boolean {
  const gaps = ({ surface, area }: Standing, axis: "u" | "v"): readonly [number, number] => {
    const places = surface.edges.map(({ from }) => from[axis]);
    const { min, max } = boxOf(area);
    return [min[axis] - Math.min(...places), Math.max(...places) - max[axis]];
  };
  return AXES.every((axis) => {
    const [was, is] = [gaps(before, axis), gaps(after, axis)];
    return isNear(was[0], is[0]) || isNear(was[1], is[1]);
  });
}
