import { InternalError } from "../findings/internal-error.js";

/** What stands in a file, as bytes or a text, or in pieces one after the other. */
export type Contents = Uint8Array | string | readonly Uint8Array[];

/** One file of a packet: its path below the packet's folder, parts joined by "/", and what stands in it. */
export interface PacketFile {
  readonly path: string;
  readonly bytes: Contents;
}

/** The file by which a folder is known as a packet of ours, and which lists the others. */
export const MARKER = "packet.json";

/** What some system reads as more than a letter of a name. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are among what is kept out
const NOT_IN_A_NAME = /[\u0000-\u001f\u007f<>:"/\\|?*]/u;
/** Names that one operating system keeps for its devices, with or without an ending (from memory). */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/iu;
/** Bytes that a name may have on the file systems in use (from memory). */
const LONGEST_NAME_BYTES = 255;

const isPlainName = (name: string): boolean =>
  name !== "" &&
  !NOT_IN_A_NAME.test(name) &&
  !/^\.|[. ]$/u.test(name) &&
  !DEVICE.test(name) &&
  Buffer.byteLength(name) <= LONGEST_NAME_BYTES;

/**
 * Throws an InternalError unless every path stays below the folder and can be written on every system, no two are one
 * where case does not count, and the marker is there and lists them all.
 */
export function refuseBadFiles(files: readonly PacketFile[]): void {
  const seen = new Set<string>();
  for (const { path } of files) {
    if (!path.split("/").every(isPlainName)) throw new InternalError(`a packet cannot hold ${path}`);
    const key = path.normalize("NFC").toLowerCase();
    if (seen.has(key)) throw new InternalError(`a packet cannot hold ${path} twice`);
    seen.add(key);
  }
  const marker = files.find(({ path }) => path === MARKER);
  const listed = marker === undefined ? null : listedIn(marker.bytes);
  const missing = files.find(({ path }) => path !== MARKER && !listed?.has(path));
  if (listed === null || missing !== undefined) {
    throw new InternalError(`${MARKER} must have the key baymark and list ${missing?.path ?? "the files"}`);
  }
}

/** Paths that a marker lists under `files`, as texts or as objects with a `path`; null where it is no marker of ours. */
export function listedIn(marker: Contents): ReadonlySet<string> | null {
  const content = parsed(textOf(marker));
  if (!isRecord(content) || !("baymark" in content) || !Array.isArray(content.files)) return null;
  const paths = content.files.map((file: unknown) => (isRecord(file) ? file.path : file));
  return new Set(paths.filter((path): path is string => typeof path === "string"));
}

function textOf(contents: Contents): string {
  if (typeof contents === "string") return contents;
  return new TextDecoder().decode(contents instanceof Uint8Array ? contents : Buffer.concat(contents));
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null;

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
