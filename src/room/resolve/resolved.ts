import type { Problem } from "../../findings/complaint.js";

/** A value, or what keeps the file from giving one. */
export type Resolved<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const resolved = <Value>(value: Value): Resolved<Value> => ({ ok: true, value });

export const refused = (...problems: readonly Problem[]): Resolved<never> => ({ ok: false, problems });

/** All the values, or all the problems of those that have none. */
export function all<Value>(parts: readonly Resolved<Value>[]): Resolved<readonly Value[]> {
  const problems = parts.flatMap((part) => (part.ok ? [] : part.problems));
  return problems.length > 0
    ? { ok: false, problems }
    : resolved(parts.flatMap((part) => (part.ok ? [part.value] : [])));
}

/** The values of a record of parts by the same keys, or all the problems of those that have none. */
export function together<Parts extends Record<string, Resolved<unknown>>>(
  parts: Parts,
): Resolved<{ readonly [Key in keyof Parts]: Parts[Key] extends Resolved<infer Value> ? Value : never }> {
  const listed = all(Object.entries(parts).map(([key, part]) => withKey(key, part)));
  // The keys are those of `parts`, each with the value of its own part.
  return listed.ok ? resolved(Object.fromEntries(listed.value) as never) : listed;
}

const withKey = (key: string, part: Resolved<unknown>): Resolved<readonly [string, unknown]> =>
  part.ok ? resolved([key, part.value] as const) : part;

/** What `next` makes of the value. Not called `then`: a module that exports one is a promise to whoever imports it dynamically. */
export function andThen<Value, Next>(part: Resolved<Value>, next: (value: Value) => Next): Resolved<Next> {
  return part.ok ? resolved(next(part.value)) : part;
}
