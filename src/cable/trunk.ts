import { toWorld } from "../geometry/frame.js";
import { length, subtract, type Vector } from "../geometry/vector.js";
import type { Member } from "../room/room.js";
import { SHARED_WITHIN_MM } from "./boring.js";
import { meeting, runOf } from "./field.js";
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
  return {
    unwanted: ({ surface }, member, alongMm) => {
      if (isShared(member, alongMm)) return 0;
      const at = meeting(member, runOf(member), alongMm) ?? member.from;
      const offMm = length(subtract(toWorld(surface.frame, at), equipment));
      return 1 + Math.min(1, offMm / FAR_MM);
    },
    add: (legs) => {
      for (const { crossed, from } of legs) {
        for (const member of crossed) addTo(member, from[runOf(member)]);
      }
    },
  };
}
