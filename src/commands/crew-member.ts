import pico from "picocolors";
import { wordsIn } from "../words/words.js";
import { askedBy } from "./asked.js";
import type { Printed, RoomTask, Said } from "./crew.js";
import { printRoom } from "./print-room.js";
import type { Terminal } from "./terminal.js";
import { UsageError } from "./usage-error.js";

/** Prints a room and tells how that ended, with all that was said meanwhile. */
export function printAsAsked({ place, flags, folder, colours, language }: RoomTask): Promise<Printed> {
  const words = wordsIn([language]);
  const said: Said[] = [];
  const terminal: Terminal = {
    folder,
    write: (text) => void said.push({ to: "write", text }),
    tell: (text) => void said.push({ to: "tell", text }),
    progress: () => undefined,
    colours: pico.createColors(colours),
  };
  return ended(said, () => printRoom(terminal, words, askedBy(flags, words), place));
}

async function ended(said: readonly Said[], printing: () => ReturnType<typeof printRoom>): Promise<Printed> {
  try {
    return { kind: "printed", code: await printing(), said };
  } catch (cause) {
    const message = cause instanceof Error ? cause.message : String(cause);
    return { kind: "failed", usage: cause instanceof UsageError, message, said };
  }
}
