import type { Body } from "../geometry/body.js";
import { difference, type Region, withoutMany } from "../geometry/clip.js";
import { convexSum } from "../geometry/convex.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { minus, plus, surfacePoint } from "../geometry/surface-point.js";
import type { Surface } from "../room/room.js";

/**
 * A little more of a surface than where a centre is clear of bodies: where this has nothing, nothing is clear, which row
 * by row and mark by mark takes long to find out. Arcs are coarse chords that lie inside the true ones.
 */
export function mayBeClear({ finished, voids }: Surface, bodies: readonly Body[]): Region {
  const ofIt = difference(
    [finished],
    voids.map((each) => each.finished),
  );
  const inOrder = [...bodies].sort((a, b) => firstOf(a) - firstOf(b));
  const everyNth = Math.ceil(inOrder.length / MOST_LAID_TOGETHER);
  const some = inOrder.filter((_, index) => index % everyNth === 0);
  return withoutMany(ofIt, some.map(withinBody));
}

/** Of more, which are dense joists, those beside one take nearly the same as it does. */
const MOST_LAID_TOGETHER = 2000;

const firstOf = ({ core }: Body): number => (core[0]?.u ?? 0) + (core[0]?.v ?? 0);

/** By so much less than it takes, so that what exactly passes between two bodies is not lost to whole steps. */
const LESS_MM = EPSILON_MM;
/** Chords lie this far inside their arcs at most, as a share of the radius and in all. */
const MOST_ARC = { share: 0.02, mm: 2 };

/** A polygon that lies in the body and reaches as far as it does square to its sides. */
function withinBody({ core, radiusMm }: Body): Region {
  const byMm = radiusMm - LESS_MM;
  if (byMm <= 0) return [];
  const [first, second] = core;
  const side = first === undefined || second === undefined ? surfacePoint(1, 0) : minus(second, first);
  const from = Math.atan2(side.v, side.u);
  const share = Math.min(MOST_ARC.share, MOST_ARC.mm / byMm);
  const chords = 4 * Math.ceil(Math.PI / Math.acos(1 - share) / 4);
  const disc = Array.from({ length: chords }, (_, index) => {
    const turn = from + (2 * Math.PI * index) / chords;
    return surfacePoint(byMm * Math.cos(turn), byMm * Math.sin(turn));
  });
  return [
    core.length === 1 && first !== undefined ? disc.map((at) => plus(at, first)) : convexSum(core, disc),
  ];
}
