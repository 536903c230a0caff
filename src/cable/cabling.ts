import { Effort, within } from "../effort.js";
import { toSurface, toWorld } from "../geometry/frame.js";
import { length, subtract, type Vector } from "../geometry/vector.js";
import type { Mounted } from "../listen/mounted.js";
import { type Room, type Speaker, type SurfaceSpot, surfaceNamed } from "../room/room.js";
import { USUAL_DIAMETER_MM, USUAL_SPOOL_MM } from "../standards/cable-practice.js";
import { MOST_LOOKS_FOR_WAYS } from "../standards/house-limits.js";
import { type Assumed, assumedFor } from "./assumed.js";
import { routesAtOnce } from "./at-once/routes.js";
import { type Hole, holesOf } from "./boring.js";
import { type Box, boxOfArea, boxOfShape, isIn } from "./box.js";
import { type Field, fieldOf } from "./field.js";
import { USUAL_LIMIT_DB } from "./gauge.js";
import type { Boring, Spot } from "./network.js";
import { type Route, routeThrough } from "./route.js";
import { type CableRun, type Ends, endsOf, runOf } from "./run.js";
import { type PullPlan, pullPlanOf } from "./spools.js";
import { withoutRimsPassedOver } from "./steps.js";
import { trunkFrom, unwantedFrom } from "./trunk.js";
import { alongMembers, boxToldOn, toldOn } from "./turned.js";

export interface Cabling {
  readonly runs: readonly CableRun[];
  /** Loudspeakers that the allowed ways do not lead to. */
  readonly unreached: readonly Speaker[];
  /** True where finding the ways would take more looks than one run has: then none is reached. */
  readonly isTooMuch: boolean;
  readonly holes: readonly Hole[];
  readonly plan: PullPlan;
  /** What is added to the ways. */
  readonly ends: Ends;
  /** Most that a run may lose. */
  readonly limitDb: number;
  /** What the room file leaves open and these figures rest on. */
  readonly assumed: readonly Assumed[];
  readonly cableMm: { readonly two: number; readonly four: number; readonly basis: "given" | "usual" };
}

/** The cabling of a room; null where no equipment is given. */
export function cablingOf(room: Room, all: readonly Mounted[]): Cabling | null {
  if (room.equipment === null) return null;
  const ways = waysIn(room, all, room.equipment.at);
  const { at } = room.equipment;
  const found = within(ways.effort, () => routesTo(ways, all, at));
  const routed = found ?? all.map((mounted): Routed => ({ mounted, route: null }));
  const runs = routed.flatMap(({ mounted, route }) =>
    route === null ? [] : [runOf(room, mounted.speaker, route)],
  );
  const cableMm = diametersOf(room);
  const ends = endsOf(room);
  let plan: PullPlan | null = null;
  return {
    runs,
    unreached: routed.flatMap(({ mounted, route }) => (route === null ? [mounted.speaker] : [])),
    isTooMuch: found === null,
    holes: holesOf(
      runs.map((run) => ({
        speaker: run.speaker.id,
        legs: run.legs,
        cableMm: run.conductors > 2 ? cableMm.four : cableMm.two,
      })),
    ).map((hole) => onItsSurface(hole, ways)),
    // `check` tells nothing of it, and every grouping of a dozen cables is looked at: made when first asked for.
    get plan() {
      plan ??= pullPlanOf(runs, room.cable.spoolsMm.length > 0 ? room.cable.spoolsMm : [USUAL_SPOOL_MM]);
      return plan;
    },
    cableMm,
    ends,
    limitDb: room.cable.lossDb ?? USUAL_LIMIT_DB,
    assumed: assumedFor(room, { runs, ends, cableMm }),
  };
}

/** A hole as it lies on its surface, told in that one's own figures. */
function onItsSurface(hole: Hole, { room, fields }: Ways): Hole {
  const field = fieldNamed(fields, hole.surface);
  return { ...hole, at: toldOn(field.surface, surfaceNamed(room, hole.surface), hole.at) };
}

interface Routed {
  readonly mounted: Mounted;
  readonly route: Route | null;
}

/** Given back in the room's order. */
function routesTo(ways: Ways, all: readonly Mounted[], equipment: Vector): readonly Routed[] {
  if (!isForOneSearch(ways, all)) return oneByOne(ways, all, equipment);
  const unwanted = unwantedFrom(equipment);
  const routes = allAtOnce(ways, all, { isForbidden: () => false, unwanted, everyBay: false });
  return all.map((mounted, index) => ({ mounted, route: routes[index] ?? null }));
}

/** The shortest way to each of these loudspeakers; null where the allowed ways do not lead there. */
export function routesToEach(ways: Ways, all: readonly Mounted[], boring: Boring): Iterable<Route | null> {
  if (isForOneSearch(ways, all)) return allAtOnce(ways, all, boring);
  return (function* () {
    for (const mounted of all) yield routeTo(ways, mounted, boring);
  })();
}

/** By one search for all of them. */
export function allAtOnce(ways: Ways, all: readonly Mounted[], boring: Boring): readonly (Route | null)[] {
  const spots = all.map((mounted) => spotsTo(ways, mounted));
  const routes = routesAtOnce({
    ...{ fields: ways.fields, others: ways.openings, spots, boring },
    effort: ways.effort,
  });
  return routes.map((route) => withStart(ways, route));
}

/** The furthest first, so that the others can go along with it. */
function oneByOne(ways: Ways, all: readonly Mounted[], equipment: Vector): readonly Routed[] {
  const offMm = ({ position }: Mounted): number => length(subtract(position, equipment));
  const trunk = trunkFrom(equipment);
  const routes = new Map<Mounted, Route | null>();
  for (const mounted of [...all].sort((a, b) => offMm(b) - offMm(a))) {
    const route = routeTo(ways, mounted, {
      isForbidden: () => false,
      unwanted: trunk.unwanted,
      everyBay: false,
    });
    routes.set(mounted, route);
    trunk.add(route?.legs ?? []);
  }
  return all.map((mounted) => ({ mounted, route: routes.get(mounted) ?? null }));
}

/*
 * Each route by itself looks at the meetings of all lanes, so that it takes the longer the more corners there are, by
 * their square. Where that comes to more than a few tenths of a second, one search finds them all.
 */
const CORNERS_TO_DOUBLE = 32;
const MOST_ONE_BY_ONE = 300;

function isForOneSearch({ fields }: Ways, all: readonly Mounted[]): boolean {
  const corners = fields.reduce(
    (sum, { blocks, outline, surface: { voids } }) =>
      sum + 2 * blocks.length + outline.length + voids.reduce((more, { edges }) => more + edges.length, 0),
    0,
  );
  const stages = all.reduce((sum, { speaker }) => sum + 1 + speaker.cable.via.length, 0);
  return stages * (1 + corners / CORNERS_TO_DOUBLE) ** 2 > MOST_ONE_BY_ONE;
}

const diametersOf = ({ cable }: Room): Cabling["cableMm"] =>
  cable.outsideDiameterMm === null
    ? { ...USUAL_DIAMETER_MM, basis: "usual" }
    : { two: cable.outsideDiameterMm, four: cable.outsideDiameterMm, basis: "given" };

/** Everything that routes are looked for among. */
export interface Ways {
  readonly room: Room;
  readonly fields: readonly Field[];
  /** Where cable comes out of the wall by the equipment. */
  readonly start: Spot;
  /** From the equipment to that wall. */
  readonly startMm: number;
  readonly openings: readonly { readonly field: Field; readonly box: Box }[];
  /** How long ways may be looked for. */
  readonly effort: Effort;
}

export function waysIn(room: Room, all: readonly Mounted[], equipment: Vector): Ways {
  const cableMm = diametersOf(room).four;
  const fields = room.surfaces.map((own) => {
    const surface = withoutRimsPassedOver(alongMembers(own), room.surfaces);
    // What stands further behind the face than the cable and its distance is passed in front.
    const inTheWay = surface.obstructions.filter(
      ({ behindMm, keepMm }) => behindMm === null || behindMm < keepMm + cableMm,
    );
    const avoided = room.cable.avoid.filter((area) => area.surface === surface.name);
    return fieldOf(surface, [
      ...inTheWay.map(({ area, keepMm }) => boxOfArea(area, keepMm)),
      ...avoided.map(({ area }) => boxToldOn(own, surface, boxOfArea(area))),
    ]);
  });
  const start = nearestWall(fields, equipment);
  const openings = all.map(({ speaker, surface, centre }) => {
    const field = fieldNamed(fields, surface.name);
    const box = boxOfShape(speaker.opening, centre, speaker.model.clampReachMm);
    return { field, box: boxToldOn(surface, field.surface, box) };
  });
  return {
    ...{ room, fields, openings, start: start.spot, startMm: start.offMm },
    effort: new Effort(MOST_LOOKS_FOR_WAYS),
  };
}

function spotOn({ room, fields }: Ways, { surface, at }: SurfaceSpot): Spot {
  const field = fieldNamed(fields, surface);
  return { field, at: toldOn(surfaceNamed(room, surface), field.surface, at) };
}

function fieldNamed(fields: readonly Field[], name: string): Field {
  const found = fields.find(({ surface }) => surface.name === name);
  if (found === undefined) throw new RangeError(`no surface named ${name}`);
  return found;
}

/** The wall that the equipment stands nearest to, and how far off it. */
function nearestWall(
  fields: readonly Field[],
  equipment: Vector,
): { readonly spot: Spot; readonly offMm: number } {
  const [nearest] = fields
    .filter(({ surface }) => surface.kind === "wall")
    .map((field) => {
      const { frame, edges } = field.surface;
      const dropped = toSurface(frame, equipment);
      const us = edges.map(({ from }) => from.u);
      const at = { u: Math.min(Math.max(dropped.u, Math.min(...us)), Math.max(...us)), v: dropped.v };
      return { spot: { field, at }, offMm: length(subtract(equipment, toWorld(frame, at))) };
    })
    .sort((a, b) => a.offMm - b.offMm);
  if (nearest === undefined) throw new RangeError("a room without walls");
  return nearest;
}

/** By a search of its own, the shortest way to a loudspeaker by its own points; null where the allowed ways do not lead there. */
export function routeTo(ways: Ways, mounted: Mounted, boring: Boring): Route | null {
  const spots = spotsTo(ways, mounted);
  const end = spots.at(-1) ?? ways.start;
  const others = ways.openings.filter(({ field, box }) => field !== end.field || !isIn(box, end.at));
  return withStart(ways, routeThrough({ fields: ways.fields, spots, others, boring, effort: ways.effort }));
}

/** Equipment, the points to go by, and the loudspeaker. */
const spotsTo = (ways: Ways, { speaker, surface, centre }: Mounted): readonly Spot[] => [
  ways.start,
  ...speaker.cable.via.map((via) => spotOn(ways, via)),
  spotOn(ways, { surface: surface.name, at: centre }),
];

/** With the way from the equipment to its wall. */
const withStart = ({ startMm }: Ways, route: Route | null): Route | null =>
  route === null ? null : { ...route, lengthMm: route.lengthMm + startMm };
