import { inner, quarterTurn, times } from "../geometry/surface-point.js";
import { degrees, type SurfacePoint } from "../geometry/vector.js";
import { edgeToward, type Spot } from "./edges.js";

/** "From the joist's RIGHT end, 49 degrees toward the BACK wall." */
export interface FromRun {
  readonly member: "joist" | "stud";
  /** Wall (or floor, ceiling) that the member's end is toward. */
  readonly end: string;
  readonly degrees: number;
  readonly toward: string;
}

/**
 * The arrow against the members' run: the end of a member that it is nearest to, and by how many degrees (0 to 90)
 * it turns from there to which side. Null where the framing is unknown.
 */
export function fromRunOf(spot: Spot, lean: SurfacePoint): FromRun | null {
  const { surface } = spot;
  if (surface.framing.kind === "unknown") return null;
  const run = surface.framing.direction;
  const end = facing(run, lean);
  const side = facing(quarterTurn(run), lean);
  const endToward = edgeToward(spot, end);
  return {
    member: surface.kind === "ceiling" ? "joist" : "stud",
    end: endToward,
    degrees: degrees(Math.atan2(inner(side, lean), inner(end, lean))),
    // Members at 45 degrees lie as near to one wall as to the next: an arrow is not told twice by the same.
    toward: edgeToward(spot, side, endToward),
  };
}

/** The direction, or its opposite where that is what the arrow leans to. */
const facing = (direction: SurfacePoint, lean: SurfacePoint): SurfacePoint =>
  inner(direction, lean) < 0 ? times(direction, -1) : direction;
