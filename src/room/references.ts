import type { NameOf, Problem } from "../findings/complaint.js";
import { CHANNELS } from "../standards/loudspeaker-layouts.js";
import type { Locate } from "./complaint.js";
import { valueAt } from "./issues.js";
import { indices, keysAt, surfaceNames, textAt, wallNames } from "./names.js";
import type { Path } from "./room.js";
import { shapeProblems } from "./shape-problems.js";
import { shown } from "./shown.js";
import { suggest } from "./suggest.js";
import type { Tree } from "./tree.js";

/*
 * Names that stand for something elsewhere in the file. They are looked up in the tree, not in the file as parsed, so
 * that a wrong name is told in the same go as a wrong figure anywhere else.
 */

/** A loudspeaker may be turned toward these besides seats. */
export const REFERENCE = "reference";
export const NO_AIM = "none";

/** Every name that stands for nothing, is taken, or is one too many. */
export function problemsAcross(tree: Tree, locate: Locate): readonly Problem[] {
  const file = { tree, locate };
  return [
    ...repeated(file, "speakers", "id"),
    ...repeated(file, "seats", "name"),
    ...repeated(file, "areas", "name"),
    ...areaProblems(tree),
    ...seatProblems(tree),
    ...speakerProblems(tree),
    ...acceptProblems(tree),
    ...shapeProblems(tree, locate),
    ...placeProblems(tree),
  ];
}

const textsAt = (tree: Tree, list: string, key: string): readonly string[] =>
  indices(tree, [list]).flatMap((index) => textAt(tree, [list, index, key]) ?? []);

interface Source {
  readonly tree: Tree;
  readonly locate: Locate;
}

/** Names that stand twice in a list, without regard to case. */
function repeated({ tree, locate }: Source, list: string, key: string): readonly Problem[] {
  const first = new Map<string, Path>();
  return indices(tree, [list]).flatMap((index): Problem[] => {
    const path = [list, index, key];
    const typed = textAt(tree, path);
    const earlier = first.get(typed?.toLowerCase() ?? "");
    if (typed !== null && earlier === undefined) first.set(typed.toLowerCase(), path);
    if (typed === null || earlier === undefined) return [];
    const figures = { typed: shown(typed), firstLine: locate(earlier).line };
    return [{ code: "name-taken", path, at: "value", figures }];
  });
}

function seatProblems(tree: Tree): readonly Problem[] {
  const seats = indices(tree, ["seats"]);
  const references = seats.filter((index) => isTrue(textAt(tree, ["seats", index, "reference"])));
  const count = references.length;
  const reserved = seats.flatMap((index): Problem[] => {
    const path = ["seats", index, "name"];
    const name = textAt(tree, path);
    const isAnother = name === REFERENCE && !references.includes(index) && seats.length > 1;
    return name === NO_AIM || isAnother
      ? [{ code: "name-reserved", path, at: "value", figures: { typed: name } }]
      : [];
  });
  const enough = count === 1 || seats.length === 0 || (count === 0 && seats.length === 1);
  if (enough) return reserved;
  const path = ["seats", references[1] ?? 0];
  return [...reserved, { code: "reference-seats", path, at: "value", figures: { count } }];
}

const isTrue = (text: string | null): boolean => text?.toLowerCase() === "true";

interface Wanted {
  readonly of: NameOf;
  readonly choices: readonly string[];
  readonly at?: "key" | "value";
}

/** More than a sentence lists; names in them may be as odd as any. */
const MOST_CHOICES = 100;

const shownOf = (choices: readonly string[]): readonly string[] => choices.slice(0, MOST_CHOICES).map(shown);

/** A problem where `typed` is none of the choices. */
function lookUp(typed: string | null, path: Path, { of, choices, at = "value" }: Wanted): readonly Problem[] {
  if (typed === null || choices.includes(typed)) return [];
  const suggestion = suggest(typed, choices);
  const figures = { of, typed: shown(typed), suggestion, choices: shownOf(choices) };
  return [{ code: "unknown-name", path, at, figures }];
}

function speakerProblems(tree: Tree): readonly Problem[] {
  const models = keysAt(tree, ["models"]);
  const ids = textsAt(tree, "speakers", "id");
  const areas = textsAt(tree, "areas", "name");
  const targets = [...textsAt(tree, "seats", "name"), REFERENCE, NO_AIM];
  return indices(tree, ["speakers"]).flatMap((index) => {
    const at = (key: string): Path => ["speakers", index, key];
    const find = (key: string, wanted: Wanted) => lookUp(textAt(tree, at(key)), at(key), wanted);
    return [
      ...find("model", { of: "model", choices: models }),
      ...mirrorProblems(tree, index, ids),
      ...find("area", { of: "area", choices: areas }),
      ...channelProblems(tree, index),
      ...find("aim", { of: "seat", choices: targets }),
    ];
  });
}

/** Only what fills an area has no channel of its own. */
function channelProblems(tree: Tree, index: number): readonly Problem[] {
  const entry = ["speakers", index];
  const keys = keysAt(tree, entry);
  if (keys.length === 0 || keys.includes("channel") || keys.includes("area")) return [];
  return [{ code: "missing-key", path: [...entry, "channel"], at: "value", figures: { key: "channel" } }];
}

/** An area's name is printed where others have their channel: it must not be one. */
function areaProblems(tree: Tree): readonly Problem[] {
  const models = keysAt(tree, ["models"]);
  return indices(tree, ["areas"]).flatMap((index) => {
    const at = (key: string): Path => ["areas", index, key];
    const name = textAt(tree, at("name"));
    const reserved: readonly Problem[] =
      name !== null && CHANNELS.includes(name)
        ? [{ code: "name-reserved", path: at("name"), at: "value", figures: { typed: name } }]
        : [];
    return [...lookUp(textAt(tree, at("model")), at("model"), { of: "model", choices: models }), ...reserved];
  });
}

function mirrorProblems(tree: Tree, index: number, ids: readonly string[]): readonly Problem[] {
  const path = ["speakers", index, "mirror"];
  const typed = textAt(tree, path);
  const own = textAt(tree, ["speakers", index, "id"]);
  if (typed !== null && typed === own) {
    return [{ code: "mirrors-itself", path, at: "value", figures: { typed: shown(typed) } }];
  }
  return lookUp(typed, path, { of: "speaker", choices: ids.filter((id) => id !== own) });
}

function acceptProblems(tree: Tree): readonly Problem[] {
  const choices = textsAt(tree, "speakers", "id");
  return indices(tree, ["accept"]).flatMap((index) => {
    const path = ["accept", index, "speaker"];
    return lookUp(textAt(tree, path), path, { of: "speaker", choices });
  });
}

/** Walls and surfaces by their names. */
function placeProblems(tree: Tree): readonly Problem[] {
  const plan = wallNames(tree);
  const anywhere = [...plan, "up", "down"];
  const each = (list: string, keys: readonly string[], choices: readonly string[]) =>
    indices(tree, [list]).flatMap((index) =>
      keys.flatMap((key) => tapeProblems(tree, [list, index, key], choices)),
    );
  return [
    ...["speakers", "obstructions", "areas"].flatMap((list) => surfaceProblems(tree, list)),
    ...each("speakers", ["at", "hold"], anywhere),
    ...each("obstructions", ["at", "corner", "opposite"], anywhere),
    ...each("areas", ["corner", "opposite"], anywhere),
    ...indices(tree, ["areas"]).flatMap((area) =>
      indices(tree, ["areas", area, "corners"]).flatMap((corner) =>
        tapeProblems(tree, ["areas", area, "corners", corner], anywhere),
      ),
    ),
    ...each("seats", ["at"], plan),
    ...indices(tree, ["speakers"]).flatMap((index) =>
      aimProblems(tree, ["speakers", index, "aim"], { plan, anywhere }),
    ),
    ...tapeProblems(tree, ["equipment", "at"], plan),
    ...[["framing"], ["surfaces"], ["board", "sheets"]].flatMap((block) => keyProblems(tree, block)),
    ...sheetProblems(tree, plan),
    ...keysAt(tree, ["framing"]).flatMap((surface) => {
      const path = ["framing", surface, "from"];
      return [
        ...lookUp(textAt(tree, path), path, { of: "wall", choices: plan }),
        ...tapeProblems(tree, path, plan),
        ...strapProblems(tree, ["framing", surface, "strapping", "from"], plan),
      ];
    }),
  ];
}

function surfaceProblems(tree: Tree, list: string): readonly Problem[] {
  const choices = surfaceNames(tree);
  return indices(tree, [list]).flatMap((index) => {
    const path = [list, index, "on"];
    return lookUp(textAt(tree, path), path, { of: "surface", choices });
  });
}

/** On a wall straps are counted from the floor too. */
function strapProblems(tree: Tree, path: Path, plan: readonly string[]): readonly Problem[] {
  return [
    ...lookUp(textAt(tree, path), path, { of: "wall", choices: [...plan, "floor"] }),
    ...tapeProblems(tree, path, plan),
  ];
}

/** Walls that joints of board are measured from. */
function sheetProblems(tree: Tree, plan: readonly string[]): readonly Problem[] {
  return keysAt(tree, ["board", "sheets"]).flatMap((surface) => {
    const path: Path = ["board", "sheets", surface];
    const find = (at: Path, choices: readonly string[]) =>
      lookUp(textAt(tree, at), at, { of: "wall", choices });
    return [
      ...find([...path, "from"], [...plan, "floor"]),
      ...find([...path, "ends", "from"], [...plan, "floor"]),
    ];
  });
}

/** Keys of a block that is by surface. A key that is already there is not the one that was meant. */
function keyProblems(tree: Tree, block: Path): readonly Problem[] {
  const choices = surfaceNames(tree);
  const keys = keysAt(tree, block);
  return keys
    .filter((key) => !choices.includes(key))
    .map((key): Problem => {
      const absent = choices.filter((choice) => !keys.includes(choice));
      const figures = { key: shown(key), suggestion: suggest(key, absent), choices: shownOf(choices) };
      return { code: "unknown-key", path: [...block, key], at: "key", figures };
    });
}

interface Choices {
  readonly plan: readonly string[];
  readonly anywhere: readonly string[];
}

/** A point to aim at is a map of tapes, or has its tapes under `at`. */
function aimProblems(tree: Tree, path: Path, { plan, anywhere }: Choices): readonly Problem[] {
  const nested = valueAt(tree, [...path, "at"]) !== undefined;
  return nested ? tapeProblems(tree, [...path, "at"], plan) : tapeProblems(tree, path, anywhere);
}

function tapeProblems(tree: Tree, path: Path, choices: readonly string[]): readonly Problem[] {
  return keysAt(tree, path).flatMap((key) => lookUp(key, [...path, key], { of: "wall", choices, at: "key" }));
}
