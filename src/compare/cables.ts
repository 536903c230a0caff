import { SHARED_WITHIN_MM } from "../cable/boring.js";
import type { Cabling } from "../cable/cabling.js";
import type { Size } from "../cable/gauge.js";
import type { Leg } from "../cable/route.js";
import type { CableRun } from "../cable/run.js";
import type { MemberName } from "../findings/finding.js";
import type { SurfacePoint } from "../geometry/vector.js";
import type { Job } from "../job.js";
import { isNear } from "./near.js";

/** One thing that is otherwise about the cable of one loudspeaker; `id` is the loudspeaker's. */
export type CableChange = { readonly id: string } & (
  | { readonly what: "added"; readonly lengthMm: number }
  | { readonly what: "gone" }
  | { readonly what: "length"; readonly beforeMm: number; readonly afterMm: number }
  /** Null where it is still open. */
  | { readonly what: "size"; readonly before: Size | null; readonly after: Size | null }
  | { readonly what: "conductors"; readonly before: number; readonly after: number }
  /** Over other surfaces, along others of their members, or through others. */
  | { readonly what: "way" }
);

/** What is otherwise about the holes of one member; lengths in mm. */
export type HoleChange = { readonly member: MemberName } & (
  | { readonly what: "added"; readonly holes: number; readonly diameterMm: number }
  | { readonly what: "gone"; readonly holes: number }
  /** As many, of which one is to be bored with another bit. */
  | { readonly what: "bit"; readonly beforeMm: number; readonly afterMm: number }
  /** As many and with the same bits, elsewhere on it. */
  | { readonly what: "moved" }
);

export interface CablesCompared {
  readonly cables: readonly CableChange[];
  readonly holes: readonly HoleChange[];
}

export function cablesCompared(before: Job, after: Job): CablesCompared {
  return {
    cables: cableChanges(before.cabling?.runs ?? [], after.cabling?.runs ?? []),
    holes: holeChanges(before.cabling?.holes ?? [], after.cabling?.holes ?? []),
  };
}

function cableChanges(before: readonly CableRun[], after: readonly CableRun[]): readonly CableChange[] {
  const old = new Map(before.map((run) => [run.speaker.id, run]));
  const ids = new Set(after.map(({ speaker }) => speaker.id));
  return [
    ...after.flatMap((run): readonly CableChange[] => {
      const { id } = run.speaker;
      const was = old.get(id);
      return was === undefined ? [{ id, what: "added", lengthMm: run.lengthMm }] : changesOf(was, run);
    }),
    ...before
      .filter(({ speaker }) => !ids.has(speaker.id))
      .map(({ speaker }): CableChange => ({ id: speaker.id, what: "gone" })),
  ];
}

/** Cable is not cut finer than this. Our own choice. */
const LEAST_MM = 10;

function changesOf(was: CableRun, run: CableRun): readonly CableChange[] {
  const { id } = run.speaker;
  const [beforeMm, afterMm] = [was.lengthMm, run.lengthMm];
  return [
    ...(Math.abs(afterMm - beforeMm) < LEAST_MM ? [] : [{ id, what: "length", beforeMm, afterMm } as const]),
    ...(isSameSize(was.size, run.size)
      ? []
      : [{ id, what: "size", before: was.size, after: run.size } as const]),
    ...(was.conductors === run.conductors
      ? []
      : [{ id, what: "conductors", before: was.conductors, after: run.conductors } as const]),
    ...(wayOf(was) === wayOf(run) ? [] : [{ id, what: "way" } as const]),
  ];
}

const isSameSize = (a: Size | null, b: Size | null): boolean => JSON.stringify(a) === JSON.stringify(b);

/** A way as it is told, without its lengths. */
const wayOf = ({ legs }: CableRun): string => JSON.stringify(legs.map(legTold));

const legTold = ({ field, toward, way, crossed, between }: Leg) => [
  field.surface.name,
  toward,
  way,
  crossed.map(({ kind, number }) => [kind, number]),
  between,
];

type Hole = Cabling["holes"][number];

function holeChanges(before: readonly Hole[], after: readonly Hole[]): readonly HoleChange[] {
  const [old, now] = [byMember(before), byMember(after)];
  return [...new Set([...now.keys(), ...old.keys()])].flatMap((key) => {
    const [was, is] = [old.get(key) ?? [], now.get(key) ?? []];
    const [any] = [...is, ...was];
    if (any === undefined) return [];
    const { surface, member } = any;
    const change = changeOf(was, is);
    return change === null
      ? []
      : [{ member: { surface, kind: member.kind, number: member.number }, ...change }];
  });
}

function byMember(holes: readonly Hole[]): ReadonlyMap<string, readonly Hole[]> {
  const members = new Map<string, Hole[]>();
  for (const hole of holes) {
    const key = JSON.stringify([hole.surface, hole.member.kind, hole.member.number]);
    members.set(key, [...(members.get(key) ?? []), hole]);
  }
  return members;
}

type Change<Of = HoleChange> = Of extends HoleChange ? Omit<Of, "member"> : never;

/** Holes of one member against those that it had, both from one end of it on. */
function changeOf(was: readonly Hole[], is: readonly Hole[]): Change | null {
  const [before, after] = [inOrder(was), inOrder(is)];
  const more = after.length - before.length;
  const largest = Math.max(...after.map(({ diameterMm }) => diameterMm));
  if (more > 0) return { what: "added", holes: more, diameterMm: largest };
  if (more < 0) return { what: "gone", holes: -more };
  for (const [index, { diameterMm: afterMm }] of after.entries()) {
    const beforeMm = before[index]?.diameterMm ?? afterMm;
    if (!isNear(beforeMm, afterMm)) return { what: "bit", beforeMm, afterMm };
  }
  const isMoved = after.some(({ at }, index) => apartMm(at, before[index]?.at ?? at) > SHARED_WITHIN_MM);
  return isMoved ? { what: "moved" } : null;
}

const inOrder = (holes: readonly Hole[]): readonly Hole[] =>
  [...holes].sort((a, b) => a.at.u - b.at.u || a.at.v - b.at.v);

const apartMm = (a: SurfacePoint, b: SurfacePoint): number => Math.hypot(a.u - b.u, a.v - b.v);
