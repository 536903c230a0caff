import type { Field } from "./field.js";
import type { Ground } from "./ground.js";
import { type Search, searchOf } from "./search.js";

/**
 * One search for all that want the same on the same ground by the same marks: hundreds of one channel and model are
 * then looked for once. Only for fields of which each has all to stay away from that those before it had, in their order,
 * and maybe more after that.
 */
export type Searches = (field: Field) => Search;

export function rememberedSearches(): Searches {
  const grounds = new Map<Ground, number>();
  const known = new Map<string, Search>();
  const numberOf = (ground: Ground): number => {
    const number = grounds.get(ground) ?? grounds.size;
    grounds.set(ground, number);
    return number;
  };
  return (field) => {
    const wanted = field.spots.map(({ asking: { ground, wish }, marks: { axes }, follows }) => [
      numberOf(ground),
      ...[wish, axes, follows],
    ]);
    const key = JSON.stringify(wanted);
    const search = known.get(key) ?? searchOf(field);
    known.set(key, search);
    return search;
  };
}
