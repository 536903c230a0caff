import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Vector } from "../geometry/vector.js";
import type { Member } from "../room/room.js";
import { SHARED_WITHIN_MM } from "./boring.js";
import { type Field, runOf } from "./field.js";
import type { Boring } from "./network.js";
import type { Leg } from "./route.js";

/** Where members are passed already, and what that makes of further holes. */
export interface Trunk {
  readonly unwanted: Boring["unwanted"];
  add(legs: readonly Leg[]): void;
}

/** Past this from the equipment one place for a hole is as good as another; no room is as long. */
const FAR_MM = 100_000;

export function trunkFrom(equipment: Vector): Trunk {
  const places = new Map<Member, number[]>();
  const isShared = (member: Member, alongMm: number): boolean =>
    places.get(member)?.some((place) => Math.abs(place - alongMm) <= SHARED_WITHIN_MM) ?? false;
  // Cables that keep together pass a member at one place.
  const addTo = (member: Member, place: number): void => {
    const known = places.get(member);
    if (known === undefined) places.set(member, [place]);
    else if (!known.includes(place)) known.push(place);
  };
  // Every route asks again, of the same lanes.
  const alone = new Map<Member, Map<number, number>>();
  const unwanted = unwantedFrom(equipment);
  const aloneAt = (field: Field, member: Member, alongMm: number): number => {
    const known = alone.get(member) ?? new Map<number, number>();
    alone.set(member, known);
    const found = known.get(alongMm) ?? unwanted(field, member, alongMm);
    known.set(alongMm, found);
    return found;
  };
  return {
    unwanted: (field, member, alongMm) => (isShared(member, alongMm) ? 0 : aloneAt(field, member, alongMm)),
    add: (legs) => {
      for (const { crossed, from } of legs) {
        for (const member of crossed) addTo(member, from[runOf(member)]);
      }
    },
  };
}

/** How little a hole is wanted that no other cable has made yet: more the further from the equipment, from 1 to 2. */
export function unwantedFrom(equipment: Vector): Boring["unwanted"] {
  // Asked of every member and lane: the place on the member's centre line, in the world, with nothing made for it.
  return ({ surface: { frame } }, member, alongMm) => {
    const { from, to } = member;
    const axis = runOf(member);
    const lengthMm = to[axis] - from[axis];
    const found = (alongMm - from[axis]) / lengthMm;
    const share = Math.max(-found, found - 1) * Math.abs(lengthMm) > EPSILON_MM ? 0 : found;
    const u = from.u + (to.u - from.u) * share;
    const v = from.v + (to.v - from.v) * share;
    const x = frame.origin.x + (frame.u.x * u + frame.v.x * v) - equipment.x;
    const y = frame.origin.y + (frame.u.y * u + frame.v.y * v) - equipment.y;
    const z = frame.origin.z + (frame.u.z * u + frame.v.z * v) - equipment.z;
    return 1 + Math.min(1, Math.hypot(x, y, z) / FAR_MM);
  };
}
