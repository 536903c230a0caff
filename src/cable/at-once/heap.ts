/** Whole numbers in the order of their keys, the least first: a binary heap that makes nothing anew at a step. */
export class Heap {
  private keys = new Float64Array(1024);
  private items = new Int32Array(1024);
  private size = 0;

  /** The least key; infinite where nothing is left. */
  get leastKey(): number {
    return this.size === 0 ? Number.POSITIVE_INFINITY : (this.keys[0] ?? 0);
  }

  push(item: number, key: number): void {
    if (this.size === this.keys.length) this.grow();
    const { keys, items } = this;
    let index = this.size;
    this.size += 1;
    while (index > 0) {
      const parent = (index - 1) >> 1;
      const above = keys[parent] ?? 0;
      if (above <= key) break;
      keys[index] = above;
      items[index] = items[parent] ?? 0;
      index = parent;
    }
    keys[index] = key;
    items[index] = item;
  }

  /** Takes out the item of the least key; of nothing it is not to be asked. */
  pop(): number {
    const { keys, items } = this;
    const least = items[0] ?? 0;
    this.size -= 1;
    const size = this.size;
    const key = keys[size] ?? 0;
    const item = items[size] ?? 0;
    let index = 0;
    for (;;) {
      let child = 2 * index + 1;
      if (child >= size) break;
      if (child + 1 < size && (keys[child + 1] ?? 0) < (keys[child] ?? 0)) child += 1;
      const below = keys[child] ?? 0;
      if (below >= key) break;
      keys[index] = below;
      items[index] = items[child] ?? 0;
      index = child;
    }
    keys[index] = key;
    items[index] = item;
    return least;
  }

  private grow(): void {
    const keys = new Float64Array(2 * this.keys.length);
    keys.set(this.keys);
    this.keys = keys;
    const items = new Int32Array(2 * this.items.length);
    items.set(this.items);
    this.items = items;
  }
}
