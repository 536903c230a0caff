import type { ComplaintPhrases, Kind, Measured, NameOf, YamlSlip } from "../../findings/complaint.js";
import { AREAS_OVER_EACH_OTHER } from "../../standards/house-limits.js";
import { exampleOf } from "../example.js";
import { measureIn } from "../measure.js";
import { listed, quoted } from "../quoted.js";

/** A file that cannot be used has no units of its own: millimetres first, inches beside. */
const { length } = measureIn("metric");

const KINDS: Readonly<Record<Kind, string>> = {
  map: "keys with values",
  list: "a list",
  text: "a single value",
  nothing: "nothing",
};

/** How each is written behind a key. */
const written = (kind: Kind, key: string | null): string => {
  const example = exampleOf(kind, key);
  return example === null ? KINDS[kind] : `${KINDS[kind]}, as in ${quoted(example)},`;
};

const MEASURED: Readonly<Record<Measured, string>> = {
  length: "a length",
  angle: "an angle",
  level: "a level in dB",
  impedance: "an impedance",
  power: "a power",
  weight: "a weight",
  share: "a percentage",
  temperature: "a temperature",
  "cross-section": "a cross-section",
};

const NAMES: Readonly<Record<NameOf, readonly [one: string, many: string]>> = {
  wall: ["wall", "walls and tapes"],
  surface: ["surface", "surfaces"],
  model: ["model", "models"],
  seat: ["seat", "seats and targets"],
  speaker: ["loudspeaker", "loudspeakers"],
  area: ["area", "areas"],
  channel: ["channel", "channels"],
  layout: ["layout", "layouts"],
  paper: ["paper", "papers"],
  lumber: ["lumber size", "sizes"],
  stock: ["label stock", "stocks"],
};

const SLIPS: Readonly<Record<YamlSlip, string>> = {
  tab: "a tab indents this line; use spaces",
  "open-quote": "this quote is not closed; close it, or take it off where the value needs none",
  "open-bracket": "this bracket is not closed; close it",
  "missing-mark": "a comma is missing, or the colon after a key",
  indent:
    "this line, or the one above it, begins at another column than its neighbours; indent them alike, with spaces",
  "in-brackets":
    "inside brackets a comma is missing before this place, or a value with a dash or a colon needs quotes",
  "no-colon":
    "after a key a colon and a space are missing, as in `width: 3 m`; or these lines are not indented alike",
  start: "a value cannot begin so; put it between quotes",
  colon: "a colon and a space inside a value begin a new key; put the value between quotes",
  escape: "a backslash between double quotes begins a code, and this is none; use single quotes",
  comma:
    "something stands here that does not belong to the value before it; quote the value, or check commas and brackets",
  "merge-mark":
    "a program for revisions left two versions of the file here; keep the lines of one of them, and take out the lines that begin with `<<<<<<<`, `=======` and `>>>>>>>`",
  "odd-space": "a character stands here that looks like a space and is none; type a plain space in its place",
  "round-bracket": "round brackets mean nothing here; write { } round keys with values, [ ] round a list",
  semicolon: "a semicolon parts nothing here; write a comma",
  dash: "each entry of a list begins on a line of its own with a dash and a space, as in `- { ... }`",
  "dash-among-keys":
    "a dash begins an entry of a list, and its neighbours are keys; take the dash out, or begin each of them with one",
  other: "this cannot be read as YAML; check quotes, brackets and indentation",
};

/** How ITU-R BS.2051 names channels. */
const CHANNEL = "; a channel is named by its layer and its angle to the left (+) or right (-), as in `M+030`";

/** What was meant, or what there is to choose from. */
const instead = (suggestion: string | null, what: string, choices: readonly string[]): string => {
  if (suggestion !== null) return `; did you mean ${quoted(suggestion)}?`;
  return choices.length === 0 ? "" : `; ${what}: ${listed(choices, "or")}`;
};

const phrase: ComplaintPhrases = {
  "file-too-large": ({ bytes, mostBytes }) =>
    `the file has ${bytes} bytes; a room file has at most ${mostBytes}. Is this the right file?`,
  "not-utf-8": () => "this is not text in UTF-8; save the file as UTF-8",
  "empty-file": () => "nothing is written in this file; `baymark start` writes one to begin from",
  "not-yaml": ({ slip }) => SLIPS[slip],
  "yaml-directive": ({ written }) => `${quoted(written)}: a room file has no such line; take it out`,
  "several-documents": () =>
    "a second document begins here; one file holds one room, so take out the line `---`",
  "nested-too-deep": ({ most }) => `nested more than ${most} levels deep; no room file needs so many`,
  "too-much-written": ({ most }) =>
    `the file goes on here past ${most} words and marks, more than any room needs. Is this the right file?`,
  "yaml-alias": ({ written }) =>
    `${quoted(written)}: a room file has no references; write the value out here`,
  "yaml-tag": ({ written }) => `${quoted(written)}: a room file has no tags; take it out`,
  "key-not-text": () => "a key must be a plain word",
  "duplicate-key": ({ key, firstLine }) =>
    `${quoted(key)} is already given in line ${firstLine}; keep one of the two`,
  "not-a-room": ({ found }) =>
    `a room file is keys with values, and this is ${KINDS[found]}; begin with \`baymark: 1\`, or with the file that \`baymark start\` writes`,
  "more-complaints": ({ count }) =>
    `${count} more like these are not shown; mend the first ones and check again`,

  "unknown-key": ({ key, suggestion, choices }) =>
    `${quoted(key)} is no key here${instead(suggestion, "the keys are", choices)}`,
  "missing-key": ({ key }) =>
    `${quoted(key)} is missing here; add \`${key}: ${key === "baymark" ? "1" : "..."}\``,
  "nothing-written": ({ key }) =>
    `nothing is written for ${quoted(key)}; write its value or take the key out`,
  "wrong-kind": ({ wanted, found, key }) =>
    `${key === null ? "" : `${quoted(key)}: `}${wanted.map((kind) => written(kind, key)).join(" or ")} must stand here, and this is ${KINDS[found]}`,
  "unknown-word": ({ typed, suggestion, choices }) =>
    `${quoted(typed)} cannot stand here${instead(suggestion, "write", choices)}`,
  "other-format": ({ typed }) =>
    `${quoted(typed)} is a format of the room file that this version does not read; write \`baymark: 1\``,

  "no-unit": ({ typed, ways }) => `${quoted(typed)} has no unit; write ${listed(ways, "or")}`,
  "unknown-unit": ({ typed, unit, ways }) =>
    `${quoted(typed)}: ${quoted(unit)} is no unit here; write ${listed(ways, "or")}`,
  "not-a-measure": ({ typed, measured, ways }) =>
    `${quoted(typed)} cannot be read as ${MEASURED[measured]}; write it as ${listed(ways, "or")}`,
  "comma-in-figure": ({ typed, ways }) =>
    `${quoted(typed)}: a comma can be read two ways; write ${listed(ways, "or")}`,
  "inches-over-twelve": ({ typed, instead: written }) =>
    `${quoted(typed)}: beside feet there are fewer than 12 inches${written === null ? "" : `; write ${quoted(written)} if that is meant`}`,
  "out-of-limits": ({ typed, least, most }) =>
    `${quoted(typed)} is not possible here: it must be from ${least} to ${most}; check the figure and its unit`,
  "not-a-whole-number": ({ typed, least, most }) =>
    `${quoted(typed)} must be a whole number from ${least} to ${most}, without a unit`,
  "too-many": ({ of, count, most }) =>
    `${count} ${of}: at most ${most} are possible here; check for a slip of typing`,
  "too-few": ({ count, least }) =>
    `${count === 0 ? "none is" : `only ${count}`} given; at least ${least} must stand here`,

  "text-empty": () => "this text is empty; write something or take the key out",
  "text-too-long": ({ count, most }) => `this text has ${count} characters; the sheets have room for ${most}`,
  "bad-character": ({ reason, codePoint, name }) =>
    `this text holds ${codePoint}${name === null ? "" : ` ${name}`}, ${BAD[reason]}; type the text again without it`,
  "bad-id": ({ typed, slip, most }) =>
    ({
      characters: `${quoted(typed)}: an id has letters without accents, digits, - and _ only, as in \`SL-1\`, since it is printed on labels and names files`,
      "too-long": `${quoted(typed)}: an id has at most ${most} characters, so that it fits on a label`,
      reserved: `${quoted(typed)} cannot be an id: some systems keep that name for a device and refuse files of it`,
    })[slip],
  "name-taken": ({ typed, firstLine }) =>
    `${quoted(typed)} is already used in line ${firstLine} (capitals make no difference); give one of them another name`,
  "name-reserved": ({ typed }) => `${quoted(typed)} has a meaning of its own in this file; give another name`,

  "unknown-name": ({ of, typed, suggestion, choices }) => {
    const [one, many] = NAMES[of];
    const listIt = of === "model" ? "; write its figures under `models`" : "";
    const none = choices.length === 0 ? `; the file has no ${many}${listIt}` : "";
    const hint = of === "channel" ? CHANNEL : "";
    return `there is no ${one} ${quoted(typed)}${none}${hint}${instead(suggestion, `the ${many} are`, choices)}`;
  },
  "mirrors-itself": ({ typed }) =>
    `${quoted(typed)} cannot mirror itself; name the loudspeaker on the other side`,
  "reference-seats": ({ count }) =>
    count === 0
      ? "no seat says `reference: true`; write it at the one that the layout is built round"
      : `${count} seats say \`reference: true\`; the layout is built round one of them`,
  "outline-with-size": ({ key }) =>
    `${quoted(key)} is the size of a box, and this room has an \`outline\`; keep one of them`,
  "walls-without-outline": () =>
    "the walls of a box are left, front, right and back; names of walls go with an `outline`",
  "walls-count": ({ corners, walls }) =>
    `an outline of ${corners} corners has ${corners} walls, and ${walls} are named; each goes from its corner to the next`,
  "heights-count": ({ corners, heights }) =>
    `${corners} corners want ${corners} heights in the same order, and ${heights} are given`,
  "walls-cross": ({ first, second }) =>
    `the walls ${quoted(first)} and ${quoted(second)} cross; corners go round the room in order`,
  "wall-too-short": ({ wall, lengthMm, leastMm }) =>
    `the wall ${quoted(wall)} would be ${length(lengthMm)} long, and ${length(leastMm)} is the least; check its two corners`,
  "corners-in-line": () =>
    "this corner lies in line with the other one, so that there is no area between them; give two corners that face each other across it",
  "ceiling-no-area": ({ ceiling }) =>
    `the corners of ${quoted(ceiling)} do not go round an area; they go round it in order`,
  "not-one-plane": ({ ceiling, corner, byMm, mostMm }) =>
    `corner ${corner} of ${quoted(ceiling)} stands ${length(byMm)} out of the plane of the others, and ${length(mostMm)} is the most; measure its height again, or give two ceilings that meet`,
  "ceiling-outside": ({ ceiling, byMm }) =>
    `${quoted(ceiling)} reaches ${length(byMm)} past the walls; check its corners`,
  "ceilings-overlap": ({ ceiling, other }) =>
    `${quoted(ceiling)} and ${quoted(other)} lie over each other on plan; check their corners`,
  "ceiling-in-pieces": ({ pieces }) =>
    `the named ceilings leave ${pieces} separate pieces of the ceiling at \`height\`; name all of them but one under \`ceilings\`, so that each has its own sheet`,
  "no-main-ceiling": ({ choices }) =>
    `nothing is left of the ceiling at \`height\`, since named ones cover the room; use ${listed(choices, "or")}`,

  "tapes-count": ({ given, wanted }) =>
    `${wanted} tapes fix this point, and ${given.length === 0 ? "none is" : `${given.length === 1 ? "only " : ""}${listed(given, "and")} ${given.length === 1 ? "is" : "are"}`} given; ${given.length > wanted ? `keep ${wanted}` : "on plan they come from two walls that meet; on a wall one is `up` or `down`"}`,
  "tapes-parallel": ({ given }) =>
    `${listed(given, "and")} run along each other and fix no point; give tapes from two walls that meet`,
  "tape-not-here": ({ tape, surface, choices }) =>
    `a tape from ${quoted(tape)} fixes nothing on ${quoted(surface)}; use ${listed(choices, "or")}`,
  "framing-from": ({ from, choices }) =>
    `members that run this way cannot be counted from ${quoted(from)}; count them from ${listed(choices, "or")}`,
  "framing-from-point": ({ from }) =>
    `members at an angle to the walls cannot be counted from ${quoted(from)}; count them, square to themselves, from a corner that they all lie to one side of, such as \`from: { right: 0, front: 0 }\``,
  "framing-layout": ({ given }) =>
    `members are given as \`at\` (found one by one) or as \`first\` with \`spacing\` (laid out), and here stands ${given.length === 0 ? "neither" : listed(given, "and")}`,
  "members-out-of-order": ({ typedMm, beforeMm }) =>
    `the member at ${length(typedMm)} comes after the one at ${length(beforeMm)}; they go from the named wall on, each further than the last`,
  "member-outside": ({ byMm }) =>
    `this member begins ${length(byMm)} past the end of the surface; check the figure and the wall that it is counted from`,
  "found-no-member": ({ number, count }) =>
    `there is no member ${number} here: the layout has ${count}, counted from the wall that it is measured from`,
  "spacing-under-width": ({ spacingMm, widthMm }) =>
    `a spacing of ${length(spacingMm)} is less than the members' own width of ${length(widthMm)}`,
  "web-over-flange": ({ webMm, flangeMm }) =>
    `a web of ${length(webMm)} is not thinner than its flange of ${length(flangeMm)}; look at the maker's sheet again`,
  "smaller-than-opening": ({ flangeMm, openingMm }) =>
    `the flange, ${length(flangeMm)}, does not cover the opening, ${length(openingMm)}; look at the maker's sheet again`,
  "range-upside-down": ({ leastMm, mostMm }) =>
    `from ${length(leastMm)} to ${length(mostMm)} is no range; the thinner board goes first`,
  "seat-outside": ({ wall }) =>
    `this seat is not in the room: it lies past ${quoted(wall)}; check the figures`,
  "labels-off-page": ({ byMm }) =>
    `the labels go ${length(byMm)} past the edge of their sheet; check size, pitch and count`,
  "labels-overlap": ({ byMm }) =>
    `the labels lie ${length(byMm)} over each other; the pitch is from one label's edge to the next one's`,
  "taller-than-label": ({ byMm }) =>
    `the printed part is ${length(byMm)} taller than the label that it is a part of`,
  "area-not-fillable": ({ area, because }) => `${quoted(area)} cannot be filled: ${NOT_FILLABLE[because]}`,
};

const NOT_FILLABLE = {
  "not-a-ceiling": "`on` must name a ceiling",
  "no-area": "its corners go round no area; list them in order round it",
  "off-ceiling": "nothing of it lies on that ceiling; check its corners",
  tilted: "this model is tilted, and only straight ones fill an area; take another, or mend `baffle_tilt`",
  "no-coverage": "this model has no `coverage`; copy it from the maker's sheet",
  "too-wide":
    "this model's `coverage` is 180 deg or more and makes no circle; state the `spacing` as a length",
  "ears-too-high": "the ears are not below that ceiling; check `ear` and the room's height",
  "over-others": `${AREAS_OVER_EACH_OTHER} areas lie over each other there already; give its \`corner\` and \`opposite\`, or its \`corners\`, where fewer do`,
} as const;

const BAD = {
  control: "a control character or line break that cannot be printed",
  direction: "which turns the direction of writing",
  invisible: "which cannot be seen on paper",
  surrogate: "half of a character",
  "right-to-left": "a letter that is written from right to left, which the sheets cannot set",
  "no-glyph": "which the sheets' typeface does not have",
} as const;

/** Why a room file cannot be used, and what to type instead. */
export const complaints = { phrase };
