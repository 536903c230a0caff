import { pointNameOf } from "../findings/edge-name.js";
import type { FiguresByCode, Finding } from "../findings/finding.js";
import { EPSILON_MM } from "../geometry/epsilon.js";
import { fromZeroMm, repeats } from "../place/run.js";
import { tapeLine, tapeMm } from "../place/tapes.js";
import type { Layout, Member, Room, Surface } from "../room/room.js";
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

/** Framing, or strapping, from a first mark and a spacing: where it is assumed to be, not where somebody found it. */
export const framingAssumed: SurfaceRule = (room, surface) =>
  rowsOf(surface).flatMap((row): Finding[] => {
    const assumed = assumedRow(room, surface, row);
    if (assumed === null) return [];
    const { firstMm, spacingMm } = assumed;
    return [
      {
        ...aboutSurface(surface, "framing"),
        code: "framing-assumed",
        level: "note",
        figures: { surface: surface.name, of: row.of, firstMm, spacingMm, from: row.layout.from },
      },
    ];
  });

/** Strapping whose places nobody has told: an opening may cut it unseen. */
export const strapsUnknown: SurfaceRule = (_room, surface) => {
  const { framing, boardMm, layersMm, name } = surface;
  const depthMm = boardMm - layersMm.reduce((sum, mm) => sum + mm, 0);
  if (depthMm <= EPSILON_MM || (framing.kind === "known" && framing.straps !== null)) return [];
  return [
    {
      ...aboutSurface(surface, "framing"),
      code: "straps-unknown",
      level: "warning",
      figures: { surface: name, depthMm },
    },
  ];
};

/**
 * A first mark at a usual spacing less half a member, given as a centre: a layout is struck to the near edge, so
 * that mark is most often the member's edge and the centre half a member further.
 */
export const edgeGivenAsCentre: SurfaceRule = (room, surface) => {
  const [row] = rowsOf(surface);
  const assumed = row === undefined ? null : assumedRow(room, surface, row);
  if (assumed === null || row?.layout.markedToNearEdge === true) return [];
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

/** What repeats on a surface in one layout. */
interface Row {
  readonly of: FiguresByCode["framing-assumed"]["of"];
  readonly layout: Layout;
  readonly members: readonly Member[];
}

/** Joists or studs first, then straps or channels. */
function rowsOf({ framing }: Surface): readonly Row[] {
  if (framing.kind === "unknown") return [];
  const { layout, members, straps } = framing;
  const own: Row = { of: "members", layout, members: members.filter(repeats) };
  if (straps === null) return [own];
  const { kind } = straps;
  return [own, { of: kind, layout: straps.layout, members: members.filter((each) => each.kind === kind) }];
}

interface Assumed {
  /** Centre of the first, as a tape from what the row is measured from. */
  readonly firstMm: number;
  readonly spacingMm: number;
  readonly halfMm: number;
}

function assumedRow(room: Room, surface: Surface, { layout, members }: Row): Assumed | null {
  const { from, spacingMm, basis } = layout;
  // The first that stands where the layout puts it: those in front of it were found elsewhere.
  const laid = members.find((member) => member.basis === "assumed");
  if (basis !== "assumed" || laid === undefined || spacingMm === null) return null;
  const laidMm =
    pointNameOf(from) === null
      ? tapeMm(tapeLine(room, surface, from), laid.from)
      : fromZeroMm(layout, laid.from);
  return { firstMm: laidMm - (laid.number - 1) * spacingMm, spacingMm, halfMm: laid.widthMm / 2 };
}

/** What every finding about a surface says of itself; `under` is the part of the file that it is about. */
const aboutSurface = ({ name }: Surface, under: "framing" | "surfaces") => ({
  speaker: null,
  surface: name,
  path: [under, name],
  accepted: null,
  fix: null,
});
