import type { Problem } from "../findings/complaint.js";
import { USUAL_CLEARANCE_MM } from "../standards/framing-practice.js";
import { USUAL_JOINT_DEG, USUAL_LINE_DEG, USUAL_TOLERANCE_DEG } from "../standards/house-limits.js";
import { REFERENCE_HEADROOM_DB, REFERENCE_LEVEL_DB, USUAL_TEMPERATURE_C } from "../standards/sound.js";
import { areasOf } from "./resolve/areas.js";
import { avoidOf } from "./resolve/cabling.js";
import { entryOf, framingOf } from "./resolve/framing.js";
import { jointsOf } from "./resolve/joints.js";
import { labelStockOf } from "./resolve/labels.js";
import { modelsOf } from "./resolve/models.js";
import { withoutMainCeiling } from "./resolve/no-main-ceiling.js";
import { obstructionOf } from "./resolve/obstructions.js";
import { doorsIn } from "./resolve/pieces.js";
import { all, andThen, type Resolved, refused, resolved, together } from "./resolve/resolved.js";
import { referenceOf, seatsOf } from "./resolve/seats.js";
import { type Shell, shellOf } from "./resolve/shell.js";
import { speakersOf } from "./resolve/speakers.js";
import { type BareSurface, bareSurfaces } from "./resolve/surfaces.js";
import { fixAtHeight } from "./resolve/tapes.js";
import type { Obstruction, Room, Surface } from "./room.js";
import { MOST_MEMBERS } from "./schema/limits.js";
import type { RoomFile } from "./schema.js";

export type ResolveResult =
  | { readonly ok: true; readonly room: Room }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * The room of a file that was read without complaint: planes in one world, in mm. Problems are what only shows once
 * the walls stand: tapes that fix no point, members past the far wall. `complaintsOf` gives them their places.
 */
export function resolveRoom(file: RoomFile): ResolveResult {
  const shell = shellOf(file);
  return shell.ok ? resolveIn(shell.value, file) : { ok: false, problems: shell.problems };
}

function resolveIn(shell: Shell, file: RoomFile): ResolveResult {
  const missing = withoutMainCeiling(shell, file);
  if (missing.length > 0) return { ok: false, problems: missing };
  const bare = bareSurfaces(shell, file);
  const seats = seatsOf(file, shell);
  const models = modelsOf(file);
  // What seats and models lack is told once, by themselves.
  const canAim = seats.ok && models.ok;
  const place = canAim ? { shell, surfaces: bare, seats: seats.value, models: models.value } : null;
  const parts = together({
    surfaces: surfacesOf(file, shell, bare),
    seats,
    models,
    speakers: place === null ? resolved([]) : speakersOf(file, place),
    areas: models.ok ? areasOf(file, { shell, surfaces: bare, models: models.value }) : resolved([]),
    equipment: equipmentOf(file, shell),
    labels: labelStockOf(file),
    avoid: avoidOf(file, { shell, surfaces: bare }),
  });
  if (!parts.ok) return { ok: false, problems: parts.problems };
  const { models: _typed, avoid, ...found } = parts.value;
  const cable = { ...cableOf(file), avoid };
  return {
    ok: true,
    room: { ...plainParts(file, shell), ...found, cable, reference: referenceOf(found.seats) },
  };
}

function surfacesOf(
  file: RoomFile,
  shell: Shell,
  bare: readonly BareSurface[],
): Resolved<readonly Surface[]> {
  const surfaces = all(
    bare.map((surface) => {
      const parts = together({
        framing: framingOf(surface, file, shell),
        obstructions: obstructionsOn(surface, file, shell),
        joints: jointsOf(surface, file, shell),
      });
      return andThen(parts, (found): Surface => ({ ...surface, ...found }));
    }),
  );
  return surfaces.ok ? withinMembers(surfaces.value) : surfaces;
}

/** The limit on members is on the whole room. */
function withinMembers(surfaces: readonly Surface[]): Resolved<readonly Surface[]> {
  const count = surfaces
    .map(({ framing }) => (framing.kind === "known" ? framing.members.length : 0))
    .reduce((sum, members) => sum + members, 0);
  if (count <= MOST_MEMBERS) return resolved(surfaces);
  const figures = { of: "members", count, most: MOST_MEMBERS } as const;
  return refused({ code: "too-many", path: ["framing"], at: "key", figures });
}

function obstructionsOn(
  surface: BareSurface,
  file: RoomFile,
  shell: Shell,
): Resolved<readonly Obstruction[]> {
  const entries = (file.obstructions ?? []).map((entry, index) => ({ entry, path: ["obstructions", index] }));
  const here = entries.filter(({ entry }) => entry.on === surface.name);
  const told = all(here.map(({ entry, path }) => obstructionOf(entry, { surface, shell, path })));
  const doors = doorsIn(entryOf(surface.name, file), { surface, shell, path: ["framing", surface.name] });
  return andThen(told, (obstructions) => [...obstructions, ...doors]);
}

function equipmentOf({ equipment }: RoomFile, shell: Shell): Resolved<Room["equipment"]> {
  if (equipment === undefined) return resolved(null);
  const at = fixAtHeight(equipment.at, equipment.up, { shell, path: ["equipment", "at"] });
  return andThen(at, (point) => ({ at: point }));
}

type PlainPart =
  | "job"
  | "units"
  | "measuredTo"
  | "stage"
  | "floorBuildUpMm"
  | "walls"
  | "layout"
  | "listening"
  | "checks"
  | "accept"
  | "call"
  | "print";

/** What needs no geometry: as typed, with what is usual where nothing is. */
function plainParts(file: RoomFile, shell: Shell): Pick<Room, PlainPart> {
  const { job, checks, print } = file;
  return {
    job: {
      name: job.name,
      number: job.number ?? null,
      revision: job.revision ?? "A",
      date: job.date ?? null,
    },
    units: file.units,
    measuredTo: shell.measuredTo,
    stage: file.stage?.walls ?? null,
    floorBuildUpMm: file.floor?.build_up ?? 0,
    walls: shell.walls.map(({ name }) => name),
    layout: file.layout ?? null,
    listening: {
      temperatureC: file.listening?.temperature ?? USUAL_TEMPERATURE_C,
      targetDb: file.listening?.target ?? REFERENCE_LEVEL_DB,
      headroomDb: file.listening?.headroom ?? REFERENCE_HEADROOM_DB,
    },
    checks: {
      clearMm: checks?.clear ?? USUAL_CLEARANCE_MM,
      toleranceDeg: checks?.tolerance ?? USUAL_TOLERANCE_DEG,
      lineDeg: checks?.line ?? USUAL_LINE_DEG,
      jointDeg: checks?.joint ?? USUAL_JOINT_DEG,
    },
    accept: (file.accept ?? []).map(({ code, speaker, why }, index) => ({
      code,
      speaker: speaker ?? null,
      why,
      path: ["accept", index],
    })),
    call: file.call ?? null,
    print: { paper: print?.paper ?? null, languages: print?.languages ?? ["en"] },
  };
}

const cableOf = ({ cable, labels }: RoomFile): Omit<Room["cable"], "avoid"> => ({
  lossDb: cable?.loss ?? null,
  loopMm: cable?.loop ?? null,
  sparePercent: cable?.spare ?? null,
  gauges: cable?.gauges ?? [],
  outsideDiameterMm: labels?.cable_diameter ?? null,
  rackLoopMm: cable?.rack_loop ?? null,
  areasMm2: cable?.sizes ?? [],
  wiring: cable?.wiring ?? null,
  temperatureC: cable?.temperature ?? null,
  spoolsMm: cable?.spools ?? [],
});
