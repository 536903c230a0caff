import { copyFile, mkdir, rename } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { ZLIB_FILE } from "../output/deflate.js";

const { resolve } = createRequire(import.meta.url);
/** Carries zlib as WebAssembly for its own use; of it the program takes that file alone. */
const WASM = resolve("@zip.js/zip.js/dist/zip-module.wasm");
const LICENCE = join(dirname(resolve("@zip.js/zip.js/package.json")), "LICENSE");

/** zlib beside the program, with its licence; renamed into place, so that nobody ever reads half of it. */
export async function prepareZlib(): Promise<void> {
  await mkdir(dirname(ZLIB_FILE), { recursive: true });
  for (const [from, to] of [
    [LICENCE, `${ZLIB_FILE}.LICENSE`],
    [WASM, ZLIB_FILE],
  ] as const) {
    await copyFile(from, `${to}.${process.pid}`);
    await rename(`${to}.${process.pid}`, to);
  }
}
