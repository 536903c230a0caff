import type { MemberName, OtherWay } from "../../findings/finding.js";
import type { Measure } from "../measure.js";
import type { Phrases, WrittenTape } from "../phrases.js";
import { cabling } from "./cabling.js";
import { frame } from "./frame.js";

const MEMBERS: Readonly<Record<MemberName["kind"], string>> = {
  joist: "joist",
  stud: "stud",
  "bottom-plate": "bottom plate",
  "top-plate": "top plate",
  "end-stud": "end stud",
  blocking: "blocking",
  beam: "beam",
  header: "header",
  rim: "rim",
  sill: "sill",
  "opening-stud": "stud beside the door or window",
  strap: "strap",
  channel: "channel",
};

const member = ({ kind, number }: MemberName): string => `${MEMBERS[kind]} ${number}`;

const phrase: Phrases = {
  "opening-cuts-member": (cut, measure) =>
    "others" in cut
      ? `the opening cuts other members as well; how many more: ${cut.others}`
      : `the opening cuts ${member(cut.member)} by ${measure.length(cut.byMm)}`,
  "opening-near-member": (near, measure) => {
    const [gap, wanted] = measure.lengths(near.gapMm, near.wantedMm);
    return `the opening is ${gap} from ${member(near.member)}; ${wanted} is asked for`;
  },
  "clamps-blocked": (blocked, measure) => {
    const [gap, reach] = measure.lengths(blocked.gapMm, blocked.reachMm);
    return `the clamps reach ${reach} and cannot swing: ${member(blocked.member)} is ${gap} from the opening`;
  },
  "too-deep": (deep, measure) => {
    const [needed, available] = measure.lengths(deep.neededMm, deep.availableMm);
    const cavity = measure.length(deep.memberDepthMm);
    return `needs ${needed} behind the finished face, and there are ${available}: cavity ${cavity}, board ${measure.length(deep.boardMm)}`;
  },
  "opening-meets-obstruction": (met, measure) => {
    if ("others" in met) {
      return `the opening is in or too near to other obstructions as well; how many more: ${met.others}`;
    }
    const behind = met.behindMm === null ? "" : ` (${measure.length(met.behindMm)} behind the framing face)`;
    const name = `${met.obstruction}${behind}`;
    const [distance, wanted] = measure.lengths(met.distanceMm, met.wantedMm);
    if (met.distanceMm < 0) return `the opening goes ${measure.length(-met.distanceMm)} into ${name}`;
    return `the opening is ${distance} from ${name}; keep ${wanted} away`;
  },
  "opening-outside-surface": (outside, measure) =>
    `reaches ${measure.length(outside.byMm)} past the finished edge at ${frame.wall(outside.edge)}`,
  "openings-too-close": (close, measure) => {
    if ("others" in close) {
      const overlapping = close.errors === 0 ? "" : `; openings that overlap: ${close.errors}`;
      return `is too near to others as well; how many more: ${close.others}${overlapping}`;
    }
    const between = { openings: "the opening", flanges: "the flange" }[close.edges];
    if (close.distanceMm < 0) {
      return `${between} overlaps that of ${close.other} by ${measure.length(-close.distanceMm)}`;
    }
    const [distance, wanted] = measure.lengths(close.distanceMm, close.wantedMm);
    return `${between} is ${distance} from that of ${close.other}; ${wanted} is asked for`;
  },
  "framing-unknown": (unknown) =>
    unknown.beyondMeasured
      ? `stands past the last member measured on the ${frame.surface(unknown.surface)}: what is there is unknown`
      : `the framing of the ${frame.surface(unknown.surface)} is unknown: find and measure it before anything is cut`,
  "framing-assumed": (assumed, measure) =>
    `${frame.surface(assumed.surface)}: ${{ members: "framing is", strap: "straps are", channel: "channels are" }[assumed.of]} assumed, not measured: first centre ${measure.length(assumed.firstMm)} from ${frame.wall(assumed.from)}, then every ${measure.length(assumed.spacingMm)}`,
  "straps-unknown": (straps, measure) =>
    `${frame.surface(straps.surface)}: straps or channels of ${measure.length(straps.depthMm)} hold the board, and nobody has said where they stand: an opening may cut one`,
  "joint-through-opening": (through, measure) =>
    `the opening lies over a joint of the board (${through.joint === "long" ? "between the long sides of two sheets" : "between the ends of two sheets"}), ${measure.length(through.offCentreMm)} from its centre`,
  "edge-given-as-centre": (edge, measure) =>
    `${frame.surface(edge.surface)}: the first centre is given as ${measure.length(edge.givenMm)}, which is where the near edge usually is; its centre would be ${measure.length(edge.centreIfEdgeMm)}`,
  "board-out-of-clamp-range": (board, measure) =>
    `the board is ${measure.length(board.boardMm)} thick; the clamps hold ${measure.length(board.leastMm)} to ${measure.length(board.mostMm)}`,
  "aim-undefined": (aim) =>
    `stands square to ${aim.target}: no way to turn it is better than another, so no arrow is printed`,
  "aim-past-tilt": (aim, measure) => {
    const [offAxis, limit] = measure.angles(aim.offAxisDeg, aim.limitDeg);
    return `${aim.target} is ${offAxis} off its axis; its coverage reaches ${limit}`;
  },
  "rated-assembly": (rated) =>
    rated.enclosure
      ? `${frame.surface(rated.surface)} is rated: every opening needs its listed enclosure in place first`
      : `${frame.surface(rated.surface)} is rated and no enclosure is given: no opening may be cut`,
  "needs-second-support": (support, measure) =>
    `weighs ${measure.weight(support.weightKg)} overhead: hang it from a second support, not from clamps and board alone`,
  "channel-missing": (missing) => `${missing.layout} has ${missing.channel}, and no loudspeaker is given it`,
  "channel-twice": (twice) => `its channel ${twice.channel} is that of ${twice.other} already`,
  "channel-not-in-layout": (stray) => `its channel ${stray.channel} is none of ${stray.layout}`,
  "outside-window": (outside, measure) => {
    const [is, nearest] = measure.angles(outside.isDeg, outside.nearestDeg);
    const tolerance =
      outside.toleranceDeg === 0 ? "" : `, ${measure.angle(outside.toleranceDeg)} of tolerance taken in`;
    return `${outside.figure} ${is} is ${measure.angle(outside.byDeg)} outside the window of ${outside.channel}; nearest allowed is ${nearest}${tolerance}`;
  },
  "not-placed-yet": (asked) => {
    if (asked.because === "no-direction") {
      return "asks for its best position, and low-frequency effects have no direction to place them by: give two tapes under `at`";
    }
    if (asked.because === "not-looked-for") {
      return "its best position was not looked for: the room asks for more than one run looks through; `baymark place --write` writes those that are found, then check again for more, or give two tapes under `at`";
    }
    const where = frame.surface(asked.surface);
    if (asked.because === "no-tapes") {
      return `no position: of the walls that the ${where} can be taped from no two stand across each other; a slope is taped from those that it meets, so let its outline reach one more`;
    }
    return asked.isHeld
      ? `no position: nothing is clear on the ${where} along the tapes that \`hold\` fixes`
      : `no position: nothing is clear for it on the ${where}`;
  },
  "pair-not-matched": (pair) => {
    const reason = {
      surfaces: "their surfaces have no places that match",
      "partner-taken": `${pair.other} is matched with another`,
      "partner-nowhere": `${pair.other} has no position`,
      "nothing-clear": "no two places that match are both clear",
    }[pair.because];
    return `is not matched with ${pair.other}: ${reason}`;
  },
  "computed-not-frozen": () =>
    "position computed, not frozen: it may move with whatever changes in the file; `baymark place --write` writes it there",
  "cable-too-thin": (thin, measure) => {
    const enough = thin.enough === null ? "none at hand does" : `${cabling.size(thin.enough)} would do`;
    return `${cabling.size(thin.size)} loses ${thin.lossDb.toFixed(2)} dB over ${measure.length(thin.lengthMm)}; ${thin.limitDb.toFixed(2)} dB is allowed: ${enough}`;
  },
  "cable-without-way": () =>
    "no way for its cable: everything between the equipment and it is shut off; name points under `via`, or clear the way",
  "cables-not-looked-for": ({ cables }) =>
    `no way was looked for, for any of the ${cables} cables: among so many corners, members and obstructions they come to more than one run looks through; give parts of the room files of their own, or take out what no cable goes round`,
  "bored-hole-too-large": (hole, measure) => {
    const [is, most] = measure.lengths(hole.holeMm, hole.mostMm);
    const allowed = hole.mostMm > 0 ? `${most} is the most` : "it may have none";
    return `${frame.surface(hole.member.surface)}: ${cabling.cables(hole.cables)} through ${member(hole.member)} take a hole of ${is}, and ${allowed}${cabling.alike(hole.members)}. ${otherWay(hole.another, measure)}`;
  },
  "engineered-member-bored": (hole) =>
    `${frame.surface(hole.member.surface)}: cable passes through ${member(hole.member)}, which is not bored but as its maker or an engineer says${cabling.alike(hole.members)}`,
  "centres-not-looked-for": ({ openings }) =>
    `no nearest clear centre was looked for any more, for ${openings === 1 ? "1 opening" : `${openings} openings`}: there is too much to look at in one run; move those that have one told, then check again`,
  "area-not-placed": (asked) =>
    `${asked.area} is not filled yet, so none of its openings is printed: \`baymark place --write\` places its loudspeakers`,
  "accept-matches-nothing": (accept) =>
    accept.because === "not-a-warning"
      ? `\`accept: ${accept.accepted}\` changes nothing: only a warning can be accepted, and this is none`
      : `\`accept: ${accept.accepted}\` changes nothing: there is no such finding`,
};

function otherWay(another: OtherWay | null, measure: Measure): string {
  if (another === null) return "No other way was found: lead the cable elsewhere with `via`";
  return another.kind === "parted"
    ? `Instead: ${another.holes} holes of ${measure.length(another.eachMm)}, ${measure.length(another.apartMm)} apart at least`
    : `Instead: another way that bores none of them, at most ${measure.length(another.longerMm)} longer`;
}

const tape = ({ length, from }: WrittenTape): string => `${length} from ${frame.wall(from)}`;

/** Findings as a person on a ladder reads them. */
export const findings = {
  phrase,
  member,
  /** Where the nearest clear centre is. */
  nearestClear: (tapes: readonly WrittenTape[]) => `nearest clear centre: ${tapes.map(tape).join(", ")}`,
};
