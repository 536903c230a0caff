/* Writes packets into one folder, one after another, while others do the same: `writer.ts FOLDER WORDS TIMES`. */
import { replacePacket } from "../../../src/output/folder.js";
import { packetOf } from "./packets-of.js";

const [folder = "", words = "", times = "1"] = process.argv.slice(2);
const results = Array.from({ length: Number(times) }, () => replacePacket(folder, packetOf(words)));
const failed = results.filter(({ kind }) => kind !== "written");
process.stdout.write(JSON.stringify(failed));
