import type { Finding } from "../findings/finding.js";
import type { Mismatched, Placing, Unplaced } from "../place/place.js";
import type { Room, Speaker } from "../room/room.js";

/** What stands on loudspeakers that ask for their best place. */
export function placingFindings({ placed, unplaced, mismatched }: Placing): Finding[] {
  return [
    ...unplaced.map(notPlaced),
    ...mismatched.map(notMatched),
    ...placed.map(({ mounted }) => notFrozen(mounted.speaker)),
  ];
}

/** Areas that are to be filled and for which no loudspeaker stands in the file. */
export function areasNotPlaced({ areas, speakers }: Room): Finding[] {
  const filled = new Set(speakers.map(({ area }) => area));
  return areas
    .filter(({ name }) => !filled.has(name))
    .map(({ name, path }) => ({
      code: "area-not-placed",
      level: "warning",
      figures: { area: name },
      speaker: null,
      surface: null,
      path,
      fix: null,
      accepted: null,
    }));
}

const aboutKey = ({ id, surface, path }: Speaker, key: "at" | "mirror") => ({
  speaker: id,
  surface,
  path: [...path, key],
  fix: null,
  accepted: null,
});

function notPlaced({ speaker, because }: Unplaced): Finding {
  const { surface, position } = speaker;
  const about = aboutKey(speaker, "at");
  if (because === "framing-unknown") {
    const figures = { surface, beyondMeasured: false };
    return { ...about, code: "framing-unknown", level: "error", figures };
  }
  const isHeld = position.kind === "best" && position.hold.length > 0;
  const level = because === "no-direction" ? "warning" : "error";
  return { ...about, code: "not-placed-yet", level, figures: { surface, because, isHeld } };
}

const notMatched = ({ speaker, partner, because }: Mismatched): Finding => ({
  ...aboutKey(speaker, "mirror"),
  code: "pair-not-matched",
  level: "warning",
  figures: { other: partner, because },
});

/** It may move with anything else in the file until it is written into it. */
const notFrozen = (speaker: Speaker): Finding => ({
  ...aboutKey(speaker, "at"),
  code: "computed-not-frozen",
  level: "note",
  figures: {},
});
