import type { SurfacePoint } from "../../geometry/vector.js";
import type { Room } from "../../room/room.js";
import type { Asking } from "./asking.js";
import { type Field, fieldOf, followsBy, type Reading, spotOf } from "./field.js";
import { type Axis, isHeld, type Marks, marksOf, nearestMark } from "./marks.js";
import type { Match } from "./match.js";
import { axisOver, type ChosenTapes, sameTapes, tapesNear } from "./tape-choice.js";

/** One loudspeaker, or two that are kept matched: what is decided at once. */
export type Decision =
  | { readonly kind: "single"; readonly leader: Asking }
  | {
      readonly kind: "pair";
      readonly leader: Asking;
      readonly follower: Asking;
      /** The follower's place for one of the leader. */
      readonly match: Match;
    };

export const single = (leader: Asking): Decision => ({ kind: "single", leader });

export const askingsOf = (decision: Decision): readonly [Asking, ...Asking[]] =>
  decision.kind === "pair" ? [decision.leader, decision.follower] : [decision.leader];

/** The tapes that a decision's places are given by. */
export interface DecisionTapes {
  readonly leader: ChosenTapes;
  readonly follower: ChosenTapes | null;
}

/** Chosen near a place of the leader; null where a surface has no two tapes. */
export function tapesOfDecision(room: Room, decision: Decision, near: SurfacePoint): DecisionTapes | null {
  const { ground, hold } = decision.leader;
  const leader = tapesNear(room, ground.surface, { near, hold });
  if (leader === null || decision.kind === "single") return leader && { leader, follower: null };
  const { follower, match } = decision;
  const other = tapesNear(room, follower.ground.surface, { near: match(near), hold: follower.hold });
  return other && { leader, follower: other };
}

export function areSame(a: DecisionTapes, b: DecisionTapes): boolean {
  const [first, second] = [a.follower, b.follower];
  return sameTapes(a.leader, b.leader) && (first === null || second === null || sameTapes(first, second));
}

/** Where a decision's loudspeakers may stand; null where the tapes held for the two of a pair do not go together. */
export function fieldFor(decision: Decision, tapes: DecisionTapes, stepMm: number): Field | null {
  const axes = axesOf(decision.leader, tapes.leader, stepMm);
  if (decision.kind === "single" || tapes.follower === null) {
    const marks = marksOf(axes);
    return marks && fieldOf([spotOf(decision.leader, marks)]);
  }
  return pairField(decision, axes, axesOf(decision.follower, tapes.follower, stepMm));
}

type Axes = readonly [Axis, Axis];

const axesOf = ({ ground }: Asking, [first, second]: ChosenTapes, stepMm: number): Axes => [
  axisOver(ground.surface.finished, first, stepMm),
  axisOver(ground.surface.finished, second, stepMm),
];

function pairField(
  { leader, follower, match }: Extract<Decision, { kind: "pair" }>,
  leaderAxes: Axes,
  followerAxes: Axes,
): Field | null {
  const [whole, marks] = [marksOf(leaderAxes), marksOf(followerAxes)];
  if (whole === null || marks === null) return null;
  const follows = followsBy(match, whole, marks);
  const kept = heldToo(heldToo(leaderAxes, followerAxes[0], follows[0]), followerAxes[1], follows[1]);
  const leaderMarks: Marks | null = kept && { ...whole, axes: kept };
  return leaderMarks && fieldOf([spotOf(leader, leaderMarks), spotOf(follower, marks, follows)]);
}

/** The leader's axes with the one held that a held tape of the follower settles; null where it is held elsewhere. */
function heldToo(axes: Axes | null, follower: Axis, reading: Reading): Axes | null {
  if (axes === null || !isHeld(follower)) return axes;
  const { zeroMm, perFirst, perSecond } = reading;
  if (Math.min(Math.abs(perFirst), Math.abs(perSecond)) > SHARED) return null;
  const byFirst = Math.abs(perFirst) > Math.abs(perSecond);
  const wantedMm = (follower.startMm - zeroMm) / (byFirst ? perFirst : perSecond);
  const [first, second] = axes;
  if (byFirst) {
    const held = heldAt(first, wantedMm);
    return held && [held, second];
  }
  const held = heldAt(second, wantedMm);
  return held && [first, held];
}

/** A reading that more of both tapes than this goes into cannot be held by one of them. */
const SHARED = 1e-9;

function heldAt(axis: Axis, wantedMm: number): Axis | null {
  const mark = nearestMark(axis, wantedMm);
  return mark < axis.least || mark > axis.most ? null : { ...axis, least: mark, most: mark };
}
