import { isUtf8 } from "node:buffer";
import { createRequire } from "node:module";
import type { Problem } from "../findings/complaint.js";
import type { Position } from "./position.js";

/** What takes longer to load than a room to read, and is not always asked for. */
const load = createRequire(import.meta.url);

/** Our own choice: more than a thousand times the example. */
export const MOST_BYTES = 1_000_000;

export type DecodeResult =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problem: Problem; readonly position: Position };

/** The bytes of a text or of a file. */
export const bytesOf = (source: Uint8Array | string): Uint8Array =>
  typeof source === "string" ? new TextEncoder().encode(source) : source;

/** SHA-256 of the bytes, hex. */
export function fingerprintOf(bytes: Uint8Array): string {
  const { createHash }: typeof import("node:crypto") = load("node:crypto");
  return createHash("sha256").update(bytes).digest("hex");
}

/** The text of a file in UTF-8, a byte order mark taken off; a carriage return alone ends a line, as in YAML. */
export function decode(bytes: Uint8Array): DecodeResult {
  if (bytes.length > MOST_BYTES) {
    const figures = { bytes: bytes.length, mostBytes: MOST_BYTES };
    return refuse({ code: "file-too-large", path: [], at: "value", figures }, { line: 1, column: 1 });
  }
  const text = isWide(bytes) ? null : inUtf8(bytes);
  if (text !== null) return { ok: true, text: text.replace(/\r(?!\n)/gu, "\n") };
  const position = isWide(bytes) ? { line: 1, column: 1 } : firstBadByte(bytes);
  return refuse({ code: "not-utf-8", path: [], at: "value", figures: {} }, position);
}

const refuse = (problem: Problem, position: Position): DecodeResult => ({ ok: false, problem, position });

/** Characters of two bytes or four, which a room file begins with one of, and half of which are nought. */
const isWide = ([first, second]: Uint8Array): boolean => first === 0 || second === 0;

function inUtf8(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}

const LINE_FEED = 0x0a;
const CARRIAGE_RETURN = 0x0d;
const STAND_IN = "\ufffd";

/** Place of the first byte that is not UTF-8: lines are cut at their ends, which no other character contains. */
function firstBadByte(bytes: Uint8Array): Position {
  const starts = lineStarts(bytes);
  const endOf = (line: number): number => starts[line + 1] ?? bytes.length;
  let [line, after] = [0, starts.length - 1];
  while (line < after) {
    const middle = Math.floor((line + after) / 2);
    if (isUtf8(bytes.subarray(0, endOf(middle)))) line = middle + 1;
    else after = middle;
  }
  return { line: line + 1, column: columnOfBadByte(bytes.subarray(starts[line], endOf(line))) };
}

/** Offsets at which lines begin: after a line feed, or after a carriage return alone. */
function lineStarts(bytes: Uint8Array): readonly number[] {
  const starts = [0];
  bytes.forEach((byte, index) => {
    const isAlone = byte === CARRIAGE_RETURN && bytes[index + 1] !== LINE_FEED;
    if (byte === LINE_FEED || isAlone) starts.push(index + 1);
  });
  return starts;
}

/** A stand-in that the line itself holds re-encodes to its own three bytes; the first that does not is the bad one. */
function columnOfBadByte(line: Uint8Array): number {
  const characters = [...new TextDecoder("utf-8", { ignoreBOM: true }).decode(line)];
  const encoder = new TextEncoder();
  let bytesBefore = 0;
  for (const [index, character] of characters.entries()) {
    const bytes = encoder.encode(character);
    const asWritten = bytes.every((byte, at) => line[bytesBefore + at] === byte);
    if (character === STAND_IN && !asWritten) return index + 1;
    bytesBefore += bytes.length;
  }
  return 1;
}
