import { textBlock } from "../../drawing/text-block.js";
import { repeats } from "../../place/run.js";
import type { Found, Framing, Member } from "../../room/room.js";
import type { FoundMembers } from "../../words/english/found.js";
import { type Part, whole } from "../flow.js";
import type { Order } from "../sheet.js";

/** A member's number with the mark that leads to the note on who found it. */
export const numberText = ({ number, found }: Pick<Member, "number" | "found">): string =>
  found === null ? String(number) : `${number}*`;

/**
 * Who found which members elsewhere than the layout puts them, which besides, and which not at all, and when; null where
 * nobody did.
 */
export function foundNote({ words }: Order, framing: Framing): string | null {
  if (framing.kind === "unknown") return null;
  const { extra, missing, members } = framing;
  const isExtra = ({ number }: Member): boolean => extra.includes(number);
  const own = members.filter(repeats);
  const notes = [
    { say: words.found.note, all: stretches(own.filter((member) => !isExtra(member))) },
    { say: words.found.extra, all: stretches(own.filter(isExtra)) },
    { say: words.found.missing, all: stretches(missing) },
  ].flatMap(({ say, all }) => (all.length === 0 ? [] : [say(all)]));
  return notes.length === 0 ? null : notes.join(" ");
}

export function foundParts(order: Order, framing: Framing): Part[] {
  const note = foundNote(order, framing);
  if (note === null) return [];
  return [whole((place) => textBlock(note, { ...place, capMm: 2.5, face: "bold" }))];
}

interface Stretch {
  readonly first: number;
  readonly last: number;
  readonly found: Found;
}

/** Neighbours that one person found on one day, together. */
function stretches(members: readonly Member[]): FoundMembers[] {
  const found: Stretch[] = [];
  for (const member of members) {
    if (member.found === null) continue;
    const before = found.at(-1);
    if (before?.last === member.number - 1 && isSame(before.found, member.found)) {
      found.splice(-1, 1, { ...before, last: member.number });
    } else {
      found.push({ first: member.number, last: member.number, found: member.found });
    }
  }
  return found.map(({ first, last, found: { by, on } }) => ({
    numbers: first === last ? String(first) : `${first}–${last}`,
    by,
    on,
  }));
}

const isSame = (a: Found, b: Found): boolean => a.by === b.by && a.on === b.on;
