/*
 * Two revisions of a room: the second one with changes that somebody made, in another hand, or with slips.
 */
import fc from "fast-check";
import type { Language } from "../../../src/units/language.js";
import { bytesOf, rawBytes, slippedRooms } from "./arbitrary.js";
import { anyChange, type Change, changed, mildChange } from "./changes.js";
import { hand, inAnotherHand } from "./hand.js";
import { scalar, treeOf, written } from "./tree.js";

export interface Pair {
  readonly old: Uint8Array;
  readonly new: Uint8Array;
  /** Whether both say the same in other hands. */
  readonly isSame: boolean;
  /** In which it is asked about. */
  readonly language: Language;
}

const language = fc.constantFrom<Language>("en", "es");

const mild = (maxLength: number): fc.Arbitrary<Change[]> => fc.array(mildChange, { maxLength });

/** Revisions of the good rooms, of which most can be used. */
export function revisions(texts: readonly string[]): fc.Arbitrary<Pair> {
  const trees = texts.map(treeOf);
  const room = fc.nat({ max: trees.length - 1 });
  return fc
    .record({
      room,
      first: mild(1),
      since: fc.oneof(
        { weight: 1, arbitrary: fc.constant<Change[]>([]) },
        { weight: 6, arbitrary: mild(3) },
        { weight: 1, arbitrary: fc.array(anyChange, { minLength: 1, maxLength: 1 }) },
      ),
      hand,
      language,
    })
    .map((chosen) => {
      const others = trees.filter((_, index) => index !== chosen.room);
      const apply = (tree: (typeof trees)[number], changes: readonly Change[]) =>
        changes.reduce((each, change) => changed(each, change, others), tree);
      const before = apply(trees[chosen.room] ?? scalar(""), chosen.first);
      return {
        old: bytesOf(written(before, 3)),
        new: bytesOf(inAnotherHand(apply(before, chosen.since), chosen.hand)),
        isSame: chosen.since.length === 0,
        language: chosen.language,
      };
    });
}

/** A good room and another one altogether, or one with slips, or bytes. */
export function strangers(texts: readonly string[]): fc.Arbitrary<Pair> {
  const good = fc.constantFrom(...texts).map(bytesOf);
  const other = fc.oneof(good, slippedRooms(texts).map(bytesOf), rawBytes(texts));
  return fc
    .record({ good, other, turned: fc.boolean(), language })
    .map(({ good: one, other: two, turned, language: spoken }) => ({
      old: turned ? two : one,
      new: turned ? one : two,
      isSame: false,
      language: spoken,
    }));
}
