import type { Shape } from "../../geometry/shape.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { type Mounted, mount } from "../../listen/mounted.js";
import type { Asking } from "./asking.js";
import { askingsOf } from "./decision.js";
import { apartnessOf } from "./field.js";
import { comeTooClose } from "./search.js";
import type { Solved } from "./solve.js";

/** A loudspeaker at the place that was found for it. */
interface Standing {
  readonly asking: Asking;
  readonly centre: SurfacePoint;
  /** Nothing that keeps away from it, or it from, lies further than this beyond the other's own. */
  readonly reachMm: number;
}

/** The loudspeakers of a decision where they were found to stand. */
export function mountedOf({ decision, found }: Solved): readonly Mounted[] {
  return askingsOf(decision).flatMap(({ speaker, ground }, index) => {
    const centre = found.centres[index];
    return centre === undefined ? [] : [mount(speaker, ground.surface, centre)];
  });
}

function standingOf({ decision, found }: Solved): readonly Standing[] {
  return askingsOf(decision).flatMap((asking, index) => {
    const centre = found.centres[index];
    return centre === undefined ? [] : [{ asking, centre, reachMm: reachOf(asking) }];
  });
}

/** Half of the longest way across its opening and its flange, its clamps, and the gap asked for. */
function reachOf({ ground: { fitting } }: Asking): number {
  const acrossMm = Math.max(longestMm(fitting.opening), longestMm(fitting.flange));
  return acrossMm / 2 + fitting.clampReachMm + fitting.clearMm;
}

const longestMm = (shape: Shape): number =>
  shape.kind === "round" ? shape.diameterMm : Math.hypot(shape.widthMm, shape.heightMm);

/** Groups of indices of decisions whose openings come too close, one by one to each other; alone ones left out. */
export function groupsThatMeet(groups: readonly (readonly Solved[])[]): readonly (readonly number[])[] {
  const standing = groups.map((group) => group.flatMap(standingOf));
  const groupOf = standing.map((_, index) => index);
  const join = (a: number, b: number): void => {
    const [kept, gone] = [groupOf[a] ?? a, groupOf[b] ?? b];
    groupOf.forEach((group, index) => {
      if (group === gone) groupOf[index] = kept;
    });
  };
  standing.forEach((one, first) => {
    for (let second = first + 1; second < standing.length; second += 1) {
      if (groupOf[first] !== groupOf[second] && meet(one, standing[second] ?? [])) join(first, second);
    }
  });
  return [...new Set(groupOf)]
    .map((group) => [...groupOf.keys()].filter((index) => groupOf[index] === group))
    .filter(({ length }) => length > 1);
}

/** Whether any opening of the one comes too close to one of the other. */
const meet = (one: readonly Standing[], other: readonly Standing[]): boolean =>
  one.some((a) => other.some((b) => areTooClose(a, b)));

function areTooClose(a: Standing, b: Standing): boolean {
  if (a.asking.ground.surface.name !== b.asking.ground.surface.name) return false;
  const awayMm = Math.hypot(a.centre.u - b.centre.u, a.centre.v - b.centre.v);
  if (awayMm > a.reachMm + b.reachMm) return false;
  const distancesMm = apartnessOf(a.asking, b.asking);
  return comeTooClose({ first: 0, second: 1, distancesMm }, [a.centre, b.centre]);
}
