import type { Job, Opening } from "../job.js";
import { edgeToward } from "../listen/edges.js";
import { neighboursOf } from "../place/fitting.js";
import { rememberedGround, type Slide, slideOf } from "../place/slide.js";
import type { UnitSystem } from "../room/room.js";
import { feetInches, millimetres } from "../units/format.js";
import type { WallFigure } from "./marking/wall-figures.js";
import type { Order } from "./sheet.js";
import { unbroken } from "./unbroken.js";

/** How far an opening may slide; null where no place on its surface is clear. Each is worked out once. */
export function slideIn(job: Job, opening: Opening): Slide | null {
  const known = remembered.get(job) ?? lookUp(job);
  remembered.set(job, known);
  return known(opening);
}

const remembered = new WeakMap<Job, (opening: Opening) => Slide | null>();

function lookUp({ room, openings }: Job): (opening: Opening) => Slide | null {
  const groundIn = rememberedGround();
  const found = new Map<string, Slide | null>();
  return (opening) => {
    const { id } = opening.speaker;
    const known = found.get(id);
    if (known !== undefined) return known;
    const slide = slideOf({ room, mounted: opening, neighbours: neighboursOf(opening, openings), groundIn });
    found.set(id, slide);
    return slide;
  };
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
