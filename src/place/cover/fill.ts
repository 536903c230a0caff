import { Effort, within } from "../../effort.js";
import { extentOf, holdsTest } from "../../geometry/region.js";
import { plus, surfacePoint } from "../../geometry/surface-point.js";
import type { SurfacePoint, Vector } from "../../geometry/vector.js";
import { earsOver, spreadIn } from "../../listen/covered.js";
import { type Spread, sourceOf, spreadOver } from "../../listen/level-together.js";
import type { Mounted } from "../../listen/mounted.js";
import type { CoveredArea, Room, Tape } from "../../room/room.js";
import { MOST_SPEAKERS } from "../../room/schema/limits.js";
import { slipOfId } from "../../room/schema/texts.js";
import { MOST_LOOKS_FOR_AREAS } from "../../standards/house-limits.js";
import type { Unaskable } from "../best/asked.js";
import { hasTwoTapes } from "../best/tape-choice.js";
import { type GroundOf, rememberedGrounds } from "../nearest-clear.js";
import { type Lattice, latticesOver, pointsIn, pointsOf } from "./pattern.js";
import { type Nowhere, type Settled, type Settling, settle } from "./settle.js";
import { type Site, siteOf } from "./site.js";

/** A loudspeaker of an area where it can be cut. */
export interface CoverPlace {
  readonly mounted: Mounted;
  readonly tapes: readonly [Tape, Tape];
  /** From the pattern's point. */
  readonly movedMm: number;
}

/** Why no places were looked for. */
export type Unfillable = Exclude<Unaskable, "no-direction">;

/** An area with its loudspeakers, or why it has none. */
export type Filling =
  | {
      readonly kind: "filled";
      readonly area: CoveredArea;
      readonly lattice: Lattice;
      readonly places: readonly CoverPlace[];
      /** Points of the pattern near which nothing is clear. */
      readonly nowhere: readonly Nowhere[];
      readonly spread: Spread;
    }
  | {
      readonly kind: "unfilled";
      readonly area: CoveredArea;
      readonly because: Unfillable | "nothing-clear";
    }
  | { readonly kind: "too-many"; readonly area: CoveredArea; readonly count: number; readonly most: number };

/**
 * Places for all areas of a room that no loudspeaker of the file fills yet, one after the other in its order. Where that
 * comes to more looks than a run has, the last of them stay unfilled; once the others stand in the file there is less to
 * look at.
 */
export function fillAreas(room: Room, standing: readonly Mounted[]): readonly Filling[] {
  const filled = new Set(room.speakers.map(({ area }) => area));
  const fillings: Filling[] = [];
  const effort = new Effort(MOST_LOOKS_FOR_AREAS);
  const groundOf = rememberedGrounds(effort);
  for (const area of room.areas.filter(({ name }) => !filled.has(name))) {
    const added = fillings.flatMap(mountedIn);
    fillings.push(fill(room, area, { standing: [...standing, ...added], added, groundOf, effort }));
  }
  return fillings;
}

const mountedIn = (filling: Filling): readonly Mounted[] =>
  filling.kind === "filled" ? filling.places.map(({ mounted }) => mounted) : [];

/** Most points of a pattern that are worth making, where the spacing was a slip; holes in an area take some away. */
const MOST_POINTS = 100 * MOST_SPEAKERS;

interface Before {
  readonly standing: readonly Mounted[];
  /** Of these the loudspeakers of areas filled before. */
  readonly added: readonly Mounted[];
  readonly groundOf: GroundOf;
  readonly effort: Effort;
}

function fill(room: Room, area: CoveredArea, before: Before): Filling {
  const { standing, added, groundOf, effort } = before;
  const notLookedFor: Filling = { kind: "unfilled", area, because: "not-looked-for" };
  if (effort.isSpent) return notLookedFor;
  const extent = extentOf(area.region);
  const lattices = latticesOver(extent, area);
  const most = MOST_SPEAKERS - room.speakers.length - added.length;
  const count = Math.max(...lattices.map((lattice) => countIn(area, lattice)));
  if (count > most) return { kind: "too-many", area, count, most };
  const site = siteOf(room, area, standing, { groundOf, effort });
  if (site.surface.framing.kind === "unknown") return { kind: "unfilled", area, because: "framing-unknown" };
  if (!hasTwoTapes(room, site.surface)) return { kind: "unfilled", area, because: "no-tapes" };
  const best = within(effort, () => mostEven(site, lattices));
  // What was found until then may lie far from where it could.
  if (effort.isSpent) return notLookedFor;
  if (best === null) return { kind: "unfilled", area, because: "nothing-clear" };
  const { settled, nowhere } = best.settling;
  const places = numbered(site, settled, idsIn(room, added));
  return {
    kind: "filled",
    area,
    lattice: best.lattice,
    places,
    nowhere,
    spread: spreadIn(
      area,
      site.surface,
      places.map(({ mounted }) => mounted),
    ),
  };
}

/** Points that patterns are compared by. Our own choice: enough to tell them apart. */
const EARS_TO_COMPARE = 600;

/** How many of a pattern's points lie in the area, or how many there are where that is far too many to look at. */
function countIn({ region }: CoveredArea, lattice: Lattice): number {
  if (pointsIn(lattice) > MOST_POINTS) return pointsIn(lattice);
  return pointsOf(lattice, extentOf(region), surfacePoint(0, 0)).filter(holdsTest(region)).length;
}

interface Tried {
  readonly lattice: Lattice;
  readonly settling: Settling;
  readonly deviationDb: number;
}

/** A pattern is only taken for a later one that is more even by this much, in dB: less is nothing that anybody hears. */
const BETTER_BY_DB = 0.02;

/** Of the lattices and of where each may begin, what gives the most even level. Null where no point is clear. */
function mostEven(site: Site, lattices: readonly Lattice[]): Tried | null {
  const ears = earsOver(site.area, site.surface, EARS_TO_COMPARE);
  return lattices.flatMap((lattice) => bestShift(site, lattice, ears) ?? []).reduce(better, null);
}

const better = (best: Tried | null, tried: Tried): Tried =>
  best !== null && best.deviationDb <= tried.deviationDb + BETTER_BY_DB ? best : tried;

/** Shares of a spacing by which the whole pattern is tried elsewhere. */
const SHIFTS = [-1 / 4, 1 / 4] as const;

/**
 * The pattern as it lies in the middle; where points of it had to move, also shifted across the rows and then along
 * them.
 */
function bestShift(site: Site, lattice: Lattice, ears: readonly Vector[]): Tried | null {
  const middle = surfacePoint(0, 0);
  const { spacingMm, rowMm, along } = lattice;
  const [uMm, vMm] = along === "u" ? [spacingMm, rowMm] : [rowMm, spacingMm];
  const tried = (shift: SurfacePoint): Tried | null => tryAt(site, lattice, { shift, ears });
  const centred = tried(middle);
  if (centred !== null && isNearlyIdeal(lattice, centred.settling)) return centred;
  const offsets = [
    SHIFTS.map((share) => surfacePoint(0, share * vMm)),
    SHIFTS.map((share) => surfacePoint(share * uMm, 0)),
  ];
  let best = { shift: middle, tried: centred };
  for (const axis of offsets) {
    for (const offset of axis.map((each) => plus(best.shift, each))) {
      const one = tried(offset);
      if (one !== null && better(best.tried, one) === one) best = { shift: offset, tried: one };
    }
  }
  return best.tried;
}

/** Moves of less than this share of a spacing, as joists ask for, are not made smaller by moving everything. */
const SMALL_MOVE = 1 / 8;

const isNearlyIdeal = ({ spacingMm, rowMm }: Lattice, { settled, nowhere }: Settling): boolean =>
  nowhere.length === 0 && settled.every(({ movedMm }) => movedMm <= SMALL_MOVE * Math.min(spacingMm, rowMm));

interface At {
  readonly shift: SurfacePoint;
  readonly ears: readonly Vector[];
}

function tryAt(site: Site, lattice: Lattice, { shift, ears }: At): Tried | null {
  const { area } = site;
  const points = pointsOf(lattice, extentOf(area.region), shift).filter(holdsTest(area.region));
  const settling = settle(site, points, Math.min(lattice.spacingMm, lattice.rowMm) / 2);
  if (settling.settled.length === 0) return null;
  const sources = settling.settled.map(({ mounted }) => sourceOf(mounted));
  return { lattice, settling, deviationDb: spreadOver(sources, ears).deviationDb };
}

/** Ids that are taken, without regard to case. */
const idsIn = ({ speakers }: Room, added: readonly Mounted[]): ReadonlySet<string> =>
  new Set([...speakers, ...added.map(({ speaker }) => speaker)].map(({ id }) => id.toLowerCase()));

/** The places with ids counted up in the order of the pattern, past those that are taken or no file may have. */
function numbered(
  { speaker }: Site,
  settled: readonly Settled[],
  taken: ReadonlySet<string>,
): readonly CoverPlace[] {
  let number = 0;
  const nextId = (): string => {
    number += 1;
    const id = `${speaker.id}${number}`;
    return taken.has(id.toLowerCase()) || slipOfId(id) === "reserved" ? nextId() : id;
  };
  return settled.map(({ mounted, tapes, movedMm }) => {
    const position = { kind: "given", centre: mounted.centre, tapes } as const;
    return { mounted: { ...mounted, speaker: { ...speaker, id: nextId(), position } }, tapes, movedMm };
  });
}
