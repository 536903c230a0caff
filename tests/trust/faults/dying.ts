/*
 * A file system that fails at a count: every call that changes something on the disk is counted, and the n-th one
 * dies or is refused. Node's own functions are replaced, so that what is tested is the program as it stands.
 */
import fs from "node:fs";
import { syncBuiltinESMExports } from "node:module";

/** Calls of node:fs that change something. */
const CHANGING = [
  ...(["mkdirSync", "writeFileSync", "renameSync", "rmSync", "rmdirSync"] as const),
  ...(["openSync", "writeSync", "fsyncSync", "chmodSync"] as const),
] as const;
type Changing = (typeof CHANGING)[number];

const own = Object.fromEntries(CHANGING.map((name) => [name, fs[name]])) as {
  [N in Changing]: (typeof fs)[N];
};

export type Fault =
  /** As by SIGKILL: nothing that the program does after it reaches the disk. `half` lets the call itself do half. */
  | { readonly kind: "death"; readonly at: number; readonly half: boolean }
  /** The system refuses this one call, or this one and all that would write. */
  | { readonly kind: "refusal"; readonly at: number; readonly code: string; readonly lasting: boolean };

/** What a dead process would not come to say. */
class Death extends Error {}

/** How a run ended: with what it returned, or dead; and how many calls it made. */
export interface Run<T> {
  readonly returned: T | null;
  readonly calls: number;
}

/** Runs the action with the fault; without one, the calls are only counted. */
export function runWith<T>(fault: Fault | null, action: () => T): Run<T> {
  const count = { calls: 0, dead: false };
  for (const name of CHANGING) replace(name, (...typed: unknown[]) => called(name, typed, fault, count));
  syncBuiltinESMExports();
  try {
    return { returned: action(), calls: count.calls };
  } catch (error) {
    if (!(error instanceof Death)) throw error;
    return { returned: null, calls: count.calls };
  } finally {
    for (const name of CHANGING) replace(name, own[name]);
    syncBuiltinESMExports();
  }
}

function replace(name: Changing, by: unknown): void {
  Object.defineProperty(fs, name, { value: by, writable: true, configurable: true });
}

interface Count {
  calls: number;
  dead: boolean;
}

function called(name: Changing, typed: unknown[], fault: Fault | null, count: Count): unknown {
  if (count.dead) throw new Death();
  count.calls += 1;
  if (fault?.kind === "death" && count.calls === fault.at) {
    count.dead = true;
    if (fault.half) half(name, typed);
    throw new Death();
  }
  if (fault?.kind === "refusal" && isRefused(name, count.calls, fault))
    throw refusal(fault.code, String(typed[0]));
  return Reflect.apply(own[name], fs, typed);
}

const WRITING: ReadonlySet<Changing> = new Set(["mkdirSync", "writeFileSync", "openSync", "writeSync"]);

/** A full disk still takes files away and moves them. */
function isRefused(name: Changing, calls: number, fault: Fault & { readonly kind: "refusal" }): boolean {
  if (!fault.lasting) return calls === fault.at;
  return calls >= fault.at && WRITING.has(name);
}

const refusal = (code: string, path: string): Error =>
  Object.assign(new Error(`${code}: refused, '${path}'`), { code, syscall: "write" });

/** Half of the bytes are written, half of the folder is taken away; the other calls are one step of the system's. */
function half(name: Changing, [first, bytes]: readonly unknown[]): void {
  if (name === "writeSync" && typeof first === "number" && bytes instanceof Uint8Array)
    own.writeSync(first, bytes.slice(0, bytes.length / 2));
  if (name === "writeFileSync" && (typeof bytes === "string" || bytes instanceof Uint8Array)) {
    // By its path, or as the next piece of one that is open.
    own.writeFileSync(typeof first === "number" ? first : String(first), bytes.slice(0, bytes.length / 2));
  }
  const path = String(first);
  if (name === "rmSync" && fs.existsSync(path) && fs.statSync(path).isDirectory()) {
    const inside = fs.readdirSync(path);
    for (const each of inside.slice(0, inside.length / 2)) own.rmSync(`${path}/${each}`, { recursive: true });
  }
}
