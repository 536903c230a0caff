import type { Coverage } from "./listen/covered.js";
import type { Spread } from "./listen/level-together.js";
import { bayOf } from "./place/bay.js";
import type { CoverPlace, Filling, Unfillable } from "./place/cover/fill.js";
import { nearestGap } from "./place/gaps.js";
import { keyOfTape } from "./room/file-keys.js";
import type { CoveredArea, Tape, UnitSystem } from "./room/room.js";
import { coverageDiameterMm, type Overlap, type Pattern } from "./standards/coverage-spacing.js";
import { exactLength } from "./units/exact.js";

/*
 * Areas that are filled evenly, for machines: in `report` as the file's loudspeakers fill them, in `place` with those
 * that are found for one that is empty.
 */

export interface AreaJson {
  readonly name: string;
  readonly surface: string;
  readonly model: string;
  readonly pattern: Pattern;
  /** Null where the file states the spacing. */
  readonly overlap: Overlap | null;
  /** The most along a row, mm. */
  readonly spacing: number;
  /** From the finished face down to the ears, mm. */
  readonly drop: number;
  /** Of the circle that each covers on the plane of the ears, mm; null for what looks all round. */
  readonly circle: number | null;
  /** Ids of the file's loudspeakers that fill it. */
  readonly speakers: readonly string[];
  /** Null while none does. */
  readonly level: LevelJson | null;
  /** Of each, for the target and its headroom as the mean over the area, W; null where it cannot be reckoned. */
  readonly power: number | null;
  /** Over the target that the stated power leaves, dB. */
  readonly headroom: number | null;
}

/** On the plane of the ears, by the model of the stated coverage, powers added; dB. */
export interface LevelJson {
  /** With 2.83 V at each; without a stated sensitivity against one loudspeaker at 1 m. */
  readonly mean: number;
  /** Against the mean. */
  readonly least: number;
  readonly most: number;
  readonly deviation: number;
  /** Share of the area within 3 dB of the mean, 0 to 1. */
  readonly even: number;
  readonly points: number;
}

export interface FilledAreaJson extends AreaJson {
  /** Null where loudspeakers of the file fill it. */
  readonly filling: FillingJson | null;
}

export type FillingJson =
  | {
      readonly kind: "filled";
      /** Which way rows run. */
      readonly along: "left-right" | "front-back";
      readonly rows: number;
      readonly per_row: number;
      /** As got, mm. */
      readonly spacing: number;
      readonly row_spacing: number;
      readonly places: readonly PlaceJson[];
      /** Points of the pattern near which nothing is clear. */
      readonly nowhere: readonly { readonly u: number; readonly v: number; readonly at: AtJson }[];
      readonly level: LevelJson;
    }
  | { readonly kind: "unfilled"; readonly because: Unfillable | "nothing-clear" }
  | { readonly kind: "too-many"; readonly count: number; readonly most: number };

type AtJson = Readonly<Record<string, string>>;

interface PlaceJson {
  readonly id: string;
  readonly at: AtJson;
  readonly tapes: Readonly<Record<string, number>>;
  readonly on_surface: { readonly u: number; readonly v: number };
  /** From the pattern's point, mm. */
  readonly moved: number;
  readonly gap: number | null;
  readonly bay: { readonly number: number; readonly from: string } | null;
}

/** An area as the file's loudspeakers fill it. */
export const areaJson = ({ area, mounted, spread, drive }: Coverage): AreaJson => ({
  name: area.name,
  surface: area.surface,
  model: area.model.name,
  pattern: area.pattern,
  overlap: area.overlap,
  spacing: area.spacingMm,
  drop: area.dropMm,
  circle: circleOf(area),
  speakers: mounted.map(({ speaker }) => speaker.id),
  level: spread && levelJson(spread),
  power: drive?.powerW ?? null,
  headroom: drive?.headroomDb ?? null,
});

const HALF_TURN_DEG = 180;

function circleOf({ model: { coverageDeg }, dropMm }: CoveredArea): number | null {
  const hasCircle = coverageDeg !== null && coverageDeg < HALF_TURN_DEG;
  return hasCircle ? coverageDiameterMm(dropMm, coverageDeg) : null;
}

const levelJson = ({ meanDb, leastDb, mostDb, deviationDb, evenShare, points }: Spread): LevelJson => ({
  mean: meanDb,
  least: leastDb,
  most: mostDb,
  deviation: deviationDb,
  even: evenShare,
  points,
});

/** The same with what was found for it. */
export const filledAreaJson = (
  coverage: Coverage,
  fillings: readonly Filling[],
  units: UnitSystem,
): FilledAreaJson => {
  const filling = fillings.find(({ area }) => area.name === coverage.area.name);
  return { ...areaJson(coverage), filling: filling === undefined ? null : fillingJson(filling, units) };
};

function fillingJson(filling: Filling, units: UnitSystem): FillingJson {
  if (filling.kind === "unfilled") return { kind: "unfilled", because: filling.because };
  if (filling.kind === "too-many") return { kind: "too-many", count: filling.count, most: filling.most };
  const { lattice, places, nowhere, spread } = filling;
  return {
    kind: "filled",
    along: lattice.along === "u" ? "left-right" : "front-back",
    rows: lattice.rows,
    per_row: lattice.perRow,
    spacing: lattice.spacingMm,
    row_spacing: lattice.rowMm,
    places: places.map((place) => placeJson(place, units)),
    nowhere: nowhere.map(({ at, tapes }) => ({ ...at, at: atJson(tapes, units) })),
    level: levelJson(spread),
  };
}

const atJson = (tapes: readonly Tape[], units: UnitSystem): AtJson =>
  Object.fromEntries(tapes.map(({ from, mm }) => [keyOfTape(from), exactLength(mm, units)]));

const placeJson = ({ mounted, tapes, movedMm }: CoverPlace, units: UnitSystem): PlaceJson => ({
  id: mounted.speaker.id,
  at: atJson(tapes, units),
  tapes: Object.fromEntries(tapes.map(({ from, mm }) => [keyOfTape(from), mm])),
  on_surface: mounted.centre,
  moved: movedMm,
  gap: nearestGap(mounted)?.mm ?? null,
  bay: bayOf(mounted),
});
