import pico from "picocolors";
import type { Words } from "../words/words.js";
import { EXIT } from "./exit-code.js";

/** The world as a command sees it: where it stands, and where its words go. Only this floor and output touch it. */
export interface Terminal {
  /** Folder that relative names are read from. */
  readonly folder: string;
  /** Standard output: what was asked for. */
  readonly write: (text: string) => void;
  /** Standard error: complaints, and what was done. */
  readonly tell: (text: string) => void;
  /** One line on a terminal that is written over; does nothing elsewhere. */
  readonly progress: (text: string) => void;
  readonly colours: ReturnType<typeof pico.createColors>;
}

const CLEAR_LINE = "\r\u001b[2K";

/** The terminal of this process. Colours obey NO_COLOR and whether anybody looks. */
export function processTerminal(words: Words): Terminal {
  const { stdout } = process;
  stdout.on("error", (cause: NodeJS.ErrnoException) => {
    if (cause.code !== "EPIPE") tellLast(words.commands.failure.unsaid(cause.code ?? cause.message));
    // Whoever has stopped reading (`| head`) has what he wanted; else nobody may take the exit code for an answer.
    process.exit(cause.code === "EPIPE" ? process.exitCode : EXIT.unusable);
  });
  // Node makes a stream when it is first asked for, and many a run says nothing there.
  let told: typeof process.stderr | null = null;
  const stderr = (): typeof process.stderr => {
    // Nobody is left to tell.
    told ??= process.stderr.on("error", () => undefined);
    return told;
  };
  return {
    folder: process.cwd(),
    write: (text) => void stdout.write(text),
    tell: (text) => void stderr().write(stderr().isTTY === true ? CLEAR_LINE + text : text),
    progress: (text) => void (stderr().isTTY === true && stderr().write(CLEAR_LINE + text)),
    colours: pico.createColors(wantsColour(stdout.isTTY === true)),
  };
}

/** At once, since nothing comes after it. */
function tellLast(message: string): void {
  process.stderr.write(`baymark: ${message}\n`);
}

function wantsColour(isTerminal: boolean): boolean {
  const { NO_COLOR, FORCE_COLOR, TERM } = process.env;
  if (NO_COLOR !== undefined && NO_COLOR !== "") return false;
  if (FORCE_COLOR !== undefined && FORCE_COLOR !== "0") return true;
  return isTerminal && TERM !== "dumb";
}
