import type { Job, Opening } from "../job.js";
import { edgeToward } from "../listen/edges.js";
import { fittingOf, neighboursOf } from "../place/fitting.js";
import { piecesOn } from "../place/obstacles.js";
import { rememberedGround, type Slide, slideOf } from "../place/slide.js";
import type { Room, UnitSystem } from "../room/room.js";
import { MOST_TO_SLIDE_AMONG } from "../standards/house-limits.js";
import { feetInches, millimetres } from "../units/format.js";
import type { WallFigure } from "./marking/wall-figures.js";
import type { Order } from "./sheet.js";
import { unbroken } from "./unbroken.js";

/**
 * How far an opening may slide; null where no place on its surface is clear, or where it would take too long to tell. Each
 * is worked out once.
 */
export function slideIn(job: Job, opening: Opening): Slide | null {
  const known = remembered.get(job) ?? lookUp(job);
  remembered.set(job, known);
  return known(opening);
}

const remembered = new WeakMap<Job, (opening: Opening) => Slide | null>();

function lookUp({ room, openings }: Job): (opening: Opening) => Slide | null {
  const groundIn = rememberedGround();
  const full = surfacesTooFull(room, openings);
  const found = new Map<string, Slide | null>();
  return (opening) => {
    const { id } = opening.speaker;
    const known = found.get(id);
    if (known !== undefined) return known;
    const neighbours = neighboursOf(opening, openings);
    const slide = full.has(opening.surface.name)
      ? null
      : slideOf({ room, mounted: opening, neighbours, groundIn });
    found.set(id, slide);
    return slide;
  };
}

/** Their names. By all openings in them: whichever sheet asks first, and in whichever thread, the answer is the same. */
function surfacesTooFull({ checks }: Room, openings: readonly Opening[]): ReadonlySet<string> {
  const kinds = new Map<string, Set<string>>();
  for (const { speaker, surface } of openings) {
    const own = kinds.get(surface.name) ?? new Set();
    kinds.set(surface.name, own.add(JSON.stringify(fittingOf(speaker, checks))));
  }
  const full = openings.filter(({ surface }) => {
    const fixed = piecesOn(surface) - surface.joints.length;
    return fixed * (kinds.get(surface.name)?.size ?? 0) > MOST_TO_SLIDE_AMONG;
  });
  return new Set(full.map(({ surface }) => surface.name));
}

/** Straight slides as figures, never more than what is clear: across the members both ways, then along them. */
export function writtenWays({ job }: Order, opening: Opening): readonly WallFigure[] | null {
  const ways = slideIn(job, opening)?.ways ?? null;
  return ways === null
    ? null
    : ways.map(({ direction, mm }) => ({
        wall: edgeToward(opening, direction),
        figure: clearFigure(mm, job.room.units),
      }));
}

function clearFigure(mm: number, units: UnitSystem): string {
  const rounding = "down";
  const figure = units === "metric" ? millimetres(mm, { rounding }) : feetInches(mm, { rounding });
  return unbroken(figure.plain);
}
