import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import pico from "picocolors";
import { onTestFinished } from "vitest";
import { run } from "../../src/cli.js";
import type { Terminal } from "../../src/commands/terminal.js";

export const EXAMPLES = join(import.meta.dirname, "..", "..", "examples");
export const DEN = "quarry-lane-den.yaml";
export const STUDIO = "alder-court-studio.yaml";

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** A folder of its own for a test, with both example rooms in it, and a way to type commands there. */
export function workFolder(): { folder: string; type: (...typed: string[]) => Promise<Ran> } {
  const folder = mkdtempSync(join(tmpdir(), "baymark-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const file of [DEN, STUDIO]) cpSync(join(EXAMPLES, file), join(folder, file));
  return {
    folder,
    type: async (...typed) => {
      const said = { out: "", err: "" };
      const terminal: Terminal = {
        folder,
        write: (text) => {
          said.out += text;
        },
        tell: (text) => {
          said.err += text;
        },
        progress: () => undefined,
        colours: pico.createColors(false),
      };
      const code = await run(typed, { terminal });
      return { code, ...said };
    },
  };
}
