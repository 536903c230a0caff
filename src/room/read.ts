import type { Document } from "yaml";
import type { Complaint, Problem } from "../findings/complaint.js";
import type { HasGlyph } from "./characters.js";
import { inOrder, type Locate, placedBy } from "./complaint.js";
import { bytesOf, decode, fingerprintOf } from "./decode.js";
import { kindOf, problemsOf } from "./issues.js";
import { ownProblems } from "./own-problems.js";
import { offsetsIn, positionsIn } from "./position.js";
import { problemsAcross } from "./references.js";
import type { Path } from "./room.js";
import { type RoomFile, roomFileSchema } from "./schema.js";
import { type PlacedProblem, type Tree, treeOf } from "./tree.js";
import { parseYaml } from "./yaml.js";

export interface ReadOptions {
  /** True when the sheets' typeface can draw the character. */
  readonly hasGlyph: HasGlyph;
}

export type ReadResult =
  | {
      readonly ok: true;
      readonly fileName: string;
      readonly file: RoomFile;
      readonly locate: Locate;
      /** SHA-256 of the bytes, hex. */
      readonly fingerprint: string;
    }
  | {
      readonly ok: false;
      readonly fileName: string;
      readonly complaints: readonly Complaint[];
      readonly fingerprint: string;
    };

/** A room file as data, or every complaint about it. Never throws for what a file may hold. */
export function readRoom(source: Uint8Array | string, fileName: string, options: ReadOptions): ReadResult {
  const bytes = bytesOf(source);
  const read = readBytes(bytes, options);
  let found: string | null = null;
  return {
    ...read,
    fileName,
    // `check` tells none: found when first asked for.
    get fingerprint() {
      found ??= fingerprintOf(bytes);
      return found;
    },
  };
}

type Read =
  | { readonly ok: true; readonly file: RoomFile; readonly locate: Locate }
  | { readonly ok: false; readonly complaints: readonly Complaint[] };

function readBytes(bytes: Uint8Array, options: ReadOptions): Read {
  const decoded = decode(bytes);
  if (!decoded.ok) return { ok: false, complaints: [{ ...decoded.problem, ...decoded.position }] };
  return readText(decoded.text, options);
}

function readText(text: string, options: ReadOptions): Read {
  const positionOf = positionsIn(text);
  const place = ({ problem, offset }: PlacedProblem): Complaint => ({ ...problem, ...positionOf(offset) });
  const parsed = parseYaml(text);
  if (!parsed.ok) return { ok: false, complaints: inOrder(parsed.problems.map(place)) };
  const { tree, problems } = treeOf(parsed.document, (offset) => positionOf(offset).line);
  const locate = locator(parsed.document, positionOf);
  const checked = checkTree(tree, locate, options);
  const already = problems.map(({ problem }) => problem);
  const own = ownProblems(checked.problems, already);
  const complaints = inOrder([...problems.map(place), ...own.map((problem) => placedBy(locate, problem))]);
  if (checked.file === null || complaints.length > 0) return { ok: false, complaints };
  return { ok: true, file: checked.file, locate };
}

function locator(document: Document, positionOf: ReturnType<typeof positionsIn>): Locate {
  const offsetAt = offsetsIn(document);
  return (path: Path, at = "value") => positionOf(offsetAt(path, at));
}

function checkTree(
  tree: Tree,
  locate: Locate,
  { hasGlyph }: ReadOptions,
): { readonly file: RoomFile | null; readonly problems: readonly Problem[] } {
  const wrong = wrongWhole(tree);
  if (wrong !== null) return { file: null, problems: [wrong] };
  // A file is read once: what zod would compile for a schema that is used often costs more than it saves.
  const parsed = schemaFor(hasGlyph).safeParse(tree, { jitless: true });
  const shape = parsed.success ? [] : problemsOf(parsed.error.issues, tree);
  // Where a list is longer than any room's, whatever its names stand for is of no use to anybody.
  const isEndless = shape.some(({ code }) => code === "too-many");
  const problems = isEndless ? shape : [...shape, ...problemsAcross(tree, locate)];
  return { file: parsed.success ? parsed.data : null, problems };
}

/** Of several rooms in one run all are read by one schema: making it takes longer than reading a room by it. */
const schemas = new WeakMap<HasGlyph, ReturnType<typeof roomFileSchema>>();

function schemaFor(hasGlyph: HasGlyph): ReturnType<typeof roomFileSchema> {
  const schema = schemas.get(hasGlyph) ?? roomFileSchema(hasGlyph);
  schemas.set(hasGlyph, schema);
  return schema;
}

/** What is wrong with a file that holds no keys at all. */
function wrongWhole(tree: Tree): Problem | null {
  const found = kindOf(tree);
  if (found === "map") return null;
  if (found === "nothing") return { code: "empty-file", path: [], at: "value", figures: {} };
  return { code: "not-a-room", path: [], at: "value", figures: { found } };
}
