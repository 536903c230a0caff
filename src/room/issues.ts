import type { z } from "zod";
import type { Kind, Problem } from "../findings/complaint.js";
import { InternalError } from "../findings/internal-error.js";
import type { Path } from "./room.js";
import { knownKeys } from "./schema/block.js";
import { shown } from "./shown.js";
import { suggest } from "./suggest.js";
import type { Tree } from "./tree.js";

/*
 * What zod found, as problems. Our own schemas put their code and figures into an issue's params; what zod says by
 * itself is a value of another kind, a key too many or too few, or a list that is too long.
 */

type Issue = z.core.$ZodIssue;

/** The problems of a tree, by the issues that zod found in it. */
export function problemsOf(issues: readonly Issue[], tree: Tree, above: Path = []): readonly Problem[] {
  return issues.flatMap((issue) => problemsOfIssue(issue, tree, [...above, ...issue.path.map(step)]));
}

/** zod's paths may hold symbols in theory; a tree has none. */
function step(key: PropertyKey): string | number {
  if (typeof key === "symbol") throw new InternalError("a room file has no symbols for keys");
  return key;
}

function problemsOfIssue(issue: Issue, tree: Tree, path: Path): readonly Problem[] {
  const value = valueAt(tree, path);
  if (value === undefined)
    return [{ code: "missing-key", path, at: "value", figures: { key: lastKey(path) } }];
  if (value === null)
    return [{ code: "nothing-written", path, at: "value", figures: { key: lastKey(path) } }];
  switch (issue.code) {
    case "custom":
      return [ourOwn(issue, path, "value")];
    case "unrecognized_keys":
      return issue.keys.map((key) => unknownKey(key, { path, value, choices: knownKeys(issue.message) }));
    case "invalid_key":
      return issue.issues.map((inner) => ourOwn(inner, path, "key"));
    case "invalid_union":
      return problemsOfUnion(issue, tree, path);
    case "invalid_type":
      return [wrongKind([issue], value, path)];
    case "too_big":
      return [
        {
          code: "too-many",
          path,
          at: "value",
          figures: { ...countOf(path), count: sizeOf(value), most: Number(issue.maximum) },
        },
      ];
    case "too_small":
      return [
        {
          code: "too-few",
          path,
          at: "value",
          figures: { count: sizeOf(value), least: Number(issue.minimum) },
        },
      ];
    default:
      throw new InternalError(`no phrase for the issue ${issue.code}`);
  }
}

const lastKey = (path: Path): string => shown(String(path.at(-1) ?? ""));

/** What our own schemas complain of; `complain` is the only writer of these params, so their shape is known. */
function ourOwn(issue: Issue, path: Path, at: "key" | "value"): Problem {
  if (issue.code !== "custom") throw new InternalError(`a key cannot have the issue ${issue.code}`);
  return { ...(issue.params as Pick<Problem, "code" | "figures">), path, at } as Problem;
}

interface KeyPlace {
  readonly path: Path;
  /** The map that the key stands in. */
  readonly value: Tree;
  readonly choices: readonly string[];
}

/** A key that is already there is not the one that was meant. */
function unknownKey(key: string, { path, value, choices }: KeyPlace): Problem {
  const absent = choices.filter((choice) => valueBelow(value, choice) === undefined);
  const figures = { key: shown(key), suggestion: suggest(key, absent), choices };
  return { code: "unknown-key", path: [...path, key], at: "key", figures };
}

type UnionIssue = Extract<Issue, { code: "invalid_union" }>;
type TypeIssue = Extract<Issue, { code: "invalid_type" }>;

/** Of the forms that a value may take, the one that was most likely meant: of its own kind, with the fewest slips. */
function problemsOfUnion(issue: UnionIssue, tree: Tree, path: Path): readonly Problem[] {
  const forms = issue.errors.map((errors) => ({ errors, kind: errors.find(isOfWrongKind) }));
  const meant = forms
    .filter((form) => form.kind === undefined)
    .map(({ errors }) => problemsOf(errors, tree, path))
    .sort((a, b) => slipsIn(a) - slipsIn(b))[0];
  if (meant !== undefined) return meant;
  const kinds = forms.flatMap((form) => (form.kind === undefined ? [] : [form.kind]));
  return [wrongKind(kinds, valueAt(tree, path) ?? null, path)];
}

/** A value of another kind tells more against a form than a key that is misspelt and therefore missing too. */
const slipsIn = (problems: readonly Problem[]): number =>
  problems.map(({ code }) => (code === "wrong-kind" ? 3 : 1)).reduce((sum, slips) => sum + slips, 0);

const isOfWrongKind = (issue: Issue): issue is TypeIssue =>
  issue.code === "invalid_type" && issue.path.length === 0;

function wrongKind(issues: readonly TypeIssue[], value: Tree, path: Path): Problem {
  const wanted = [...new Set(issues.map((issue) => kindWanted(issue.expected)))];
  // Of an entry in a list the list's own key.
  const key = path.findLast((step) => typeof step === "string");
  const figures = { wanted, found: kindOf(value), key: key === undefined ? null : shown(key) };
  return { code: "wrong-kind", path, at: "value", figures };
}

function kindWanted(expected: string): Kind {
  if (expected === "object" || expected === "record") return "map";
  return expected === "array" || expected === "tuple" ? "list" : "text";
}

/** What a value of the tree is. */
export function kindOf(value: Tree): Kind {
  if (value === null) return "nothing";
  if (typeof value === "string") return "text";
  return Array.isArray(value) ? "list" : "map";
}

const countOf = (path: Path): { of: "speakers" | "entries" } => ({
  of: path.length === 1 && path[0] === "speakers" ? "speakers" : "entries",
});

const sizeOf = (value: Tree): number => (Array.isArray(value) ? value.length : 0);

/** The value at the path, or undefined where the tree has none. */
export function valueAt(tree: Tree, path: Path): Tree | undefined {
  let value: Tree | undefined = tree;
  for (const step of path) value = valueBelow(value, step);
  return value;
}

function valueBelow(value: Tree | undefined, step: string | number): Tree | undefined {
  if (value === null || value === undefined || typeof value === "string") return undefined;
  if (isList(value)) return typeof step === "number" ? value[step] : undefined;
  return Object.hasOwn(value, step) ? value[step] : undefined;
}

const isList = (value: Tree): value is readonly Tree[] => Array.isArray(value);
