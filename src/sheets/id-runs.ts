/** Fewer than these in a row are named one by one. Our own choice. */
const LEAST = 4;

/** An id that ends with a number, as it counts on: `S12` after `S11`. */
const NUMBERED = /^(.*?)(0|[1-9]\d*)$/u;

/** Ids in their order, those that count up without a gap as `S1–S28`: four hundred names fill a page and tell less. */
export function idRuns(ids: readonly string[]): readonly string[] {
  const runs: string[][] = [];
  for (const id of ids) {
    const last = runs.at(-1);
    if (last !== undefined && countsOn(last.at(-1) ?? "", id)) last.push(id);
    else runs.push([id]);
  }
  return runs.flatMap((run) => (run.length < LEAST ? run : [`${run[0]}–${run.at(-1)}`]));
}

function countsOn(before: string, id: string): boolean {
  const [a, b] = [NUMBERED.exec(before), NUMBERED.exec(id)];
  return a !== null && b !== null && a[1] === b[1] && Number(b[2]) === Number(a[2]) + 1;
}
