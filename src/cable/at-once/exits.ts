import type { Effort } from "../../effort.js";
import { type Box, isIn } from "../box.js";
import { type Axis, cornersOf, crossedBy, type Field, isAcross, isOpen, type Stretch } from "../field.js";
import type { Spot } from "../lanes.js";
import { type Boring, TURN_COSTS_MM } from "../network.js";
import { heldBy } from "./held.js";
import { type Meeting, meetingIn, type Network, placedAt, spotAt, tracksThrough } from "./network.js";

/*
 * The network goes round everything that is in the way, and a loudspeaker lies in its own opening: from there cable
 * comes straight out, past what lies round that very spot, to where the network begins.
 */

/** Where the network is reached from a spot. */
export interface Exit {
  readonly meeting: Meeting;
  /** Along which it is come to; null for the spot itself. */
  readonly axis: Axis | null;
  readonly cost: number;
  /** The spot, and where the way from it turns before it is there. */
  readonly way: readonly Spot[];
}

export interface Exits {
  /** Where tracks begin. */
  readonly exits: readonly Exit[];
  /** All meetings on the way there: another end may be one of them. */
  readonly passed: readonly Exit[];
}

/** Places at which the way out may turn, to each side: an opening that lies over a joist is come out of beside it. */
const MOST_TURNS = 32;

/** What is thought of passing members, and how long ways out may be looked for. */
export interface Passing {
  readonly boring: Boring;
  readonly effort: Effort;
}

/** What a step takes by itself, next to looking at a box or a corner beside it. */
const LOOKS_FOR_A_STEP = 40;

const AXES: readonly Axis[] = ["u", "v"];
const STEPS = [-1, 1] as const;

export function exitsOf(network: Network, spot: Spot, passing: Passing): Exits {
  const meeting = meetingIn(network, spot);
  if (meeting === null) return { exits: [], passed: [] };
  const first: Exit = { meeting, axis: null, cost: 0, way: [spotAt(network.sides, meeting)] };
  const out = outOf(network, spot, passing);
  const straight = AXES.map((axis) => STEPS.map((step) => out(first, axis, step)));
  // Where the straight way is shut, as along in a joist, the one beside it.
  const turned = AXES.flatMap((axis, index) =>
    STEPS.flatMap((step, side) => {
      const shut = !(straight[index]?.[side] ?? []).some((exit) => isOnTrack(network, exit.meeting));
      const across = straight[1 - index] ?? [];
      return shut
        ? across.flatMap((passed) => passed.slice(0, MOST_TURNS).flatMap((at) => out(at, axis, step)))
        : [];
    }),
  );
  const passed = [first, ...straight.flat(2), ...turned];
  return { exits: passed.filter((exit) => isOnTrack(network, exit.meeting)), passed };
}

const isOnTrack = (network: Network, meeting: Meeting): boolean =>
  tracksThrough(network, meeting).some((track) => track >= 0);

type Out = (from: Exit, axis: Axis, step: 1 | -1) => readonly Exit[];

/** Steps along an axis past what lies round the spot, as far as that reaches or up to where a track begins. */
function outOf(network: Network, spot: Spot, { boring, effort }: Passing): Out {
  const { sides } = network;
  const held = heldBy(spot);
  const beside = withoutWhatHolds(spot, held);
  const looks = LOOKS_FOR_A_STEP + beside.blocks.length + cornersOf(beside).length + beside.aslant.length;
  return (from, axis, step) => {
    const { field, column, row } = from.meeting;
    const side = sides[2 * field + (axis === "u" ? 0 : 1)];
    if (side === undefined) return [];
    const lane = axis === "u" ? row : column;
    const atOf = (place: number): number => placedAt(side, lane, place);
    const start = axis === "u" ? column : row;
    const isTurn = from.axis !== null && from.axis !== axis;
    const base = from.cost + (isTurn ? TURN_COSTS_MM : 0);
    const way = isTurn ? [...from.way, spotAt(sides, from.meeting)] : from.way;
    const found: Exit[] = [];
    let before = from.meeting;
    for (let place = start + step; place >= 0 && place < side.alongMm.length; place += step) {
      effort.spend(looks);
      const meeting = axis === "u" ? { field, column: place, row } : { field, column, row: place };
      if (isOneTrack(network, axis, before, meeting)) break;
      const stretch = stretchOf(axis, spotAt(sides, before), spotAt(sides, meeting));
      const leaves = before === from.meeting && from.axis === null && isAcross(beside, axis);
      if (!isOpen(beside, stretch, leaves)) break;
      if (crossedBy(beside, stretch).some((member) => boring.isForbidden(beside, member))) break;
      found.push({ meeting, axis, cost: base + Math.abs(atOf(place) - atOf(start)), way });
      before = meeting;
      const alongMm = side.alongMm[place] ?? 0;
      if (alongMm <= held.min[axis] || alongMm >= held.max[axis]) break;
    }
    return found;
  };
}

const stretchOf = (axis: Axis, from: Spot, to: Spot): Stretch => ({ axis, from: from.at, to: to.at });

function isOneTrack(network: Network, axis: Axis, one: Meeting, other: Meeting): boolean {
  const at = axis === "u" ? 0 : 1;
  const track = tracksThrough(network, one)[at];
  return track >= 0 && track === tracksThrough(network, other)[at];
}

/** A field with no blocks but those that lie about a spot without holding it. */
function withoutWhatHolds({ field, at }: Spot, { min, max }: Box): Field {
  const about = field.blocks.filter(
    (block) =>
      !isIn(block, at) && AXES.every((axis) => block.min[axis] <= max[axis] && block.max[axis] >= min[axis]),
  );
  return { ...field, blocks: about };
}

/** The other axis's track costs a turn where the spot is come to along one. */
export const turnsOnto = ({ axis }: Exit, onto: Axis): number =>
  axis === null || axis === onto ? 0 : TURN_COSTS_MM;
