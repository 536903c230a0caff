/*
 * What must hold of every answer and of every file that was written, whatever was in the room file.
 */
import { lstatSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { SaxesParser } from "saxes";
import { cellsOf } from "../../sheets/read-csv.js";

/** Throws with what was found, so that the input that caused it is shown beside it. */
function refuse(what: string, shown: string): never {
  throw new Error(`${what}:\n${shown.slice(0, 4000)}`);
}

/** Words of a machine that no person may be told, unless they stand in what the person typed. */
const MACHINE_WORDS = [
  /^ {4}at /mu,
  /\[object /u,
  // But for a finding's code.
  /(?<!\baim-)\bundefined\b/u,
  /\bNaN\b/u,
  /\bInfinity\b/u,
  /\bTypeError\b/u,
  /\bRangeError\b/u,
];

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to be kept out
const UNSHOWN = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\p{Bidi_Control}\p{Cs}]/u;

interface Told {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** An exit code of the three that a person may cause, and words that a person may read. */
export function holdsOfWords({ code, out, err }: Told, source: string): void {
  if (![0, 1, 2].includes(code)) refuse(`exit ${code}`, err);
  const said = `${out}${err}`;
  const machine = MACHINE_WORDS.find((word) => word.test(said) && !word.test(source));
  if (machine !== undefined) refuse(`the words ${machine}`, said);
  const unshown = UNSHOWN.exec(said.replaceAll("\t", ""));
  if (unshown !== null) refuse(`the character U+${unshown[0].codePointAt(0)?.toString(16)}`, said);
}

/** A message on a line of its own, with a place; under it the line of the file, or what to do. */
const PLACED = /^([\w-]+\.yaml):(\d+):(\d+) {2}(?:error|warning|note) {2}\S/u;

/** The file's own line, the mark under it, what to do, and the last lines with the count. */
const NO_MESSAGE = /^ *\d+ \| |^ +\^$|^ {4}\S|^`|^[\w-]+\.yaml: \d/u;

/** Every complaint and finding says a line and column that the file has; of several files, each by its name. */
export function holdsOfPlaces(
  { code, out, err }: Told,
  sources: string | Readonly<Record<string, string>>,
): void {
  const texts = typeof sources === "string" ? { "room.yaml": sources } : sources;
  const lines = new Map(Object.entries(texts).map(([name, text]) => [name, text.split(/\r\n|\n|\r/u)]));
  const said = (code === 2 ? err : out).split("\n").filter((line) => line !== "");
  const messages = said.filter((line) => !NO_MESSAGE.test(line));
  if (code === 2 && messages.length === 0) refuse("nothing said", out);
  for (const message of messages) {
    const [, file = "", line, column] = PLACED.exec(message) ?? [];
    if (line === undefined) refuse("a message without a place", message);
    const text = lines.get(file)?.[Number(line) - 1];
    if (text === undefined || Number(column) < 1 || Number(column) > [...text].length + 1)
      refuse("no such place", message);
  }
}

/** One object on one line. */
export function holdsOfJson({ out }: Told): void {
  const lines = out.trimEnd().split("\n");
  if (lines.length !== 1) refuse(`${lines.length} lines`, out);
  JSON.parse(out);
}

const PACKET_FILE =
  /^(?:(?:packet|drywall|installer|labels)\.pdf|svg\/[\w-]+\.svg|csv\/[a-z]+\.csv|packet\.json)$/u;

/** A packet that is whole, alone in its folder, and whose files carry nothing but drawings and figures. */
export function holdsOfPacket(folder: string, name: string): number {
  const beside = readdirSync(folder).filter((each) => each !== name && each !== "room.yaml");
  if (beside.length > 0) refuse("more than the packet was written", beside.join("\n"));
  const packet = join(folder, name);
  const entries = readdirSync(packet, { recursive: true, encoding: "utf8" });
  const paths = entries.filter((path) => !lstatSync(join(packet, path)).isDirectory());
  for (const path of paths) {
    if (!PACKET_FILE.test(path) || !lstatSync(join(packet, path)).isFile()) refuse("an odd file", path);
    holdsOfFile(path, readFileSync(join(packet, path)));
  }
  const listed: { files: readonly string[] } = JSON.parse(readFileSync(join(packet, "packet.json"), "utf8"));
  if ([...listed.files, "packet.json"].sort().join() !== paths.sort().join())
    refuse("another list", paths.join("\n"));
  return paths.length;
}

function holdsOfFile(path: string, bytes: Buffer): void {
  if (path.endsWith(".svg")) holdsOfSvg(bytes.toString());
  if (path.endsWith(".csv")) holdsOfCsv(bytes.toString());
  if (
    path.endsWith(".pdf") &&
    !(bytes.subarray(0, 5).toString() === "%PDF-" && /%%EOF\s*$/u.test(bytes.subarray(-10).toString()))
  ) {
    refuse("no whole PDF", path);
  }
}

const SVG_NAMES = new Set("svg title style g line path circle rect text clipPath".split(" "));

/** Well-formed by a parser that is not ours, with elements that draw and no way out of the file. */
export function holdsOfSvg(svg: string): void {
  const parser = new SaxesParser();
  parser.on("error", (error) => refuse("no XML", `${error.message}\n${svg.slice(0, 500)}`));
  parser.on("opentag", ({ name, attributes }) => {
    if (!SVG_NAMES.has(name)) refuse("an element that draws nothing", name);
    for (const [attribute, value] of Object.entries(attributes)) holdsOfAttribute(attribute, value);
  });
  parser.on("text", (text) => {
    if (/@import|url\((?!data:font\/)/iu.test(text) && /@font-face/u.test(text))
      refuse("a style from elsewhere", text);
  });
  parser.write(svg).close();
}

/** Names that SVG gives to addresses and to what runs on an event. */
function holdsOfAttribute(name: string, value: string): void {
  if (/^on|href$|^style$|^src$/iu.test(name)) refuse("an attribute that could act", `${name}="${value}"`);
  if (
    /^clip-path$/u.test(name)
      ? !/^url\(#window-\d+\)$/u.test(value)
      : name !== "data-speaker" && /url\(|javascript:/iu.test(value)
  ) {
    refuse("an address", `${name}="${value}"`);
  }
}

/** What spreadsheets take for a formula (OWASP, "CSV Injection"); plain numbers may begin with their sign. */
export function holdsOfCsv(csv: string): void {
  const formula = cellsOf(csv)
    .flat()
    .find((cell) => /^[=+\-@\t\r\uff1d\uff0b\uff0d\uff20]/u.test(cell) && !/^-?\d+(?:\.\d+)?$/u.test(cell));
  if (formula !== undefined) refuse("a formula", formula);
}
