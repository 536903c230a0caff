import type { Shape } from "../geometry/shape.js";
import type { UnitSystem } from "../room/room.js";
import { CUT_OVER_MM } from "../standards/cutting-practice.js";
import { inches, millimetres } from "../units/format.js";
import type { Rounding } from "../units/rounding.js";
import { EXACT_WITHIN_MM } from "../units/rounding.js";
import type { Figures } from "./figures.js";
import { unbroken } from "./unbroken.js";

type Denominator = 16 | 32;

/** Tenths only where a whole millimetre would not say it. */
const millimetresOf = (mm: number, rounding: Rounding): string =>
  millimetres(mm, { decimals: Math.abs(mm - Math.round(mm)) > EXACT_WITHIN_MM ? 1 : 0, rounding }).text;

interface Fineness {
  readonly denominator: Denominator;
  readonly rounding: Rounding;
}

function inBoth(lengths: readonly number[], units: UnitSystem, { denominator, rounding }: Fineness): Figures {
  const imperial = lengths.map((mm) => unbroken(inches(mm, { denominator, rounding }).text)).join(" × ");
  const metric = lengths.map((mm) => unbroken(millimetresOf(mm, rounding))).join(" × ");
  return units === "metric" ? { main: metric, others: imperial } : { main: imperial, others: metric };
}

const UP: Fineness = { denominator: 16, rounding: "up" };

/** What the hole measures across, rounded up to 1/16 in: the tolerance allows more and never less. Also for a flange. */
export const acrossFigures = (shape: Shape, units: UnitSystem): Figures => inBoth(sidesOf(shape), units, UP);

const sidesOf = (shape: Shape): readonly number[] =>
  shape.kind === "round" ? [shape.diameterMm] : [shape.widthMm, shape.heightMm];

/** The compass, to 1/32 in because it counts twice; or both half sides, to 1/16 in. */
export function halfFigures(shape: Shape, units: UnitSystem): Figures {
  const halves = sidesOf(shape).map((mm) => mm / 2);
  return inBoth(halves, units, { denominator: shape.kind === "round" ? 32 : 16, rounding: "up" });
}

/** Both diagonals of a rectangle are as long when its corners are square. */
export function diagonalFigures(
  { widthMm, heightMm }: Extract<Shape, { kind: "rectangle" }>,
  units: UnitSystem,
): Figures {
  return inBoth([Math.hypot(widthMm, heightMm)], units, { denominator: 16, rounding: "nearest" });
}

/** "−0 +1/8 in": never smaller, by so much larger at most. */
export function toleranceFigures(units: UnitSystem): Figures {
  const imperial = `−0 +${inches(CUT_OVER_MM).text}`;
  const metric = `−0 +${millimetres(CUT_OVER_MM, { rounding: "down" }).plain}`;
  const [main, others] = (units === "metric" ? [metric, imperial] : [imperial, metric]).map(unbroken);
  return { main: main ?? "", others: others ?? "" };
}
