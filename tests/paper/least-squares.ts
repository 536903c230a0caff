/**
 * The coefficients that bring rows x coefficients nearest to the values: normal equations, solved by elimination with
 * pivots. Scale the rows to about 1 beforehand.
 */
export function leastSquares(rows: readonly (readonly number[])[], values: readonly number[]): number[] {
  const size = rows[0]?.length ?? 0;
  const sumOf = (term: (row: readonly number[], index: number) => number): number =>
    rows.reduce((sum, row, index) => sum + term(row, index), 0);
  const equations = Array.from({ length: size }, (_, i) => [
    ...Array.from({ length: size }, (_, j) => sumOf((row) => (row[i] ?? 0) * (row[j] ?? 0))),
    sumOf((row, index) => (row[i] ?? 0) * (values[index] ?? 0)),
  ]);
  for (let pivot = 0; pivot < size; pivot++) eliminate(equations, pivot);
  return equations.map((equation, i) => (equation[size] ?? 0) / (equation[i] ?? 0));
}

function eliminate(equations: number[][], pivot: number): void {
  const candidates = equations.map((equation, row) => (row < pivot ? -1 : Math.abs(equation[pivot] ?? 0)));
  const best = candidates.indexOf(Math.max(...candidates));
  const [chosen = [], replaced = []] = [equations[best], equations[pivot]];
  equations[best] = replaced;
  equations[pivot] = chosen;
  equations.forEach((equation, row) => {
    if (row === pivot) return;
    const share = (equation[pivot] ?? 0) / (chosen[pivot] ?? 0);
    equation.forEach((value, column) => {
      equation[column] = value - share * (chosen[column] ?? 0);
    });
  });
}
