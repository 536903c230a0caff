import type { Item } from "./drawing.js";
import type { Block } from "./text-block.js";

/** A block whose height is known and whose items are made when they are first asked for: most blocks are only measured. */
export function drawnLater(heightMm: number, draw: () => readonly Item[]): Block {
  let items: readonly Item[] | null = null;
  return {
    heightMm,
    get items() {
      items ??= draw();
      return items;
    },
  };
}

/** Such blocks one under the other from `y`, with air after each but those of no height. */
export function stackedLater(y: number, makers: readonly ((y: number) => Block)[], gapMm = 0): Block {
  const blocks: Block[] = [];
  let at = y;
  for (const make of makers) {
    const block = make(at);
    blocks.push(block);
    at += block.heightMm === 0 ? 0 : block.heightMm + gapMm;
  }
  return drawnLater(at - y, () => blocks.flatMap(({ items }) => items));
}
