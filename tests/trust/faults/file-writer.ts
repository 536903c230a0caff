/* Replaces a file, one time after another, while others do the same: `file-writer.ts FILE LETTER LENGTH TIMES`. */
import { readFileSync } from "node:fs";
import { replaceFile } from "../../../src/output/file.js";

const [file = "", letter = "", length = "1", times = "1"] = process.argv.slice(2);
const after = Buffer.from(letter.repeat(Number(length)));
const results = Array.from({ length: Number(times) }, () =>
  replaceFile(file, { before: readFileSync(file), after }),
);
process.stdout.write(JSON.stringify(results.filter(({ kind }) => kind === "unwritable")));
