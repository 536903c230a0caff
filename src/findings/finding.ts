import type { ConductorSize } from "../standards/wire.js";

/*
 * A finding is a fact about the room, not a sentence: a code, a level and the figures, in mm and degrees.
 * The sentence is made in src/words, the rules in src/check.
 */

export type Level = "error" | "warning" | "note";

/** So many more than those that are told one by one, and how many of them are errors. */
export interface Others {
  readonly others: number;
  readonly errors: number;
}

/** Figures of each code; lengths in mm, angles in degrees. */
export interface FiguresByCode {
  /** The cut goes `byMm` into the member. */
  "opening-cuts-member": { member: MemberName; byMm: number } | Others;
  /** The opening is nearer than asked for beyond the clamps. */
  "opening-near-member": { member: MemberName; gapMm: number; wantedMm: number };
  /** The clamps cannot swing out. */
  "clamps-blocked": { member: MemberName; gapMm: number; reachMm: number };
  "too-deep": { neededMm: number; availableMm: number; memberDepthMm: number; boardMm: number };
  "opening-meets-obstruction":
    | { obstruction: string; distanceMm: number; wantedMm: number; behindMm: number | null }
    | Others;
  /** The flange reaches past the finished surface by `byMm`. */
  "opening-outside-surface": { edge: string; byMm: number };
  /** Overlapping flanges (distance below 0) or openings nearer than the clamps need. */
  "openings-too-close":
    | {
        other: string;
        distanceMm: number;
        wantedMm: number;
        /** Between which edges the distance is. */
        edges: "openings" | "flanges";
      }
    | Others;
  "framing-unknown": { surface: string; beyondMeasured: boolean };
  "framing-assumed": {
    surface: string;
    /** Joists or studs, or what hangs from them. */
    of: "members" | "strap" | "channel";
    firstMm: number;
    spacingMm: number;
    from: string;
  };
  /** Strapping or channel is told by its depth alone: nobody has said where any of it stands. */
  "straps-unknown": { surface: string; depthMm: number };
  /** The opening lies over a line where two sheets of board meet. */
  "joint-through-opening": { joint: "long" | "butt"; offCentreMm: number };
  /** A first mark that is usually struck to the near edge was given as a centre. */
  "edge-given-as-centre": { surface: string; givenMm: number; centreIfEdgeMm: number };
  "board-out-of-clamp-range": { boardMm: number; leastMm: number; mostMm: number };
  "aim-undefined": { target: string };
  "aim-past-tilt": { target: string; offAxisDeg: number; limitDeg: number };
  "rated-assembly": { surface: string; enclosure: boolean };
  "needs-second-support": { weightKg: number };
  /** The layout has the channel, and no loudspeaker does. */
  "channel-missing": { channel: string; layout: string };
  /** `other` has the channel already. */
  "channel-twice": { channel: string; other: string };
  "channel-not-in-layout": { channel: string; layout: string };
  /** A figure of its direction from the reference seat that the layout does not allow the channel. */
  "outside-window": {
    channel: string;
    figure: "azimuth" | "elevation";
    isDeg: number;
    nearestDeg: number;
    byDeg: number;
    /** Added to what the standard fixes at one value; 0 where it gives a range. */
    toleranceDeg: number;
  };
  /** `at: best` asked for, and there is no such place. */
  "not-placed-yet": {
    surface: string;
    because: "no-direction" | "no-tapes" | "nothing-clear" | "not-looked-for";
    /** Whether `hold` leaves it only a line or a point. */
    isHeld: boolean;
  };
  /** Where `other` is mirrored to it is not. */
  "pair-not-matched": {
    other: string;
    because: "surfaces" | "partner-taken" | "partner-nowhere" | "nothing-clear";
  };
  /** A best place that stands in no file yet. */
  "computed-not-frozen": Record<never, never>;
  /** The run loses more than is allowed. */
  "cable-too-thin": {
    size: ConductorSize;
    lossDb: number;
    limitDb: number;
    lengthMm: number;
    /** The thinnest at hand that would do; null where none does. */
    enough: ConductorSize | null;
  };
  /** No allowed way leads from the equipment to it. */
  "cable-without-way": Record<never, never>;
  /** To find the ways of this many cables would take more looks than a run has. */
  "cables-not-looked-for": { cables: number };
  /** The bundle needs a larger hole than the member may have; the worst of its surface and kind. */
  "bored-hole-too-large": {
    member: MemberName;
    /** How many members of that kind on that surface have such a hole. */
    members: number;
    cables: number;
    holeMm: number;
    mostMm: number;
    /** What else can be done; null where nothing was found. */
    another: OtherWay | null;
  };
  /** Bored only as its maker or an engineer says. */
  "engineered-member-bored": { member: MemberName; members: number };
  /** To find the nearest clear centres of this many openings too would take more looks than a run has. */
  "centres-not-looked-for": { openings: number };
  /** An area that no loudspeaker fills yet. */
  "area-not-placed": { area: string };
  "accept-matches-nothing": {
    accepted: string;
    speaker: string | null;
    /** No such finding stands, or only ones that are not warnings and so cannot be accepted. */
    because: "nothing-found" | "not-a-warning";
  };
}

export type Code = keyof FiguresByCode;

export type OtherWay =
  /** The same cables through several holes of the same member. */
  | { readonly kind: "parted"; readonly holes: number; readonly eachMm: number; readonly apartMm: number }
  /** Another way for all cables of the bundle, which bores no such member: how much longer the longest becomes. */
  | { readonly kind: "route"; readonly longerMm: number };

/** What a piece of framing is. */
export type MemberKind =
  | "joist"
  | "stud"
  | "bottom-plate"
  | "top-plate"
  | "end-stud"
  | "blocking"
  | "beam"
  | "header"
  | "rim"
  | "sill"
  | "opening-stud"
  /** Between the framing and the board: strapping, and resilient channel. */
  | "strap"
  | "channel";

/** Which member, as a person would count it. */
export interface MemberName {
  readonly surface: string;
  readonly kind: MemberKind;
  readonly number: number;
}

/** Where to move an opening's centre: the nearest clear centre, rounded into the clear area, as tapes from named walls. */
export interface Fix {
  readonly u: number;
  readonly v: number;
  /** Tape from each named wall (or floor, ceiling) in mm, to the faces that the file's tapes hook on. */
  readonly at: Readonly<Record<string, number>>;
}

export interface FindingOf<C extends Code> {
  readonly code: C;
  readonly level: Level;
  readonly figures: Readonly<FiguresByCode[C]>;
  /** Speaker's id where the finding is about one. */
  readonly speaker: string | null;
  /** Surface where the finding is about one. */
  readonly surface: string | null;
  /** Place in the room file that it is about. */
  readonly path: readonly (string | number)[];
  readonly fix: Fix | null;
  /** The reason given under `accept`, which leaves the level as it is. */
  readonly accepted: string | null;
}

/** Discriminated by `code`, so that a phrase for one code sees that code's figures. */
export type Finding = { [C in Code]: FindingOf<C> }[Code];
