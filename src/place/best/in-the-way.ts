import type { Hindrance } from "../../findings/hindrance.js";
import { directionOf, inner, plus, surfacePoint, times } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { headingOf } from "../../listen/direction.js";
import { breachesOf, type Figure } from "../../listen/window.js";
import type { Surface } from "../../room/room.js";
import { tapeMm } from "../tapes.js";
import type { Spot } from "./field.js";
import type { Taken } from "./ground.js";
import { isHeld } from "./marks.js";
import type { Found } from "./search.js";
import { offDegAt, viewTo } from "./sight.js";
import type { Solved } from "./solve.js";

/** For each loudspeaker of the decision, in order; nothing for one that stands as well as marks on a tape let it. */
export function inTheWayOf(solved: Solved): readonly (readonly Hindrance[])[] {
  const { field, found } = solved;
  const own = field.spots.map((spot, index) => ofSpot(spot, found.centres[index]));
  const ids = field.spots.map(({ asking }) => asking.speaker.id);
  return own.map((ofIt, index) => {
    if (isAsGoodAsCanBe(found, index)) return [];
    return [...ofIt, ...ofPartner(own, ids, index), ...ofLine(solved, ids, index)];
  });
}

/** The line that it shares, or its partner does, where that costs anything. */
function ofLine({ lines, lineDeg }: Solved, ids: readonly string[], index: number): readonly Hindrance[] {
  if (lineDeg < NEXT_TO_NOTHING_DEG) return [];
  const sharedBy = (side: number): readonly Hindrance[] => {
    const others = (lines[side] ?? []).filter((other) => other !== ids[side]);
    return others.length === 0 ? [] : [{ kind: "line", with: others }];
  };
  const partner = ids[1 - index];
  const own = sharedBy(index);
  if (own.length > 0 || partner === undefined) return own;
  return sharedBy(1 - index).map((of) => ({ kind: "partner", id: partner, of }));
}

/** Nobody hears less, and marks on a tape seldom give it. */
const NEXT_TO_NOTHING_DEG = 0.05;

function isAsGoodAsCanBe({ costs }: Found, index: number): boolean {
  const cost = costs[index];
  return cost === undefined || (cost.breaches === 0 && cost.offDeg < NEXT_TO_NOTHING_DEG);
}

/** What is in the way of the other one of a pair, and is not in its own: a joist may run over both. */
function ofPartner(
  own: readonly (readonly Hindrance[])[],
  ids: readonly string[],
  index: number,
): readonly Hindrance[] {
  const id = ids[1 - index];
  if (id === undefined) return [];
  const isOwn = (one: Hindrance): boolean => (own[index] ?? []).some((other) => isSame(one, other));
  return (own[1 - index] ?? []).filter((one) => !isOwn(one)).map((of) => ({ kind: "partner", id, of }));
}

function ofSpot(spot: Spot, at: SurfacePoint | undefined): readonly Hindrance[] {
  if (at === undefined) return [];
  const better = wayToBetter(spot, at);
  const held = heldFromBetter(spot, at);
  return [...takenThere(spot, at, better), ...windowThere(spot, at, better), ...held];
}

/** The way on the surface along which the angle from the preferred direction falls fastest, as far as tapes are free. */
function wayToBetter({ sight, marks }: Spot, { u, v }: SurfacePoint): SurfacePoint {
  const fall = surfacePoint(
    offDegAt(sight, u - 1, v) - offDegAt(sight, u + 1, v),
    offDegAt(sight, u, v - 1) - offDegAt(sight, u, v + 1),
  );
  const [first, second] = marks.axes.map(isHeld);
  if (first === second) return first ? surfacePoint(0, 0) : directionOf(fall);
  const free = directionOf(first ? marks.perMm[1] : marks.perMm[0]);
  return directionOf(times(free, inner(fall, free)));
}

/** Two marks of the coarser tape, and a little: what a centre on whole marks may stand off from what stops it. */
const marksMm = ({ marks: { axes } }: Spot): number => 2 * Math.max(axes[0].stepMm, axes[1].stepMm) + 0.1;

/** Of what the centre stands against, that which is nearer a step on the way to better. */
function takenThere(spot: Spot, at: SurfacePoint, better: SurfacePoint): readonly Hindrance[] {
  const reachMm = marksMm(spot);
  const ahead = plus(at, times(better, reachMm));
  const stops = ({ distanceMm }: Taken): boolean => {
    const hereMm = distanceMm(at.u, at.v);
    return hereMm <= reachMm && hereMm - distanceMm(ahead.u, ahead.v) > NEARER * reachMm;
  };
  const { ground, kept, wish } = spot.asking;
  // What lies over a joint already is kept from nothing by it.
  const joints = wish.jointDeg > 0 ? ground.overJoints : [];
  const keptOff = joints.filter(({ distanceMm }) => distanceMm(at.u, at.v) >= 0);
  const stopping = [...ground.taken, ...kept, ...keptOff]
    .filter(stops)
    .flatMap(({ what }) => named(what, ground.surface));
  return stopping.filter((one, index) => stopping.findIndex((other) => isSame(one, other)) === index);
}

/** Share of the way by which it must come nearer: what one slides along does not stop anybody. */
const NEARER = 0.02;

const isSame = (a: Hindrance, b: Hindrance): boolean => JSON.stringify(a) === JSON.stringify(b);

function named(what: Taken["what"], surface: Surface): readonly Hindrance[] {
  switch (what.kind) {
    case "member": {
      const { kind, number } = what.member;
      return [{ kind: "member", member: { surface: surface.name, kind, number } }];
    }
    case "obstruction":
      return [{ kind: "obstruction", name: what.obstruction.name }];
    case "edge":
      return [{ kind: "edge", along: what.edge.along }];
    case "neighbour":
      return [{ kind: "neighbour", id: what.neighbour.speaker.id }];
    case "joint":
      return [{ kind: "joint", joint: what.joint.kind }];
    case "unknown":
      return [{ kind: "unknown" }];
    case "ruled-out":
      return [];
  }
}

/** Figures that a step on the way to better would bring outside the window. */
function windowThere(spot: Spot, at: SurfacePoint, better: SurfacePoint): readonly Hindrance[] {
  const { asking, sight } = spot;
  const { window } = asking.wish;
  if (window === null) return [];
  const outsideAt = ({ u, v }: SurfacePoint): readonly Figure[] =>
    breachesOf(window, headingOf(viewTo(sight, asking.ground.surface, u, v))).map(({ figure }) => figure);
  const here = outsideAt(at);
  return outsideAt(plus(at, times(better, marksMm(spot))))
    .filter((figure) => !here.includes(figure))
    .map((figure) => ({ kind: "window", figure }));
}

/** Held tapes that read otherwise where the preferred direction meets the surface. */
function heldFromBetter(
  { asking: { hold }, marks, sight: { ideal } }: Spot,
  at: SurfacePoint,
): readonly Hindrance[] {
  return marks.axes
    .filter((axis) => isHeld(axis) && hold.some(({ from }) => from === axis.line.from))
    .filter(({ line, stepMm }) => ideal === null || Math.abs(tapeMm(line, ideal) - tapeMm(line, at)) > stepMm)
    .map(({ line }) => ({ kind: "hold", from: line.from }));
}
