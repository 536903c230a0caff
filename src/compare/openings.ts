import { EPSILON_MM } from "../geometry/epsilon.js";
import type { Shape } from "../geometry/shape.js";
import type { Job, Opening } from "../job.js";
import type { Model, Tape } from "../room/room.js";
import { readingMm } from "./reading.js";

/** One thing that is otherwise about one opening; `id` is the loudspeaker's. */
export type OpeningChange = { readonly id: string } & (
  | { readonly what: "added"; readonly surface: string; readonly tapes: readonly Tape[] }
  | { readonly what: "gone"; readonly surface: string }
  | { readonly what: "surface"; readonly before: string; readonly after: string }
  /** `beforeMm` is null where the old surface has no such tape. */
  | {
      readonly what: "tape";
      readonly from: string;
      readonly beforeMm: number | null;
      readonly afterMm: number;
    }
  | { readonly what: "channel" | "model"; readonly before: string; readonly after: string }
  /** The hole itself. */
  | { readonly what: "size"; readonly before: Shape; readonly after: Shape }
  /** Other figures of the same model: flange, depth, clamps, board, tilt. */
  | { readonly what: "figures"; readonly model: string }
  /** Degrees anticlockwise from up the sheet, facing the surface; null without an arrow. */
  | { readonly what: "arrow"; readonly beforeDeg: number | null; readonly afterDeg: number | null }
  /** Whether it may be cut now, and might not before. */
  | { readonly what: "cut"; readonly allowed: boolean }
);

/** What is otherwise about every opening, in the order of the new file, those that are gone last. */
export function openingChanges(before: Job, after: Job): readonly OpeningChange[] {
  const old = new Map(before.openings.map((opening) => [opening.speaker.id, opening]));
  const ids = new Set(after.openings.map(({ speaker }) => speaker.id));
  return [
    ...after.openings.flatMap((opening): readonly OpeningChange[] => {
      const was = old.get(opening.speaker.id);
      return was === undefined
        ? [added(opening)]
        : changesOf({ job: before, opening: was }, { job: after, opening });
    }),
    ...before.openings.filter(({ speaker }) => !ids.has(speaker.id)).map(gone),
  ];
}

const added = ({ speaker, surface, tapes }: Opening): OpeningChange => ({
  id: speaker.id,
  what: "added",
  surface: surface.name,
  tapes,
});

const gone = ({ speaker, surface }: Opening): OpeningChange => ({
  id: speaker.id,
  what: "gone",
  surface: surface.name,
});

interface InJob {
  readonly job: Job;
  readonly opening: Opening;
}

function changesOf(before: InJob, after: InJob): readonly OpeningChange[] {
  const { id, channel, model } = after.opening.speaker;
  const was = before.opening.speaker;
  const words = (what: "channel" | "model" | "surface", old: string, now: string): OpeningChange[] =>
    old === now ? [] : [{ id, what, before: old, after: now }];
  return [
    ...words("surface", before.opening.surface.name, after.opening.surface.name),
    ...tapeChanges(before, after),
    ...words("channel", was.channel, channel),
    ...words("model", was.model.name, model.name),
    ...hardwareChanges(before.opening, after.opening),
    ...arrowChanges(before.opening, after.opening),
    ...(before.opening.mustNotCut === after.opening.mustNotCut
      ? []
      : [{ id, what: "cut", allowed: !after.opening.mustNotCut } as const]),
  ];
}

/** By the tapes that place it now, as they would have read before: on one surface only those that read otherwise. */
function tapeChanges(before: InJob, after: InJob): readonly OpeningChange[] {
  const { id } = after.opening.speaker;
  const isMoved = before.opening.surface.name !== after.opening.surface.name;
  return after.opening.tapes.flatMap(({ from, mm }): OpeningChange[] => {
    const beforeMm = isMoved ? null : readBefore(before, after, from);
    const isSame = beforeMm !== null && Math.abs(mm - beforeMm) < EPSILON_MM;
    return isSame ? [] : [{ id, what: "tape", from, beforeMm, afterMm: mm }];
  });
}

/** As it was typed, where it was and to the same faces. */
function readBefore({ job, opening }: InJob, after: InJob, from: string): number | null {
  const faces = after.job.room.measuredTo;
  const typed = opening.tapes.find((tape) => tape.from === from);
  if (typed !== undefined && job.room.measuredTo === faces) return typed.mm;
  return readingMm(job.room, opening.surface, { from, point: opening.centre, faces });
}

function hardwareChanges(before: Opening, after: Opening): readonly OpeningChange[] {
  const { id, opening, model } = after.speaker;
  const was = before.speaker;
  return [
    ...(isSameShape(was.opening, opening)
      ? []
      : [{ id, what: "size", before: was.opening, after: opening } as const]),
    ...(was.model.name !== model.name || hasSameFigures(was.model, model)
      ? []
      : [{ id, what: "figures", model: model.name } as const]),
  ];
}

const isNear = (a: number, b: number): boolean => Math.abs(a - b) < EPSILON_MM;

function isSameShape(a: Shape, b: Shape): boolean {
  if (a.kind === "round") return b.kind === "round" && isNear(a.diameterMm, b.diameterMm);
  return b.kind === "rectangle" && isNear(a.widthMm, b.widthMm) && isNear(a.heightMm, b.heightMm);
}

/** Figures that a hole or a sheet depends on, beside the opening itself. */
function hasSameFigures(a: Model, b: Model): boolean {
  const range = ({ boardRangeMm }: Model): string => boardRangeMm?.join() ?? "";
  return (
    isSameShape(a.flange, b.flange) &&
    isNear(a.depthMm, b.depthMm) &&
    isNear(a.clampReachMm, b.clampReachMm) &&
    a.baffleTiltDeg === b.baffleTiltDeg &&
    range(a) === range(b)
  );
}

/** An arrow on paper is not read finer. Our own choice. */
const ARROW_DEG = 0.1;

function arrowChanges({ aim: was }: Opening, { aim, speaker }: Opening): readonly OpeningChange[] {
  const [beforeDeg, afterDeg] = [was?.arrowDeg ?? null, aim?.arrowDeg ?? null];
  if (beforeDeg === afterDeg) return [];
  if (beforeDeg !== null && afterDeg !== null && turnedDeg(beforeDeg, afterDeg) < ARROW_DEG) return [];
  return [{ id: speaker.id, what: "arrow", beforeDeg, afterDeg }];
}

/** Between two directions, the short way round. */
export function turnedDeg(first: number, second: number): number {
  const turn = Math.abs(first - second) % 360;
  return Math.min(turn, 360 - turn);
}
