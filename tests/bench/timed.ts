import { spawnSync } from "node:child_process";

/** What one run of a command took, with all its threads and all processes that it waited for. */
export interface Taken {
  /** Of the processors. */
  readonly workMs: number;
  /** By the clock, which a busy machine stretches. */
  readonly clockMs: number;
}

const middle = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** The medians of several runs of each command, taken in turn, so that a busy spell meets them all. */
export function medians(commands: readonly (readonly string[])[], runs: number): readonly Taken[] {
  const rounds = Array.from({ length: runs }, () => commands.map(timed));
  return commands.map((_, index) => {
    const all = rounds.flatMap((round) => round[index] ?? []);
    return {
      workMs: middle(all.map(({ workMs }) => workMs)),
      clockMs: middle(all.map(({ clockMs }) => clockMs)),
    };
  });
}

/** The shell's own `times` says what its children took. Throws where the command fails as none of ours does. */
export function timed(command: readonly string[]): Taken {
  const script = '"$@" >/dev/null 2>&1; code=$?; times; exit $code';
  const before = performance.now();
  const { stdout, status } = spawnSync("bash", ["-c", script, "bash", ...command], { encoding: "utf8" });
  const clockMs = performance.now() - before;
  // The findings of an example are errors, and so is its exit code.
  if (status !== 0 && status !== 1) throw new Error(`${command.join(" ")} ended with ${status}`);
  return { workMs: workMsIn(stdout), clockMs };
}

/** The last line: user and system time of the children, as 0m1.234s. */
function workMsIn(times: string): number {
  const parts =
    times
      .trim()
      .split("\n")
      .at(-1)
      ?.matchAll(/(\d+)m([\d.]+)s/gu) ?? [];
  return [...parts].reduce(
    (sum, [, minutes, seconds]) => sum + Number(minutes) * 60_000 + Number(seconds) * 1000,
    0,
  );
}
