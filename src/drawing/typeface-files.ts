/*
 * The files of the prepared typeface, made when the package is built. Reading them here is the one place outside
 * commands and output that touches the disc: a drawing cannot be laid out without the widths of its letters.
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { InternalError } from "../findings/internal-error.js";

/** Sources (src/drawing) and bundle (bin/built) both lie two folders deep, so that one path serves both. */
export const TYPEFACE_FOLDER: string = fileURLToPath(new URL("../../bin/built/typeface/", import.meta.url));

/** Bytes of a file of the prepared typeface; an InternalError where the build has not been run. */
export function readTypefaceFile(name: string): Buffer {
  try {
    return readFileSync(`${TYPEFACE_FOLDER}${name}`);
  } catch (cause) {
    throw new InternalError(`the prepared typeface lacks ${name}: run \`npm run build\``, { cause });
  }
}
