import { readFileSync, statSync } from "node:fs";
import { basename, resolve } from "node:path";
import { hasGlyph } from "../drawing/coverage.js";
import type { Complaint } from "../findings/complaint.js";
import { answerRoom, type Job } from "../job.js";
import { complaintsOf } from "../room/complaint.js";
import { readRoom } from "../room/read.js";
import { resolveRoom } from "../room/resolve.js";
import type { Words } from "../words/words.js";
import { reasonOf } from "./printer-profile.js";
import type { Terminal } from "./terminal.js";

export type Loaded =
  | {
      readonly kind: "job";
      readonly typed: string;
      readonly job: Job;
      /** What the file held. */
      readonly bytes: Uint8Array;
    }
  | {
      readonly kind: "complaints";
      readonly typed: string;
      readonly source: string;
      readonly complaints: readonly Complaint[];
    }
  | { readonly kind: "unreadable"; readonly typed: string; readonly message: string };

/** Reads, resolves and answers one room file; whatever is wrong with it comes back as data. */
export function load(terminal: Terminal, words: Words, typed: string): Loaded {
  const file = resolve(terminal.folder, typed);
  let bytes: Uint8Array;
  try {
    const found = statSync(file);
    if (found.isDirectory()) return unreadable(typed, words.commands.failure.folderNotFile(typed));
    if (!found.isFile() && !found.isFIFO()) return unreadable(typed, words.commands.failure.notAFile(typed));
    bytes = readFileSync(file);
  } catch (cause) {
    return unreadable(typed, readFailure(typed, reasonOf(cause), words));
  }
  const complained = (complaints: readonly Complaint[]): Loaded => {
    return { kind: "complaints", typed, source: new TextDecoder().decode(bytes), complaints };
  };
  const name = basename(file);
  const read = readRoom(bytes, name, { hasGlyph });
  if (!read.ok) return complained(read.complaints);
  const { locate } = read;
  const resolved = resolveRoom(read.file);
  if (!resolved.ok) return complained(complaintsOf(resolved.problems, locate));
  const job = answerRoom({
    file: name,
    get fingerprint() {
      return read.fingerprint;
    },
    room: resolved.room,
    locate,
  });
  return { kind: "job", typed, job, bytes };
}

const unreadable = (typed: string, message: string): Loaded => ({ kind: "unreadable", typed, message });

function readFailure(typed: string, reason: string, words: Words): string {
  const { notFound, noPermission, unreadable: other } = words.commands.failure;
  if (reason === "ENOENT" || reason === "ENOTDIR") return notFound(typed);
  if (reason === "EACCES" || reason === "EPERM") return noPermission(typed);
  return other(typed, reason);
}
