import type { Finding, Level } from "../findings/finding.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Obstruction } from "../room/room.js";
import { about, type Distance, othersToo, type Subject, toldOf } from "./subject.js";

/** Obstructions that the opening goes through or comes too near to, each once; of very many the nearest. */
export function meetsObstruction(subject: Subject): Finding[] {
  const met = subject.distances.flatMap((distance) => {
    const { what, mm, wantedMm } = distance;
    return what.kind === "obstruction" && mm < wantedMm - EPSILON_MM
      ? [{ obstruction: what.obstruction, distance }]
      : [];
  });
  const [told, others] = toldOf(met, ({ distance }) => distance.mm);
  const errors = others.filter(
    ({ obstruction, distance }) => levelOf(subject, obstruction, distance.mm) === "error",
  ).length;
  return [
    ...told.map(({ obstruction, distance }) => finding(subject, obstruction, distance)),
    ...othersToo(subject, "opening-meets-obstruction", { others: others.length, errors }),
  ];
}

function finding(subject: Subject, obstruction: Obstruction, { mm, wantedMm }: Distance): Finding {
  return {
    ...about(subject),
    code: "opening-meets-obstruction",
    level: levelOf(subject, obstruction, mm),
    figures: {
      obstruction: obstruction.name,
      distanceMm: mm,
      wantedMm,
      behindMm: obstruction.behindMm,
    },
    fix: subject.fix(),
  };
}

/** Nearer than it must be kept from, or than the clamps reach, nothing is cut; the rest is the gap asked for beyond. */
function levelOf({ speaker }: Subject, { keepMm }: Obstruction, mm: number): Level {
  return mm < Math.max(keepMm, speaker.model.clampReachMm) - EPSILON_MM ? "error" : "warning";
}
