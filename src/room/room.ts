import { InternalError } from "../findings/internal-error.js";
import type { Region } from "../geometry/clip.js";
import type { Frame } from "../geometry/frame.js";
import type { Area, Polygon, Shape } from "../geometry/shape.js";
import type { SurfacePoint, Vector } from "../geometry/vector.js";
import type { Overlap, Pattern } from "../standards/coverage-spacing.js";
import type { LabelSheet } from "../standards/label-stock.js";
import type { Language } from "../units/language.js";
import type { Framing } from "./framing.js";

/*
 * The resolved room: everything in millimetres in one world (x right, y forward, z up, the origin on the floor
 * under the back-left extreme, on framing faces). Nothing here knows feet, and nothing needs the room to be a box:
 * a surface is a plane with an outline, and other shapes of room are other data.
 */

export type UnitSystem = "imperial" | "metric";
export type { Found, Framing, Layout, Member, Straps, Web } from "./framing.js";
export type { Language };
/** Which faces a tape hooks on. */
export type Faces = "framing" | "finish";

/** One tape as a person holds it: from a named wall, the floor or the ceiling, square to it. */
export interface Tape {
  /** A wall's name, "floor" or "ceiling". */
  readonly from: string;
  readonly mm: number;
}

export interface Obstruction {
  readonly name: string;
  readonly area: Area;
  /** Distance that an opening's edge keeps from it. */
  readonly keepMm: number;
  /** It starts this far behind the framing face; null where it stands in the plane itself. */
  readonly behindMm: number | null;
  readonly path: Path;
}

/** One edge of a surface's outline, from corner `from` to corner `to`, and what stands along it. */
export interface Edge {
  /** A surface's name, or "floor". */
  readonly along: string;
  readonly from: SurfacePoint;
  readonly to: SurfacePoint;
  /** How far the finished outline lies inside this edge, along the surface, in mm: a square neighbour's board. */
  readonly boardMm: number;
  /** The part of it that this surface's own board makes where the neighbour stands at a slant; 0 where it is square. */
  readonly slantMm: number;
}

/** A line along which two sheets of board meet: beside each other, or end to end. */
export interface Joint {
  readonly kind: "long" | "butt";
  readonly from: SurfacePoint;
  readonly to: SurfacePoint;
}

/** Something that lies in a surface and is not of it, as a tray in a ceiling; its edges the other way round. */
export interface Void {
  readonly name: string;
  readonly edges: readonly Edge[];
  /** Its outline on finished faces: no part of the surface. */
  readonly finished: Polygon;
}

export interface Surface {
  readonly name: string;
  readonly kind: "wall" | "ceiling";
  readonly frame: Frame;
  /** The edges of the outline on framing faces, in order, anticlockwise as seen facing the surface. */
  readonly edges: readonly Edge[];
  /** The outline between finished faces. */
  readonly finished: Polygon;
  readonly voids: readonly Void[];
  /** From the framing face to the finished face: all layers of board, and strapping where there is some. */
  readonly boardMm: number;
  /** The layers of board alone. */
  readonly layersMm: readonly number[];
  /** Where sheets of board meet, if the file tells. */
  readonly joints: readonly Joint[];
  readonly framing: Framing;
  readonly obstructions: readonly Obstruction[];
  readonly rated: boolean;
  readonly enclosure: boolean;
  readonly insulation: string | null;
  readonly secondSupport: boolean;
}

export interface Model {
  readonly name: string;
  readonly opening: Shape;
  readonly flange: Shape;
  /** Needed behind the finished face. */
  readonly depthMm: number;
  readonly clampReachMm: number;
  readonly boardRangeMm: readonly [number, number] | null;
  readonly baffleTiltDeg: number;
  readonly coverageDeg: number | null;
  readonly sensitivityDb: number | null;
  readonly impedanceOhm: number | null;
  readonly minimumImpedanceOhm: number | null;
  readonly powerW: number | null;
  readonly weightKg: number | null;
  readonly terminal: string | null;
  /** Conductors and the terminal that each goes to, as the user gave them; empty where nothing was given. */
  readonly conductors: readonly Conductor[];
  readonly stripMm: number | null;
}

export interface Conductor {
  /** As typed: "red", "RD" ... */
  readonly colour: string;
  readonly terminal: string;
  readonly sign: "+" | "-";
}

export interface Seat {
  readonly name: string;
  readonly ear: Vector;
  readonly reference: boolean;
}

export type Target =
  | { readonly kind: "seat"; readonly name: string; readonly at: Vector }
  | { readonly kind: "point"; readonly at: Vector }
  | { readonly kind: "none" };

export type Position =
  | {
      readonly kind: "given";
      readonly centre: SurfacePoint;
      /** The two tapes that were typed, as typed (to the faces of `measuredTo`): they govern. */
      readonly tapes: readonly [Tape, Tape];
    }
  | { readonly kind: "best"; readonly hold: readonly Tape[]; readonly mirror: string | null };

export interface Speaker {
  readonly id: string;
  /** Channel label of ITU-R BS.2051; the area's name for one that fills an area and was given no channel. */
  readonly channel: string;
  /** The area that it is one of those that fill. */
  readonly area: string | null;
  readonly model: Model;
  readonly surface: string;
  readonly position: Position;
  /** Quarter turns anticlockwise, as seen facing the surface. */
  readonly turnDeg: 0 | 90 | 180 | 270;
  /** The model's opening and flange after `turn`. */
  readonly opening: Shape;
  readonly flange: Shape;
  readonly target: Target;
  readonly amplifierChannel: string | null;
  readonly cable: {
    readonly gauge: number | null;
    readonly conductors: number | null;
    readonly lengthMm: number | null;
    readonly areaMm2: number | null;
    readonly wiring: Wiring | null;
    /** Points that its cable goes by, from the equipment on. */
    readonly via: readonly SurfaceSpot[];
  };
  /** Where it stands in the file, for findings. */
  readonly path: Path;
}

/** A point on a surface. */
export interface SurfaceSpot {
  readonly surface: string;
  readonly at: SurfacePoint;
}

/**
 * What a cable's conductors do: one pair; four conductors as two pairs side by side; or a pair each for bass and
 * treble, each with its own part of the load.
 */
export type Wiring = "single" | "doubled" | "bi-wire";

/** Keys and indices from the top of the room file down to a value. */
export type Path = readonly (string | number)[];

/** A part of a ceiling that many straight loudspeakers fill evenly. */
export interface CoveredArea {
  readonly name: string;
  readonly surface: string;
  readonly model: Model;
  /** What it takes of the ceiling's finished outline, in its (u, v): outlines anticlockwise, holes in them clockwise. */
  readonly region: Region;
  readonly pattern: Pattern;
  /** The overlap that the spacing follows from; null where the file states the spacing itself. */
  readonly overlap: Overlap | null;
  /** The most from one to the next along a row. */
  readonly spacingMm: number;
  /** Of the ears, over the floor as it stands. */
  readonly earMm: number;
  /** From the finished face down to the ears; under a slope where it is least. */
  readonly dropMm: number;
  /** What the ids of its loudspeakers begin with. */
  readonly prefix: string;
  readonly path: Path;
}

export interface Acceptance {
  readonly code: string;
  readonly speaker: string | null;
  readonly why: string;
  readonly path: Path;
}

/** Label stock as it lies in the printer. */
export interface LabelStock extends LabelSheet {
  readonly kind: "flat" | "wrap" | "flag";
  /** Height of the printed part of self-laminating wrap stock; null for flat stock. */
  readonly printedHeightMm: number | null;
  /** Labels already used on the first sheet. */
  readonly used: number;
}

export interface Room {
  readonly job: {
    readonly name: string;
    readonly number: string | null;
    readonly revision: string;
    readonly date: string | null;
  };
  readonly units: UnitSystem;
  readonly measuredTo: Faces;
  /** State of the walls when ceiling openings are cut; "both" prints a BEFORE and an AFTER sheet. Null: the default of each sheet. */
  readonly stage: "bare" | "boarded" | "both" | null;
  /** What will be laid on the floor later; z = 0 is the floor as it stands. */
  readonly floorBuildUpMm: number;
  /** Walls in order round the room, by name. */
  readonly walls: readonly string[];
  readonly surfaces: readonly Surface[];
  readonly seats: readonly Seat[];
  readonly reference: Seat;
  /** ITU-R BS.2051 system by its upper+middle+lower name. */
  readonly layout: string | null;
  readonly speakers: readonly Speaker[];
  readonly areas: readonly CoveredArea[];
  readonly equipment: { readonly at: Vector } | null;
  readonly cable: {
    readonly lossDb: number | null;
    readonly loopMm: number | null;
    readonly sparePercent: number | null;
    readonly gauges: readonly number[];
    readonly outsideDiameterMm: number | null;
    /** Left at the equipment. */
    readonly rackLoopMm: number | null;
    /** Cross-sections at hand, beside the gauges. */
    readonly areasMm2: readonly number[];
    readonly wiring: Wiring | null;
    /** Of the copper. */
    readonly temperatureC: number | null;
    /** Lengths that cable is bought in. */
    readonly spoolsMm: readonly number[];
    /** Where no cable may lie. */
    readonly avoid: readonly { readonly surface: string; readonly area: Area }[];
  };
  readonly listening: {
    /** Of the air. */
    readonly temperatureC: number;
    /** Level at the reference seat that a loudspeaker is to reach, and how far above it peaks go. */
    readonly targetDb: number;
    readonly headroomDb: number;
  };
  readonly checks: {
    readonly clearMm: number;
    readonly toleranceDeg: number;
    /** What sharing a line from front to back may cost the worst of the overhead loudspeakers on it. */
    readonly lineDeg: number;
    /** What keeping off a joint of the board may cost a best place. */
    readonly jointDeg: number;
  };
  readonly accept: readonly Acceptance[];
  readonly labels: LabelStock | null;
  /** Who to call when something does not fit; a line to write on where it is not given. */
  readonly call: string | null;
  readonly print: { readonly paper: string | null; readonly languages: readonly Language[] };
}

/** The surface of that name. Throws `InternalError` where resolving let a name through that does not exist. */
export function surfaceNamed(room: Room, name: string): Surface {
  const found = room.surfaces.find((surface) => surface.name === name);
  if (found === undefined) throw new InternalError(`no surface named ${name}`);
  return found;
}
