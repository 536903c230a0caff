import type { ComplaintCode } from "../../src/findings/complaint.js";
import { type Expected, HERE, marked } from "./complaining.js";
import { changed, FULL_ROOM, placeOf } from "./full-room.js";

/** A slip in the full room (the mark stands where it is to be pointed at), and what is said of it. */
export interface Slip {
  readonly from: string;
  readonly to: string;
  readonly code: ComplaintCode;
  readonly figures?: Readonly<Record<string, unknown>>;
}

export const SLIPS: Readonly<Record<string, Slip>> = {
  "a key misspelt": {
    from: `  width: 13' 4"`,
    to: `  ▶widht: 13' 4"`,
    code: "unknown-key",
    figures: { key: "widht", suggestion: "width" },
  },
  "a key misspelt beside the one that was meant": {
    from: `  width: 13' 4"`,
    to: `  ▶widht: 13' 4"\n  width: 13' 4"`,
    code: "unknown-key",
    figures: { key: "widht", suggestion: null },
  },
  "a key misspelt deep inside braces": {
    from: 'keep: 6", behind',
    to: '▶kep: 6", behind',
    code: "unknown-key",
    figures: { key: "kep", suggestion: "keep" },
  },
  "a key that is like no other": {
    from: "units: imperial",
    to: "▶colour: blue\nunits: imperial",
    code: "unknown-key",
    figures: { key: "colour", suggestion: null },
  },
  "a list misspelt, of which every name is then unknown": {
    from: "models:",
    to: "▶modles:",
    code: "unknown-key",
    figures: { suggestion: "models" },
  },
  "a key left out": {
    from: `    depth: 3 5/8"\n`,
    to: "",
    code: "missing-key",
  },
  "a key with nothing behind it": {
    from: `height: 8' 6"`,
    to: "▶height:",
    code: "nothing-written",
    figures: { key: "height" },
  },
  "a key given twice": {
    from: "units: imperial",
    to: "units: imperial\n▶units: metric",
    code: "duplicate-key",
    figures: { key: "units", firstLine: 7 },
  },
  "a bare number": {
    from: `width: 13' 4"`,
    to: "width: ▶160",
    code: "no-unit",
    figures: { typed: "160", ways: ['160"', "160 mm", "160 cm", "160 ft"] },
  },
  "a bare number between quotes": {
    from: `width: 13' 4"`,
    to: `width: ▶"160"`,
    code: "no-unit",
    figures: { typed: "160" },
  },
  "inches without their mark": {
    from: `width: 13' 4"`,
    to: "width: ▶13' 4",
    code: "no-unit",
    figures: { ways: [`13' 4"`] },
  },
  "a unit that there is not": {
    from: `width: 13' 4"`,
    to: "width: ▶13 yd",
    code: "unknown-unit",
    figures: { unit: "yd" },
  },
  "a comma in a figure": {
    from: `keep: 2"`,
    to: "keep: ▶'50,8 mm'",
    code: "comma-in-figure",
    figures: { ways: ["50.8 mm"] },
  },
  "more than eleven inches beside feet": {
    from: `length: 18' 8"`,
    to: `length: ▶17' 20"`,
    code: "inches-over-twelve",
    figures: { instead: `18' 8"` },
  },
  "a length that is none": {
    from: `height: 8' 6"`,
    to: "height: ▶tall",
    code: "not-a-measure",
    figures: { measured: "length" },
  },
  "infinity for a length": { from: `height: 8' 6"`, to: "height: ▶.inf", code: "not-a-measure" },
  "not a number for a length": { from: `height: 8' 6"`, to: "height: ▶.nan", code: "not-a-measure" },
  "an exponent in a length": { from: `height: 8' 6"`, to: "height: ▶1e400 mm", code: "not-a-measure" },
  "an angle without its unit": {
    from: "coverage: 100 deg",
    to: "coverage: ▶100",
    code: "no-unit",
    figures: { ways: ["100 deg", "100°"] },
  },
  "a level that is none": { from: "sensitivity: 88 dB", to: "sensitivity: ▶loud", code: "not-a-measure" },
  "a weight without its unit": {
    from: "weight: 7 lb",
    to: "weight: ▶7",
    code: "no-unit",
    figures: { ways: ["7 lb", "7 kg"] },
  },
  "a room that is too small": {
    from: `width: 13' 4"`,
    to: "width: ▶0.4 m",
    code: "out-of-limits",
    figures: { typed: "0.4 m", least: "0.5 m", most: "100 m" },
  },
  "a room that is too large": {
    from: `length: 18' 8"`,
    to: "length: ▶100.1 m",
    code: "out-of-limits",
    figures: { typed: "100.1 m", most: "100 m" },
  },
  "a negative tape": {
    from: `ear: 42", reference: true`,
    to: `ear: ▶-42", reference: true`,
    code: "out-of-limits",
  },
  "a tilt that faces away": {
    from: "baffle_tilt: 20 deg",
    to: "baffle_tilt: ▶80 deg",
    code: "out-of-limits",
  },
  "a gauge with a unit": { from: "gauge: 14", to: "gauge: ▶14 AWG", code: "not-a-whole-number" },
  "a gauge with a zero before it": { from: "gauge: 14", to: "gauge: ▶014", code: "not-a-whole-number" },
  "a word that cannot stand there": {
    from: "units: imperial",
    to: "units: ▶imperal",
    code: "unknown-word",
    figures: { suggestion: "imperial", choices: ["imperial", "metric"] },
  },
  "yes for true": {
    from: "rated: true",
    to: "rated: ▶yes",
    code: "unknown-word",
    figures: { suggestion: "true" },
  },
  "a map where a text must stand": {
    from: "name: Willow Bend snug",
    to: "name: ▶{ first: Willow }",
    code: "wrong-kind",
    figures: { wanted: ["text"], found: "map" },
  },
  "a text where a list must stand": {
    from: "gauges: [16, 14, 12]",
    to: "gauges: ▶16",
    code: "wrong-kind",
    figures: { wanted: ["list"], found: "text", key: "gauges" },
  },
  "a list where either of two others must stand": {
    from: "member: 2x8",
    to: "member: ▶[2, 8]",
    code: "wrong-kind",
    figures: { wanted: ["text", "map"], found: "list" },
  },
  "another format": { from: "baymark: 1", to: "baymark: ▶2", code: "other-format", figures: { typed: "2" } },
  "an empty name": { from: "name: Willow Bend snug", to: 'name: ▶" "', code: "text-empty" },
  "a name that is too long": {
    from: "name: Willow Bend snug",
    to: `name: ▶${"x".repeat(61)}`,
    code: "text-too-long",
    figures: { count: 61, most: 60 },
  },
  "an id with an accent": {
    from: "id: FL,",
    to: "id: ▶FLé,",
    code: "bad-id",
    figures: { slip: "characters" },
  },
  "an id that is too long": {
    from: "id: FL,",
    to: "id: ▶front-left-13,",
    code: "bad-id",
    figures: { slip: "too-long" },
  },
  "an id that systems keep for a device": {
    from: "id: FL,",
    to: "id: ▶Com1,",
    code: "bad-id",
    figures: { slip: "reserved" },
  },
  "an id that is taken, but for capitals": {
    from: "id: FR,",
    to: "id: ▶fl,",
    code: "name-taken",
    figures: { typed: "fl", firstLine: placeOf("id: FL,").line },
  },
  "a seat's name that is taken": {
    from: "\nlayout: J",
    to: `  - { name: ▶Left, at: { left: 4', front: 6' }, ear: 42" }\n\nlayout: J`,
    code: "name-taken",
    figures: { typed: "Left", firstLine: placeOf("name: left").line },
  },
  "a seat called none": {
    from: "\nlayout: J",
    to: `  - { name: ▶none, at: { left: 4', front: 6' }, ear: 42" }\n\nlayout: J`,
    code: "name-reserved",
  },
  "a seat called reference that is not the reference": {
    from: "\nlayout: J",
    to: `  - { name: ▶reference, at: { left: 4', front: 6' }, ear: 42" }\n\nlayout: J`,
    code: "name-reserved",
  },
  "a model that there is not": {
    from: "model: wall-6, on: front, at: { left: 3' 6\"",
    to: "model: ▶wal-6, on: front, at: { left: 3' 6\"",
    code: "unknown-name",
    figures: { of: "model", suggestion: "wall-6" },
  },
  "a surface that there is not": {
    from: "on: front, at: { left: 3' 6\"",
    to: "on: ▶frnt, at: { left: 3' 6\"",
    code: "unknown-name",
    figures: { of: "surface", suggestion: "front" },
  },
  "a surface that an obstruction cannot be on": {
    from: "name: outlet, on: front",
    to: "name: outlet, on: ▶floor",
    code: "unknown-name",
    figures: { of: "surface" },
  },
  "a tape from no wall": {
    from: "on: front, at: { left: 3' 6\"",
    to: "on: front, at: { ▶lft: 3' 6\"",
    code: "unknown-name",
    figures: { of: "wall", suggestion: "left" },
  },
  "framing from no wall": {
    from: "member: 2x4, from: front, at",
    to: "member: 2x4, from: ▶fromt, at",
    code: "unknown-name",
    figures: { of: "wall", suggestion: "front" },
  },
  "a seat to aim at that there is not": {
    from: "aim: left",
    to: "aim: ▶lef",
    code: "unknown-name",
    figures: { of: "seat", suggestion: "left" },
  },
  "a partner that there is not": {
    from: "mirror: TFL",
    to: "mirror: ▶TFK",
    code: "unknown-name",
    figures: { of: "speaker", suggestion: "TFL" },
  },
  "a partner that is itself": { from: "mirror: TFL", to: "mirror: ▶TFR", code: "mirrors-itself" },
  "an accepted finding of no loudspeaker": {
    from: "speaker: SL, why",
    to: "speaker: ▶SLL, why",
    code: "unknown-name",
    figures: { of: "speaker", suggestion: "SL" },
  },
  "a channel that there is not": {
    from: "channel: M-030",
    to: "channel: ▶m-030",
    code: "unknown-name",
    figures: { of: "channel", suggestion: "M-030" },
  },
  "a layout that there is not": {
    from: "layout: J",
    to: "layout: ▶9+10+2",
    code: "unknown-name",
    figures: { of: "layout", suggestion: "9+10+3" },
  },
  "a paper that there is not": {
    from: "paper: letter",
    to: "paper: ▶lettre",
    code: "unknown-name",
    figures: { of: "paper", suggestion: "letter" },
  },
  "a paper too small to print on": {
    from: "paper: letter",
    to: "paper: ▶20 mm x 30 mm",
    code: "out-of-limits",
  },
  "a lumber size that there is not": {
    from: "member: 2x8",
    to: "member: ▶2x9",
    code: "unknown-name",
    // As near to 2x3 as to 2x10: no guess.
    figures: { of: "lumber", suggestion: null, choices: ["2x3", "2x4", "2x6", "2x8", "2x10", "2x12"] },
  },
  "a label stock that there is not": {
    from: /stock: \{.*\}/u.exec(FULL_ROOM)?.[0] ?? "",
    to: "stock: ▶letter-3",
    code: "unknown-name",
    figures: { of: "stock", suggestion: "letter-30" },
  },
  "two reference seats": {
    from: `back: 9' 8" }, ear: 42" }`,
    to: `back: 9' 8" }, ear: 42", reference: true }`,
    code: "reference-seats",
    figures: { count: 2 },
  },
  "one tape too few": {
    from: `{ left: 3' 6", up: 42" }`,
    to: `▶{ left: 3' 6" }`,
    code: "tapes-count",
    figures: { given: ["left"], wanted: 2 },
  },
  "one tape too many": {
    from: `{ left: 3' 6", up: 42" }`,
    to: `▶{ left: 3' 6", up: 42", down: 60" }`,
    code: "tapes-count",
  },
  "two tapes along each other": {
    from: "{ left: 4', back: 5' }",
    to: "▶{ left: 4', right: 9' }",
    code: "tapes-parallel",
    figures: { given: ["left", "right"] },
  },
  "up and down on a wall": {
    from: `{ left: 3' 6", up: 42" }`,
    to: `▶{ up: 42", down: 60" }`,
    code: "tapes-parallel",
  },
  "a tape from the wall itself": {
    from: `on: front, at: { left: 3' 6"`,
    to: `on: front, at: { ▶front: 3' 6"`,
    code: "tape-not-here",
    figures: { tape: "front", choices: ["left", "right", "up", "down"] },
  },
  "a height on a ceiling": {
    from: "{ left: 4', back: 5' }",
    to: "{ left: 4', ▶up: 5' }",
    code: "tape-not-here",
    figures: { choices: ["left", "front", "right", "back"] },
  },
  "a held tape that says nothing": {
    from: `hold: { up: 48" }`,
    to: `hold: { ▶left: 48" }`,
    code: "tape-not-here",
  },
  "an aim without a height": {
    from: `aim: { left: 5', front: 9', up: 40" }`,
    to: "aim: ▶{ left: 5', front: 9' }",
    code: "tapes-count",
  },
  "joists counted from the wall that they run to": {
    from: "member: 2x8, from: front",
    to: "member: 2x8, from: ▶left",
    code: "framing-from",
    figures: { from: "left", choices: ["front", "back"] },
  },
  "joists at an angle counted from a wall": {
    from: "run: left-right, member: 2x8, from: front",
    to: "run: 30 deg, member: 2x8, from: ▶front",
    code: "framing-from-point",
    figures: { from: "front" },
  },
  "a web that is no thinner than its flange": {
    from: "run: left-right, member: 2x8",
    to: `run: left-right, member: ▶{ flange: 2 1/2", web: 2 1/2", depth: 11 7/8" }`,
    code: "web-over-flange",
  },
  "joists at an angle without its unit": {
    from: "run: left-right",
    to: "run: ▶30",
    code: "no-unit",
  },
  "members both found and laid out": {
    from: `at: [14", 30 1/2", 46"], cavity: 3"`,
    to: `at: [14", 30 1/2", 46"], first: 3"`,
    code: "framing-layout",
    figures: { given: ["first", "at"] },
  },
  "a layout without a spacing": {
    from: `from: left, first: 16", spacing: 24"`,
    to: `from: left, first: 16"`,
    code: "framing-layout",
    figures: { given: ["first"] },
  },
  "members out of order": {
    from: `at: [14", 30 1/2", 46"]`,
    to: `at: [14", 46", ▶30 1/2"]`,
    code: "members-out-of-order",
  },
  "a member found that there is not": {
    from: "{ member: 2, at",
    to: "{ member: ▶15, at",
    code: "found-no-member",
    figures: { number: 15, count: 14 },
  },
  "a stretch found past the last member": {
    from: "from: 4, to: 5",
    to: "from: 4, to: ▶19",
    code: "found-no-member",
    figures: { number: 19, count: 14 },
  },
  "a member found behind the next one": {
    from: `{ member: 2, at: 33 1/4"`,
    to: `▶{ member: 2, at: 48"`,
    code: "members-out-of-order",
  },
  "a member found outside the near wall": {
    from: `{ from: 4, to: 5, shift: -1/2"`,
    to: `▶{ from: 1, to: 1, shift: -17"`,
    code: "member-outside",
  },
  "a member found without who": {
    from: `{ member: 2, at: 33 1/4", by: framing lead, on: 2026-03-05 }`,
    to: `▶{ member: 2, at: 33 1/4", on: 2026-03-05 }`,
    code: "missing-key",
    figures: { key: "by" },
  },
  "a member past the far wall": { from: `30 1/2", 46"]`, to: `30 1/2", ▶460"]`, code: "member-outside" },
  "a first member past the far wall": {
    from: `from: left, first: 16"`,
    to: `from: left, first: ▶16'`,
    code: "member-outside",
  },
  "members on top of each other": {
    from: `from: left, first: 16", spacing: 24"`,
    to: `from: left, first: 16", spacing: ▶1"`,
    code: "spacing-under-width",
  },
  "a flange that falls through": {
    from: `flange: { round: 9 3/8" }`,
    to: `flange: ▶{ round: 8" }`,
    code: "smaller-than-opening",
  },
  "a lower flange than the opening": {
    from: `flange: { width: 8 7/8", height: 13" }`,
    to: `flange: ▶{ width: 8 7/8", height: 11" }`,
    code: "smaller-than-opening",
  },
  "a range upside down": {
    from: `board_range: [3/8", 1 1/4"]`,
    to: `board_range: ▶[1 1/4", 3/8"]`,
    code: "range-upside-down",
  },
  "half a range": {
    from: `board_range: [3/8", 1 1/4"]`,
    to: `board_range: ▶[3/8"]`,
    code: "too-few",
    figures: { count: 1, least: 2 },
  },
  "a seat behind the wall": {
    from: `{ left: 4', back: 9' 8" }`,
    to: `▶{ left: 14', back: 9' 8" }`,
    code: "seat-outside",
    figures: { wall: "right" },
  },
  "an ear over the ceiling": {
    from: `back: 9' 8" }, ear: 42"`,
    to: `back: 9' 8" }, ear: ▶42'`,
    code: "seat-outside",
    figures: { wall: "ceiling" },
  },
  "labels past the edge of their sheet": { from: "columns: 4", to: "columns: ▶5", code: "labels-off-page" },
  "labels over each other": { from: "across: 49 mm", to: "across: ▶40 mm", code: "labels-overlap" },
  "a printed part taller than its label": {
    from: "printed: 12 mm",
    to: "printed: ▶21 mm",
    code: "taller-than-label",
  },
  "labels on a roll": {
    from: "page: A4",
    to: "page: ▶roll-36",
    code: "unknown-name",
    figures: { of: "paper" },
  },
  "more labels used than a sheet has": {
    from: "used: 5",
    to: "used: ▶52",
    code: "not-a-whole-number",
    figures: { most: 51 },
  },
  "wrapping labels of which nothing is printed": {
    from: ", printed: 12 mm",
    to: "",
    code: "missing-key",
    figures: { key: "printed" },
  },
  "a key misspelt in one of several forms": {
    from: "aim: { at: { left: 5', front: 9' }, up: 40\" }",
    to: "aim: { at: { left: 5', front: 9' }, ▶upp: 40\" }",
    code: "unknown-key",
    figures: { key: "upp", suggestion: "up" },
  },
  "a key misspelt and so missing, told once": {
    from: "length: 18' 8\"",
    to: "▶lenght: 18' 8\"",
    code: "unknown-key",
    figures: { suggestion: "length" },
  },
  "a third language": { from: "[en, es]", to: "▶[en, es, en]", code: "too-many" },
  "the size of a box beside an outline": {
    from: `  width: 13' 4"\n  length: 18' 8"\n`,
    to: `  ▶width: 13' 4"\n  outline: [[0, 0], [13' 4", 0], [13' 4", 18' 8"], [0, 18' 8"]]\n  walls: [front, right, back, left]\n`,
    code: "outline-with-size",
    figures: { key: "width" },
  },
  "names of walls in a box": {
    from: "  measured_to: framing",
    to: "  measured_to: framing\n  ▶walls: [left, front, right, back]",
    code: "walls-without-outline",
  },
  "fewer walls than corners": {
    from: `  width: 13' 4"\n  length: 18' 8"\n`,
    to: `  outline: [[0, 0], [13' 4", 0], [13' 4", 18' 8"], [9', 20'], [0, 18' 8"]]\n  walls: ▶[front, right, back, left]\n`,
    code: "walls-count",
    figures: { corners: 5, walls: 4 },
  },
  "fewer heights than corners": {
    from: "  measured_to: framing",
    to: "  measured_to: framing\n  ceilings:\n    - { name: slope, corners: [[0, 0], [5', 0], [5', 5'], [0, 5']], heights: ▶[7', 7', 8'] }",
    code: "heights-count",
    figures: { corners: 4, heights: 3 },
  },
  "a ceiling without a height": {
    from: "  measured_to: framing",
    to: "  measured_to: framing\n  ceilings:\n    - ▶{ name: soffit, corners: [[0, 0], [5', 0], [5', 5']] }",
    code: "missing-key",
  },
  "a ceiling with a name that means something else": {
    from: "  measured_to: framing",
    to: "  measured_to: framing\n  ceilings:\n    - { name: ▶floor, corners: [[0, 0], [5', 0], [5', 5']], height: 7' }",
    code: "name-reserved",
    figures: { typed: "floor" },
  },
  "walls that cross": {
    from: `  width: 13' 4"\n  length: 18' 8"\n`,
    to: `  outline: ▶[[0, 0], [13' 4", 18' 8"], [13' 4", 0], [0, 18' 8"]]\n  walls: [front, right, back, left]\n`,
    code: "walls-cross",
  },
  "a wall as short as a slip": {
    from: `  width: 13' 4"\n  length: 18' 8"\n`,
    to: `  outline: ▶[[0, 0], [13' 4", 0], [13' 4", 18' 8"], [1/8", 18' 8"], [0, 18' 8"]]\n  walls: [front, right, back, slip, left]\n`,
    code: "wall-too-short",
    figures: { wall: "slip" },
  },
  "a ceiling round nothing": {
    from: "  measured_to: framing",
    to: `  measured_to: framing\n  ceilings:\n    - { name: soffit, corners: ▶[[0, 0], [5', 0], [2', 0]], height: 7' }`,
    code: "ceiling-no-area",
    figures: { ceiling: "soffit" },
  },
  "a slope that is no plane": {
    from: "  measured_to: framing",
    to: `  measured_to: framing\n  ceilings:\n    - { name: slope, corners: [[0, 0], [5', 0], [5', 5'], [0, 5']], heights: ▶[7', 7', 8', 8' 6"] }`,
    code: "not-one-plane",
    figures: { ceiling: "slope", mostMm: 3 },
  },
  "a soffit past a wall": {
    from: "  measured_to: framing",
    to: `  measured_to: framing\n  ceilings:\n    - { name: soffit, corners: ▶[[0, 0], [14' 4", 0], [14' 4", 2'], [0, 2']], height: 7' }`,
    code: "ceiling-outside",
    figures: { ceiling: "soffit" },
  },
  "soffits over each other": {
    from: "  measured_to: framing",
    to: `  measured_to: framing\n  ceilings:\n    - { name: one, corners: [[0, 0], [2', 0], [2', 9'], [0, 9']], height: 7' }\n    - { name: two, corners: ▶[[0, 0], [9', 0], [9', 2'], [0, 2']], height: 7' }`,
    code: "ceilings-overlap",
    figures: { ceiling: "one", other: "two" },
  },
  "an area on a wall": {
    from: "name: rest, on: ceiling, model: round-5, corners: [{ left: 0, front: 0 }, { right: 0, front: 0 }, { left: 0, back: 0 }]",
    to: "name: rest, on: ▶left, model: round-5",
    code: "area-not-fillable",
    figures: { area: "rest", because: "not-a-ceiling" },
  },
  "an area of tilted ones": {
    from: "name: rest, on: ceiling, model: round-5",
    to: "name: rest, on: ceiling, model: ▶overhead-6",
    code: "area-not-fillable",
    figures: { because: "tilted" },
  },
  "an area of what states no coverage": {
    from: "name: whole, on: ceiling, model: round-5",
    to: "name: whole, on: ceiling, model: ▶wall-6",
    code: "area-not-fillable",
    figures: { because: "no-coverage" },
  },
  "an area whose corners cross": {
    from: "- { name: rest, on: ceiling, model: round-5, corners: [{ left: 0, front: 0 }, { right: 0, front: 0 }, { left: 0, back: 0 }]",
    to: "- ▶{ name: rest, on: ceiling, model: round-5, corners: [{ left: 0, front: 0 }, { right: 0, back: 0 }, { right: 0, front: 0 }, { left: 0, back: 0 }]",
    code: "area-not-fillable",
    figures: { because: "no-area" },
  },
  "an area past the walls": {
    from: "corner: { left: 8', back: 6' }, opposite: { right: 0, back: 0 }",
    to: "corner: { left: 18', back: 6' }, opposite: { left: 19', back: 0 }",
    code: "area-not-fillable",
    figures: { because: "off-ceiling" },
  },
  "ears above the ceiling": {
    from: `name: whole, on: ceiling, model: round-5, ear: 44"`,
    to: `name: whole, on: ceiling, model: round-5, ear: ▶9'`,
    code: "area-not-fillable",
    figures: { because: "ears-too-high" },
  },
  "a pattern that is none": {
    from: "pattern: hexagon",
    to: "pattern: ▶hexagonal",
    code: "unknown-word",
    figures: { typed: "hexagonal", suggestion: "hexagon" },
  },
  "an area that is none": {
    from: "area: alcove",
    to: "area: ▶alcoves",
    code: "unknown-name",
    figures: { of: "area", typed: "alcoves", suggestion: "alcove" },
  },
  "an area by the name of a channel": {
    from: "name: whole",
    to: "name: ▶M-030",
    code: "name-reserved",
  },
  "two areas of one name": {
    from: "name: whole",
    to: "name: ▶Rest",
    code: "name-taken",
    figures: { typed: "Rest" },
  },
  "a prefix that leaves no room for a number": {
    from: "prefix: R",
    to: "prefix: ▶restaurant",
    code: "bad-id",
    figures: { slip: "too-long", most: 9 },
  },
  "a corner of an area from no wall": {
    from: "corners: [{ left: 0, front: 0 }",
    to: "corners: [{ ▶lft: 0, front: 0 }",
    code: "unknown-name",
    figures: { of: "wall", typed: "lft", suggestion: "left" },
  },
  "neither a channel nor an area": {
    from: "area: alcove, ",
    to: "",
    code: "missing-key",
    figures: { key: "channel" },
  },
  "a beam that parts the ceiling": {
    from: "  measured_to: framing",
    to: `  measured_to: framing\n  ▶ceilings:\n    - { name: beam, corners: [[0, 5'], [13' 4", 5'], [13' 4", 6'], [0, 6']], height: 8' }`,
    code: "ceiling-in-pieces",
    figures: { pieces: 2 },
  },
  "two corners in line": {
    from: `opposite: { left: 3' 4", back: 0 }`,
    to: `opposite: ▶{ left: 2' 2", back: 0 }`,
    code: "corners-in-line",
  },
};

/** Where no mark can stand in the text, since what is pointed at is not changed. */
const ELSEWHERE: Readonly<Record<string, { line: number; column: number }>> = {
  // The map that lacks the key: the model's first key.
  "a key left out": placeOf("opening: { width: 7"),
  "wrapping labels of which nothing is printed": placeOf("{ page: A4"),
  "an area past the walls": placeOf("{ name: alcove"),
  "neither a channel nor an area": placeOf("{ id: H1"),
  "two reference seats": placeOf("{ name: left"),
  "members both found and laid out": placeOf("{ member: 2x4, from: front, at"),
  "a layout without a spacing": placeOf("{ member: { width: 1 1/2"),
};

/** The text with the slip in it, and where the complaint must point. */
export function slipped(name: string, { from, to }: Slip): Expected {
  const text = changed(from, to);
  return to.includes(HERE) ? marked(text) : { text, ...(ELSEWHERE[name] ?? { line: 0, column: 0 }) };
}
