import type { Language } from "../units/language.js";
import { type Words, wordsIn } from "../words/words.js";
import type { UnitSystem } from "./room.js";

export interface StartOptions {
  readonly language: Language;
  readonly units: UnitSystem;
}

/** A commented room file to begin from: a small room of our own that is read, resolved and checked without an error. */
export function startFile({ language, units }: StartOptions): string {
  const words = wordsIn([language]).start;
  const figures = FIGURES[units];
  const blocks = [
    top(words, units),
    size(words, figures),
    framing(words, figures),
    obstructions(words, figures),
    models(words, figures),
    seats(words, figures),
    speakers(words, figures),
    rest(words, { language, figures }),
  ];
  return `${blocks.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

type StartWords = Words["start"];

/** The same room twice, each in figures that a tape of its units shows. */
interface Figures {
  readonly width: string;
  readonly length: string;
  readonly height: string;
  readonly ceilingBoard: string;
  readonly wallBoard: string;
  readonly joist: string;
  readonly stud: string;
  /** Where the members stand: first mark, spacing, and how the mark is meant. */
  readonly layout: string;
  readonly isNearEdge: boolean;
  /** What a room may have besides, in notes to take the # from. */
  readonly besides: {
    readonly soffit: { readonly width: string; readonly height: string };
    readonly corner: string;
    readonly door: {
      readonly from: string;
      readonly to: string;
      readonly up: string;
      readonly header: string;
    };
    readonly channel: { readonly depth: string; readonly width: string };
    readonly flanged: string;
  };
  readonly duct: {
    readonly side: string;
    readonly across: string;
    readonly front: string;
    readonly keep: string;
  };
  readonly light: { readonly across: string; readonly front: string; readonly round: string };
  readonly overhead: ModelFigures;
  readonly inWall: ModelFigures;
  readonly seat: { readonly left: string; readonly front: string; readonly ear: string };
  readonly front: { readonly side: string; readonly middle: string };
  readonly surround: string;
  readonly above: { readonly side: string; readonly front: string };
  readonly equipment: { readonly back: string; readonly up: string };
  readonly paper: string;
}

interface ModelFigures {
  readonly opening: string;
  readonly flange: string;
  readonly depth: string;
  readonly clampReach: string;
  readonly boardRange: string;
  readonly power: string;
  readonly weight: string;
}

const FIGURES: Readonly<Record<UnitSystem, Figures>> = {
  imperial: {
    width: `12' 0"`,
    length: `17' 4"`,
    height: `8' 10"`,
    ceilingBoard: `5/8"`,
    wallBoard: `1/2"`,
    joist: "2x10",
    stud: "2x4",
    layout: `first: 15 1/4", spacing: 16", mark: near-edge`,
    isNearEdge: true,
    besides: {
      soffit: { width: `2' 0"`, height: `8' 2"` },
      corner: "{ right: 0, front: 0 }",
      door: { from: `10' 0"`, to: `13' 0"`, up: `6' 10"`, header: `7 1/4"` },
      channel: { depth: `1/2"`, width: `2 1/2"` },
      flanged: `{ flange: 2 1/2", web: 3/8", depth: 11 7/8" }`,
    },
    duct: { side: `1' 0"`, across: `2' 0"`, front: `10' 0"`, keep: `2"` },
    light: { across: `6' 0"`, front: `9' 0"`, round: `6"` },
    overhead: {
      opening: `{ round: 8 1/2" }`,
      flange: `{ round: 9 5/8" }`,
      depth: `5 1/2"`,
      clampReach: `5/8"`,
      boardRange: `[3/8", 1 1/4"]`,
      power: "100 W",
      weight: "6 lb",
    },
    inWall: {
      opening: `{ width: 7 1/2", height: 11 1/2" }`,
      flange: `{ width: 8 3/4", height: 12 3/4" }`,
      depth: `3 1/2"`,
      clampReach: `1/2"`,
      boardRange: `[3/8", 1"]`,
      power: "120 W",
      weight: "7 lb",
    },
    seat: { left: `6' 0"`, front: `7' 0"`, ear: `40"` },
    front: { side: `24"`, middle: `6' 0"` },
    surround: `8' 8"`,
    above: { side: `24"`, front: `24"` },
    equipment: { back: `2' 0"`, up: `24"` },
    paper: "letter",
  },
  metric: {
    width: "3.60 m",
    length: "5.20 m",
    height: "2.65 m",
    ceilingBoard: "15 mm",
    wallBoard: "12.5 mm",
    joist: "{ width: 45 mm, depth: 220 mm }",
    stud: "{ width: 45 mm, depth: 95 mm }",
    layout: "first: 400 mm, spacing: 400 mm",
    isNearEdge: false,
    besides: {
      soffit: { width: "600 mm", height: "2.45 m" },
      corner: "{ right: 0, front: 0 }",
      door: { from: "3.00 m", to: "3.90 m", up: "2.08 m", header: "195 mm" },
      channel: { depth: "13 mm", width: "65 mm" },
      flanged: "{ flange: 58 mm, web: 10 mm, depth: 300 mm }",
    },
    duct: { side: "300 mm", across: "600 mm", front: "3.00 m", keep: "50 mm" },
    light: { across: "1.80 m", front: "2.70 m", round: "150 mm" },
    overhead: {
      opening: "{ round: 215 mm }",
      flange: "{ round: 245 mm }",
      depth: "140 mm",
      clampReach: "16 mm",
      boardRange: "[10 mm, 32 mm]",
      power: "100 W",
      weight: "2.8 kg",
    },
    inWall: {
      opening: "{ width: 190 mm, height: 290 mm }",
      flange: "{ width: 222 mm, height: 322 mm }",
      depth: "88 mm",
      clampReach: "13 mm",
      boardRange: "[10 mm, 25 mm]",
      power: "120 W",
      weight: "3.2 kg",
    },
    seat: { left: "1.80 m", front: "2.10 m", ear: "1.05 m" },
    front: { side: "600 mm", middle: "1.80 m" },
    surround: "2.60 m",
    above: { side: "600 mm", front: "600 mm" },
    equipment: { back: "600 mm", up: "600 mm" },
    paper: "A4",
  },
};

const NOTE_COLUMN = 36;

/** A line of the file with its note beside it, or above a line that is too long for that. */
const noted = (line: string, note: string): string =>
  line.length < NOTE_COLUMN ? `${line.padEnd(NOTE_COLUMN)}${comment(note)}` : `${comment(note)}\n${line}`;

const comment = (note: string): string => `# ${note}`;

const top = (words: StartWords, units: UnitSystem): readonly string[] => [
  comment(words.title),
  comment(words.tapes),
  comment(words.heights),
  comment(words.lengths),
  "baymark: 1",
  "job:",
  `  name: ${words.job.name}`,
  noted("  number: 001", words.number),
  noted("  revision: A", words.revision),
  noted("  # date: 2026-01-31", words.date),
  noted(`units: ${units}`, words.units),
  noted("# call: 555-0100", words.call),
];

const size = (words: StartWords, figures: Figures): readonly string[] => [
  "room:",
  noted(`  width: ${figures.width}`, words.width),
  noted(`  length: ${figures.length}`, words.length),
  noted(`  height: ${figures.height}`, words.height),
  noted("  measured_to: framing", words.measuredTo),
  ...notBox(words, figures),
  noted(`board: { ceiling: ${figures.ceilingBoard}, walls: ${figures.wallBoard} }`, words.board),
];

/** A line of the file that is left out until somebody takes its # away. */
const leftOut = (line: string): string => `#   ${line}`;

/** Corners round the room where its walls stand, and a ceiling that hangs lower: the same room again, to be changed. */
function notBox(words: StartWords, { width, length, besides: { soffit } }: Figures): readonly string[] {
  return [
    comment(words.outline),
    leftOut(`outline: [[0, 0], [${width}, 0], [${width}, ${length}], [0, ${length}]]`),
    leftOut("walls: [front, right, back, left]"),
    comment(words.ceilings),
    leftOut(
      `ceilings: [{ name: ${words.soffit}, corners: [[0, 0], [${soffit.width}, 0], [${soffit.width}, ${length}], [0, ${length}]], height: ${soffit.height} }]`,
    ),
  ];
}

/** Keys of a framing entry for what is built otherwise. */
function framedOtherwise(words: StartWords, { layout, besides }: Figures): readonly string[] {
  const { corner, door, channel, flanged } = besides;
  const placed = layout.replace(/, mark: near-edge$/u, "");
  return [
    comment(words.otherwise),
    comment(words.angle),
    leftOut("run: 30 deg"),
    leftOut(`from: ${corner}`),
    comment(words.flanged),
    leftOut(`member: ${flanged}`),
    comment(words.straps),
    leftOut(
      `strapping: { kind: channel, depth: ${channel.depth}, width: ${channel.width}, from: left, ${placed} }`,
    ),
    comment(words.doors),
    leftOut(
      `openings: [{ name: ${words.door}, corner: { front: ${door.from}, up: 0 }, opposite: { front: ${door.to}, up: ${door.up} }, header: ${door.header} }]`,
    ),
  ];
}

function framing(words: StartWords, figures: Figures): readonly string[] {
  const { joist, stud, layout, isNearEdge } = figures;
  return [...framed(words, { joist, stud, layout, isNearEdge }), ...framedOtherwise(words, figures)];
}

type Framed = Pick<Figures, "joist" | "stud" | "layout" | "isNearEdge">;

function framed(words: StartWords, { joist, stud, layout, isNearEdge }: Framed): readonly string[] {
  const wall = (name: string, from: string): string =>
    `  ${`${name}:`.padEnd(6)} { member: ${stud}, from: ${from}, ${layout} }`;
  return [
    ...words.framing.map(comment),
    comment(isNearEdge ? words.nearEdge : words.centres),
    "framing:",
    `  ceiling: { run: left-right, member: ${joist}, from: front, ${layout} }`,
    wall("left", "front"),
    wall("right", "front"),
    wall("front", "left"),
    wall("back", "left"),
  ];
}

const obstructions = (words: StartWords, { duct, light, length }: Figures): readonly string[] => [
  comment(words.obstructions),
  "obstructions:",
  `  - { name: ${words.duct}, on: ceiling, corner: { left: ${duct.side}, front: ${duct.front} }, opposite: { left: ${duct.across}, front: ${length} }, keep: ${duct.keep} }`,
  `  - { name: ${words.light}, on: ceiling, at: { left: ${light.across}, front: ${light.front} }, round: ${light.round}, keep: ${duct.keep} }`,
];

const models = (words: StartWords, { overhead, inWall }: Figures): readonly string[] => [
  comment(words.models),
  "models:",
  "  overhead:",
  ...model(words, overhead, noted("    baffle_tilt: 15 deg", words.baffleTilt)),
  "  in-wall:",
  ...model(words, inWall, noted("    baffle_tilt: 0", words.baffleTilt)),
];

const model = (words: StartWords, figures: ModelFigures, tilt: string): readonly string[] => [
  `    opening: ${figures.opening}`,
  `    flange: ${figures.flange}`,
  noted(`    depth: ${figures.depth}`, words.depth),
  noted(`    clamp_reach: ${figures.clampReach}`, words.clampReach),
  noted(`    board_range: ${figures.boardRange}`, words.boardRange),
  tilt,
  noted("    coverage: 100 deg", words.coverage),
  noted("    sensitivity: 88 dB", words.sensitivity),
  "    impedance: 8 ohm",
  `    power: ${figures.power}`,
  `    weight: ${figures.weight}`,
];

const seats = (words: StartWords, { seat }: Figures): readonly string[] => [
  comment(words.seats),
  "seats:",
  `  - { name: ${words.seat}, at: { left: ${seat.left}, front: ${seat.front} }, ear: ${seat.ear}, reference: true }`,
];

function speakers(words: StartWords, { front, surround, above, seat }: Figures): readonly string[] {
  const speaker = (id: string, channel: string, rest: string): string =>
    `  - { id: ${`${id},`.padEnd(4)} channel: ${channel}, ${rest} }`;
  const inWall = (on: string, at: string): string =>
    `model: in-wall, on: ${on}, at: { ${at}, up: ${seat.ear} }`;
  const overhead = (side: string): string =>
    `model: overhead, on: ceiling, at: { ${side}: ${above.side}, front: ${above.front} }`;
  return [
    noted("layout: 2+5+0", words.layout),
    comment(words.speakers),
    "speakers:",
    speaker("FL", "M+030", inWall("front", `left: ${front.side}`)),
    speaker("C", "M+000", inWall("front", `left: ${front.middle}`)),
    speaker("FR", "M-030", inWall("front", `right: ${front.side}`)),
    speaker("SL", "M+110", inWall("left", `front: ${surround}`)),
    speaker("SR", "M-110", inWall("right", `front: ${surround}`)),
    speaker("TFL", "U+030", overhead("left")),
    speaker("TFR", "U-030", overhead("right")),
    comment(words.areas),
  ];
}

interface Rest {
  readonly language: Language;
  readonly figures: Figures;
}

const rest = (words: StartWords, { language, figures: { equipment, paper } }: Rest): readonly string[] => [
  noted(`equipment: { at: { right: 0, back: ${equipment.back} }, up: ${equipment.up} }`, words.equipment),
  noted(`print: { paper: ${paper}, languages: [${language}] }`, words.print),
];
