import type { Polygon } from "../../geometry/shape.js";
import { quarterTurn } from "../../geometry/surface-point.js";
import type { SurfacePoint } from "../../geometry/vector.js";
import type { Member, Path, Straps } from "../room.js";
import type { FramingFile } from "../schema/framing.js";
import type { StrapsFile } from "../schema/structure.js";
import { centresOf } from "./centres.js";
import { layoutOf, pastLast } from "./laid.js";
import { type RoughOpening, withoutOpenings } from "./pieces.js";
import { andThen, type Resolved, resolved } from "./resolved.js";
import { type Run, runOf } from "./run.js";
import type { Shell } from "./shell.js";
import { behind, pointIn, stretchesOf } from "./strip.js";
import type { BareSurface } from "./surfaces.js";

interface Place {
  readonly surface: BareSurface;
  readonly shell: Shell;
  readonly path: Path;
  /** The way that the members run. */
  readonly along: SurfacePoint;
  readonly openings: readonly RoughOpening[];
}

/** Straps or channels over a surface, and where nobody has told whether there are any. */
export interface Strapped {
  readonly straps: Straps | null;
  readonly members: readonly Member[];
  readonly unknown: readonly Polygon[];
}

const NONE: Strapped = { straps: null, members: [], unknown: [] };

/**
 * Strapping or resilient channel: across the members unless the file says otherwise, over all of the surface, plates
 * too, since it is fixed to the framing from below and the board hangs from it.
 */
export function strappedBy({ strapping }: FramingFile, place: Place): Resolved<Strapped> {
  if (strapping === undefined || typeof strapping === "number") return resolved(NONE);
  const path: Path = [...place.path, "strapping"];
  const run = runOf(strapping, { ...place, path, usual: quarterTurn(place.along) });
  if (!run.ok) return run;
  const { strip, shiftMm } = run.value;
  const laid = { ...strapping, member: { widthMm: strapping.width } };
  return andThen(centresOf(laid, { strip, shiftMm, path }), (centres) => ({
    straps: {
      kind: strapping.kind ?? "strap",
      layout: layoutOf(strapping, run.value, strapping.at === undefined ? "assumed" : "measured"),
      direction: strip.along,
    },
    members: centres
      .flatMap((mm, index) => lengthsOf(strapping, run.value, { number: index + 1, mm }))
      .flatMap((strap) => withoutOpenings(strap, place.openings)),
    unknown: [...pastLast(laid, strip, centres), ...behind(strip)],
  }));
}

function lengthsOf(
  { kind = "strap", width, depth, at }: StrapsFile,
  { strip }: Run,
  { number, mm }: { readonly number: number; readonly mm: number },
): readonly Member[] {
  return stretchesOf(strip, { fromMm: mm, widthMm: width }).map(
    ([low, high]): Member => ({
      number,
      kind,
      from: pointIn(strip, mm, low),
      to: pointIn(strip, mm, high),
      widthMm: width,
      depthMm: depth,
      basis: at === undefined ? "assumed" : "measured",
      found: null,
    }),
  );
}
