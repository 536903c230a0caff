import { z } from "zod";
import { isLumberName, LUMBER, LUMBER_NAMES } from "../../standards/lumber.js";
import { shown } from "../shown.js";
import { suggest } from "../suggest.js";
import { block, byName } from "./block.js";
import { complain } from "./complain.js";
import { CAVITY, MEMBER_SHIFT, MEMBER_SIDE, MOST_MEMBERS, SPACING, TAPE } from "./limits.js";
import { length, readQuantity, wholeNumber } from "./measures.js";
import { pieces, rims, roughOpenings } from "./structure.js";
import { reference, tapes } from "./tapes.js";
import { readWord, type Texts, trueOrFalse, word } from "./texts.js";

/** By its nominal name: the actual size. */
const lumber = z
  .string()
  .transform((typed, context) => {
    const name = typed
      .trim()
      .toLowerCase()
      .replaceAll(/\s*[x×]\s*/gu, "x");
    if (isLumberName(name)) return LUMBER[name];
    const suggestion = suggest(name, LUMBER_NAMES);
    return complain(context, "unknown-name", {
      of: "lumber",
      typed: shown(typed),
      suggestion,
      choices: LUMBER_NAMES,
    });
  })
  .meta({ description: "Nominal name of the lumber", enum: [...LUMBER_NAMES] });

const actualSize = block({
  width: length(MEMBER_SIDE, "Across its narrow face, along the surface"),
  depth: length(MEMBER_SIDE, "Behind the surface"),
}).transform(({ width, depth }) => ({ widthMm: width, depthMm: depth }));

const member = z.union([lumber, actualSize]).describe("A nominal lumber name, or the actual width and depth");

const cavity = z
  .union([word(["open"], "No bottom, as under an attic"), length(CAVITY, "Clear depth, measured")])
  .describe("Depth behind the framing face where it is not the member's own: open, or as measured");

const memberNumber = (description: string) => wholeNumber({ least: 1, most: MOST_MEMBERS, description });

/** Members that were found elsewhere than the layout says: one by its own tape, or a stretch of them moved alike. */
const found = (texts: Texts) => {
  const proof = {
    by: texts.short("Who found it"),
    on: texts.short("When, printed as it is given"),
  };
  const one = block({
    member: memberNumber("Its number, counted from the wall that the members are measured from"),
    at: length(TAPE, "Where it is, measured as the layout is"),
    ...proof,
  });
  const stretch = block({
    from: memberNumber("Number of the first"),
    to: memberNumber("Number of the last"),
    shift: length(
      MEMBER_SHIFT,
      "Further from the wall that the members are measured from; nearer with a minus",
    ),
    ...proof,
  });
  return z
    .array(z.union([one, stretch]))
    .min(1)
    .max(MOST_MEMBERS)
    .describe(
      "Members as found since, each counted from the layout as given; the last word on a member holds",
    );
};

const common = (texts: Texts) => ({
  member,
  from: z
    .union([
      reference("Wall that the members are measured from, along the surface"),
      tapes(
        "Corner that the members are measured from, square to themselves, such as { right: 0, front: 0 }, or a mark on a wall; all of them lie to one side of it",
      ),
    ])
    .describe("What the members are measured from: a wall that they run along, or a corner"),
  first: length(TAPE, "The first member").optional(),
  spacing: length(SPACING, "From one member to the next, centre to centre").optional(),
  at: z
    .array(length(TAPE, "One member"))
    .min(1)
    .max(MOST_MEMBERS)
    .describe("Members as found, each measured from the same wall")
    .optional(),
  mark: word(
    ["near-edge", "centre"],
    "Which line of a member the figures are to; its centre unless said",
  ).optional(),
  cavity: cavity.optional(),
  engineered: trueOrFalse(
    "I-joists, trusses or laminated members, which are bored only as their maker says; false unless said",
  ).optional(),
  found: found(texts).optional(),
  ...pieces,
});

const RUNS = ["left-right", "front-back", "along"] as const;

/** A word, or an angle: what begins as a figure is meant as one. */
const run = z
  .string()
  .transform((typed, context) =>
    /^[-+.\d]/u.test(typed)
      ? readQuantity(typed, context, { quantity: "deg", least: 0, most: 180 })
      : readWord(typed, context, { choices: RUNS, besides: "30 deg" }),
  )
  .meta({
    description:
      "Which way the members run: along, as the wall does that they are measured from; or, for members that lie along no wall, how far they are turned from left-right, the left end toward the front wall: 30 deg. On a slope the angle is measured on the slope itself",
    anyOf: [
      { type: "string", enum: [...RUNS] },
      { type: "string", pattern: "^\\d+(\\.\\d+)? ?(deg|°)$" },
      { type: "number", minimum: 0, maximum: 0 },
    ],
  });

const ceilingFraming = (texts: Texts) =>
  block({
    run,
    ...common(texts),
    ...rims,
  }).describe("Joists");

const plates = block({
  below: wholeNumber({ least: 0, most: 4, description: "Under the studs; 1 unless said" }).optional(),
  above: wholeNumber({ least: 0, most: 4, description: "Over the studs; 2 unless said" }).optional(),
  thickness: length(MEMBER_SIDE, `Of each; 1 1/2" unless said`).optional(),
}).describe("Plates of the wall");

const wallFraming = (texts: Texts) =>
  block({
    ...common(texts),
    plates: plates.optional(),
    end_studs: trueOrFalse("A stud at both ends of the wall; true unless said").optional(),
    bearing: trueOrFalse("An outside wall, or one that carries; true unless said").optional(),
    ...roughOpenings(texts),
  }).describe("Studs and plates of the wall");

/** Of a surface with a name of its own: whether it is a ceiling or a wall is known once the room stands. */
const namedFraming = (texts: Texts) =>
  block({
    run: run.optional(),
    ...common(texts),
    plates: plates.optional(),
    end_studs: trueOrFalse("A stud at both ends of the wall; true unless said").optional(),
    bearing: trueOrFalse("An outside wall, or one that carries; true unless said").optional(),
    ...rims,
    ...roughOpenings(texts),
  }).describe("Joists of a ceiling, or studs and plates of a wall");

export const framingSchema = (texts: Texts) =>
  byName(
    {
      ceiling: ceilingFraming(texts).optional(),
      left: wallFraming(texts).optional(),
      right: wallFraming(texts).optional(),
      front: wallFraming(texts).optional(),
      back: wallFraming(texts).optional(),
    },
    namedFraming(texts),
  ).describe("Members' centres by surface; a surface without an entry is unknown framing");

/** The framing of any surface; which keys belong to it, its kind says. */
export type FramingFile = z.output<ReturnType<typeof namedFraming>>;
export type FoundFile = NonNullable<FramingFile["found"]>[number];
