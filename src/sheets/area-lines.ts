import type { Spread } from "../listen/level-together.js";
import type { Drive } from "../listen/power.js";
import type { CoveredArea, Room } from "../room/room.js";
import { coverageDiameterMm, EVEN_WITHIN_DB } from "../standards/coverage-spacing.js";
import { measureIn } from "../words/measure.js";
import type { Words } from "../words/words.js";

/** An area as loudspeakers fill it, or are to fill it. */
export interface AreaLevel {
  readonly area: CoveredArea;
  readonly spread: Spread;
  readonly drive: Drive | null;
}

/** Less than this wide coverage makes a circle on the plane of the ears. */
const HALF_TURN_DEG = 180;

/** The circles on the plane of the ears and the spacing that follows from them, in one sentence or two. */
export function spacingLine({ areas }: Words, area: CoveredArea, units: Room["units"]): string {
  const measure = measureIn(units);
  const coverageDeg = area.model.coverageDeg ?? HALF_TURN_DEG;
  const most = measure.length(area.spacingMm);
  const stated = area.overlap === null ? areas.stated(most) : areas.overlap[area.overlap](most);
  if (coverageDeg >= HALF_TURN_DEG) return stated;
  const diameter = measure.length(coverageDiameterMm(area.dropMm, coverageDeg));
  return `${areas.circle(measure.angle(coverageDeg), measure.length(area.dropMm), diameter)} ${stated}`;
}

/** How even the level is and what it takes, a sentence a line. */
export function levelLines(words: Words, { area, spread, drive }: AreaLevel, room: Room): readonly string[] {
  const { areas } = words;
  const { leastDb, mostDb, deviationDb, evenShare, meanDb } = spread;
  const share = `${(100 * evenShare).toFixed(0)} %`;
  return [
    areas.level(againstMean(leastDb), againstMean(mostDb), decibels(deviationDb)),
    areas.even(share, EVEN_WITHIN_DB),
    ...(area.model.sensitivityDb === null ? [] : [areas.mean(decibels(meanDb))]),
    ...driveLine(words, area, drive, room.listening),
  ];
}

function driveLine(
  { areas }: Words,
  { model }: CoveredArea,
  drive: Drive | null,
  { targetDb, headroomDb }: Room["listening"],
): readonly string[] {
  if (drive === null) return [];
  const needed = areas.power(watts(drive.powerW), decibels(targetDb), decibels(headroomDb));
  if (model.powerW === null || drive.headroomDb === null) return [needed];
  return [`${needed} ${areas.leaves(watts(model.powerW), decibels(drive.headroomDb))}`];
}

const decibels = (db: number): string => `${Number(db.toFixed(1)) + 0} dB`;

/** With its sign, as a difference is said. */
export const againstMean = (db: number): string =>
  Number(db.toFixed(1)) > 0 ? `+${decibels(db)}` : decibels(db);

const watts = (w: number): string => `${w < 10 ? w.toFixed(1) : w.toFixed(0)} W`;
