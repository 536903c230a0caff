import { type Document, isMap, isScalar, isSeq, type Scalar } from "yaml";
import { InternalError } from "../findings/internal-error.js";
import { bytesOf } from "./decode.js";
import type { Path } from "./room.js";
import { type Entry, entriesAdded } from "./splice-list.js";
import { keyText } from "./tree.js";
import { parseYaml } from "./yaml.js";

/** A value to put in the place of a single text of the file: keys and their texts, as one map on a line. */
export interface Splice {
  readonly path: Path;
  readonly map: readonly (readonly [string, string])[];
}

/** Entries to add at the end of one of the file's lists. */
export interface Addition {
  readonly key: string;
  readonly entries: readonly Entry[];
}

/**
 * The file with these values in the place of what stood there, these entries added, and every other byte as it was.
 * Throws `InternalError` where the file cannot be read or holds no single text at a path: it was read before.
 */
export function spliced(
  bytes: Uint8Array,
  splices: readonly Splice[],
  additions: readonly Addition[] = [],
): Uint8Array {
  const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  const mark = text.startsWith(BYTE_ORDER_MARK) ? BYTE_ORDER_MARK : "";
  const body = text.slice(mark.length);
  const document = documentOf(body);
  const edits = splices.map((splice) => editFor(body, scalarAt(document, splice.path), splice));
  const added = additions
    .filter(({ entries }) => entries.length > 0)
    .map((addition) => entriesAdded(body, document, addition))
    .map(({ at, text: put }): Edit => ({ from: at, to: at, text: put }));
  return bytesOf(mark + withEdits(body, [...edits, ...added]));
}

const BYTE_ORDER_MARK = "\ufeff";

function documentOf(body: string): Document {
  // As it is read: a carriage return alone ends a line. Offsets stay what they are.
  const parsed = parseYaml(body.replace(/\r(?!\n)/gu, "\n"));
  if (!parsed.ok) throw new InternalError("a file that was read is no YAML");
  return parsed.document;
}

function scalarAt(document: Document, path: Path): Scalar {
  let node: unknown = document.contents;
  for (const step of path) {
    if (isSeq(node) && typeof step === "number") node = node.items[step];
    else if (isMap(node)) node = node.items.find((pair) => keyText(pair) === step)?.value;
  }
  if (!isScalar(node)) throw new InternalError(`no single text at ${path.join(".")}`);
  return node;
}

interface Edit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** A tag before the text goes with it; what follows it in its own range, as the end of a block's line, is left. */
function editFor(body: string, { range, type }: Scalar, { path, map }: Splice): Edit {
  if (range === undefined || range === null) throw new InternalError(`${path.join(".")} stands nowhere`);
  const [start, to] = range;
  const tag = /!\S*\s+$/u.exec(body.slice(0, start))?.[0] ?? "";
  const written = body.slice(start, to);
  const kept = written.length - written.trimEnd().length;
  return { from: start - tag.length, to: to - kept, text: mapText(map, type === "QUOTE_DOUBLE") };
}

/** Where the text stood in double quotes, as JSON has it, so does all of the map. */
function mapText(map: Splice["map"], inQuotes: boolean): string {
  const write = (text: string): string => (inQuotes ? JSON.stringify(text) : text);
  return `{ ${map.map(([key, text]) => `${write(key)}: ${write(text)}`).join(", ")} }`;
}

function withEdits(body: string, edits: readonly Edit[]): string {
  const lastFirst = [...edits].sort((a, b) => b.from - a.from);
  return lastFirst.reduce(
    (text, { from, to, text: put }) => text.slice(0, from) + put + text.slice(to),
    body,
  );
}
