/*
 * Command lines: each command with its own options or another's, values at home elsewhere or nowhere. Files are named
 * only below the folder that they are typed in.
 */
import fc from "fast-check";
import { ODD_CHARACTERS, ODD_SCALARS } from "./odd.js";

const COMMANDS = [
  "start",
  "check",
  "place",
  "report",
  "compare",
  "explain",
  "ruler",
  "help",
  "print",
  "chekc",
  "",
];

const OPTIONS = [
  ...["--json", "--write", "--strict", "--svg", "--pdf", "--help", "-h", "--version", "-V", "--", "-"],
  ...["--jsno", "-x", "--write=yes", "--json=", "--language", "--rank"],
];

const TAKING = [
  "--rank",
  "--lock",
  "--only",
  "--paper",
  "--margin",
  "--printer",
  "--across",
  "--down",
  "--units",
];

const VALUES = [
  ...[
    "en",
    "es",
    "en,es",
    "ES",
    "de",
    "imperial",
    "metric",
    "letter",
    "A4",
    "A3",
    "roll-36",
    "13 in x 19 in",
  ],
  ...[
    "1",
    "2",
    "3",
    "20",
    "21",
    "6.35 mm",
    '1/4"',
    "99.5mm",
    "100.2mm",
    "0",
    "-1",
    "office",
    "TFL",
    "ceiling",
  ],
  ...["cover", "drywall", "opening", "opening-cuts-member", "too-deep", "computed-not-frozen", "opening-TFL"],
];

/** Files and folders of the place itself: nothing outside of it is to be touched. */
const NAMES = [
  ...[
    "room.yaml",
    "room.yaml",
    "room.yaml",
    "room.yaml",
    "folder.yaml",
    "new.yaml",
    "nowhere.yaml",
    "new",
    "ñ ⌀.pdf",
  ],
  ...["", ".", "folder.yaml/new", "room.yaml/new", "nowhere/new", "con", "x".repeat(300), "a\nb", "=1", "*"],
];

const value = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...VALUES) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(...[...ODD_SCALARS, ...ODD_CHARACTERS].filter((text) => !text.includes("\0"))),
  },
  { weight: 1, arbitrary: fc.string({ unit: "grapheme", maxLength: 8 }) },
);

const language = fc
  .constantFrom("en", "es", "en,es", "de", "", "es,", "e")
  .chain((code) => fc.constantFrom<string[]>(["--language", code], [`--language=${code}`]));

const option = fc.oneof(
  { weight: 2, arbitrary: fc.constantFrom(...OPTIONS).map((name) => [name]) },
  { weight: 4, arbitrary: fc.tuple(fc.constantFrom(...TAKING), value).map((pair): string[] => pair) },
  { weight: 1, arbitrary: language },
  { weight: 1, arbitrary: fc.constantFrom(...NAMES).map((name) => ["-o", name]) },
);

/** Options that the command has. */
const OWN: Readonly<Record<string, readonly string[]>> = {
  start: ["--units"],
  check: ["--json"],
  place: ["--json", "--write", "--rank", "--lock"],
  report: ["--json"],
  compare: ["--json"],
  ruler: ["--paper", "--margin", "--printer", "--across", "--down", "-o"],
  print: ["--strict", "--svg", "--pdf", "--only", "--paper", "--margin", "--printer", "-o"],
};

const ownOption = (command: string): fc.Arbitrary<string[]> =>
  fc.constantFrom(...(OWN[command] ?? []), "--language").chain((name) => {
    if (name === "--language") return language;
    if (name === "-o") return fc.constantFrom(...NAMES).map((typed) => [name, typed]);
    return TAKING.includes(name) ? value.map((typed) => [name, typed]) : fc.constant([name]);
  });

/** What stands behind the command without an option: of `explain` a code, of the others files. */
const named = (command: string): fc.Arbitrary<string> => {
  if (command === "explain" || command === "help") return value.filter((text) => !/[/\\]/u.test(text));
  return fc.constantFrom(...NAMES);
};

export const commandLines: fc.Arbitrary<readonly string[]> = fc.constantFrom(...COMMANDS).chain((command) => {
  const most = command === "compare" ? 3 : 2;
  const names = fc.array(named(command), { minLength: command === "compare" ? 2 : 0, maxLength: most });
  const options = fc.oneof(
    { weight: 4, arbitrary: fc.array(ownOption(command), { maxLength: 4 }) },
    { weight: 1, arbitrary: fc.array(option, { maxLength: 3 }) },
  );
  return fc
    .tuple(names, options)
    .map(([typed, chosen]) => [...(command === "" ? [] : [command]), ...typed, ...chosen.flat()]);
});
