import type { Problem } from "../../findings/complaint.js";
import { surfacePoint } from "../../geometry/surface-point.js";
import type { Framing, Member, Path } from "../room.js";
import type { FramingFile } from "../schema/framing.js";
import type { RoomFile } from "../schema.js";
import { centresOf } from "./centres.js";
import { type AsFound, asFound, type Centre } from "./found.js";
import { layoutOf, pastLast } from "./laid.js";
import { piecesOf, type RoughOpening, rimsOf, roughOpeningsOf, withoutOpenings } from "./pieces.js";
import { andThen, type Resolved, refused, resolved, together } from "./resolved.js";
import { type Run, runOf } from "./run.js";
import type { Shell } from "./shell.js";
import { type Strapped, strappedBy } from "./straps.js";
import { behind, pointIn, stretchesOf } from "./strip.js";
import { type Structure, structureOf } from "./structure.js";
import type { BareSurface } from "./surfaces.js";

/** The framing of a surface as the file tells it; unknown where it says nothing. */
export function framingOf(surface: BareSurface, file: RoomFile, shell: Shell): Resolved<Framing> {
  const entry = entryOf(surface.name, file);
  if (entry === undefined) return resolved({ kind: "unknown" });
  const path: Path = ["framing", surface.name];
  const stray = strayKeys(entry, surface, path);
  if (stray.length > 0) return refused(...stray);
  const run = runOf(entry, { surface, shell, path, usual: UPRIGHT });
  if (!run.ok) return run;
  const { strip, shiftMm } = run.value;
  const options = { strip, shiftMm, path };
  const laid = centresOf(entry, options);
  const found = laid.ok ? asFound(entry, laid.value, options) : laid;
  const structure = structureOf(entry, { surface, strip });
  const place = { surface, shell, path };
  const parts = together({
    centres: found,
    pieces: piecesOf(entry, place),
    openings: roughOpeningsOf(entry, { ...place, strip, structure }),
    doubled: doubledOf(entry, found.ok ? countOf(found.value) : null, path),
  });
  if (!parts.ok) return parts;
  const { along } = strip;
  const strapped = strappedBy(entry, { ...place, along, openings: parts.value.openings });
  return andThen(strapped, (straps) =>
    known(entry, run.value, { ...parts.value, ...{ straps, structure, surface } }),
  );
}

/** Studs run up; of a ceiling the file always tells. */
const UPRIGHT = surfacePoint(0, 1);

/** Numbers of members that are two side by side; each is there. */
function doubledOf(entry: FramingFile, count: number | null, path: Path): Resolved<readonly number[]> {
  const numbers = entry.doubled ?? [];
  const problems = numbers.flatMap((number, index): readonly Problem[] =>
    count === null || number <= count
      ? []
      : [
          {
            code: "found-no-member",
            path: [...path, "doubled", index],
            at: "value",
            figures: { number, count },
          },
        ],
  );
  return problems.length > 0 ? refused(...problems) : resolved(numbers);
}

/** Keys that belong to the other kind of surface, and the one that a ceiling wants. */
function strayKeys(entry: FramingFile, { kind }: BareSurface, path: Path): readonly Problem[] {
  const others = kind === "wall" ? ["run", "rims"] : ["plates", "end_studs", "bearing", "openings"];
  const stray = others.filter((key) => key in entry);
  const choices = Object.keys(entry).filter((key) => !stray.includes(key));
  const unknown = stray.map(
    (key): Problem => ({
      code: "unknown-key",
      path: [...path, key],
      at: "key",
      figures: { key, suggestion: null, choices },
    }),
  );
  if (kind === "wall" || entry.run !== undefined) return unknown;
  return [...unknown, { code: "missing-key", path: [...path, "run"], at: "value", figures: { key: "run" } }];
}

export const entryOf = (name: string, { framing }: RoomFile): FramingFile | undefined =>
  Object.entries(framing ?? {}).find(([surface]) => surface === name)?.[1];

interface Parts {
  readonly centres: AsFound;
  readonly surface: BareSurface;
  readonly structure: Structure;
  readonly pieces: readonly Member[];
  readonly openings: readonly RoughOpening[];
  readonly doubled: readonly number[];
  readonly straps: Strapped;
}

function known(entry: FramingFile, run: Run, parts: Parts): Framing {
  const { strip } = run;
  const { centres, surface, structure, pieces, openings, doubled, straps } = parts;
  const { widthMm, depthMm } = entry.member;
  const basis = centres.standing.every(({ basis }) => basis === "measured") ? "measured" : "assumed";
  const lengthsOf = ({ mm, number, basis, found }: Centre): readonly Member[] =>
    stretchesOf(strip, { fromMm: mm, widthMm }, structure.clear).map(([low, high]) => ({
      number,
      kind: surface.kind === "ceiling" ? "joist" : "stud",
      from: pointIn(strip, mm, low),
      to: pointIn(strip, mm, high),
      widthMm: doubled.includes(number) ? 2 * widthMm : widthMm,
      depthMm,
      basis,
      found,
    }));
  const members = centres.standing.flatMap(lengthsOf);
  const standing = [...members, ...structure.members].flatMap((member) =>
    member.kind === "stud" || member.kind === "end-stud" ? withoutOpenings(member, openings) : [member],
  );
  return {
    kind: "known",
    layout: layoutOf(entry, run, basis),
    run: Math.abs(strip.along.u) > Math.abs(strip.along.v) ? "u" : "v",
    direction: strip.along,
    members: [
      ...standing,
      ...openings.flatMap((opening) => opening.members),
      ...rimsOf(entry, surface, strip),
      ...pieces,
      ...straps.members,
    ],
    unknown: [...pastLast(entry, strip, lookedAt(centres)), ...behind(strip), ...straps.unknown],
    cavityMm: cavityMm(entry),
    web: entry.member.web,
    engineered: entry.engineered ?? entry.member.web !== null,
    bearing: entry.bearing ?? true,
    straps: straps.straps,
    missing: centres.missing.flatMap(lengthsOf),
    extra: centres.extra,
  };
}

const countOf = ({ standing, missing }: AsFound): number => standing.length + missing.length;

/** Places of the layout's own: past the last of them nobody has looked, whatever else was found there. */
const lookedAt = ({ standing, missing, extra }: AsFound): readonly number[] =>
  [...standing.filter(({ number }) => !extra.includes(number)), ...missing]
    .map(({ mm }) => mm)
    .sort((a, b) => a - b);

const cavityMm = ({ cavity, member }: FramingFile): number =>
  cavity === "open" ? Number.POSITIVE_INFINITY : (cavity ?? member.depthMm);
