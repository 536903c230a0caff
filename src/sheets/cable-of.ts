import type { Assumed } from "../cable/assumed.js";
import type { Size } from "../cable/gauge.js";
import type { Leg } from "../cable/route.js";
import type { CableRun } from "../cable/run.js";
import type { Speaker, UnitSystem } from "../room/room.js";
import { MM_PER_INCH } from "../units/definitions.js";
import { feetInches, millimetres } from "../units/format.js";
import type { WrittenAssumption, WrittenLeg } from "../words/way.js";
import type { Order } from "./sheet.js";
import { unbroken } from "./unbroken.js";

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

/** What was assumed, as the words of it take it; no figure breaks over lines. */
export function writtenAssumptions(order: Pick<Order, "job" | "words">): WrittenAssumption[] {
  const { job, words } = order;
  return (job.cabling?.assumed ?? []).map((assumed) => ({
    what: assumed.what,
    figure: figureOf(assumed, { order, name: (size) => words.cabling.size(size) }),
  }));
}

/** Outside diameters by the number of conductors: `8 mm (2), 10 mm (4)`. */
export const diametersText = ({ cableMm }: { cableMm: { two: number; four: number } }): string =>
  [
    [cableMm.two, 2],
    [cableMm.four, 4],
  ]
    .map(([mm = 0, conductors]) => unbroken(`${millimetres(mm).plain} (${conductors})`))
    .join(", ");

function figureOf(
  assumed: Assumed,
  { order, name }: { order: Pick<Order, "job">; name: (size: Size) => string },
): string {
  switch (assumed.what) {
    case "diameter":
      return diametersText({ cableMm: { two: assumed.twoMm, four: assumed.fourMm } });
    case "loop":
    case "rack-loop":
    case "spools":
      return unbroken(cutFigure(order, assumed.lengthMm));
    case "spare":
      return unbroken(`${assumed.percent} %`);
    case "gauges":
      return assumed.gauges.map((gauge) => unbroken(name({ kind: "gauge", gauge }))).join(", ");
    case "loss-limit":
      return unbroken(`${assumed.limitDb.toFixed(2)} dB (${100 * assumed.share} %)`);
    case "temperature":
      return unbroken(`${assumed.celsius} °C`);
    case "one-pair":
    case "nominal-impedance":
      return assumed.speakers.join(", ");
  }
}

/** A leg as the words of a way take it; `length` writes a length. */
export function writtenLeg(leg: Leg, length: (mm: number) => string): WrittenLeg {
  const { field, toward, crossed, between, way, uncounted, upMm } = leg;
  const [before = null, after = null] = between ?? [];
  const kind = field.surface.kind === "ceiling" ? "joist" : "stud";
  return {
    surface: field.surface.name,
    toward,
    length: length(leg.lengthMm),
    step: upMm === 0 ? null : { length: length(Math.abs(upMm)), isUp: upMm > 0 },
    crossed: countsOf(crossed.map((member) => member.kind)),
    between: before === null || after === null ? null : { kind, numbers: [before, after] },
    isOver: field.isOver && way === "across",
    unmeasured: uncounted,
  };
}

function countsOf(kinds: readonly WrittenLeg["crossed"][number]["kind"][]): WrittenLeg["crossed"] {
  return [...new Set(kinds)].map((kind) => ({ kind, count: kinds.filter((each) => each === kind).length }));
}
