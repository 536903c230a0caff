import type { Extent } from "../../geometry/region.js";
import { surfacePoint } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import { type Pattern, ROW_SHARE } from "../../standards/coverage-spacing.js";

/** Which way rows run: left to right ("u"), or front to back ("v"). */
export type Along = "u" | "v";

/**
 * Equal rows over an extent, as few as the spacing allows, spread so that half a spacing is left at every wall. In a
 * hexagon alternate rows stand half a spacing aside: a quarter each, one to either side.
 */
export interface Lattice {
  readonly pattern: Pattern;
  readonly along: Along;
  readonly rows: number;
  readonly perRow: number;
  /** From one to the next along a row, and from row to row; never more than what is asked for. */
  readonly spacingMm: number;
  readonly rowMm: number;
  /** Which way the first row stands aside: to the left or front with 1, back with -1; 0 where none does. */
  readonly aside: 1 | -1 | 0;
}

interface Wanted {
  readonly pattern: Pattern;
  readonly spacingMm: number;
}

/**
 * The lattices of a pattern that fit an extent with the fewest points: a hexagon's rows may run either way and begin at
 * either side. More points would be more even, but the spacing says how many are wanted.
 */
export function latticesOver(extent: Extent, wanted: Wanted): readonly Lattice[] {
  if (wanted.pattern === "square") return [latticeOver(extent, wanted, { along: "u", aside: 0 })];
  const eitherWay = (["u", "v"] as const).map((along) => latticeOver(extent, wanted, { along, aside: 1 }));
  const fewest = Math.min(...eitherWay.map(pointsIn));
  return eitherWay
    .filter((lattice) => pointsIn(lattice) === fewest)
    .flatMap((lattice) =>
      lattice.rows === 1 ? [{ ...lattice, aside: 0 }] : [lattice, { ...lattice, aside: -1 }],
    );
}

export const pointsIn = ({ rows, perRow }: Lattice): number => rows * perRow;

function latticeOver(
  { least, most }: Extent,
  { pattern, spacingMm }: Wanted,
  { along, aside }: Pick<Lattice, "along" | "aside">,
): Lattice {
  const [uMm, vMm] = [most.u - least.u, most.v - least.v];
  const [alongMm, acrossMm] = along === "u" ? [uMm, vMm] : [vMm, uMm];
  const perRow = countOver(alongMm, spacingMm);
  const rows = countOver(acrossMm, spacingMm * ROW_SHARE[pattern]);
  return { pattern, along, aside, rows, perRow, spacingMm: alongMm / perRow, rowMm: acrossMm / rows };
}

/** Far less than a mark: a spacing that fits whole times does fit. */
const SLACK = 1e-9;

const countOver = (lengthMm: number, spacingMm: number): number =>
  Math.max(1, Math.ceil(lengthMm / spacingMm - SLACK));

/** The pattern's points in the order that they are read: rows from the front (from the left), left (front) end first. */
export function pointsOf(
  { along, rows, perRow, spacingMm, rowMm, aside }: Lattice,
  { most }: Extent,
  shift: SurfacePoint,
): readonly SurfacePoint[] {
  return Array.from({ length: rows * perRow }, (_, index) => {
    const [row, place] = [Math.floor(index / perRow), index % perRow];
    const asideMm = (row % 2 === 0 ? aside : -aside) * (spacingMm / 4);
    const alongMm = (place + 1 / 2) * spacingMm - asideMm;
    const acrossMm = (row + 1 / 2) * rowMm;
    return along === "u"
      ? surfacePoint(most.u - alongMm + shift.u, most.v - acrossMm + shift.v)
      : surfacePoint(most.u - acrossMm + shift.u, most.v - alongMm + shift.v);
  });
}
