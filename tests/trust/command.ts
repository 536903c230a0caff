/*
 * The program as people start it: a process of its own, from the bundle that `npm run build` made.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";

export const EXAMPLES = join(import.meta.dirname, "..", "..", "examples");
export const PROGRAM = join(import.meta.dirname, "..", "..", "bin", "baymark.js");

/** The example rooms, as paths. */
export const exampleRooms = (): readonly string[] =>
  readdirSync(EXAMPLES)
    .filter((name) => name.endsWith(".yaml"))
    .sort()
    .map((name) => join(EXAMPLES, name));

export interface World {
  readonly folder: string;
  /** Over what this process has. */
  readonly environment?: Readonly<Record<string, string>>;
  /** File mode creation mask, as the shell takes it. */
  readonly umask?: string;
  /** What Node runs, where it is not the program. */
  readonly program?: readonly string[];
  /** Given the process once it runs. */
  readonly started?: (running: ChildProcess) => void;
}

export interface Ended {
  /** Null where a signal ended it. */
  readonly code: number | null;
  readonly signal: string | null;
  readonly out: string;
  readonly err: string;
}

/** Types one command line and waits for its end. */
export function typed(words: readonly string[], world: World): Promise<Ended> {
  const { folder, environment = {}, umask = "022", program = [PROGRAM], started } = world;
  const running = spawn(
    "/bin/sh",
    ["-c", `umask ${umask}; exec "$@"`, "sh", process.execPath, ...program, ...words],
    {
      cwd: folder,
      env: { ...process.env, ...environment },
      stdio: ["ignore", "pipe", "pipe"],
    },
  );
  const said = { out: "", err: "" };
  running.stdout.setEncoding("utf8").on("data", (text: string) => {
    said.out += text;
  });
  running.stderr.setEncoding("utf8").on("data", (text: string) => {
    said.err += text;
  });
  started?.(running);
  return new Promise((resolve, reject) => {
    running.on("error", reject);
    running.on("close", (code, signal) => resolve({ code, signal, ...said }));
  });
}

const OWN = mkdtempSync(join(tmpdir(), "baymark-trust-"));
afterAll(() => rmSync(OWN, { recursive: true, force: true }));

/** A folder of its own for a test, taken away after the file's last one. */
export const ownFolder = (): string => mkdtempSync(join(OWN, "run-"));

/** SHA-256 of every file below a folder, by its path there. */
export function hashesBelow(folder: string): ReadonlyMap<string, string> {
  const paths = readdirSync(folder, { recursive: true, encoding: "utf8" }).sort();
  const files = paths.filter((path) => statSync(join(folder, path)).isFile());
  return new Map(
    files.map((path) => [
      path,
      createHash("sha256")
        .update(readFileSync(join(folder, path)))
        .digest("hex"),
    ]),
  );
}
