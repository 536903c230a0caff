import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { InternalError } from "../findings/internal-error.js";

/** Saves a quarter of the time of the usual level 6 and costs a fortieth in size (measured on pages of ours). */
const LEVEL = 4;

/** A content stream deflated; it holds nothing but figures and glyphs, one byte for each of its characters. */
export const deflated = (content: string): Uint8Array => deflate(Buffer.from(content, "latin1"), LEVEL);

/** Where the build puts zlib: sources and bundle both lie two folders deep, so that one path serves both. */
export const ZLIB_FILE: string = fileURLToPath(new URL("../../bin/built/zlib.wasm", import.meta.url));

/** What the compiled zlib exports, as far as it is called here; memory is given as its offset. */
interface Zlib {
  readonly memory: { readonly buffer: ArrayBuffer };
  readonly malloc: (bytes: number) => number;
  readonly deflate_new: () => number;
  readonly deflate_init: (stream: number, level: number) => number;
  /** zlib's code in the highest byte and how many bytes were written in the others. */
  readonly deflate_process: (
    ...[stream, from, length, to, room, flush]: readonly [number, number, number, number, number, number]
  ) => number;
  /** How many bytes the last call took. */
  readonly deflate_last_consumed: (stream: number) => number;
  readonly deflate_end: (stream: number) => number;
}

interface Opened {
  readonly zlib: Zlib;
  /** Memory of zlib's that bytes are handed over in, `ROOM` at a time. */
  readonly from: number;
  readonly to: number;
}

const ROOM = 65_536;

let opened: Opened | null = null;

/** zlib, compiled by V8 when the first page asks for it. */
function open(): Opened {
  if (opened !== null) return opened;
  const module = new WebAssembly.Module(zlibFile());
  // The build took the file from a pinned package; the tests hold it to what another deflater makes.
  const zlib = new WebAssembly.Instance(module, {}).exports as Zlib;
  opened = { zlib, from: zlib.malloc(ROOM), to: zlib.malloc(ROOM) };
  return opened;
}

function zlibFile(): Buffer {
  try {
    return readFileSync(ZLIB_FILE);
  } catch (cause) {
    throw new InternalError(`${ZLIB_FILE} is missing: run \`npm run build\``, { cause });
  }
}

// Of zlib's manual: flush as needed or finish; all is well, all is well and finished.
const [NO_FLUSH, FINISH, OK, STREAM_END] = [0, 4, 0, 1];

/**
 * Bytes in the format of zlib, which PDF calls FlateDecode. zlib itself as WebAssembly: the same bytes on every machine
 * and with every version of Node, whose own zlib is another from version to version; and no code that has to run for
 * long before it is fast, as a deflater in JavaScript has to (the first hundred pages: 57 against 150 ms).
 */
export function deflate(bytes: Uint8Array, level: number): Uint8Array {
  const { zlib, from, to } = open();
  const stream = zlib.deflate_new();
  refuse(zlib.deflate_init(stream, level));
  const pieces: Uint8Array[] = [];
  let taken = 0;
  for (let code = OK; code !== STREAM_END; ) {
    const piece = bytes.subarray(taken, taken + ROOM);
    new Uint8Array(zlib.memory.buffer).set(piece, from);
    const flush = taken + piece.length === bytes.length ? FINISH : NO_FLUSH;
    const told = zlib.deflate_process(stream, from, piece.length, to, ROOM, flush);
    code = told >>> 24;
    refuse(code);
    taken += zlib.deflate_last_consumed(stream);
    pieces.push(new Uint8Array(zlib.memory.buffer.slice(to, to + (told & 0xff_ffff))));
  }
  zlib.deflate_end(stream);
  const [only] = pieces;
  return pieces.length === 1 && only !== undefined ? only : Buffer.concat(pieces);
}

/** What zlib refuses is only ever ours: it is given memory of its own and a level that it has. */
function refuse(code: number): void {
  if (code !== OK && code !== STREAM_END) throw new InternalError(`zlib refuses with ${code}`);
}
