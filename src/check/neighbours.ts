import type { Finding } from "../findings/finding.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { about, type Distance, othersToo, type Subject } from "./subject.js";

type NeighbourDistance = Distance & { readonly what: { readonly kind: "neighbour" } };

/**
 * Other openings too near; of a pair each says so, for each is a paper of its own. Of very many the nearest, and how
 * many more there are.
 */
export function tooClose(subject: Subject): Finding[] {
  // Between the openings comes before between the flanges: one message for one neighbour.
  const first = new Map<string, NeighbourDistance>();
  for (const distance of subject.distances.filter(isTooNear)) {
    const { id } = distance.what.neighbour.speaker;
    if (!first.has(id)) first.set(id, distance);
  }
  return [
    ...[...first.values()].map((distance) => finding(subject, distance)),
    ...othersToo(subject, "openings-too-close", subject.othersTooNear),
  ];
}

function isTooNear(distance: Distance): distance is NeighbourDistance {
  return distance.what.kind === "neighbour" && distance.mm < distance.wantedMm - EPSILON_MM;
}

function finding(subject: Subject, { what, mm, wantedMm }: NeighbourDistance): Finding {
  const { neighbour, edges } = what;
  return {
    ...about(subject),
    code: "openings-too-close",
    level: edges === "openings" && mm < -EPSILON_MM ? "error" : "warning",
    figures: { other: neighbour.speaker.id, distanceMm: mm, wantedMm, edges },
    fix: subject.fix(),
  };
}
