import { Effort, within } from "../effort.js";
import type { Fix } from "../findings/finding.js";
import type { Body } from "../geometry/body.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { distanceMm } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import { allEdgesOn } from "../listen/edges.js";
import type { Mounted } from "../listen/mounted.js";
import type { Room, UnitSystem } from "../room/room.js";
import { MM_PER_INCH } from "../units/definitions.js";
import { liesOnTest, takingOf } from "./clear.js";
import { bodiesOf, type Crowd, crowdOf, type OwnedBody } from "./crowd.js";
import { fittingOf } from "./fitting.js";
import { mayBeClear } from "./may-be-clear.js";
import { fixedObstacles, jointObstacles, piecesOn, takenBy } from "./obstacles.js";
import {
  byRow,
  endRows,
  leastAwayMm,
  type Marks,
  markNearest,
  marksFree,
  outwardFrom,
  type Rows,
  rowsBeside,
  rowsOf,
  rowsOver,
} from "./rows.js";
import { allRowsLeft, type RowsLeft } from "./rows-left.js";
import { tapeLine } from "./tapes.js";

/** The finest mark that a fix is given to: what a tape shows. */
export const TAPE_STEP_MM: Readonly<Record<UnitSystem, number>> = { imperial: MM_PER_INCH / 16, metric: 1 };

export interface Wanted {
  readonly room: Room;
  readonly mounted: Mounted;
  /** The openings on its surface; itself among them is passed over. Asked with one list, they are worked out once. */
  readonly neighbours: readonly Mounted[];
  /** Worked out anew where it is not given. */
  readonly groundOf?: GroundOf;
  /** Whether it keeps off joints of the board too. */
  readonly offJoints?: boolean;
  /** The walls (floor, ceiling) that the fix's two tapes hook on. */
  readonly from: readonly [string, string];
  /** Further away than this nothing is looked for. */
  readonly withinMm?: number;
}

/** The marks of two tapes over a surface as one fitting finds them: while nothing else is let in, and with others. */
interface Ground {
  readonly rows: Rows;
  readonly freeIn: (row: number) => readonly Marks[];
  /** By the exact rule, of a point of the row. */
  readonly isClear: (row: number, at: SurfacePoint) => boolean;
  /** Those in which something is free. */
  readonly left: RowsLeft;
  readonly crowdOf: (openings: readonly Mounted[]) => Crowd;
  /** A row, a stretch of it, or a body beside one is a look. */
  readonly effort: Effort;
}

export type GroundOf = (room: Room, mounted: Mounted, on: On) => Ground | null;

type On = Pick<Wanted, "from" | "offJoints">;

/** Null where the framing is unknown, and where the tapes fix no point. */
function groundOf(
  room: Room,
  { surface, speaker }: Mounted,
  { from, offJoints }: On,
  effort = new Effort(),
): Ground | null {
  if (surface.framing.kind === "unknown") return null;
  const lines = [tapeLine(room, surface, from[0]), tapeLine(room, surface, from[1])] as const;
  const rows = rowsOf(surface, lines, TAPE_STEP_MM[room.units]);
  if (rows === null) return null;
  effort.spend(LOOKS_FOR_A_BODY * piecesOn(surface));
  const fitting = fittingOf(speaker, room.checks);
  const fixed = fixedObstacles(surface, fitting);
  const joints = offJoints === true ? jointObstacles(surface, fitting) : [];
  const taken = [...fixed, ...joints].map(takenBy);
  const ofOne = remembered(new WeakMap<Mounted, readonly OwnedBody[]>(), (owner) =>
    bodiesOf(rows, owner, fitting),
  );
  const near = byRow(taken.map((body) => ({ ...rowsOver(rows, body), takes: takingOf(body) })));
  const liesOn = liesOnTest(surface);
  const freeOf = marksFree(rows);
  const corners = allEdgesOn(surface, "finish").length;
  const besideRow = (row: number) => {
    const bodies = near(row);
    effort.spend(corners + bodies.length);
    return bodies;
  };
  const freeIn = remembered(new Map<number, readonly Marks[]>(), (row) => freeOf(row, besideRow(row)));
  return {
    rows,
    freeIn,
    isClear: (row, at) => liesOn(at) && !besideRow(row).some(({ takes }) => takes(at)),
    left: rowsLeftOf(rows, taken, effort),
    crowdOf: remembered(new WeakMap(), (openings) =>
      crowdOf({ rows, freeIn, effort }, openings.flatMap(ofOne)),
    ),
    effort,
  };
}

/** What it takes to make a body of what is taken, next to a look at one. */
const LOOKS_FOR_A_BODY = 20;

/** What it takes to cut a body out of the surface, likewise. */
const LOOKS_TO_CUT_OUT = 200;

/** So many rows that hold nothing are looked at one by one. */
const MANY_EMPTY = 2000;

/** Once many rows hold nothing, most others will not either: then all are left out on which nothing can be clear. */
function rowsLeftOf(rows: Rows, taken: readonly Body[], effort: Effort): RowsLeft {
  const left = allRowsLeft(...endRows(rows));
  let empty = 0;
  return {
    ...left,
    leaveOut(row) {
      left.leaveOut(row);
      empty += 1;
      if (empty !== MANY_EMPTY) return;
      effort.spend(LOOKS_TO_CUT_OUT * taken.length);
      for (const beside of rowsBeside(rows, mayBeClear(rows.surface, taken))) left.leaveOut(beside);
    },
  };
}

function remembered<Key, Value>(
  known: { get(key: Key): Value | undefined; set(key: Key, value: Value): unknown },
  find: (key: Key) => Value,
): (key: Key) => Value {
  return (key) => {
    const value = known.get(key) ?? find(key);
    known.set(key, value);
    return value;
  };
}

/**
 * Works out each surface, fitting and pair of tapes once: openings of one model on one ceiling share it. All of a room
 * share the looks too; once those are used up nothing is found any more.
 */
export function rememberedGrounds(effort = new Effort()): GroundOf {
  const known = new Map<string, Ground | null>();
  return (room, mounted, { from, offJoints = false }) => {
    if (effort.isSpent) return null;
    const fitting = fittingOf(mounted.speaker, room.checks);
    const { name, joints } = mounted.surface;
    const keepsOff = offJoints && joints.length > 0;
    const key = JSON.stringify([name, fitting, from, keepsOff]);
    const on = { from, offJoints: keepsOff };
    const ground = known.get(key) ?? within(effort, () => groundOf(room, mounted, on, effort));
    known.set(key, ground);
    return ground;
  };
}

/**
 * The clear centre nearest to where the opening is, on whole marks of both tapes, by the exact distances. Null where
 * no clear centre is to be had on whole marks, or where more looks would be needed than the ground may have.
 */
export function nearestClearCentre({ room, mounted, neighbours, ...wanted }: Wanted): Fix | null {
  const { withinMm = Number.POSITIVE_INFINITY } = wanted;
  const ground = (wanted.groundOf ?? groundOf)(room, mounted, wanted);
  if (ground === null) return null;
  const found = within(ground.effort, () =>
    nearestMark({ ground, crowd: ground.crowdOf(neighbours), mounted, withinMm }),
  );
  return found === null ? null : fixAt(ground.rows, found);
}

interface Search {
  readonly ground: Ground;
  readonly crowd: Crowd;
  readonly mounted: Mounted;
  readonly withinMm: number;
}

interface Mark {
  readonly row: number;
  readonly mark: number;
  readonly at: SurfacePoint;
  readonly awayMm: number;
}

/** Where the framing alone leaves no mark at all, which takes every row to find out. */
const withoutRoom = new WeakSet<Ground>();

/** Row by row from the centre outward, until no row left can hold anything nearer; null too where no looks are left. */
function nearestMark(search: Search): Mark | null {
  const { ground, crowd, mounted, withinMm } = search;
  if (withoutRoom.has(ground)) return null;
  let nearest: Mark | null = null;
  let isFull = true;
  for (const { row, awayMm } of outwardFrom(ground.rows, mounted.centre, ground.left)) {
    ground.effort.spend(1);
    if (awayMm > withinMm || (nearest !== null && awayMm >= nearest.awayMm)) return nearest;
    const free = ground.freeIn(row);
    if (free.length === 0) {
      ground.left.leaveOut(row);
      continue;
    }
    isFull = false;
    const { at, stretches } = crowd.leftIn(row);
    ground.effort.spend(stretches.length);
    for (const { owner, marks: stretch } of stretches) {
      if (owner !== null && owner !== mounted) continue;
      const underMm = nearest?.awayMm ?? Number.POSITIVE_INFINITY;
      // Most stretches are too far off, which is told without looking for their nearest mark.
      if (leastAwayMm(ground.rows, at, stretch, mounted.centre) > underMm + EPSILON_MM) continue;
      const found = nearestIn(search, { row, stretch, underMm });
      if (found === null || found.awayMm > withinMm) continue;
      if (nearest === null || found.awayMm < nearest.awayMm) nearest = found;
    }
  }
  if (isFull) withoutRoom.add(ground);
  return nearest;
}

interface Looked {
  readonly row: number;
  readonly stretch: Marks;
  /** Nothing that is as far away as this is of use. */
  readonly underMm: number;
}

/** A mark at the very edge may not be clear by the exact rule; then the one beside it is. */
function nearestIn(search: Search, { row, stretch: [first, last], underMm }: Looked): Mark | null {
  const { ground, crowd, mounted } = search;
  const nearest = Math.min(Math.max(markNearest(ground.rows, row, mounted.centre), first), last);
  const awayMm = (mark: number): number => distanceMm(ground.rows.pointAt(row, mark), mounted.centre);
  // Asked first: whether a mark is clear takes longer.
  if (awayMm(nearest) >= underMm) return null;
  for (const mark of [nearest, nearest + 1, nearest - 1]) {
    const at = ground.rows.pointAt(row, mark);
    if (mark >= first && mark <= last && ground.isClear(row, at) && !crowd.takes(row, at, mounted)) {
      return { row, mark, at, awayMm: awayMm(mark) };
    }
  }
  return null;
}

function fixAt({ tapes: [first, second], tapeStepMm, stepsAt }: Rows, { row, mark, at }: Mark): Fix {
  const steps = stepsAt(row, mark);
  return {
    u: at.u,
    v: at.v,
    at: { [first.from]: steps[0] * tapeStepMm, [second.from]: steps[1] * tapeStepMm },
  };
}
