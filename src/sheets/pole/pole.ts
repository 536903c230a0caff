import type { Code } from "../../findings/finding.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Opening } from "../../job.js";
import type { Edge, Framing, Member } from "../../room/room.js";
import { codesAgainst } from "../marking/reasons.js";
import { isAlongAxis } from "../marking/rows.js";
import type { SurfaceStage } from "../marking/surface-stage.js";
import type { Order } from "../sheet.js";
import { tapeFromEdge } from "../tapes.js";

export type Axis = "u" | "v";

/** Everything that stands along one axis of a surface, in mm from the wall that figures on it count from. */
export interface Pole {
  readonly at: SurfaceStage;
  readonly axis: Axis;
  readonly zero: Edge;
  readonly far: Far;
  readonly openings: readonly PoleOpenings[];
  readonly members: readonly PoleMember[];
  /** Stretches whose framing nobody knows. */
  readonly unknown: readonly Stretch[];
  /** Members that run at an angle, so that the axis has no one place for them. */
  readonly oblique: number;
}

export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
}

/** The end across from zero, and the wall there; null where no edge lies square at it. */
export interface Far {
  readonly mm: number;
  readonly along: string | null;
}

/** Openings that share a centre and both edges on the axis, and may all be cut or none of them for the same reasons. */
export interface PoleOpenings extends Stretch {
  readonly ids: readonly string[];
  readonly centreMm: number;
  readonly stoppedBy: readonly Code[] | null;
  readonly computed: boolean;
  /** 0, or more where it overlaps one before it, so that their bars are told apart. */
  readonly level: number;
}

export interface PoleMember extends Stretch {
  readonly member: Member;
  readonly centreMm: number;
}

/** The pole along an axis; null where no edge lies square to it, so that nothing could be counted from. */
export function poleOf(order: Order, at: SurfaceStage, axis: Axis): Pole | null {
  const zero = at.zero[axis];
  if (zero === null) return null;
  const place = (point: SurfacePoint): number => tapeFromEdge(zero, point, at.stage).mm;
  const { framing } = at.surface;
  const members = framing.kind === "known" ? framing.members : [];
  return {
    at,
    axis,
    zero,
    far: farOf(at, place),
    openings: levelled(together(at.openings.map((opening) => alone(order, opening, { axis, place })))),
    members: members.filter((member) => crosses(member, axis)).map((member) => onPole(member, place)),
    unknown: unknownOn(framing, axis, { place, farMm: farOf(at, place).mm }),
    oblique: members.filter((member) => !crosses(member, "u") && !crosses(member, "v")).length,
  };
}

type Place = (point: SurfacePoint) => number;

function farOf({ edges }: SurfaceStage, place: Place): Far {
  const mm = Math.max(...edges.map(({ from }) => place(from)));
  const isThere = (point: SurfacePoint): boolean => Math.abs(place(point) - mm) < EPSILON_MM;
  return { mm, along: edges.find(({ from, to }) => isThere(from) && isThere(to))?.along ?? null };
}

/** A member crosses an axis where it lies square to it. */
const crosses = ({ from, to }: Member, axis: Axis): boolean => Math.abs(to[axis] - from[axis]) < EPSILON_MM;

function onPole(member: Member, place: Place): PoleMember {
  const centreMm = place(member.from);
  const half = member.widthMm / 2;
  return { member, centreMm, fromMm: centreMm - half, toMm: centreMm + half };
}

function alone(order: Order, opening: Opening, { axis, place }: { axis: Axis; place: Place }): PoleOpenings {
  const { speaker, centre, mustNotCut, placed } = opening;
  const centreMm = place(centre);
  const shape = speaker.opening;
  const across = axis === "u" ? "widthMm" : "heightMm";
  const half = (shape.kind === "round" ? shape.diameterMm : shape[across]) / 2;
  return {
    ids: [speaker.id],
    centreMm,
    fromMm: centreMm - half,
    toMm: centreMm + half,
    stoppedBy: mustNotCut ? codesAgainst(order, opening) : null,
    computed: placed === "best",
    level: 0,
  };
}

function together(all: readonly PoleOpenings[]): PoleOpenings[] {
  const groups: PoleOpenings[] = [];
  for (const one of [...all].sort((a, b) => a.centreMm - b.centreMm)) {
    const index = groups.findIndex((group) => isSame(group, one));
    const group = groups[index];
    if (group === undefined) groups.push(one);
    else groups[index] = { ...group, ids: [...group.ids, ...one.ids] };
  }
  return groups;
}

const isSame = (a: PoleOpenings, b: PoleOpenings): boolean =>
  Math.abs(a.fromMm - b.fromMm) < EPSILON_MM &&
  Math.abs(a.toMm - b.toMm) < EPSILON_MM &&
  a.computed === b.computed &&
  (a.stoppedBy?.join() ?? null) === (b.stoppedBy?.join() ?? null);

/** Bars whose ends nearly meet would read as one. */
const APART_MM = 2;

function levelled(all: readonly PoleOpenings[]): PoleOpenings[] {
  const levels: PoleOpenings[] = [];
  for (const one of all) {
    const taken = levels.filter((other) => overlap(other, one)).map(({ level }) => level);
    const free = Array.from({ length: taken.length + 1 }, (_, level) => level).find(
      (level) => !taken.includes(level),
    );
    levels.push({ ...one, level: free ?? 0 });
  }
  return levels;
}

const overlap = (a: Stretch, b: Stretch): boolean =>
  a.fromMm < b.toMm + APART_MM && b.fromMm < a.toMm + APART_MM;

/**
 * Stretches past the last measured member lie across the members, so they show only on the axis that crosses those;
 * with straps across them, those of either show where they do not take the whole axis.
 */
function unknownOn(
  framing: Framing,
  axis: Axis,
  { place, farMm }: { readonly place: Place; readonly farMm: number },
): readonly Stretch[] {
  if (framing.kind === "unknown") return [{ fromMm: 0, toMm: Number.POSITIVE_INFINITY }];
  if (framing.straps === null && framing.run === axis && isAlongAxis(framing)) return [];
  const stretches = framing.unknown.map((area) => {
    const places = area.map(place);
    return { fromMm: Math.min(...places), toMm: Math.max(...places) };
  });
  const isWhole = ({ fromMm, toMm }: Stretch): boolean => toMm - fromMm > farMm - EPSILON_MM;
  return framing.straps === null ? stretches : stretches.filter((stretch) => !isWhole(stretch));
}
