import { toWorld } from "../geometry/frame.js";
import { length, subtract, type Vector } from "../geometry/vector.js";
import type { Member } from "../room/room.js";
import { SHARED_WITHIN_MM } from "./boring.js";
import { type Field, meeting, runOf } from "./field.js";
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
  return ({ surface: { frame } }, member, alongMm) => {
    const at = meeting(member, runOf(member), alongMm) ?? member.from;
    return 1 + Math.min(1, length(subtract(toWorld(frame, at), equipment)) / FAR_MM);
  };
}
