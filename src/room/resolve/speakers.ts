import { InternalError } from "../../findings/internal-error.js";
import type { Shape } from "../../geometry/shape.js";
import { NO_AIM, REFERENCE } from "../references.js";
import type { Model, Path, Position, Seat, Speaker, Target } from "../room.js";
import type { SpeakerFile } from "../schema/speakers.js";
import type { RoomFile } from "../schema.js";
import { viaOf } from "./cabling.js";
import { all, andThen, type Resolved, refused, resolved, together } from "./resolved.js";
import { referenceOf } from "./seats.js";
import type { Shell } from "./shell.js";
import type { BareSurface } from "./surfaces.js";
import { fixAtHeight, fixInRoom, fixOn, groundOf, strayTapes, tapesOf } from "./tapes.js";

export interface SpeakerPlace {
  readonly shell: Shell;
  readonly surfaces: readonly BareSurface[];
  readonly models: ReadonlyMap<string, Model>;
  readonly seats: readonly Seat[];
}

export function speakersOf({ speakers }: RoomFile, place: SpeakerPlace): Resolved<readonly Speaker[]> {
  return all((speakers ?? []).map((entry, index) => speakerOf(entry, place, ["speakers", index])));
}

function speakerOf(entry: SpeakerFile, place: SpeakerPlace, path: Path): Resolved<Speaker> {
  const model = place.models.get(entry.model);
  if (model === undefined) throw new InternalError(`no model named ${entry.model}`);
  const turnDeg = entry.turn ?? 0;
  const parts = together({
    position: positionOf(entry, place, path),
    target: targetOf(entry, place, path),
    via: viaOf(entry.cable?.via ?? [], place, [...path, "cable", "via"]),
  });
  return andThen(parts, ({ position, target, via }) => ({
    id: entry.id,
    channel: channelOf(entry),
    area: entry.area ?? null,
    model,
    surface: entry.on,
    position,
    turnDeg,
    opening: turned(model.opening, turnDeg),
    flange: turned(model.flange, turnDeg),
    target,
    amplifierChannel: entry.amplifier ?? null,
    cable: { ...cableOf(entry), via },
    path,
  }));
}

/** Reading made sure that there is one or the other. */
const channelOf = ({ channel, area }: SpeakerFile): string => channel ?? area ?? "";

/** The outline after quarter turns: a lying rectangle stands up. */
function turned(shape: Shape, turnDeg: number): Shape {
  if (shape.kind === "round" || turnDeg % 180 === 0) return shape;
  return { kind: "rectangle", widthMm: shape.heightMm, heightMm: shape.widthMm };
}

const cableOf = ({ cable }: SpeakerFile): Omit<Speaker["cable"], "via"> => ({
  gauge: cable?.gauge ?? null,
  conductors: cable?.conductors ?? null,
  lengthMm: cable?.length ?? null,
  areaMm2: cable?.size ?? null,
  wiring: cable?.wiring ?? null,
});

function surfaceOf({ on }: SpeakerFile, surfaces: readonly BareSurface[]): BareSurface {
  const surface = surfaces.find(({ name }) => name === on);
  if (surface === undefined) throw new InternalError(`no surface named ${on}`);
  return surface;
}

function positionOf(entry: SpeakerFile, { shell, surfaces }: SpeakerPlace, path: Path): Resolved<Position> {
  const surface = surfaceOf(entry, surfaces);
  if (entry.at !== "best") {
    const fixed = fixOn(entry.at, surface, { shell, path: [...path, "at"] });
    return andThen(fixed, ({ centre, tapes }) => ({ kind: "given", centre, tapes }));
  }
  const hold = entry.hold ?? {};
  const ground = groundOf(surface);
  const stray = strayTapes(hold, ground, { shell, path: [...path, "hold"] });
  if (stray.length > 0) return refused(...stray);
  return resolved({ kind: "best", hold: tapesOf(hold), mirror: entry.mirror ?? null });
}

/** What fills an area is heard all over it and is turned toward nobody unless the file says so. */
function targetOf({ aim, area }: SpeakerFile, { shell, seats }: SpeakerPlace, path: Path): Resolved<Target> {
  if (aim === undefined || typeof aim === "string") {
    return resolved(seatTarget(aim ?? (area === undefined ? REFERENCE : NO_AIM), seats));
  }
  const where = { shell, path: [...path, "aim"] };
  const point = isNested(aim)
    ? fixAtHeight(aim.at, aim.up, { shell, path: [...where.path, "at"] })
    : fixInRoom(aim, where);
  return andThen(point, (at) => ({ kind: "point", at }));
}

type AimPoint = Exclude<NonNullable<SpeakerFile["aim"]>, string>;

const isNested = (
  aim: AimPoint,
): aim is Extract<AimPoint, { readonly at: Readonly<Record<string, number>> }> => typeof aim.at === "object";

function seatTarget(aim: string, seats: readonly Seat[]): Target {
  if (aim === NO_AIM) return { kind: "none" };
  const named = seats.find(({ name }) => name === aim);
  const { name, ear } = named ?? referenceOf(seats);
  return { kind: "seat", name, at: ear };
}
