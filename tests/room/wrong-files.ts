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
