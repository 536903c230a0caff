import type { Problem } from "../../findings/complaint.js";
import { EPSILON_MM } from "../../geometry/epsilon.js";
import type { Polygon } from "../../geometry/shape.js";
import type { Framing, Layout, Member, Path } from "../room.js";
import type { FramingFile } from "../schema/framing.js";
import type { RoomFile } from "../schema.js";
import { centresOf } from "./centres.js";
import { asFound, type Centre } from "./found.js";
import { piecesOf, type RoughOpening, rimsOf, roughOpeningsOf, withoutOpenings } from "./pieces.js";
import { andThen, type Resolved, refused, resolved, together } from "./resolved.js";
import { type Run, runOf } from "./run.js";
import type { Shell } from "./shell.js";
import { behind, beyond, pointIn, type Strip, stretchesOf } from "./strip.js";
import { type Structure, structureOf } from "./structure.js";
import type { BareSurface } from "./surfaces.js";

/** The framing of a surface as the file tells it; unknown where it says nothing. */
export function framingOf(surface: BareSurface, file: RoomFile, shell: Shell): Resolved<Framing> {
  const entry = entryOf(surface.name, file);
  if (entry === undefined) return resolved({ kind: "unknown" });
  const path: Path = ["framing", surface.name];
  const stray = strayKeys(entry, surface, path);
  if (stray.length > 0) return refused(...stray);
  const run = runOf(entry, { surface, shell, path });
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
    doubled: doubledOf(entry, found.ok ? found.value.length : null, path),
  });
  return andThen(parts, (value) => known(entry, run.value, { ...value, structure, surface }));
}

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
  /** From the framing face of the wall that is measured from, ascending. */
  readonly centres: readonly Centre[];
  readonly surface: BareSurface;
  readonly structure: Structure;
  readonly pieces: readonly Member[];
  readonly openings: readonly RoughOpening[];
  readonly doubled: readonly number[];
}

function known(entry: FramingFile, run: Run, parts: Parts): Framing {
  const { strip } = run;
  const { centres, surface, structure, pieces, openings, doubled } = parts;
  const { widthMm, depthMm } = entry.member;
  const basis = centres.every(({ basis }) => basis === "measured") ? "measured" : "assumed";
  const members = centres.flatMap((centre, index) =>
    stretchesOf(strip, { fromMm: centre.mm, widthMm }, structure.clear).map(
      ([low, high]): Member => ({
        number: index + 1,
        kind: surface.kind === "ceiling" ? "joist" : "stud",
        from: pointIn(strip, centre.mm, low),
        to: pointIn(strip, centre.mm, high),
        widthMm: doubled.includes(index + 1) ? 2 * widthMm : widthMm,
        depthMm,
        basis: centre.basis,
        found: centre.found,
      }),
    ),
  );
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
    ],
    unknown: [...pastLast(entry, strip, centres), ...behind(strip)],
    cavityMm: cavityMm(entry),
    engineered: entry.engineered ?? false,
    bearing: entry.bearing ?? true,
  };
}

/** The stretch past the last measured member: nobody has said what is there. */
function pastLast(entry: FramingFile, strip: Strip, centres: readonly Centre[]): readonly Polygon[] {
  if (entry.at === undefined) return [];
  const fromMm = (centres.at(-1)?.mm ?? 0) + entry.member.widthMm / 2;
  return fromMm >= strip.extentMm - EPSILON_MM ? [] : beyond(strip, fromMm);
}

const layoutOf = (entry: FramingFile, { from, strip }: Run, basis: Layout["basis"]): Layout => ({
  from,
  zero: strip.zero,
  spacingMm: entry.spacing ?? null,
  basis,
  markedToNearEdge: entry.mark === "near-edge",
});

const cavityMm = ({ cavity, member }: FramingFile): number =>
  cavity === "open" ? Number.POSITIVE_INFINITY : (cavity ?? member.depthMm);
