import * as z from "zod";
import { isLumberName, LUMBER, LUMBER_NAMES } from "../../standards/lumber.js";
import type { Web } from "../room.js";
import { shown } from "../shown.js";
import { suggest } from "../suggest.js";
import { block, byName } from "./block.js";
import { complain } from "./complain.js";
import { layout, runOn } from "./layout.js";
import { CAVITY, MEMBER_SHIFT, MEMBER_SIDE, MOST_MEMBERS, TAPE } from "./limits.js";
import { length, wholeNumber } from "./measures.js";
import { pieces, rims, roughOpenings } from "./structure.js";
import { type Texts, trueOrFalse, word } from "./texts.js";
import { written } from "./written.js";

/** By its nominal name: the actual size. */
const lumber = written
  .transform((typed, context) => {
    const name = typed
      .trim()
      .toLowerCase()
      .replaceAll(/\s*[x×]\s*/gu, "x");
    if (isLumberName(name)) return { ...LUMBER[name], web: null };
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
}).transform(({ width, depth }) => ({ widthMm: width, depthMm: depth, web: null }));

const openWeb = word(["open"], "Of a truss: cable passes between its webs").transform(
  (): Web => ({ kind: "open" }),
);
const solidWeb = length(MEMBER_SIDE, "Its thickness").transform((mm): Web => ({ kind: "solid", mm }));

/**
 * An I-joist or a truss. The flange is the widest part of it and lies at the board, so that an opening which keeps from
 * the flange keeps from the web over it too, however deep the loudspeaker.
 */
const flanged = block({
  flange: length(
    MEMBER_SIDE,
    "Across its flange, or a truss's chord, along the surface: what meets the board, and what openings keep from",
  ),
  web: z.union([openWeb, solidWeb]).describe("Thickness of its web, or open as in a truss"),
  depth: length(MEMBER_SIDE, "All of it behind the surface, both flanges too"),
}).transform(({ flange, web, depth }, context) => {
  if (web.kind === "open" || web.mm < flange) return { widthMm: flange, depthMm: depth, web };
  return complain(context, "web-over-flange", { webMm: web.mm, flangeMm: flange });
});

const member = z
  .union([lumber, actualSize, flanged])
  .describe(
    "A nominal lumber name; the actual width and depth; or flange, web and depth of an I-joist or a truss",
  );

const cavity = z
  .union([word(["open"], "No bottom, as under an attic"), length(CAVITY, "Clear depth, measured")])
  .describe("Depth behind the framing face where it is not the member's own: open, or as measured");

const memberNumber = (description: string) => wholeNumber({ least: 1, most: MOST_MEMBERS, description });

/**
 * Members that were found elsewhere than the layout says: one by its own tape, or a stretch of them moved alike; and
 * ones that are not there at all, or that stand there besides.
 */
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
  const missing = block({
    missing: memberNumber("Number of one that is not there, counted from the same wall"),
    ...proof,
  });
  const extra = block({
    extra: length(
      TAPE,
      "Where one stands that the layout does not have, measured as the layout is; its number follows the layout's last",
    ),
    ...proof,
  });
  return z
    .array(z.union([one, stretch, missing, extra]))
    .min(1)
    .max(MOST_MEMBERS)
    .describe(
      "Members as found since, each counted from the layout as given; the last word on a member holds",
    );
};

const common = (texts: Texts) => ({
  member,
  ...layout,
  cavity: cavity.optional(),
  engineered: trueOrFalse(
    "I-joists, trusses or laminated members, which are bored only as their maker says; false unless said, true where `member` has a flange",
  ).optional(),
  found: found(texts).optional(),
  ...pieces,
});

const run = runOn(
  "Which way the members run: along, as the wall does that they are measured from; or, for members that lie along no wall, how far they are turned from left-right, the left end toward the front wall: 30 deg. On a slope the angle is measured on the slope itself",
);

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
