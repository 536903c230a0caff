/*
 * What a careless hand or a hostile one writes in place of a value, a key or a character.
 */

/** Every C0 and C1 control, the direction and invisible characters of the Unicode standard, and halves of pairs. */
const CHARACTERS: readonly string[] = [
  ...Array.from({ length: 0x20 }, (_, code) => String.fromCharCode(code)),
  ...Array.from({ length: 0x21 }, (_, code) => String.fromCharCode(0x7f + code)),
  ..."\u00ad\u061c\u180e\u200b\u200c\u200d\u200e\u200f\u2028\u2029\u202a\u202b\u202c\u202d\u202e\u2060",
  ..."\u2066\u2067\u2068\u2069\u206a\u206f\ufeff\ufff9\ufffb\ufffd\ufffe\uffff\ue000",
  ..."\u{e0001}\u{e007f}\u{10ffff}\u{1f600}\u{20000}\u0301\u05d0\u0627\u4e2d",
  "\ud800",
  "\udc00",
];

/** Marks that mean something to YAML, to a sheet's markup, to a shell or to a spreadsheet. */
const MARKS = [..."\"'`{}[],:#&*!|>%@-?=+<>/\\;$~^()\t ", "...", "---", "''", '""', "<<", "\r", "\r\n", "\n"];

/** Figures at and past the ends of what a machine holds, and what is no figure. */
const FIGURES = [
  ...["0", "-0", "-1", "1", "1e9", "1e308", "1e309", "-1e400", "1e-400", "9007199254740993", "0x7fffffff"],
  ...[
    ".inf",
    "-.inf",
    ".nan",
    "NaN",
    "Infinity",
    "0o777",
    "1_000",
    "007",
    "1.",
    ".5",
    "+5",
    "1,5",
    "1e",
    "--1",
  ],
  ...("9".repeat(400).match(/.{1,200}/gu) ?? []),
];

const UNITS = [
  "",
  "'",
  '"',
  " mm",
  " m",
  " cm",
  " ft",
  " in",
  " deg",
  "°",
  " dB",
  " ohm",
  " W",
  " kg",
  "%",
  " C",
  " px",
  " 鏡",
];

const LENGTHS = [
  "16'",
  '16"',
  '1/0"',
  '-1/2"',
  "5' 13\"",
  "5' 1 1/2\"",
  '1/3"',
  "0.0001 mm",
  "99999 m",
  "4' 4' 4'",
  "1 1 1",
  '1 1/2 3/4"',
];

const KINDS = [
  "",
  "~",
  "null",
  "true",
  "yes",
  "no",
  "on",
  "[]",
  "{}",
  "[[]]",
  "[{}]",
  "{ a: }",
  "2026-02-30",
  "2026-13-01",
  "12:30:45",
];

const NAMES = [
  ...["__proto__", "constructor", "prototype", "toString", "hasOwnProperty", "valueOf", "then", "length"],
  ...[
    "con",
    "NUL",
    "aux.yaml",
    "com1",
    "lpt9",
    "..",
    ".",
    "../../etc/passwd",
    "/etc/passwd",
    "C:\\x",
    "\\\\x\\y",
    "a/b",
  ],
  ...["cover", "ceiling", "floor", "best", "left", "front", "up", "down", "packet", "csv", "svg"],
];

/** What a spreadsheet, a browser, a shell or a PDF could take for an order; quoted as YAML wants it. */
const TEXTS = [
  ...["=cmd|' /C calc'!A0", "+1+1", "-1+1", "@SUM(A1)", "\t=1", "\r=1", "=1;2", "\uff1d1+1", "|x", "%x%"],
  ...[
    "<script>alert(1)</script>",
    "]]>",
    "<!--",
    "--><x/>",
    "&lt;",
    "&amp;&#0;",
    "&xxe;",
    "</style><script>",
  ],
  ...[
    "</title><g onload=1>",
    '"',
    '" onload="x',
    "' onload='x",
    "javascript:x",
    "url(#a)",
    "#{x}",
    "{{x}}",
    "%s%n",
  ],
  ...["a,b;c\nd", "(x) Tj ET", "\\) Tj", ">> endobj", "\\", "a\u0301", "\u2028"],
].map((text) => JSON.stringify(text));

const SAMPLES = [
  "2x4",
  "2x10",
  "M+030",
  "U-045",
  "4+7+0",
  "4+5+0",
  "letter",
  "A4",
  "en",
  "[en, es]",
  "framing",
  "finish",
  "open",
  "best",
];

export const ODD_KEYS: readonly string[] = [
  ...NAMES,
  "?",
  "? a",
  "[a]",
  "{ a: 1 }",
  '"a b"',
  "&x a",
  "*x",
  "!!str a",
  "<<",
  "~",
  "1",
  '""',
  "-",
  "widht",
];

export const ODD_SCALARS: readonly string[] = [
  ...FIGURES,
  ...FIGURES.slice(0, 8).flatMap((figure) => UNITS.map((unit) => `${figure}${unit}`)),
  ...UNITS.map((unit) => `12${unit}`),
  ...LENGTHS,
  ...KINDS,
  ...NAMES,
  ...TEXTS,
  ...SAMPLES,
];

export const ODD_CHARACTERS: readonly string[] = [...CHARACTERS, ...MARKS];

/** Pieces that a whole line or more of a file may be. */
export const ODD_PIECES: readonly string[] = [
  "\t",
  "&a [1]",
  "*a",
  "!!binary x",
  "!!js/function x",
  "%YAML 1.1\n---\n",
  "%TAG ! x\n---\n",
  "\n---\n",
  "\n...\n",
  "<<: *a\n",
  "? [a]\n: b\n",
  "x: &a { b: *a }\n",
  "# comment \u202e\n",
  "\n\n\n",
  "- ",
  ": ",
  "[[[[[[[[[[[[[[[[[[[[[[[[[[[[[",
  "{a: {a: {a: {a: {a: {a: {a: {a: {a: {a: {a: {a: {a: {a: ",
  "|\n",
  ">-\n",
  "'",
  '"',
  "baymark: 2\n",
  "\ufeff",
];
