import type { Leg } from "../cable/route.js";
import type { CableRun } from "../cable/run.js";
import type { Speaker, UnitSystem } from "../room/room.js";
import { MM_PER_INCH } from "../units/definitions.js";
import { feetInches, millimetres } from "../units/format.js";
import type { WrittenLeg } from "../words/way.js";
import type { Order } from "./sheet.js";

/** The run of a loudspeaker; null where none was computed. */
export const runFor = ({ job }: Pick<Order, "job">, { id }: Speaker): CableRun | null =>
  job.cabling?.runs.find(({ speaker }) => speaker.id === id) ?? null;

/** Cable is cut by the inch or by the centimetre, never short. */
const CUT_STEP_MM: Readonly<Record<UnitSystem, number>> = { imperial: MM_PER_INCH, metric: 10 };

/** A length of cable as it is cut: up to the next whole step of the tape. */
export function cutFigure({ job }: Pick<Order, "job">, mm: number): string {
  const { units } = job.room;
  const stepMm = CUT_STEP_MM[units];
  const cutMm = Math.ceil(mm / stepMm - 1e-9) * stepMm;
  return units === "imperial" ? feetInches(cutMm).plain : millimetres(cutMm).plain;
}

/** A leg as the words of a way take it; `length` writes a length. */
export function writtenLeg(leg: Leg, length: (mm: number) => string): WrittenLeg {
  const { field, toward, crossed, between, way, uncounted } = leg;
  const [before = null, after = null] = between ?? [];
  const kind = field.surface.kind === "ceiling" ? "joist" : "stud";
  return {
    surface: field.surface.name,
    toward,
    length: length(leg.lengthMm),
    crossed: countsOf(crossed.map((member) => member.kind)),
    between: before === null || after === null ? null : { kind, numbers: [before, after] },
    isOver: field.isOver && way === "across",
    unmeasured: uncounted,
  };
}

function countsOf(kinds: readonly WrittenLeg["crossed"][number]["kind"][]): WrittenLeg["crossed"] {
  return [...new Set(kinds)].map((kind) => ({ kind, count: kinds.filter((each) => each === kind).length }));
}
