import { mkdtemp, readdir, rm, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setFlagsFromString } from "node:v8";
import type { Script } from "node:vm";
import { Worker } from "node:worker_threads";
import pico from "picocolors";
import type { run } from "../cli.js";
import type { Terminal } from "../commands/terminal.js";

/** What `bin/load.js` exports, which is no TypeScript so that nothing has to be built before it. */
interface Loading {
  readonly REMEMBERED: readonly string[];
  readonly setFlags: () => void;
  readonly memoryOf: (command: string) => string;
  readonly scriptFor: (command: string) => Script;
  readonly programFor: (command: string, script: Script) => { readonly run: typeof run };
}

const quiet = (folder: string): Terminal => ({
  folder,
  write: () => undefined,
  tell: () => undefined,
  progress: () => undefined,
  colours: pico.createColors(false),
});

/**
 * Runs each command that is remembered with the example rooms and keeps what V8 compiled for it beside the program.
 * V8 compiles the same source once, so that what a later command keeps holds what an earlier one ran of it. Nothing that
 * was compiled may be thrown away meanwhile; V8 writes which flags it had, so they are by then as they are at a start.
 */
export async function rememberCompiled(root: string): Promise<void> {
  const loading: Loading = createRequire(import.meta.url)(join(root, "bin", "load.js"));
  const examples = (await readdir(join(root, "examples"))).filter((name) => name.endsWith(".yaml"));
  const files = examples.sort().map((name) => join(root, "examples", name));
  const scratch = await mkdtemp(join(tmpdir(), "baymark-build-"));
  for (const command of loading.REMEMBERED) {
    const script = loading.scriptFor(command);
    setFlagsFromString("--no-flush-bytecode");
    const program = loading.programFor(command, script);
    await program.run([command, ...files], { terminal: quiet(scratch) });
    // Shared with another thread a print asks for some code more.
    const startThread = (): Worker => new Worker(join(root, "bin", "crew-member.js"));
    const shared = command === "print" ? files.slice(0, 1) : [];
    for (const file of shared) await program.run([command, file], { terminal: quiet(scratch), startThread });
    setFlagsFromString("--flush-bytecode");
    loading.setFlags();
    await writeFile(loading.memoryOf(command), script.createCachedData());
  }
  await rm(scratch, { recursive: true });
}
