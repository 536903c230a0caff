/** The one thing in a list of one. Throws where there are more or none. */
export function only<Item>(items: readonly Item[]): Item {
  const [first, ...more] = items;
  if (first === undefined || more.length > 0) throw new Error(`${items.length} where one is wanted`);
  return first;
}
