/*
 * How much is tried: the same inputs each time, unless `npm run fuzz` says for how long and from which seed.
 */
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type fc from "fast-check";

const { BAYMARK_FUZZ_INPUTS, BAYMARK_FUZZ_SECONDS, BAYMARK_FUZZ_SEED } = process.env;
const INPUTS = Number(BAYMARK_FUZZ_INPUTS ?? 240);
const SECONDS = Number(BAYMARK_FUZZ_SECONDS ?? 0);
export const SEED = Number(BAYMARK_FUZZ_SEED ?? 20261125);

/** Of a test that tries things for as long as it is told to. */
export const LONG = { timeout: 300_000 + 2000 * SECONDS };

/**
 * How long a property is tried, as a share of the time, and on how many inputs where none is told: of what takes long a
 * `fewer`-th part. What failed is kept as files.
 */
export function runs<T extends [unknown, ...unknown[]]>(
  share: number,
  filesOf: (counterexample: T) => Readonly<Record<string, Uint8Array | string>>,
  fewer = 1,
): fc.Parameters<T> {
  return {
    numRuns: SECONDS > 0 ? 1e9 : Math.ceil((INPUTS * share) / fewer),
    seed: SEED,
    ...(SECONDS > 0 ? { interruptAfterTimeLimit: SECONDS * 1000 * share } : {}),
    endOnFailure: true,
    asyncReporter: async (details) => tell(details, filesOf),
  };
}

/** What failed, with the files that did it: their bytes would fill the screen. */
function tell<T>(
  { failed, errorInstance, counterexample, numRuns }: fc.RunDetails<T>,
  filesOf: (counterexample: T) => Readonly<Record<string, Uint8Array | string>>,
): void {
  if (!failed) return;
  const folder = mkdtempSync(join(tmpdir(), "baymark-fuzz-"));
  const files = counterexample === null ? {} : filesOf(counterexample);
  for (const [name, bytes] of Object.entries(files)) writeFileSync(join(folder, name), bytes);
  throw new Error(`seed ${SEED}, input ${numRuns}, kept in ${folder}`, { cause: errorInstance });
}
