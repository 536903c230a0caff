import { startFile } from "../../src/room/start.js";

/*
 * The file that `baymark start` writes, with what somebody new to it gets wrong: by hand, in a hurry, from another
 * program, or thinking in another way of writing.
 */

const START = startFile({ language: "en", units: "imperial" });
const METRIC = startFile({ language: "es", units: "metric" });

/** The block of models, from its key to the blank line after it. */
const MODELS = START.slice(START.indexOf("models:\n"), START.indexOf("\n\n", START.indexOf("models:\n")));

type Slip = readonly [from: string, to: string];

const SLIPS: Readonly<Record<string, Slip>> = {
  "a length without a unit": [`width: 12' 0" `, "width: 144 "],
  "feet and inches run together": [`length: 17' 4" `, "length: 17'4 "],
  "thirteen inches": [`length: 17' 4" `, `length: 16' 16" `],
  "feet and inches in words": [`length: 17' 4" `, "length: 17 feet 4 inches and a half "],
  "a height as a word": [`height: 8' 10" `, "height: standard "],
  "a height with its tolerance": [`height: 8' 10" `, `height: 8' 10" +/- 1/4" `],
  "a figure of nought to divide by": [`ceiling: 5/8"`, `ceiling: 5/0"`],
  "a wall that is a mile long": [`length: 17' 4" `, "length: 1740 ft "],
  "a tab for indentation": [`  length: 17' 4" `, `\tlength: 17' 4" `],
  "a line indented by one more": [`  length: 17' 4" `, `   length: 17' 4" `],
  "a line not indented": [`  length: 17' 4" `, `length: 17' 4" `],
  "a colon without a space": [`  width: 12' 0" `, `  width:12' 0" `],
  "an equals sign": [`  width: 12' 0" `, `  width = 12' 0" `],
  "a bracket left open": [`at: { left: 24", up: 40" } }`, `at: { left: 24", up: 40" }`],
  "a comma left out": [`on: front, at: { left: 24", up: 40" } }`, `on: front at: { left: 24", up: 40" } }`],
  "a quote left open": ["name: First room", 'name: "First room'],
  "a key misspelt": ["  measured_to: framing ", "  mesured_to: framing "],
  "a key with a hyphen": ["  measured_to: framing ", "  measured-to: framing "],
  "a key with a capital": ["  measured_to: framing ", "  Measured_to: framing "],
  "a key twice": [`  width: 12' 0" `, `  width: 12' 0"\n  width: 12' 6" `],
  "a wall by another name": ["on: left, at: { front: 8' 8\"", "on: west, at: { front: 8' 8\""],
  "a tape from the surface's own wall": [`on: left, at: { front: 8' 8"`, `on: left, at: { left: 8' 8"`],
  "one tape only": [`at: { left: 6' 0", up: 40" } }`, `at: { left: 6' 0" } }`],
  "tapes from walls that face each other": [
    `at: { left: 24", front: 24" } }`,
    `at: { left: 24", right: 24" } }`,
  ],
  "a place as a list": [`at: { left: 24", front: 24" } }`, `at: [24", 24"] }`],
  "the same figure for two corners": [
    `corner: { left: 1' 0", front: 10' 0" }, opposite: { left: 2' 0", front: 17' 4" }`,
    `corner: { left: 1' 0", front: 10' 0" }, opposite: { left: 1' 0", front: 17' 4" }`,
  ],
  "a model that is not listed": [
    `id: C,   channel: M+000, model: in-wall`,
    `id: C,   channel: M+000, model: in wall 6`,
  ],
  "no models at all": [MODELS, ""],
  "a model without its depth": [`    depth: 5 1/2" `, "    # depth "],
  "an id twice": ["id: SR, ", "id: SL, "],
  "an id with a space": ["id: SR, ", "id: S R, "],
  "a channel by its everyday name": ["channel: M+110", "channel: Ls"],
  "an angle without a unit": ["baffle_tilt: 15 deg", "baffle_tilt: 15"],
  "an angle in percent": ["baffle_tilt: 15 deg", "baffle_tilt: 15%"],
  "a lumber size that there is not": [
    "ceiling: { run: left-right, member: 2x10",
    "ceiling: { run: left-right, member: 2x9",
  ],
  "members that run another way": ["run: left-right", "run: north-south"],
  "members without the wall that they are counted from": [
    `member: 2x10, from: front, first: 15 1/4"`,
    `member: 2x10, first: 15 1/4"`,
  ],
  "units that there are not": ["units: imperial ", "units: inches "],
  "paper that there is not": ["paper: letter", "paper: A5"],
  "a language that there is not": ["languages: [en]", "languages: [fr]"],
  "no reference among the seats": [
    `  - { name: middle, at: { left: 6' 0", front: 7' 0" }, ear: 40", reference: true }`,
    `  - { name: middle, at: { left: 6' 0", front: 7' 0" }, ear: 40" }\n  - { name: left, at: { left: 4' 0", front: 7' 0" }, ear: 40" }`,
  ],
  "a seat outside the room": [`at: { left: 6' 0", front: 7' 0" }`, `at: { left: 16' 0", front: 7' 0" }`],
  "yes for true": ["reference: true", "reference: yes"],
  "feet and inches in a bracket": [`at: { left: 6' 0", up: 40" } }`, `at: { left: 6' 0", up: 3'4 } }`],
  "feet and inches in words, the last one left out": [`height: 8' 10" `, `height: "8 ft 10" `],
  "a comma between thousands": [`length: 17' 4" `, "length: 5,283 mm "],
  "a unit misspelt": [`height: 8' 10" `, "height: 106 inchs "],
  yards: [`length: 17' 4" `, "length: 6 yd "],
  "the letter O for a nought": [`at: { left: 24", front: 24" } }`, `at: { left: 2O", front: 24" } }`],
  "less than nothing": [`at: { left: 6' 0", up: 40" } }`, `at: { left: -6' 0", up: 40" } }`],
  "a diameter without its key": [`opening: { round: 8 1/2" }`, `opening: 8 1/2"`],
  "a diameter with its sign": [`opening: { round: 8 1/2" }`, `opening: { round: ⌀8 1/2" }`],
  "a bracket twice": [`opening: { round: 8 1/2" }`, `opening: {{ round: 8 1/2" }}`],
  "a flange smaller than its opening": [`flange: { round: 9 5/8" }`, `flange: { round: 7" }`],
  "round brackets": [`at: { left: 6' 0", up: 40" } }`, `at: ( left: 6' 0", up: 40" ) }`],
  "a semicolon": [`board: { ceiling: 5/8", walls`, `board: { ceiling: 5/8"; walls`],
  "a value in backticks": ["name: First room", "name: `First room`"],
  "an entry without its dash": ["  - { id: C,   channel", "    { id: C,   channel"],
  "a dash without a space": ["  - { id: C,   channel", "  -{ id: C,   channel"],
  "an entry on its key's line": ["seats:\n  - {", "seats: - {"],
  "one seat that is no list": ["  - { name: middle,", "  { name: middle,"],
  "models as a list": ["  in-wall:\n", "  - name: in-wall\n"],
  "a space that is none, before a key": [`  width: 12' 0" `, `\u00a0\u00a0width: 12' 0" `],
  "a space that is none, behind a colon": [`  width: 12' 0" `, `  width:\u00a012' 0" `],
  "two versions that were put together": [
    `  width: 12' 0" `,
    `<<<<<<< HEAD\n  width: 12' 0"\n=======\n  width: 12' 6"\n>>>>>>> as-found\n  # `,
  ],
  "a remark behind two strokes": ["units: imperial ", "units: imperial // feet and inches "],
  "a part of the file twice": ["units: imperial ", "units: imperial\nlayout: 2+5+0\n# "],
  "a line of hyphens": ["units: imperial ", "---\nunits: imperial "],
  "a loudspeaker without an id": ["{ id: C,   channel", "{ channel"],
  "a place that is not asked for so": [`at: { left: 6' 0", up: 40" } }`, "at: auto }"],
  "a partner that there is not": [`at: { left: 24", front: 24" } }`, "at: best, mirror: TRF }"],
  "an aim at a seat that there is not": [
    `at: { left: 24", front: 24" } }`,
    `at: { left: 24", front: 24" }, aim: midle }`,
  ],
  "a layout by its everyday name": ["layout: 2+5+0", "layout: 5.1"],
  "a format that is yet to come": ["baymark: 1", "baymark: 2"],
};

/** Odd to us, but plain in meaning: these are read as they were meant. */
const UNDERSTOOD: Readonly<Record<string, Slip>> = {
  "feet and inches with a hyphen": [`length: 17' 4" `, "length: 17'-4\" "],
  "marks that a text program made": [`length: 17' 4" `, "length: 17’ 4” "],
  "two single marks for inches": [`length: 17' 4" `, "length: 17' 4'' "],
  "feet and inches in words": [`length: 17' 4" `, "length: 17 ft 4 in "],
  "a date as people write it": ["  # date: 2026-01-31 ", "  date: 31/1/2026 "],
};

/** The same in metres, where figures have a comma. */
const METRIC_SLIPS: Readonly<Record<string, Slip>> = {
  "a comma in a figure": ["width: 3.60 m", "width: 3,60 m"],
  "metres that were meant as millimetres": ["length: 5.20 m", "length: 5200 m"],
  "centimetres without a unit": ["height: 2.65 m", "height: 270"],
};

/** Not a room file at all. */
const OTHERS: Readonly<Record<string, string>> = {
  "an empty file": "",
  "a letter": "Dear site lead,\n\nplease find attached the room.\n",
  "another program's file": '{ "room": { "width": 12, "length": 17 } }\n',
  "a slip in a file with other line ends": START.replace("units: imperial", "units: inches").replaceAll(
    "\n",
    "\r\n",
  ),
  "the keys of a room only": "width: 12'\nlength: 17'\nheight: 9'\n",
};

const slipped = (text: string, name: string, [from, to]: Slip): string => {
  const pieces = text.split(from);
  if (pieces.length !== 2) throw new Error(`${pieces.length - 1} times in the file: ${from} (${name})`);
  return pieces.join(to);
};

const each = (text: string, slips: Readonly<Record<string, Slip>>): readonly (readonly [string, string])[] =>
  Object.entries(slips).map(([name, slip]) => [name, slipped(text, name, slip)]);

export const WRONG_FILES: ReadonlyMap<string, string> = new Map([
  ...each(START, SLIPS),
  ...each(METRIC, METRIC_SLIPS),
  ...Object.entries(OTHERS),
]);

export const UNDERSTOOD_FILES: ReadonlyMap<string, string> = new Map(each(START, UNDERSTOOD));
