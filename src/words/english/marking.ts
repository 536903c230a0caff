import type { Code } from "../../findings/finding.js";
import { frame } from "./frame.js";
import { ordinal } from "./ordinal.js";

/** What a tape hooks on or an arrow points to. */
const hook = frame.hook;

/** A ceiling by its name: a room may have several. */
const ceilingOf = (name: string): string => (name === "ceiling" ? "" : ` ${name.toUpperCase()}`);

type Stage = "bare" | "boarded";
const STAGES: Readonly<Record<Stage, string>> = { bare: "BEFORE wall board", boarded: "AFTER wall board" };

/** Why not to cut, in as few words as stand beside an opening on a drawing. */
const reason: Readonly<Record<Code, string>> = {
  "opening-cuts-member": "cuts into framing",
  "opening-near-member": "too near framing",
  "clamps-blocked": "clamps hit framing",
  "too-deep": "not deep enough behind",
  "opening-meets-obstruction": "something is in the way",
  "opening-outside-surface": "runs past the edge",
  "openings-too-close": "too near another opening",
  "framing-unknown": "framing not known",
  "framing-assumed": "framing assumed",
  "straps-unknown": "straps not known",
  "joint-through-opening": "a joint of the board runs through it",
  "edge-given-as-centre": "edge given as centre",
  "board-out-of-clamp-range": "clamps do not hold this board",
  "aim-undefined": "aim not defined",
  "aim-past-tilt": "aim out of reach",
  "rated-assembly": "rated surface, no enclosure",
  "needs-second-support": "needs a second support",
  "channel-missing": "channel missing",
  "channel-twice": "channel given twice",
  "channel-not-in-layout": "channel not in layout",
  "outside-window": "direction outside its window",
  "not-placed-yet": "no position yet",
  "pair-not-matched": "pair not matched",
  "computed-not-frozen": "computed, not frozen",
  "area-not-placed": "area not filled yet",
  "cable-too-thin": "cable too thin",
  "cable-without-way": "no way for its cable",
  "cables-not-looked-for": "cables' ways not looked for",
  "centres-not-looked-for": "clear centres not looked for",
  "bored-hole-too-large": "bored hole too large",
  "engineered-member-bored": "engineered member bored",
  "accept-matches-nothing": "nothing accepted",
};

/** Words of the floor marks, the ceiling marks and the wall marks. */
export const marking = {
  floor: {
    title: "Floor marks",
    figures: "Floor marks: figures",
    use: "On BARE framing, before the board: mark the floor under each overhead opening, plumb it up with a laser. Pencil on the subfloor outlives the board.",
    control: (first: string, second: string) =>
      `Control lines: the bare studs of ${hook(first)} and of ${hook(second)}. Hook every tape there, square to the wall.`,
    plumb:
      "Stand the laser on the mark and shoot straight up: the dot is the centre of the opening. Then check it on the ceiling sheet.",
    left: "LEFT and RIGHT are as you face the FRONT wall, standing in the room.",
    aimLine:
      "Broken line: to the point below the aim's target. The arrow overhead is parallel to it (flat ceiling).",
    columns: { done: "Marked", opening: "Under opening" },
    from: (wall: string) => `From ${hook(wall)}, bare studs`,
    count: (marks: number) => `MARKS ON THE FLOOR: ${marks}`,
    markedBy: "Marked and counted by (initials):",
  },
  title: {
    ceiling: (name: string) => `Ceiling marks${ceilingOf(name)}`,
    wall: (name: string) => `Wall marks, ${frame.wall(name)}`,
  },
  figures: {
    ceiling: (name: string) => `Ceiling marks${ceilingOf(name)}: figures`,
    wall: (name: string) => `Wall marks, ${frame.wall(name)}: figures`,
  },
  full: {
    prove: "Prove by tape before cutting: paper stretches. LOOK behind the board. Never cut framing.",
    ceiling: (name: string) => `Ceiling marks${ceilingOf(name)}, full size`,
    wall: (name: string) => `Wall marks, ${frame.wall(name)}, full size`,
  },
  staged: {
    ceiling: (name: string, stage: Stage) => `Ceiling marks${ceilingOf(name)}, ${STAGES[stage]}`,
    wall: (name: string, stage: Stage) => `Wall marks, ${frame.wall(name)}, ${STAGES[stage]}`,
  },
  assumed: "ASSUMED",
  framingUnknown: "FRAMING UNKNOWN",
  obstruction: (keep: string | null, behind: string | null) =>
    [keep === null ? null : `keep ${keep} off`, behind === null ? null : `lies ${behind} behind`]
      .filter((part) => part !== null)
      .join(", "),
  reason,
  caption: {
    joist: (edges: boolean, assumed: boolean) => `Joists: ${memberFigures(edges, assumed)}`,
    stud: (edges: boolean, assumed: boolean) => `Studs: ${memberFigures(edges, assumed)}`,
    strap: (edges: boolean, assumed: boolean) => `Straps: ${memberFigures(edges, assumed)}`,
    channel: (edges: boolean, assumed: boolean) => `Channels: ${memberFigures(edges, assumed)}`,
    /** Of members at an angle: how the tape to them is held. */
    square: (from: string) => `Square to them from ${hook(from)}`,
  },
  count: (here: number, inRoom: number) => `OPENINGS HERE: ${here}.  IN THE ROOM: ${inRoom}.`,
  steps: {
    square: (first: string, second: string, within: string) =>
      `1 SQUARE? Both diagonals, corner to corner: ${first} and ${second}. More than ${within} off, or more than that from each other: STOP.`,
    shape: (spans: readonly CornerSpan[], within: string) =>
      `1 SHAPE? From corner to corner: ${spans.map(({ from, to, figure }) => `${cornerOf(from)} to ${cornerOf(to)} ${figure}`).join("; ")}. More than ${within} off: STOP.`,
    squareFound: "Found:",
    mark: {
      framing:
        "2 MARK each centre by its two tapes, hooked on the BARE STUDS and held square. Pencil only: ink bleeds through paint.",
      finish:
        "2 MARK each centre by its two tapes, hooked on the BOARD of the wall beside and held square. Pencil only: ink bleeds through paint.",
    },
    slope: "This ceiling slopes: tapes are held ALONG THE SLOPE.",
    check: (within: string) =>
      `3 CHECK with the opposite tape: it only checks. More than ${within} off: STOP, do not split the difference.`,
    look: "4 LOOK before cutting: open a small hole, look and feel for cable, pipe and duct. NEVER cut, notch or bore a joist, stud, plate or truss: meet one, STOP.",
    cut: (tolerance: string) =>
      `5 CUT on the waste side, inside the line; its middle is the finished edge. Size ${tolerance}. Eyes, dust, ladder.`,
    engineered:
      "ENGINEERED members (I-joists, trusses): never cut, notch or bore one; only its maker says what is allowed.",
    rated: "RATED SURFACE: no opening without its listed enclosure. The local code prevails.",
    support: "Heavy overhead: a second support to the framing.",
    insulation: (kind: string) =>
      `Insulation behind: ${kind}. Keep it off the loudspeaker as its maker says.`,
    counted: "6 COUNT the openings against the number above. Cut and counted by (initials):",
  },
  stop: (call: string) => `STOP when anything differs from this sheet. Call ${call}.`,
  stopBlank: "STOP when anything differs from this sheet. Call:",
  findings: "On this sheet (numbers as on the drawing)",
  accepted: (why: string) => `Accepted: ${why}`,
  key: {
    measured: "framing, measured",
    assumed: "framing, ASSUMED",
    keep: "keep-off",
    behind: "behind the board",
    strap: "strap, measured",
    strapAssumed: "strap, ASSUMED",
    channel: "resilient channel, measured",
    channelAssumed: "resilient channel, ASSUMED",
    joint: "joint of the board",
    clear: "centre may slide inside this line (others stay)",
    brackets: "Figures in ( ) only check. Running figures count from 0.",
  },
  moreInTable: (count: number) =>
    `${count === 1 ? "1 figure or name" : `${count} figures or names`} had no room on the drawing: see the table.`,
  card: {
    toCentre: (from: string) => `FROM ${hook(from)}`,
    compass: "Compass radius",
    diameter: "Diameter",
    sides: (across: Side, up: Side, tolerance: string) =>
      `${sideSaid(across)}, ${sideSaid(up)}. Each side ${tolerance}.`,
    check: (within: string) => `CHECK ± ${within}, else STOP, from`,
    bay: (number: number, from: string) => `${ordinal(number)} bay from ${hook(from)}.`,
    slide: "MAY SLIDE (others stay)",
    slideAssumed: "MAY SLIDE (others stay) if framing is as ASSUMED",
    bayUnknown: "Bay: framing not known here.",
    aim: (arrow: Arrow) => `AIM: ${arrowInWords(arrow)}.`,
    aimOnSheet: (degrees: string) => `AIM: ${degrees} anticlockwise from the top of the drawing.`,
    sight: (wall: string, figure: string, from: string) =>
      `Sight mark: on ${hook(wall)}, ${figure} from the corner with ${hook(from)}.`,
    straight: "AIM: none, straight.",
    undefined: "AIM: none, its target lies square to it.",
    notAsked: "AIM: none asked for.",
    doNotCut: (codes: readonly Code[]) => `DO NOT CUT: ${codes.map((code) => reason[code]).join(", ")}`,
  },
  arrowInWords: (arrow: Arrow) => arrowInWords(arrow),
};

/** A straight line between two corners, each named by what meets there. */
interface CornerSpan {
  readonly from: readonly [string, string];
  readonly to: readonly [string, string];
  readonly figure: string;
}

const cornerOf = (between: readonly [string, string]): string => between.map(frame.wall).join("/");

/** A side of a rectangular opening, and the walls that it leads from and to. */
interface Side {
  readonly figure: string;
  readonly from: string;
  readonly to: string;
}

const sideSaid = ({ figure, from, to }: Side): string =>
  `${figure} along ${frame.wall(from)}–${frame.wall(to)}`;

interface Arrow {
  readonly member: "joist" | "stud";
  readonly end: string;
  readonly degrees: number;
  readonly toward: string;
}

const memberFigures = (edges: boolean, assumed: boolean): string =>
  `number · centre${edges ? " [near edge]" : ""}${assumed ? ". ASSUMED: write what you find in the box" : ", measured"}`;

const arrowInWords = ({ member, end, degrees, toward }: Arrow): string =>
  `from the ${member}'s ${frame.wall(end)} end, ${Math.round(degrees)}° toward ${hook(toward)}`;
