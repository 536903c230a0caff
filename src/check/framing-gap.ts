import type { Finding } from "../findings/finding.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { fittingOf } from "../place/fitting.js";
import type { MemberGap } from "../place/gaps.js";
import { wantedFromFramingMm } from "../place/obstacles.js";
import { about, othersToo, type Subject, toldOf } from "./subject.js";

/**
 * How near the opening comes to the framing. One finding for a member, the worst: every member that the cut goes
 * into; of the others the nearest on each side, where it blocks the clamps or is nearer than asked for.
 */
export function framingGap(subject: Subject): Finding[] {
  const cut = subject.gaps.filter(({ mm }) => mm < -EPSILON_MM);
  const cutSides = new Set(cut.map(({ side }) => side));
  const nearest = nearestOnEachSide(subject.gaps).filter(({ side }) => !cutSides.has(side));
  const [told, others] = toldOf(cut, ({ mm }) => mm);
  return [
    ...told.map((gap) => cutsMember(subject, gap)),
    ...othersToo(subject, "opening-cuts-member", { others: others.length, errors: others.length }),
    ...nearest.flatMap((gap) => blocksClamps(subject, gap) ?? isNear(subject, gap) ?? []),
  ];
}

/** The gaps come nearest first. */
function nearestOnEachSide(gaps: readonly MemberGap[]): MemberGap[] {
  return gaps.filter((gap, index) => gaps.findIndex(({ side }) => side === gap.side) === index);
}

function cutsMember(subject: Subject, { member, mm }: MemberGap): Finding {
  return {
    ...about(subject),
    code: "opening-cuts-member",
    level: "error",
    figures: { member, byMm: -mm },
    fix: subject.fix(),
  };
}

function blocksClamps(subject: Subject, { member, mm }: MemberGap): Finding | null {
  const reachMm = subject.speaker.model.clampReachMm;
  if (mm >= reachMm - EPSILON_MM) return null;
  return {
    ...about(subject),
    code: "clamps-blocked",
    level: "error",
    figures: { member, gapMm: mm, reachMm },
    fix: subject.fix(),
  };
}

function isNear(subject: Subject, { member, mm }: MemberGap): Finding | null {
  const wantedMm = wantedFromFramingMm(fittingOf(subject.speaker, subject.room.checks));
  if (mm >= wantedMm - EPSILON_MM) return null;
  return {
    ...about(subject),
    code: "opening-near-member",
    level: "warning",
    figures: { member, gapMm: mm, wantedMm },
    fix: subject.fix(),
  };
}
