import type { MessagePort } from "node:worker_threads";
import pico from "picocolors";
import { wordsIn } from "../words/words.js";
import { askedBy, type Place } from "./asked.js";
import type { Briefing, Printed, Said } from "./crew.js";
import { printRoom } from "./print-room.js";
import type { Terminal } from "./terminal.js";
import { UsageError } from "./usage-error.js";

/** Prints each room that comes through the port and answers how that ended, with all that was said meanwhile. */
export function serve(port: MessagePort, { flags, folder, colours, language }: Briefing): void {
  const words = wordsIn([language]);
  const asked = askedBy(flags, words);
  port.on("message", async (place: Place) => {
    const said: Said[] = [];
    const terminal: Terminal = {
      folder,
      write: (text) => void said.push({ to: "write", text }),
      tell: (text) => void said.push({ to: "tell", text }),
      progress: () => undefined,
      colours: pico.createColors(colours),
    };
    port.postMessage(await ended(said, () => printRoom(terminal, words, asked, place)));
  });
}

async function ended(said: readonly Said[], printing: () => ReturnType<typeof printRoom>): Promise<Printed> {
  try {
    return { kind: "printed", code: await printing(), said };
  } catch (cause) {
    const message = cause instanceof Error ? cause.message : String(cause);
    return { kind: "failed", usage: cause instanceof UsageError, message, said };
  }
}
