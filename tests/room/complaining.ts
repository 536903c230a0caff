import type { Complaint } from "../../src/findings/complaint.js";
import { complaintsOf } from "../../src/room/complaint.js";
import { readRoom } from "../../src/room/read.js";
import { resolveRoom } from "../../src/room/resolve.js";

/** Stands in a text where a complaint is expected; not part of any room. */
export const HERE = "▶";

export interface Expected {
  readonly text: string;
  readonly line: number;
  readonly column: number;
}

/** The text without its mark, and where the mark stood: line and column from 1, in characters. */
export function marked(text: string): Expected {
  const [before, ...after] = text.split(HERE);
  if (before === undefined || after.length !== 1) throw new Error(`one mark wanted in ${text}`);
  const lines = before.split("\n");
  return {
    text: before + after.join(""),
    line: lines.length,
    column: Array.from(lines.at(-1) ?? "").length + 1,
  };
}

/** Every complaint about a text, from reading or, where that has none, from resolving. */
export function complaintsAbout(
  text: string | Uint8Array,
  hasGlyph: (codePoint: number) => boolean = () => true,
): readonly Complaint[] {
  const read = readRoom(text, "test.yaml", { hasGlyph });
  if (!read.ok) return read.complaints;
  const resolved = resolveRoom(read.file);
  return resolved.ok ? [] : complaintsOf(resolved.problems, read.locate);
}

/** What a test compares. */
export const inShort = ({ code, line, column }: Complaint) => ({ code, line, column });
