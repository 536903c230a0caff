import type { Effort } from "../../effort.js";
import { isIn } from "../box.js";
import type { Field } from "../field.js";
import { joinsOf, type Spot } from "../lanes.js";
import { type Ask, type Route, routeOf } from "../route.js";
import { causedLanesOf } from "./caused-lanes.js";
import { type Exits, exitsOf } from "./exits.js";
import { heldBy } from "./held.js";
import { type Network, networkOf, spotAt } from "./network.js";
import { Search } from "./search.js";

/*
 * The ways of many cables in one go: one search from the equipment on finds the least to everywhere, where a search
 * for each would look at the same over and over. Cables then do not look for the holes of those before them, but as all
 * go the same least ways from one place they keep together as long as their ways are the same.
 */

/** Everything that many routes are looked for among. */
export interface AskedAtOnce extends Omit<Ask, "spots"> {
  /** Of each route: equipment, the points to go by, and the loudspeaker. */
  readonly spots: readonly (readonly Spot[])[];
}

/** The shortest way for each of the routes; null for those that the allowed ways do not lead to. */
export function routesAtOnce(asked: AskedAtOnce): readonly (Route | null)[] {
  const fields = new Map(asked.fields.map((field) => [field, withAllBlocks(field, asked.others)]));
  const told = new Map<string, Spot>();
  const spots = asked.spots.map((route) => route.map((spot) => sameSpot(told, fields, spot)));
  const network = networkFor(asked, fields, [...told.values()]);
  const exits = new Map<Spot, Exits>();
  const { boring, effort } = asked;
  const exitsFrom = (spot: Spot): Exits => {
    const known = exits.get(spot) ?? exitsOf(network, spot, { boring, effort });
    exits.set(spot, known);
    return known;
  };
  const stages = stagesOf(spots);
  const found = new Map(
    [...stages].map(([from, to]) => [from, stagesFrom({ network, effort }, from, to, exitsFrom)]),
  );
  return spots.map((route) => {
    const parts = route.slice(1).map((to, index) => found.get(route[index] ?? to)?.get(to) ?? null);
    return parts.includes(null) ? null : inOne(parts.filter((part) => part !== null));
  });
}

const inOne = (parts: readonly Route[]): Route => ({
  legs: parts.flatMap(({ legs }) => legs),
  lengthMm: parts.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
});

const withAllBlocks = (field: Field, others: Ask["others"]): Field => ({
  ...field,
  blocks: [
    ...field.blocks,
    ...others.filter((other) => other.field.surface === field.surface).map(({ box }) => box),
  ],
});

/** One object for each place, however many routes go by it. */
function sameSpot(told: Map<string, Spot>, fields: ReadonlyMap<Field, Field>, { field, at }: Spot): Spot {
  const key = `${field.surface.name} ${at.u} ${at.v}`;
  const known = told.get(key) ?? { field: fields.get(field) ?? field, at };
  told.set(key, known);
  return known;
}

/** By where they begin, all spots that stages lead to. */
function stagesOf(routes: readonly (readonly Spot[])[]): ReadonlyMap<Spot, ReadonlySet<Spot>> {
  const stages = new Map<Spot, Set<Spot>>();
  for (const route of routes) {
    route.slice(1).forEach((to, index) => {
      const from = route[index] ?? to;
      const known = stages.get(from) ?? new Set<Spot>();
      known.add(to);
      stages.set(from, known);
    });
  }
  return stages;
}

/** Of all ceilings, and of the walls that cables begin or end in. */
function networkFor(
  { boring, effort }: AskedAtOnce,
  all: ReadonlyMap<Field, Field>,
  spots: readonly Spot[],
): Network {
  const fields = [...all.values()].filter(
    (field) => field.surface.kind === "ceiling" || spots.some((spot) => spot.field === field),
  );
  const joins = joinsOf(fields);
  const lanes = causedLanesOf({ fields, joins, spots, everyBay: boring.everyBay, effort });
  return networkOf({ lanes, joins, boring, effort });
}

interface Within {
  readonly network: Network;
  readonly effort: Effort;
}

function stagesFrom(
  { network, effort }: Within,
  from: Spot,
  to: ReadonlySet<Spot>,
  exitsFrom: (spot: Spot) => Exits,
): ReadonlyMap<Spot, Route | null> {
  const search = new Search(network, closedTo(network, from), effort);
  search.startFrom(exitsFrom(from));
  search.run([...to].map(exitsFrom));
  return new Map(
    [...to].map((spot) => {
      const way = wayWithin(network, [from, spot], exitsFrom) ?? search.wayTo(exitsFrom(spot));
      return [spot, way === null ? null : routeOf(way, effort)];
    }),
  );
}

/** The way between two spots of which one lies in what holds the other, as in one opening: no network is there. */
function wayWithin(
  { sides }: Network,
  [from, to]: readonly [Spot, Spot],
  exitsFrom: (spot: Spot) => Exits,
): readonly Spot[] | null {
  if (from === to) return [from];
  if (from.field !== to.field || !(isIn(heldBy(from), to.at) || isIn(heldBy(to), from.at))) return null;
  const ways = exitsFrom(from).passed.flatMap((one) =>
    exitsFrom(to)
      .passed.filter(
        ({ meeting }) => meeting.column === one.meeting.column && meeting.row === one.meeting.row,
      )
      .map((other) => ({ one, other, cost: one.cost + other.cost })),
  );
  const [least] = ways.sort((a, b) => a.cost - b.cost);
  if (least === undefined) return null;
  return [...least.one.way, spotAt(sides, least.one.meeting), ...[...least.other.way].reverse()];
}

/** Only cable to a wall goes into it, and all into the one that it comes from. */
const closedTo = ({ sides }: Network, from: Spot): readonly number[] =>
  sides
    .filter(({ axis }) => axis === "u")
    .map(({ field }, index) =>
      field.surface.kind === "ceiling" || field.surface === from.field.surface ? 0 : index + 1,
    );
