import { Composer, type Document, isCollection, isScalar, Lexer, Parser, visit, type YAMLError } from "yaml";
import type { Problem, YamlSlip } from "../findings/complaint.js";
import { lineSlip } from "./line-slips.js";
import { MOST_CHARACTERS as MOST_PRINTED } from "./schema/texts.js";
import { shown } from "./shown.js";
import { offsetOf, type PlacedProblem } from "./tree.js";

/** Deeper than any room file goes. The composer calls itself for each level, and a deep enough one ends the process. */
const MOST_LEVELS = 24;
/**
 * Words, marks and spaces that a room file may consist of; the example has 2,000. A file of a megabyte can hold so
 * many that reading them takes minutes. Our own choice.
 */
const MOST_PIECES = 100_000;
/** Of one value between quotes: each of its slips is found and told apart. A quote left open may hold a whole room. */
const MOST_CHARACTERS = 100_000;
/** Later ones usually follow from the first. */
const MOST_SLIPS = 5;
const VERSION = "1.2";

type ParsedDocument = Document.Parsed;
type Token = Parameters<Composer["next"]>[0];

export type YamlResult =
  | { readonly ok: true; readonly document: ParsedDocument }
  | { readonly ok: false; readonly problems: readonly PlacedProblem[] };

/** The one document of the text, read by YAML 1.2's core schema. */
export function parseYaml(text: string): YamlResult {
  const { tokens, tooMuch } = tokensOf(text);
  if (tooMuch !== null) return { ok: false, problems: [tooMuch] };
  const [document, second] = documentsOf(tokens, text);
  const problems = document === undefined ? [] : slipsOf(document, text);
  if (problems.length === 0 && second !== undefined) problems.push(severalAt(second.range[0]));
  if (problems.length === 0 && isEmpty(document)) problems.push(emptyFile());
  return document === undefined || problems.length > 0 ? { ok: false, problems } : { ok: true, document };
}

function tokensOf(text: string): {
  readonly tokens: readonly Token[];
  readonly tooMuch: PlacedProblem | null;
} {
  const parser = new Parser();
  const tokens: Token[] = [];
  let pieces = 0;
  for (const lexeme of new Lexer().lex(text)) {
    const offset = parser.offset;
    // Seldom any: to spread them takes longer than to read the lexeme.
    for (const token of parser.next(lexeme)) tokens.push(token);
    pieces += 1;
    if (parser.stack.length > MOST_LEVELS) return { tokens: [], tooMuch: tooDeep(offset) };
    if (/^["']/u.test(lexeme) && lexeme.length > MOST_CHARACTERS)
      return { tokens: [], tooMuch: longText(offset, lexeme.length) };
    if (pieces > MOST_PIECES) return { tokens: [], tooMuch: tooLong(offset) };
  }
  return { tokens: [...tokens, ...parser.end()], tooMuch: null };
}

function documentsOf(tokens: readonly Token[], text: string): readonly ParsedDocument[] {
  // Repeated keys are found with a set (tree.ts): the composer compares each key with every other one.
  const options = { version: VERSION, schema: "core", uniqueKeys: false, merge: false } as const;
  return [...new Composer(options).compose(tokens, true, text.length)].filter(isParsed);
}

const isParsed = (document: Document): document is ParsedDocument => document.range !== undefined;

const isEmpty = (document: ParsedDocument | undefined): boolean =>
  document?.contents === undefined || document.contents === null;

const placed = (offset: number, problem: Problem): PlacedProblem => ({ offset, problem });

const tooDeep = (offset: number): PlacedProblem =>
  placed(offset, { code: "nested-too-deep", path: [], at: "value", figures: { most: MOST_LEVELS } });

const longText = (offset: number, count: number): PlacedProblem =>
  placed(offset, {
    code: "text-too-long",
    path: [],
    at: "value",
    figures: { count, most: MOST_PRINTED.reason },
  });

const tooLong = (offset: number): PlacedProblem =>
  placed(offset, { code: "too-much-written", path: [], at: "value", figures: { most: MOST_PIECES } });

const severalAt = (offset: number): PlacedProblem =>
  placed(offset, { code: "several-documents", path: [], at: "value", figures: {} });

const emptyFile = (): PlacedProblem => placed(0, { code: "empty-file", path: [], at: "value", figures: {} });

/** What the parser found wrong; its warnings too, which are unknown tags and directives. */
function slipsOf(document: ParsedDocument, text: string): PlacedProblem[] {
  const version = document.directives.yaml.version;
  if (version !== VERSION) return [directiveAt(text.indexOf("%YAML"), text)];
  const slips = document.errors
    .slice(0, MOST_SLIPS)
    .map(
      (error) => ownSlip(error, text) ?? openSlip(error, document) ?? colonSlip(error, text) ?? slipOf(error),
    );
  const warnings = document.warnings.map((warning) => warningOf(warning, text));
  return onePerPlace([...slips, ...warnings]);
}

function ownSlip(error: YAMLError, text: string): PlacedProblem | null {
  const found = lineSlip(error, text);
  return found === null ? null : slipAt(found.offset, found.slip);
}

/** At one place only what was said first; nothing after a slip that puts all the lines after it out of order. */
function onePerPlace(slips: readonly PlacedProblem[]): PlacedProblem[] {
  const first = slips.findIndex((slip) => UPSETTING.has(slipIn(slip)));
  // A bracket also seems open where something inside it could not be read.
  const isFollowing = first > 0 && slipIn(slips[first]) === "open-bracket";
  const end = isFollowing ? first : first + 1;
  const own = first === -1 ? slips : slips.slice(0, end);
  return [...new Map([...own].reverse().map((slip) => [slip.offset, slip])).values()];
}

const slipIn = (slip: PlacedProblem | undefined): YamlSlip =>
  slip?.problem.code === "not-yaml" ? slip.problem.figures.slip : "other";

const UPSETTING: ReadonlySet<YamlSlip> = new Set([
  ...(["open-quote", "open-bracket", "tab", "indent", "no-colon"] as const),
  ...(["merge-mark", "odd-space", "round-bracket", "semicolon", "dash", "dash-among-keys"] as const),
]);

const slipAt = (offset: number, slip: YamlSlip): PlacedProblem =>
  placed(offset, { code: "not-yaml", path: [], at: "value", figures: { slip } });

const slipOf = ({ code, pos: [offset] }: YAMLError): PlacedProblem =>
  slipAt(offset, SLIPS.get(code) ?? "other");

const SLIPS: ReadonlyMap<YAMLError["code"], YamlSlip> = new Map([
  ["TAB_AS_INDENT", "tab"],
  ["MISSING_CHAR", "missing-mark"],
  ["BAD_INDENT", "indent"],
  ["BAD_SCALAR_START", "start"],
  ["BLOCK_IN_FLOW", "in-brackets"],
  ["BLOCK_AS_IMPLICIT_KEY", "colon"],
  ["MULTILINE_IMPLICIT_KEY", "no-colon"],
  ["BAD_DQ_ESCAPE", "escape"],
  ["UNEXPECTED_TOKEN", "comma"],
]);

/**
 * Where a key lacks its colon, or the space after it, the line is no key, and the parser finds fault with the next one's
 * place.
 */
function colonSlip({ code, pos: [offset] }: YAMLError, text: string): PlacedProblem | null {
  if (code !== "BAD_INDENT") return null;
  const above = text.slice(0, Math.max(0, text.lastIndexOf("\n", offset))).split("\n");
  const index = above.findLastIndex((line) => !/^\s*(?:#|$)/u.test(line));
  const line = above[index] ?? "";
  if (index === -1 || HAS_KEY.test(line)) return null;
  const start = above.slice(0, index).reduce((sum, { length }) => sum + length + 1, 0);
  return slipAt(start + line.search(/\S/u), "no-colon");
}

/** A key with its colon, or an entry of a list. */
const HAS_KEY = /:(?:\s|$)|^\s*-(?:\s|$)/u;

/** The parser says where it gave up, lines further; a person looks for the mark that was never closed. */
function openSlip({ message, pos: [gaveUpAt] }: YAMLError, document: Document): PlacedProblem | null {
  const slip = OPEN.find(([pattern]) => pattern.test(message))?.[1];
  if (slip === undefined) return null;
  let last = gaveUpAt;
  visit(document, (_key, node) => {
    const opens = slip === "open-quote" ? isQuoted(node) : isCollection(node) && node.flow === true;
    const from = opens ? offsetOf(node) : gaveUpAt;
    if (from < gaveUpAt) last = from;
  });
  return slipAt(last, slip);
}

/** In the words of the `yaml` package, whose codes do not tell these apart. */
const OPEN: readonly (readonly [RegExp, YamlSlip])[] = [
  [/^Missing closing/u, "open-quote"],
  [/end with a? ?[\]}]/u, "open-bracket"],
];

const isQuoted = (node: unknown): boolean =>
  isScalar(node) && (node.type === "QUOTE_DOUBLE" || node.type === "QUOTE_SINGLE");

function warningOf({ code, pos: [from, to] }: YAMLError, text: string): PlacedProblem {
  if (code !== "TAG_RESOLVE_FAILED") return directiveAt(from, text);
  const figures = { written: shown(text.slice(from, to)) };
  return placed(from, { code: "yaml-tag", path: [], at: "value", figures });
}

function directiveAt(offset: number, text: string): PlacedProblem {
  const written = shown(text.slice(offset).split(/\r?\n/u, 1)[0] ?? "");
  return placed(offset, { code: "yaml-directive", path: [], at: "value", figures: { written } });
}
