import { badCharacter, type HasGlyph } from "../characters.js";
import { shown } from "../shown.js";
import { suggest } from "../suggest.js";
import { complain, type Reading } from "./complain.js";
import { written } from "./written.js";

/** Most characters of a text that is printed; our own choices, so that a sheet has room for it. */
export const MOST_CHARACTERS = { name: 60, short: 40, reason: 200 } as const;

/** Texts that are printed as they were typed; built for the typeface that has to draw them. */
export type Texts = ReturnType<typeof textsFor>;

export function textsFor(hasGlyph: HasGlyph) {
  const printed = (most: number) => {
    const text = written.transform((typed, context) => readText(typed, context, { most, hasGlyph }));
    return (description: string) => text.meta({ description, type: ["string", "number"] });
  };
  return {
    /** A name. */
    name: printed(MOST_CHARACTERS.name),
    /** What stands in a narrow cell: a number, a revision, a colour. */
    short: printed(MOST_CHARACTERS.short),
    /** A sentence. */
    reason: printed(MOST_CHARACTERS.reason),
  };
}

interface TextRules {
  readonly most: number;
  readonly hasGlyph: HasGlyph;
}

function readText(text: string, context: Reading, { most, hasGlyph }: TextRules): string {
  if (text === "") return complain(context, "text-empty", {});
  const bad = badCharacter(text, hasGlyph);
  if (bad !== null) return complain(context, "bad-character", { ...bad });
  const count = [...text].length;
  return count <= most ? text : complain(context, "text-too-long", { count, most });
}

export const MOST_ID_CHARACTERS = 12;

/** Names that an operating system keeps for devices, whatever their ending (DOS and its heirs). */
const RESERVED = /^(?:con|prn|aux|nul|com[0-9]|lpt[0-9])$/iu;

const anyId = written.transform((typed, context) => {
  const slip = slipOfId(typed);
  if (slip === null) return typed;
  return complain(context, "bad-id", { typed: shown(typed), slip, most: MOST_ID_CHARACTERS });
});

/** An id: it is printed on labels and names files. */
export const id = (description: string) =>
  anyId.meta({
    description,
    type: ["string", "integer"],
    pattern: `^[A-Za-z0-9_-]{1,${MOST_ID_CHARACTERS}}$`,
  });

/** What keeps a text from being an id; null for a good one. */
export function slipOfId(text: string): "characters" | "too-long" | "reserved" | null {
  if (!/^[A-Za-z0-9_-]+$/u.test(text)) return "characters";
  if (text.length > MOST_ID_CHARACTERS) return "too-long";
  return RESERVED.test(text) ? "reserved" : null;
}

/** One of a few words. */
export function word<const Choice extends string>(choices: readonly Choice[], description: string) {
  return written
    .transform((typed, context) => readWord(typed, context, { choices }))
    .meta({ description, enum: [...choices] });
}

interface WordChoices<Choice extends string> {
  readonly choices: readonly Choice[];
  /** What else may be typed there, as an example. */
  readonly besides?: string;
}

/** A word as it was typed; complains where it is none of those. */
export function readWord<Choice extends string>(
  typed: string,
  context: Reading,
  { choices, besides }: WordChoices<Choice>,
): Choice {
  const found = choices.find((choice) => choice === typed);
  if (found !== undefined) return found;
  const suggestion = suggest(typed, choices);
  const all = besides === undefined ? choices : [...choices, besides];
  return complain(context, "unknown-word", { typed: shown(typed), suggestion, choices: all });
}

const eitherWay = written.transform((typed, context): boolean => {
  if (/^(?:true|True|TRUE)$/u.test(typed)) return true;
  if (/^(?:false|False|FALSE)$/u.test(typed)) return false;
  const suggestion = /^(?:yes|on|y)$/iu.test(typed)
    ? "true"
    : /^(?:no|off|n)$/iu.test(typed)
      ? "false"
      : null;
  return complain(context, "unknown-word", {
    typed: shown(typed),
    suggestion,
    choices: ["true", "false"],
  });
});

/** YAML 1.2's `true` and `false`, in its three spellings. */
export const trueOrFalse = (description: string) => eitherWay.meta({ description, type: "boolean" });
