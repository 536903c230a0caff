import type { YAMLError } from "yaml";
import type { YamlSlip } from "../findings/complaint.js";

/*
 * Slips that the parser of YAML has no name for: it finds fault with the place where it can go no further, and a person
 * looks for what was typed there or on the line above.
 */

export interface LineSlip {
  readonly offset: number;
  readonly slip: YamlSlip;
}

/** What stands wrong on the line of the error or above it; null where only the parser can tell. */
export function lineSlip(error: YAMLError, text: string): LineSlip | null {
  return mergeMark(text) ?? oddSpace(error, text) ?? markSlip(error, text) ?? dashSlip(error, text);
}

/** Lines that a program for revisions leaves where two people changed the same. */
function mergeMark(text: string): LineSlip | null {
  const offset = text.search(/^(?:<{7}|={7}|>{7})(?=[ \r\n]|$)/mu);
  return offset < 0 ? null : { offset, slip: "merge-mark" };
}

interface Line {
  readonly start: number;
  readonly text: string;
}

/** The line of an offset, and of those above it the nearest that says something. */
function linesAt(text: string, offset: number): readonly [line: Line, above: Line | null] {
  const lines = text.split("\n");
  const starts = startsOf(lines);
  const index = Math.max(
    0,
    starts.findLastIndex((start) => start <= offset),
  );
  const lineNumber = (at: number): Line => ({ start: starts[at] ?? 0, text: lines[at] ?? "" });
  const above = lines.slice(0, index).findLastIndex((line) => !/^\s*(?:#|$)/u.test(line));
  return [lineNumber(index), above < 0 ? null : lineNumber(above)];
}

function startsOf(lines: readonly string[]): readonly number[] {
  let next = 0;
  return lines.map(({ length }) => {
    const start = next;
    next += length + 1;
    return start;
  });
}

/** Characters that look like a space, or like none, and are none to YAML: text programs and web pages put them in. */
const BEFORE_ODD_SPACE = /^ *(?:- )?(?:[\w-]+:)? *(?=[\u00a0\u1680\u2000-\u200b\u202f\u205f\u3000\ufeff])/u;

function oddSpace({ pos: [offset] }: YAMLError, text: string): LineSlip | null {
  for (const line of linesAt(text, offset)) {
    const before = BEFORE_ODD_SPACE.exec(line?.text ?? "");
    if (line !== null && before !== null) return { offset: line.start + before[0].length, slip: "odd-space" };
  }
  return null;
}

/** Marks that part or hold together in other ways of writing. */
function markSlip({ code, pos: [offset] }: YAMLError, text: string): LineSlip | null {
  if (code !== "BLOCK_IN_FLOW") return null;
  if (text[offset] === "(") return { offset, slip: "round-bracket" };
  const before = /^[^,:;{}[\]\r\n]*(?=;)/u.exec(text.slice(offset));
  return before === null ? null : { offset: offset + before[0].length, slip: "semicolon" };
}

/** Entries of a list without their dash, or with it in another place. */
function dashSlip({ code, message, pos: [offset] }: YAMLError, text: string): LineSlip | null {
  const [line] = linesAt(text, offset);
  const first = line.start + line.text.search(/\S|$/u);
  if (/^ *-[^\s-]/u.test(line.text)) return { offset: first, slip: "dash" };
  // In the words of the `yaml` package, whose codes do not tell these apart.
  if (/^Sequence item without/u.test(message)) return { offset: first, slip: "dash" };
  if (/block-seq-ind on same line/u.test(message)) return { offset, slip: "dash" };
  const isEntry = code === "BLOCK_AS_IMPLICIT_KEY" && /^ *- /u.test(line.text);
  return isEntry ? { offset: first, slip: "dash-among-keys" } : null;
}
