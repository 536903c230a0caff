/*
 * Room files near the good ones: the examples with keys changed, taken out, repeated, moved and nested, values
 * swapped for others and for odd ones; then slips of typing in the text itself.
 */
import fc from "fast-check";
import { anyChange, changed, far, mildChange } from "./changes.js";
import { ODD_CHARACTERS, ODD_PIECES } from "./odd.js";
import { scalar, treeOf, written } from "./tree.js";

/** A slip in the text: at a place, some characters are gone and something else stands there. */
interface Slip {
  readonly at: number;
  readonly gone: number;
  readonly instead: string;
}

function slipped(text: string, { at, gone, instead }: Slip): string {
  const from = at % (text.length + 1);
  return text.slice(0, from) + instead + text.slice(from + gone);
}

const slip: fc.Arbitrary<Slip> = fc.record({
  at: far,
  gone: fc.oneof(fc.constant(0), fc.nat({ max: 3 }), fc.nat({ max: 400 })),
  instead: fc.oneof(
    fc.constantFrom(...ODD_CHARACTERS),
    fc.constantFrom(...ODD_PIECES),
    fc.constant(""),
    fc.string({ unit: "binary", maxLength: 6 }),
  ),
});

/** Text in UTF-8; half of a pair becomes the three bytes that it would have, which are no UTF-8. */
export const bytesOf = (text: string): Uint8Array =>
  Buffer.concat(
    [...text].map((each) => (/\p{Cs}/u.test(each) ? halfPair(each.charCodeAt(0)) : Buffer.from(each))),
  );

const halfPair = (code: number): Buffer =>
  Buffer.of(0xe0 | (code >> 12), 0x80 | ((code >> 6) & 0x3f), 0x80 | (code & 0x3f));

/** Room files near these good ones. */
export function spoiltRooms(texts: readonly string[]): fc.Arbitrary<string> {
  const trees = texts.map(treeOf);
  return fc
    .record({
      room: fc.nat({ max: texts.length - 1 }),
      changes: fc.array(anyChange, { minLength: 5, maxLength: 5 }),
      howMany: fc.constantFrom(1, 1, 2, 5),
      linesDownTo: fc.nat({ max: 6 }),
      slips: fc.oneof(
        { weight: 3, arbitrary: fc.constant<Slip[]>([]) },
        { weight: 1, arbitrary: fc.array(slip, { maxLength: 3 }) },
      ),
      ends: fc.constantFrom("\n", "\n", "\n", "\r\n", "\r"),
    })
    .map(({ room, changes, howMany, linesDownTo, slips, ends }) => {
      const others = trees.filter((_, index) => index !== room);
      const start = trees[room] ?? scalar("");
      const spoilt = changes.slice(0, howMany).reduce((tree, each) => changed(tree, each, others), start);
      return slips.reduce<string>(slipped, written(spoilt, linesDownTo)).replaceAll("\n", ends);
    });
}

/** The good rooms with other figures, other values, more and fewer entries: most of them can be printed. */
export function otherRooms(texts: readonly string[]): fc.Arbitrary<string> {
  const trees = texts.map(treeOf);
  return fc
    .record({
      start: fc.constantFrom(...trees),
      changes: fc.array(mildChange, { minLength: 1, maxLength: 3 }),
    })
    .map(({ start, changes }) => {
      const others = trees.filter((tree) => tree !== start);
      return written(
        changes.reduce((tree, each) => changed(tree, each, others), start),
        3,
      );
    });
}

/** The good files with slips in their text only, comments and all. */
export const slippedRooms = (texts: readonly string[]): fc.Arbitrary<string> =>
  fc
    .record({ text: fc.constantFrom(...texts), slips: fc.array(slip, { minLength: 1, maxLength: 4 }) })
    .map(({ text, slips }) => slips.reduce<string>(slipped, text));

/** Bytes of any kind, some of them within a good file. */
export const rawBytes = (texts: readonly string[]): fc.Arbitrary<Uint8Array> =>
  fc
    .record({
      text: fc.constantFrom("", ...texts),
      at: far,
      bytes: fc.uint8Array({ maxLength: 200 }),
      rest: fc.boolean(),
    })
    .map(({ text, at, bytes, rest }) => {
      const good = Buffer.from(text);
      const from = at % (good.length + 1);
      return Buffer.concat([good.subarray(0, from), bytes, rest ? good.subarray(from) : Buffer.of()]);
    });
