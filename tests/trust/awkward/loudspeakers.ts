import fc from "fast-check";
import type { Parts } from "../../rooms/build.js";
import type { Ceiling } from "./ceilings.js";
import {
  cellOf,
  centred,
  leastFirst,
  listOf,
  middleOf,
  mm,
  type Point,
  type Rectangle,
  scattered,
} from "./choice.js";
import type { Plan } from "./plan.js";

/*
 * As many loudspeakers as there may be, of as many models, where they stand in each other's way or nowhere yet.
 */

export interface LoudspeakersChoice {
  readonly count: number;
  readonly models: number;
  readonly stand:
    | keyof typeof STANDS
    | "best"
    | "best in pairs"
    | "best on one tape"
    | "on walls"
    | "best on walls";
  /** On the soffits and slopes, where there are any, in turn. */
  readonly onCeilings: boolean;
}

type Stand = (field: Rectangle, index: number, count: number) => Point;

const inGrid: Stand = (field, index, count) => middleOf(cellOf(field, index, count));

const STANDS = {
  "in a grid": inGrid,
  "in a row": (field, index, count) => ({
    leftMm: field.leftMm + (field.widthMm * index) / count,
    frontMm: middleOf(field).frontMm,
  }),
  "side by side": (field, index, count) => {
    const { widthMm, lengthMm } = field;
    const perRow = Math.ceil(Math.sqrt(count));
    const [across, along] = [240 * (index % perRow), 240 * Math.floor(index / perRow)];
    return { leftMm: field.leftMm + (across % widthMm), frontMm: field.frontMm + (along % lengthMm) };
  },
  "no two in line": (field, index) => scattered(field, index),
  "in one spot": (field, index) => {
    const { leftMm, frontMm } = middleOf(field);
    return { leftMm, frontMm: frontMm + (index % 3) };
  },
} as const satisfies Record<string, Stand>;

export const loudspeakersChoice: fc.Arbitrary<LoudspeakersChoice> = fc.record({
  count: leastFirst(4, 12, 30, 100, 500, 500, 500, 500),
  models: leastFirst(1, 3, 50),
  stand: leastFirst(
    "in a grid",
    ...(Object.keys(STANDS) as (keyof typeof STANDS)[]),
    ...(["best", "best", "best in pairs", "best on one tape", "on walls", "best on walls"] as const),
  ),
  onCeilings: leastFirst(false, true),
});

/** Round ones and upright ones in turn, each of a size of its own. */
export function modelsOf({ models }: LoudspeakersChoice): Parts {
  const more = { clamp_reach: "12 mm", coverage: "90 deg" };
  const round = (index: number): Parts => ({
    opening: { round: mm(200 + index) },
    flange: { round: mm(230 + index) },
    ...{ depth: mm(60 + index), ...more },
  });
  const upright = (index: number): Parts => ({
    opening: { width: mm(180 + index), height: mm(300 + index) },
    flange: { width: mm(210 + index), height: mm(330 + index) },
    ...{ depth: mm(60 + index), ...more },
  });
  const named = listOf(models, (index) => [`m${index}`, index % 2 === 0 ? round(index) : upright(index)]);
  return Object.fromEntries(named);
}

/** Labels of ITU-R BS.2051 overhead and at the height of the ears. */
const CHANNELS = ["U+045", "U-045", "U+110", "U-110", "M+030", "M-030", "U+000", "U+180", "T+000", "M+090"];

export function loudspeakersOf(
  choice: LoudspeakersChoice,
  plan: Plan,
  ceilings: readonly Ceiling[],
): readonly Parts[] {
  const place = placeIn(choice, plan, ceilings);
  return listOf(choice.count, (index) => ({
    ...{ id: idOf(index), channel: CHANNELS[index % CHANNELS.length] ?? "M+000" },
    ...{ model: `m${index % choice.models}`, ...place(index) },
  }));
}

const idOf = (index: number): string => `S${index}`;

/** What of a loudspeaker says where it is. */
function placeIn(
  choice: LoudspeakersChoice,
  plan: Plan,
  ceilings: readonly Ceiling[],
): (index: number) => Parts {
  switch (choice.stand) {
    case "best":
      return (index) => ({ on: surfaceOf(choice, ceilings, index)?.name ?? "ceiling", at: "best" });
    case "best in pairs":
      return (index) => ({ on: "ceiling", at: "best", ...pairOf(index, choice) });
    case "best on one tape":
      return (index) => ({ on: "ceiling", at: "best", hold: heldAt(plan, index, choice.count) });
    case "on walls":
    case "best on walls":
      return (index) => onWall(choice, plan, index);
    default:
      return standing(STANDS[choice.stand], choice, { plan, ceilings });
  }
}

function surfaceOf(
  { onCeilings }: LoudspeakersChoice,
  ceilings: readonly Ceiling[],
  index: number,
): Ceiling | null {
  return onCeilings ? (ceilings[index % ceilings.length] ?? null) : null;
}

/** The last of an odd number is matched with none. */
function pairOf(index: number, { count }: LoudspeakersChoice): Parts {
  const other = index % 2 === 0 ? index + 1 : index - 1;
  const channel = index % 2 === 0 ? "U+045" : "U-045";
  return { channel, model: "m0", ...(other < count ? { mirror: idOf(other) } : {}) };
}

function heldAt({ core, tapes }: Plan, index: number, count: number): Parts {
  const [[wall, tape] = ["", ""]] = Object.entries(tapes(inGrid(core, index, count)));
  return { [wall]: tape };
}

/** Between the walls, and on a wall between floor and ceiling. */
const FROM_ENDS_MM = 400;

function onWall({ stand, count }: LoudspeakersChoice, plan: Plan, index: number): Parts {
  const wall = plan.walls[index % plan.walls.length] ?? "";
  if (stand === "best on walls" || plan.shape !== "box") return { on: wall, at: "best" };
  const isAcross = wall === "front" || wall === "back";
  const wallMm = isAcross ? plan.widthMm : plan.lengthMm;
  const alongMm = FROM_ENDS_MM + ((wallMm - 2 * FROM_ENDS_MM) * index) / count;
  return { on: wall, at: { [isAcross ? "left" : "front"]: mm(alongMm), up: mm(1200 + 200 * (index % 7)) } };
}

/** On a slope that meets no wall no tape hooks: there they are at their best places. */
function standing(
  stand: Stand,
  choice: LoudspeakersChoice,
  { plan, ceilings }: { plan: Plan; ceilings: readonly Ceiling[] },
): (index: number) => Parts {
  const { count } = choice;
  const field = centred(plan.core, 0.95);
  return (index) => {
    const on = surfaceOf(choice, ceilings, index);
    if (on === null) return { on: "ceiling", at: plan.tapes(stand(field, index, count)) };
    if (on.isSlope) return { on: on.name, at: "best" };
    const [number, each] = [Math.floor(index / ceilings.length), Math.ceil(count / ceilings.length)];
    return { on: on.name, at: plan.tapes(stand(on.core, number, each)) };
  };
}
