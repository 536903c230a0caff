import { readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import envPaths from "env-paths";
import * as z from "zod";
import { makeFolder } from "../output/make-folder.js";
import type { Words } from "../words/words.js";
import { UsageError } from "./usage-error.js";

/** What the 100 mm rulers measured on one printer, in mm. */
export interface PrinterProfile {
  readonly acrossMm: number;
  readonly downMm: number;
}

/** Nominal length of the rulers that are measured. */
export const NOMINAL_MM = 100;

const measured = z.number().min(80).max(120);
const profilesSchema = z.record(z.string(), z.strictObject({ acrossMm: measured, downMm: measured }));

type Profiles = z.infer<typeof profilesSchema>;

function profilesFile(): string {
  const folder = process.env.BAYMARK_CONFIG ?? envPaths("baymark", { suffix: "" }).config;
  return join(folder, "printers.json");
}

function readProfiles(words: Words): Profiles {
  const file = profilesFile();
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch {
    return {};
  }
  const read = profilesSchema.safeParse(parsedJson(text));
  if (!read.success) throw new UsageError(words.commands.failure.badProfile(file));
  return read.data;
}

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** The profile kept for a printer in the user's configuration. Throws `UsageError` where there is none. */
export function printerProfile(printer: string, words: Words): PrinterProfile {
  const profiles = readProfiles(words);
  const profile = Object.hasOwn(profiles, printer) ? profiles[printer] : undefined;
  if (profile === undefined) throw new UsageError(words.commands.failure.unknownPrinter(printer));
  return profile;
}

/** Keeps what was measured on a printer's ruler page. Throws `UsageError` where the configuration cannot be written. */
export function keepPrinterProfile(printer: string, profile: PrinterProfile, words: Words): void {
  const file = profilesFile();
  const profiles = { ...readProfiles(words), [printer]: profile };
  try {
    makeFolder(dirname(file));
    writeFileSync(file, `${JSON.stringify(profiles, null, 2)}\n`);
  } catch (cause) {
    throw new UsageError(words.commands.failure.unwritable(file, reasonOf(cause)));
  }
}

/** The system's own code for what went wrong (EACCES, ENOSPC), or the message where it has none. */
export function reasonOf(cause: unknown): string {
  if (!(cause instanceof Error)) return String(cause);
  return "code" in cause && typeof cause.code === "string" ? cause.code : cause.message;
}
