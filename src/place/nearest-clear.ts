import type { Fix } from "../findings/finding.js";
import { distanceToBodyMm } from "../geometry/body.js";
import type { Region } from "../geometry/clip.js";
import { nearestOnSegment, sidesOf } from "../geometry/distance.js";
import { distanceMm } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import type { Room, UnitSystem } from "../room/room.js";
import { MM_PER_INCH } from "../units/definitions.js";
import { bareArea, clearTest, leftBy } from "./clear-area.js";
import { fittingOf } from "./fitting.js";
import { neighbourObstacles, takenBy } from "./obstacles.js";
import { pointAt, type TapeLine, tapeLine, tapeMm } from "./tapes.js";

/** The finest mark that a fix is given to: what a tape shows. */
export const TAPE_STEP_MM: Readonly<Record<UnitSystem, number>> = { imperial: MM_PER_INCH / 16, metric: 1 };

export interface Wanted {
  readonly room: Room;
  readonly mounted: Mounted;
  readonly neighbours: readonly Mounted[];
  /** The clear area as if it were alone on the surface; worked out anew where it is not given. */
  readonly areaOf?: typeof bareArea;
  /** The walls (floor, ceiling) that the fix's two tapes hook on. */
  readonly from: readonly [string, string];
}

/**
 * The clear centre nearest to where the opening is, on whole marks of both tapes: rounded into the clear area and
 * checked again by the exact distances. Null where no clear centre is to be had on whole marks.
 */
export function nearestClearCentre({
  room,
  mounted,
  neighbours,
  from,
  areaOf = bareArea,
}: Wanted): Fix | null {
  const { surface, speaker, centre } = mounted;
  const fitting = fittingOf(speaker, room.checks);
  const search: Search = {
    centre,
    stepMm: TAPE_STEP_MM[room.units],
    lines: [tapeLine(room, surface, from[0]), tapeLine(room, surface, from[1])],
    isClear: clearTest(surface, fitting, neighbours),
  };
  const alone = areaOf(surface, fitting);
  const others = neighbourObstacles(neighbours, fitting);
  for (const reachMm of REACHES_MM) {
    const near = others.filter((obstacle) => distanceToBodyMm(centre, takenBy(obstacle)) <= reachMm);
    const found = nearestMark(search, nearestOnBorders(leftBy(surface, alone, near), centre));
    const isNearest = found !== null && found.awayMm <= reachMm;
    if (isNearest || near.length === others.length) return found === null ? null : fixAt(search, found);
  }
  return null;
}

/**
 * Neighbours this near are looked at first: a clear mark found nearer than that has none of the others in its way,
 * and most surfaces never need the second look.
 */
const REACHES_MM = [1000, Number.POSITIVE_INFINITY] as const;

interface Search {
  readonly centre: SurfacePoint;
  readonly stepMm: number;
  readonly lines: readonly [TapeLine, TapeLine];
  isClear(centre: SurfacePoint): boolean;
}

interface Candidate {
  readonly at: SurfacePoint;
  readonly awayMm: number;
}

/** On each side of the area the point nearest to `centre`, the nearest first. */
function nearestOnBorders(area: Region, centre: SurfacePoint): Candidate[] {
  return area
    .flatMap(sidesOf)
    .map((side) => nearestOnSegment(centre, side))
    .map((at) => ({ at, awayMm: distanceMm(at, centre) }))
    .sort((a, b) => a.awayMm - b.awayMm);
}

interface Mark {
  readonly steps: readonly [number, number];
  readonly at: SurfacePoint;
  readonly awayMm: number;
}

/** Of the clear marks round the candidates, the nearest; a candidate further off than one found cannot better it. */
function nearestMark(search: Search, candidates: readonly Candidate[]): Mark | null {
  const seen = new Set<string>();
  let nearest: Mark | null = null;
  for (const { at, awayMm } of candidates) {
    if (nearest !== null && awayMm >= nearest.awayMm) break;
    for (const mark of marksRound(search, at)) {
      const key = mark.steps.join(" ");
      if (seen.has(key) || (nearest !== null && mark.awayMm >= nearest.awayMm)) continue;
      seen.add(key);
      if (search.isClear(mark.at)) nearest = mark;
    }
  }
  return nearest;
}

/** Whole marks of both tapes to two on every side of a point. */
const MARKS_ROUND = [-1, 0, 1, 2] as const;

function marksRound({ lines, stepMm, centre }: Search, point: SurfacePoint): Mark[] {
  const [first, second] = lines;
  const below = (line: TapeLine): number => Math.floor(tapeMm(line, point) / stepMm);
  return MARKS_ROUND.flatMap((a) =>
    MARKS_ROUND.map((b) => [below(first) + a, below(second) + b] as const),
  ).flatMap((steps) => {
    const at = pointAt(lines, [steps[0] * stepMm, steps[1] * stepMm]);
    return at === null ? [] : [{ steps, at, awayMm: distanceMm(at, centre) }];
  });
}

function fixAt({ lines: [first, second], stepMm }: Search, { steps, at }: Mark): Fix {
  return {
    u: at.u,
    v: at.v,
    at: { [first.from]: steps[0] * stepMm, [second.from]: steps[1] * stepMm },
  };
}
