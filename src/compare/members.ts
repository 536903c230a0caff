import { pointNameOf } from "../findings/edge-name.js";
import type { MemberName } from "../findings/finding.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { directionOf, inner, minus, quarterTurn } from "../geometry/surface-point.js";
import type { SurfacePoint } from "../geometry/vector.js";
import { fromZeroMm, repeats } from "../place/run.js";
import type { Faces, Found, Member, Room, Surface } from "../room/room.js";
import { inchesInMm } from "../units/definitions.js";
import { readingMm } from "./reading.js";

/**
 * One thing that is otherwise about one joist, stud or other piece of framing. Where it stands is its centre, as a
 * tape from the wall `from` reads; null where no tape reads one figure along all of it.
 */
export type MemberChange = { readonly member: MemberName } & (
  | {
      readonly what: "added" | "gone";
      readonly from: string | null;
      readonly atMm: number | null;
      /** Who found it there, or not there; null where the layout says it. */
      readonly found: Found | null;
    }
  | {
      readonly what: "moved";
      readonly from: string | null;
      readonly beforeMm: number;
      readonly afterMm: number;
      /** Its number before, which others that came or went may have changed. */
      readonly wasNumber: number;
    }
  | { readonly what: "size"; readonly before: Section; readonly after: Section }
  /** Found where it is, or no longer. */
  | { readonly what: "basis"; readonly after: Member["basis"]; readonly found: Found | null }
);

export interface Section {
  readonly widthMm: number;
  readonly depthMm: number;
}

/** Further than half of the widest usual bay, 24 in, it is another member. Our own choice. */
const MOST_MOVED_MM = inchesInMm(12);

interface Side {
  readonly room: Room;
  readonly surface: Surface;
}

/** What is otherwise about the framing of a surface that both rooms have, where both know it. */
export function memberChanges(before: Side, after: Side): readonly MemberChange[] {
  if (before.surface.framing.kind === "unknown" || after.surface.framing.kind === "unknown") return [];
  const { measuredTo } = after.room;
  const { layout, straps, missing } = after.surface.framing;
  const notThere = ({ name }: Placed): Found | null =>
    missing.find(({ kind, number }) => kind === name.kind && number === name.number)?.found ?? null;
  const rows = [
    { from: layout.from, isOf: repeats },
    { from: (straps?.layout ?? layout).from, isOf: isStrap },
  ].map((row) => ({ ...row, faces: measuredTo }));
  return [
    ...rows.flatMap((row) => repeatingChanges(placed(before, row), placed(after, row), notThere)),
    ...structureChanges(before.surface, after.surface),
  ];
}

const isStrap = ({ kind }: Member): boolean => kind === "strap" || kind === "channel";

interface Placed {
  readonly member: Member;
  readonly name: MemberName;
  readonly from: string | null;
  readonly mm: number;
}

interface AskedRow {
  readonly from: string;
  readonly faces: Faces;
  isOf(member: Member): boolean;
}

/** Joists or studs, or straps, by where they stand, nearest to the wall first. */
function placed(side: Side, asked: AskedRow): readonly Placed[] {
  const { framing, name: surface } = side.surface;
  if (framing.kind === "unknown") return [];
  const layouts = [framing.layout, ...(framing.straps === null ? [] : [framing.straps.layout])];
  const own = layouts.find(({ from }) => from === asked.from);
  const reading = (point: SurfacePoint): number | null => {
    if (pointNameOf(asked.from) === null) return readingMm(side.room, side.surface, { ...asked, point });
    return own === undefined ? null : fromZeroMm(own, point);
  };
  return framing.members
    .filter(asked.isOf)
    .map((member): Placed => {
      const { kind, number } = member;
      const ends = [member.from, member.to].map(reading);
      const [first = null, second = null] = ends;
      const isSquare = first !== null && second !== null && Math.abs(first - second) < EPSILON_MM;
      const across = quarterTurn(directionOf(minus(member.to, member.from)));
      return {
        member,
        name: { surface, kind, number },
        from: isSquare ? asked.from : null,
        mm: isSquare ? first : inner(across, member.from),
      };
    })
    .sort((a, b) => a.mm - b.mm);
}

/**
 * Pairs of neighbours before and after, each with the nearest; what finds none within reach came or went, unless the
 * other has its number: then it is the one that was found elsewhere.
 */
function repeatingChanges(
  before: readonly Placed[],
  after: readonly Placed[],
  notThere: (was: Placed) => Found | null,
): readonly MemberChange[] {
  const { pairs, came, went } = matched(before, after);
  const sameNumber = came.flatMap((is): Pair[] => {
    const was = went.find(({ name }) => name.number === is.name.number);
    return was === undefined ? [] : [{ was, is }];
  });
  const left = (all: readonly Placed[], side: keyof Pair): readonly Placed[] =>
    all.filter((one) => !sameNumber.some((pair) => pair[side] === one));
  return [
    ...[...pairs, ...sameNumber]
      .sort((a, b) => a.is.name.number - b.is.name.number)
      .flatMap(({ was, is }) => pairChanges(was, is)),
    ...left(came, "is").map((one) => cameOrWent("added", one, one.member.found)),
    ...left(went, "was").map((one) => cameOrWent("gone", one, notThere(one))),
  ];
}

interface Pair {
  readonly was: Placed;
  readonly is: Placed;
}

interface Matched {
  readonly pairs: readonly Pair[];
  readonly came: readonly Placed[];
  readonly went: readonly Placed[];
}

function matched(before: readonly Placed[], after: readonly Placed[]): Matched {
  const found = { pairs: [] as Pair[], came: [] as Placed[], went: [] as Placed[] };
  let [old, now] = [0, 0];
  for (;;) {
    const [was, is] = [before[old], after[now]];
    if (was === undefined || is === undefined) {
      return {
        ...found,
        came: [...found.came, ...after.slice(now)],
        went: [...found.went, ...before.slice(old)],
      };
    }
    if (isAlone(was, is, before[old + 1])) {
      found.went.push(was);
      old += 1;
    } else if (isAlone(is, was, after[now + 1])) {
      found.came.push(is);
      now += 1;
    } else {
      found.pairs.push({ was, is });
      [old, now] = [old + 1, now + 1];
    }
  }
}

/** Whether one stands too far before the other to be it, or the one behind it is nearer. */
function isAlone(one: Placed, other: Placed, next: Placed | undefined): boolean {
  if (one.mm >= other.mm) return false;
  const apart = other.mm - one.mm;
  return apart > MOST_MOVED_MM || (next !== undefined && Math.abs(next.mm - other.mm) < apart);
}

const cameOrWent = (
  what: "added" | "gone",
  { name, from, mm }: Placed,
  found: Found | null,
): MemberChange => ({ member: name, what, from, atMm: mm, found });

function pairChanges(was: Placed, is: Placed): readonly MemberChange[] {
  const { name: member, from, mm } = is;
  const moved: MemberChange = {
    member,
    what: "moved",
    from,
    beforeMm: was.mm,
    afterMm: mm,
    wasNumber: was.name.number,
  };
  return [
    ...(Math.abs(was.mm - mm) < EPSILON_MM ? [] : [moved]),
    ...pieceChanges(member, was.member, is.member),
  ];
}

/** Plates, end studs and the like by their kind and number: they follow the room's size, so only what they are is told. */
function structureChanges(before: Surface, after: Surface): readonly MemberChange[] {
  const pieces = ({ framing }: Surface): readonly Member[] =>
    framing.kind === "known" ? framing.members.filter((member) => !repeats(member) && !isStrap(member)) : [];
  const find = (all: readonly Member[], { kind, number }: Member): Member | undefined =>
    all.find((other) => other.kind === kind && other.number === number);
  const named = ({ kind, number }: Member): MemberName => ({ surface: after.name, kind, number });
  const [old, now] = [pieces(before), pieces(after)];
  const lone = (what: "added" | "gone", piece: Member): MemberChange => ({
    member: named(piece),
    what,
    from: null,
    atMm: null,
    found: null,
  });
  return [
    ...now.flatMap((piece) => {
      const was = find(old, piece);
      return was === undefined ? [lone("added", piece)] : pieceChanges(named(piece), was, piece);
    }),
    ...old.filter((piece) => find(now, piece) === undefined).map((piece) => lone("gone", piece)),
  ];
}

function pieceChanges(member: MemberName, was: Member, is: Member): readonly MemberChange[] {
  const section = ({ widthMm, depthMm }: Member): Section => ({ widthMm, depthMm });
  const sameSize =
    Math.abs(was.widthMm - is.widthMm) < EPSILON_MM && Math.abs(was.depthMm - is.depthMm) < EPSILON_MM;
  const told = ({ basis, found }: Member): string => [basis, found?.by, found?.on].join("\n");
  return [
    ...(sameSize ? [] : [{ member, what: "size", before: section(was), after: section(is) } as const]),
    ...(told(was) === told(is) ? [] : [{ member, what: "basis", after: is.basis, found: is.found } as const]),
  ];
}
