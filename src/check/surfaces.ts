import { pointNameOf } from "../findings/edge-name.js";
import type { Finding } from "../findings/finding.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { fromZeroMm, repeats } from "../place/run.js";
import { tapeLine, tapeMm } from "../place/tapes.js";
import type { Framing, Room, Surface } from "../room/room.js";
import { USUAL_SPACINGS_MM } from "../standards/framing-practice.js";

/** A rule about one surface that openings are asked for on. */
export type SurfaceRule = (room: Room, surface: Surface) => readonly Finding[];

/** A fire- or sound-rated surface: without an enclosure nothing is cut; with one, what it asks for is said. */
export const ratedAssembly: SurfaceRule = (_room, surface) => {
  if (!surface.rated) return [];
  const { name, enclosure } = surface;
  return [
    {
      ...aboutSurface(surface, "surfaces"),
      code: "rated-assembly",
      level: enclosure ? "note" : "error",
      figures: { surface: name, enclosure },
    },
  ];
};

/** Framing from a first mark and a spacing: where it is assumed to be, not where somebody found it. */
export const framingAssumed: SurfaceRule = (room, surface) => {
  const assumed = assumedFraming(room, surface);
  if (assumed === null) return [];
  const { firstMm, spacingMm, from } = assumed;
  return [
    {
      ...aboutSurface(surface, "framing"),
      code: "framing-assumed",
      level: "note",
      figures: { surface: surface.name, firstMm, spacingMm, from },
    },
  ];
};

/**
 * A first mark at a usual spacing less half a member, given as a centre: a layout is struck to the near edge, so
 * that mark is most often the member's edge and the centre half a member further.
 */
export const edgeGivenAsCentre: SurfaceRule = (room, surface) => {
  const assumed = assumedFraming(room, surface);
  if (assumed === null || assumed.markedToNearEdge) return [];
  const { firstMm, spacingMm, halfMm } = assumed;
  const centreIfEdgeMm = firstMm + halfMm;
  const isUsual = [spacingMm, ...USUAL_SPACINGS_MM].some(
    (usual) => Math.abs(usual - centreIfEdgeMm) <= EPSILON_MM,
  );
  if (!isUsual) return [];
  return [
    {
      ...aboutSurface(surface, "framing"),
      code: "edge-given-as-centre",
      level: "note",
      figures: { surface: surface.name, givenMm: firstMm, centreIfEdgeMm },
    },
  ];
};

interface Assumed {
  /** Centre of the first member, as a tape from the wall that the framing is measured from. */
  readonly firstMm: number;
  readonly spacingMm: number;
  readonly halfMm: number;
  readonly from: string;
  readonly markedToNearEdge: boolean;
}

function assumedFraming(room: Room, surface: Surface): Assumed | null {
  const { framing } = surface;
  if (framing.kind === "unknown" || framing.layout.basis !== "assumed") return null;
  const { from, spacingMm, markedToNearEdge } = framing.layout;
  const laid = firstAsLaid(framing);
  if (laid === undefined || spacingMm === null) return null;
  const laidMm =
    pointNameOf(from) === null
      ? tapeMm(tapeLine(room, surface, from), laid.from)
      : fromZeroMm(framing, laid.from);
  const firstMm = laidMm - (laid.number - 1) * spacingMm;
  return { firstMm, spacingMm, halfMm: laid.widthMm / 2, from, markedToNearEdge };
}

/** The first member that stands where the layout puts it: those in front of it were found elsewhere. */
const firstAsLaid = ({ members }: Extract<Framing, { kind: "known" }>) =>
  members.filter(repeats).find(({ basis }) => basis === "assumed");

/** What every finding about a surface says of itself; `under` is the part of the file that it is about. */
const aboutSurface = ({ name }: Surface, under: "framing" | "surfaces") => ({
  speaker: null,
  surface: name,
  path: [under, name],
  accepted: null,
  fix: null,
});
