import {
  type Document,
  isCollection,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type YAMLMap,
  type YAMLSeq,
} from "yaml";
import { InternalError } from "../findings/internal-error.js";
import { keyText } from "./tree.js";

/** Keys and their texts, or further maps of such. */
export type Entry = readonly (readonly [string, string | Entry])[];

/** Text to put in at a place of the file. */
export interface Insertion {
  readonly at: number;
  readonly text: string;
}

/**
 * Entries at the end of one of the file's lists, in the way that the list is written; where there is no such list, a
 * new one at the end of the file. Throws `InternalError` where the key holds something else: it was read before.
 */
export function entriesAdded(
  body: string,
  document: Document,
  { key, entries }: { readonly key: string; readonly entries: readonly Entry[] },
): Insertion {
  const top = document.contents;
  if (!isMap(top)) throw new InternalError("a file that was read is no map");
  const hand: Hand = { body, newLine: NEW_LINE.exec(body)?.[0] ?? "\n", inQuotes: isInQuotes(top) };
  const list = top.items.find((pair) => keyText(pair) === key)?.value;
  if (list === undefined) return newList(top, hand, key, entries);
  if (!isSeq(list)) throw new InternalError(`${key} is no list`);
  return list.flow === true ? inBrackets(list, hand, entries) : onLines(list, hand, entries);
}

const NEW_LINE = /\r\n|\n|\r/u;

/** How the file is written. */
interface Hand {
  readonly body: string;
  readonly newLine: string;
  /** As JSON has it. */
  readonly inQuotes: boolean;
}

const isInQuotes = (top: YAMLMap): boolean => {
  const [first] = top.items;
  return isScalar(first?.key) && first.key.type === "QUOTE_DOUBLE";
};

/** After the last line of the last entry. */
function onLines(list: YAMLSeq, hand: Hand, entries: readonly Entry[]): Insertion {
  const [start] = rangeOf(list);
  const indent = lineBefore(hand.body, start);
  const lines = entries.map((entry) => `${hand.newLine}${indent}- ${written(entry, hand)}`);
  return { at: lineEndAfter(hand.body, list), text: lines.join("") };
}

/** Behind the last entry, each on a line of its own. */
function inBrackets(list: YAMLSeq, hand: Hand, entries: readonly Entry[]): Insertion {
  const last: unknown = list.items.at(-1);
  const [, end] = rangeOf(list);
  if (last === undefined) {
    const lines = entries.map((entry) => `${hand.newLine}  ${written(entry, hand)}`);
    return { at: end - 1, text: `${lines.join(",")}${hand.newLine}` };
  }
  const [from, to] = rangeOf(last);
  const before = lineBefore(hand.body, from);
  const indent = /^\s*$/u.test(before) ? before : "  ";
  const lines = entries.map((entry) => `,${hand.newLine}${indent}${written(entry, hand)}`);
  return { at: to, text: lines.join("") };
}

function newList(top: YAMLMap, hand: Hand, key: string, entries: readonly Entry[]): Insertion {
  const { body, newLine } = hand;
  const name = hand.inQuotes ? JSON.stringify(key) : key;
  if (top.flow === true) {
    const last = top.items.at(-1)?.value;
    const lines = entries.map((entry) => `${newLine}  ${written(entry, hand)}`);
    return { at: rangeOf(last)[1], text: `,${newLine}${name}: [${lines.join(",")}${newLine}]` };
  }
  const indent = lineBefore(body, rangeOf(top)[0]);
  const lines = entries.map((entry) => `${newLine}${indent}  - ${written(entry, hand)}`);
  return { at: lineEndAfter(body, top), text: `${newLine}${indent}${name}:${lines.join("")}` };
}

function rangeOf(node: unknown): readonly [number, number] {
  const range = isCollection(node) || isScalar(node) ? node.range : null;
  if (range === undefined || range === null) throw new InternalError("a part of the file stands nowhere");
  return [range[0], range[1]];
}

/** What stands on a line before a place. */
const lineBefore = (body: string, at: number): string => /[^\r\n]*$/u.exec(body.slice(0, at))?.[0] ?? "";

/** The end of the line that a block's last text is on. */
function lineEndAfter(body: string, block: Node): number {
  const end = body.slice(0, rangeOf(block)[1]).trimEnd().length;
  const rest = NEW_LINE.exec(body.slice(end));
  return rest === null ? body.length : end + rest.index;
}

function written(entry: Entry, hand: Hand): string {
  const pairs = entry.map(([key, value]) => {
    const text = typeof value === "string" ? scalar(value, hand) : written(value, hand);
    return `${hand.inQuotes ? JSON.stringify(key) : key}: ${text}`;
  });
  return `{ ${pairs.join(", ")} }`;
}

/** Bare where nothing in it has a meaning in YAML: quotes within a length have none behind a figure. */
const scalar = (text: string, { inQuotes }: Hand): string =>
  inQuotes || !BARE.test(text) || NOTHING.test(text) ? JSON.stringify(text) : text;

const BARE = /^[\p{L}\p{N}_](?:[\p{L}\p{N}_./'"+ -]*[\p{L}\p{N}_./'"+-])?$/u;
const NOTHING = /^(?:null|Null|NULL)$/u;
