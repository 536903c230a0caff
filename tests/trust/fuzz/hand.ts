/*
 * The same room in another person's hand: on lines or in brackets, with other quotes, indents and ends of lines, and
 * comments wherever they may stand.
 */
import fc from "fast-check";
import { isScalar, parseDocument } from "yaml";
import { far } from "./changes.js";
import { childrenOf, type Node } from "./tree.js";

/** Chooses one of so many ways, beginning with 0. */
type Choose = (ways: number) => number;

/** What is chosen by these numbers, one after another, from the first again when they are all taken. */
function choosing(numbers: readonly number[]): Choose {
  let taken = 0;
  return (ways) => {
    const number = numbers[taken % Math.max(1, numbers.length)] ?? 0;
    taken += 1;
    return number % ways;
  };
}

interface Hand {
  readonly choose: Choose;
  /** One place in so many carries a comment; none does where it is 0. */
  readonly comments: number;
  readonly indent: number;
  readonly dashesIndented: boolean;
}

const HEADS = ["", "", "\ufeff", "# room\n", "\n\n", "---\n", "%YAML 1.2\n---\n", "\ufeff# ⌀\n--- # room\n"];
const TAILS = ["\n", "\n", "", "\n\n\n", "\n# end", "\n  # end\n", "\n...\n", "   \n"];
const ENDS = ["\n", "\n", "\n", "\r\n", "\r"];
const COMMENTS = ["why", "⌀ ñ 🙂", "", "at: best", "speakers:", "- { id: X }", "'open", "]} ,", "\tx\\"];

/** How a room is written; prime, so that the numbers do not fall on the same choices each time. */
export const hand: fc.Arbitrary<readonly number[]> = fc.array(far, { minLength: 61, maxLength: 61 });

/** The tree as a text that says the same. */
export function inAnotherHand(room: Node, numbers: readonly number[]): string {
  const choose = choosing(numbers);
  if (choose(8) === 0) return asJson(room, choose);
  const hand: Hand = {
    choose,
    comments: [0, 5, 20][choose(3)] ?? 0,
    indent: 1 + choose(4),
    dashesIndented: choose(2) === 0,
  };
  const [head, tail, end] = [oneOf(HEADS, choose), oneOf(TAILS, choose), oneOf(ENDS, choose)];
  const inBrackets = choose(10) === 0 || childrenOf(room).length === 0;
  const body = inBrackets ? bracketed(room, hand, 0) : onLines(room, hand, 0);
  return `${head}${body}${tail}`.replaceAll("\n", end);
}

const oneOf = (texts: readonly string[], choose: Choose): string => texts[choose(texts.length)] ?? "";

const spaces = (count: number): string => " ".repeat(count);

const isComment = ({ choose, comments }: Hand): boolean => comments > 0 && choose(comments) === 0;

const comment = ({ choose }: Hand): string => `#${spaces(choose(2))}${oneOf(COMMENTS, choose)}`;

/** A comment behind what stands on a line. */
const behind = (hand: Hand): string =>
  isComment(hand) ? `${spaces(1 + hand.choose(3))}${comment(hand)}` : "";

/** Lines of their own before an entry. */
function above(hand: Hand, indent: number): string {
  if (!isComment(hand)) return "";
  return hand.choose(3) === 0 ? "\n" : `${spaces(hand.choose(2) * indent)}${comment(hand)}\n`;
}

/** A collection that holds something, each entry on a line of its own; the first line without its indent's comment. */
function onLines(node: Node, hand: Hand, indent: number): string {
  const lines =
    node.kind === "list"
      ? node.items.map((item) => dashed(item, hand, indent))
      : node.kind === "map"
        ? node.entries.map(({ key, value }) => `${keyText(key, hand)}:${valueBehind(value, hand, indent)}`)
        : [node.written];
  return lines
    .map((line, index) => `${index === 0 ? "" : above(hand, indent)}${spaces(indent)}${line}`)
    .join("\n");
}

const isOnLines = (node: Node, { choose }: Hand): boolean => childrenOf(node).length > 0 && choose(3) > 0;

function dashed(item: Node, hand: Hand, indent: number): string {
  if (!isOnLines(item, hand)) return `- ${single(item, hand, indent)}`;
  const gap = 1 + hand.choose(3);
  const inner = indent + 1 + gap;
  return `-${spaces(gap)}${onLines(item, hand, inner).slice(inner)}`;
}

function valueBehind(value: Node, hand: Hand, indent: number): string {
  if (!isOnLines(value, hand)) return `${spaces(1 + hand.choose(2))}${single(value, hand, indent)}`;
  const inner = value.kind === "list" && !hand.dashesIndented ? indent : indent + hand.indent;
  return `${behind(hand)}\n${onLines(value, hand, inner)}`;
}

/** A value on its key's line, or on one of its own below. */
function single(value: Node, hand: Hand, indent: number): string {
  if (value.kind !== "scalar") return `${bracketed(value, hand, indent + hand.indent)}${behind(hand)}`;
  const below = `\n${spaces(indent + hand.indent)}`;
  const [plain, quoted] = [value.written, inQuotes(value.written, hand)];
  const way = hand.choose(24);
  if (way === 0 && plain !== "") return `${behind(hand)}${below}${plain}${behind(hand)}`;
  if (way === 1) return `>-${behind(hand)}${below}${saidBy(plain)}`;
  if (way === 2) return `|-${below}${saidBy(plain)}`;
  return `${way < 6 ? quoted : plain}${spaces(hand.choose(2))}${behind(hand)}`;
}

function bracketed(node: Node, hand: Hand, indent: number): string {
  if (node.kind === "scalar") {
    const isPlain = !/^[^"'].*[,[\]{}]/u.test(node.written) && hand.choose(6) > 0;
    return isPlain ? node.written : inQuotes(node.written, hand);
  }
  const [open, close] = node.kind === "list" ? ["[", "]"] : ["{", "}"];
  const entries =
    node.kind === "list"
      ? node.items.map((item) => bracketed(item, hand, indent + 1))
      : node.entries.map(({ key, value }) => `${keyText(key, hand)}: ${bracketed(value, hand, indent + 1)}`);
  if (entries.length === 0) return `${open}${close}`;
  const way = hand.choose(6);
  const [least, most] = way === 0 ? ["", ""] : [" ", " "];
  if (way > 1)
    return `${open}${least}${entries.join(`,${most}`)}${hand.choose(5) === 0 ? "," : ""}${least}${close}`;
  const line = `\n${spaces(indent + 2)}`;
  const lines = entries.map((entry, index) => {
    const comma = index < entries.length - 1 || hand.choose(2) === 0 ? "," : "";
    return `${line}${entry}${comma}${behind(hand)}`;
  });
  return `${open}${behind(hand)}${lines.join("")}\n${spaces(indent + 1)}${close}`;
}

const keyText = (key: string, { choose }: Hand): string =>
  choose(12) === 0 && /^[\w-]+$/u.test(key) ? JSON.stringify(key) : key;

/** What a scalar says, without its quotes. */
function saidBy(written: string): string {
  const { contents } = parseDocument(written);
  return isScalar(contents) && typeof contents.value === "string" ? contents.value : written;
}

function inQuotes(written: string, { choose }: Hand): string {
  const said = saidBy(written);
  return choose(2) === 0 ? JSON.stringify(said) : `'${said.replaceAll("'", "''")}'`;
}

function asJson(node: Node, choose: Choose): string {
  const plain = (each: Node): unknown => {
    if (each.kind === "scalar") return saidBy(each.written);
    if (each.kind === "list") return each.items.map(plain);
    return Object.fromEntries(each.entries.map(({ key, value }) => [key, plain(value)]));
  };
  return JSON.stringify(plain(node), null, choose(4)) + oneOf(["", "\n"], choose);
}
