/*
 * A complaint is why a room file cannot be used: a code, a place in the file and the figures. Like a finding it is a
 * fact, not a sentence: the sentence is made in src/words. Whatever was typed is in the figures as it may be shown,
 * with control and direction characters already written out.
 */

/** The kinds of value that a room file holds. */
export type Kind = "map" | "list" | "text" | "nothing";

/** What is measured where a text should say a figure and its unit. */
export type Measured =
  | "length"
  | "angle"
  | "level"
  | "impedance"
  | "power"
  | "weight"
  | "share"
  | "temperature"
  | "cross-section";

/** What a name stands for. */
export type NameOf =
  | "wall"
  | "surface"
  | "model"
  | "seat"
  | "speaker"
  | "area"
  | "channel"
  | "layout"
  | "paper"
  | "lumber"
  | "stock";

/** Why a character cannot stand on a sheet. */
export type BadCharacter = "control" | "direction" | "invisible" | "surrogate" | "right-to-left" | "no-glyph";

/** What keeps a text from being YAML, as far as a person can act on it. */
export type YamlSlip =
  | "tab"
  | "open-quote"
  | "open-bracket"
  | "missing-mark"
  | "indent"
  | "start"
  | "in-brackets"
  | "colon"
  | "no-colon"
  | "escape"
  | "comma"
  | "merge-mark"
  | "odd-space"
  | "round-bracket"
  | "semicolon"
  | "dash"
  | "dash-among-keys"
  | "other";

export interface FiguresByComplaint {
  "file-too-large": { bytes: number; mostBytes: number };
  "not-utf-8": Record<never, never>;
  "empty-file": Record<never, never>;
  "not-yaml": { slip: YamlSlip };
  "yaml-directive": { written: string };
  "several-documents": Record<never, never>;
  "nested-too-deep": { most: number };
  /** Words, marks and spaces. */
  "too-much-written": { most: number };
  /** An anchor, an alias or a merge key. */
  "yaml-alias": { written: string };
  "yaml-tag": { written: string };
  "key-not-text": Record<never, never>;
  "duplicate-key": { key: string; firstLine: number };
  /** The file is a list or a single text. */
  "not-a-room": { found: Kind };
  "more-complaints": { count: number };

  "unknown-key": { key: string; suggestion: string | null; choices: readonly string[] };
  "missing-key": { key: string };
  "nothing-written": { key: string };
  "wrong-kind": { wanted: readonly Kind[]; found: Kind; key: string | null };
  "unknown-word": { typed: string; suggestion: string | null; choices: readonly string[] };
  "other-format": { typed: string };

  /** A figure without its unit, and how to write it. */
  "no-unit": { typed: string; ways: readonly string[] };
  "unknown-unit": { typed: string; unit: string; ways: readonly string[] };
  "not-a-measure": { typed: string; measured: Measured; ways: readonly string[] };
  "comma-in-figure": { typed: string; ways: readonly string[] };
  "inches-over-twelve": { typed: string; instead: string | null };
  "out-of-limits": { typed: string; least: string; most: string };
  "not-a-whole-number": { typed: string; least: number; most: number };
  "too-many": {
    of: "speakers" | "members" | "joints" | "models" | "corners" | "entries";
    count: number;
    most: number;
  };
  "too-few": { count: number; least: number };

  "text-empty": Record<never, never>;
  "text-too-long": { count: number; most: number };
  /** `name` is the character's name in the Unicode standard where we know it. */
  "bad-character": { reason: BadCharacter; codePoint: string; name: string | null };
  "bad-id": { typed: string; slip: "characters" | "too-long" | "reserved"; most: number };
  "name-taken": { typed: string; firstLine: number };
  "name-reserved": { typed: string };

  "unknown-name": { of: NameOf; typed: string; suggestion: string | null; choices: readonly string[] };
  "mirrors-itself": { typed: string };
  "reference-seats": { count: number };
  /** A box's size beside an outline. */
  "outline-with-size": { key: string };
  "walls-without-outline": Record<never, never>;
  "walls-count": { corners: number; walls: number };
  "heights-count": { corners: number; heights: number };
  /** The names of two walls that cross. */
  "walls-cross": { first: string; second: string };
  "wall-too-short": { wall: string; lengthMm: number; leastMm: number };
  /** Two corners of a rectangle between which there is no area. */
  "corners-in-line": Record<never, never>;
  /** Sides of a ceiling cross, or it spans no area. */
  "ceiling-no-area": { ceiling: string };
  /** A corner stands out of the plane of the others. */
  "not-one-plane": { ceiling: string; corner: number; byMm: number; mostMm: number };
  "ceiling-outside": { ceiling: string; byMm: number };
  "ceilings-overlap": { ceiling: string; other: string };
  /** What the named ceilings leave of the one at `height` is in several pieces. */
  "ceiling-in-pieces": { pieces: number };
  /** Named ceilings take up the whole plan, and this is about the one at `height`. */
  "no-main-ceiling": { choices: readonly string[] };

  /** Two tapes are wanted and another number was given. */
  "tapes-count": { given: readonly string[]; wanted: number };
  /** Tapes that do not fix a point: they run along each other. */
  "tapes-parallel": { given: readonly string[] };
  /** A tape from this wall says nothing about a point on that surface. */
  "tape-not-here": { tape: string; surface: string; choices: readonly string[] };
  "framing-from": { from: string; choices: readonly string[] };
  /** Members at an angle are measured from a corner or a mark, and a wall is given. */
  "framing-from-point": { from: string };
  /** A layout is either measured (`at`) or laid out (`first` with `spacing`). */
  "framing-layout": { given: readonly string[] };
  "members-out-of-order": { typedMm: number; beforeMm: number };
  "member-outside": { byMm: number };
  /** A member that was found is none of those that the layout has. */
  "found-no-member": { number: number; count: number };
  "spacing-under-width": { spacingMm: number; widthMm: number };
  "web-over-flange": { webMm: number; flangeMm: number };
  "smaller-than-opening": { flangeMm: number; openingMm: number };
  "range-upside-down": { leastMm: number; mostMm: number };
  "seat-outside": { wall: string };
  "labels-off-page": { byMm: number };
  "labels-overlap": { byMm: number };
  /** The printed part of a label. */
  "taller-than-label": { byMm: number };
  /** What keeps an area from being filled with loudspeakers of that model. */
  "area-not-fillable": {
    area: string;
    because:
      | "not-a-ceiling"
      | "no-area"
      | "off-ceiling"
      | "tilted"
      | "no-coverage"
      | "too-wide"
      | "ears-too-high"
      | "over-others";
  };
}

export type ComplaintCode = keyof FiguresByComplaint;

/** What is wrong, and the path of keys and indices to the value (or to its key) that it is about. */
export interface ProblemOf<C extends ComplaintCode> {
  readonly code: C;
  readonly path: readonly (string | number)[];
  readonly at: "key" | "value";
  readonly figures: Readonly<FiguresByComplaint[C]>;
}

/** Discriminated by `code`, so that a phrase for one code sees that code's figures. */
export type Problem = { [C in ComplaintCode]: ProblemOf<C> }[ComplaintCode];

/** A problem and where it stands in the file; lines and columns count from 1, columns in characters. */
export type Complaint = Problem & { readonly line: number; readonly column: number };

/** One phrase a code. */
export type ComplaintPhrases = {
  readonly [C in ComplaintCode]: (figures: Readonly<FiguresByComplaint[C]>) => string;
};
