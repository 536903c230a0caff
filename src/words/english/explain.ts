import {
  AZIMUTH_COMPARED_TO_DEG,
  SECOND_SUPPORT_FROM_KG,
  USUAL_JOINT_DEG,
  USUAL_TOLERANCE_DEG,
} from "../../standards/house-limits.js";
import type { ExplainPages } from "../phrases.js";

/** What each finding means, why it matters, where its limit comes from and how to fix it. */
export const explain: ExplainPages = {
  "opening-cuts-member": {
    meaning: "the cut line goes into a joist, a stud, a plate, blocking, or a strap or channel under them",
    matters:
      "the saw would weaken or sever what carries the ceiling or wall. An opening for a loudspeaker is never a bored hole: it is far larger than any hole that is allowed. A strap or a resilient channel carries the board, and its place can be chosen while it is not yet up (common practice, no source).",
    limit:
      "distance 0 from the opening's edge to the member's edge, in the framing plane. Joists: International Residential Code R502.8.1 (a hole at most a third of the depth, 2 in from both edges); studs R602.6; top plates R602.6.1; trusses, I-joists and laminated members only by their maker's rules (R502.8.2). The local code prevails.",
    fix: "move the opening to the clear centre that the finding names, or take a smaller loudspeaker. If the member is not where the file says, measure it and write it under `framing`. Never notch it.",
  },
  "opening-near-member": {
    meaning: "the clamps can swing, but the member is nearer than the gap that was asked for",
    matters:
      "framing is seldom exactly where it was measured, and saws wander: with nothing to spare a clamp may catch the member after all.",
    limit:
      "the clamps' reach from the maker's data sheet plus `checks: { clear: ... }` of the room file, 1/4\" where nothing is said. That 1/4\" is our own choice; many installers ask for 1 in in all (common practice).",
    fix: "move the opening to the clear centre that the finding names, or measure the member where it is, and accept the warning with a reason.",
  },
  "clamps-blocked": {
    meaning: "a member is so near to the opening that the clamps cannot swing out behind the board",
    matters:
      "a clamp that does not grip leaves the loudspeaker hanging loose or tilted, and a blocked one breaks when it is screwed tight.",
    limit: "how far the clamps swing past the opening's edge: `clamp_reach`, from the maker's data sheet.",
    fix: "move the opening to the clear centre that the finding names, or take a loudspeaker that is held another way.",
  },
  "too-deep": {
    meaning: "the loudspeaker needs more depth behind the finished face than there is",
    matters:
      "it would stand proud of the board or press on what is behind it; nobody sees that before the hole is cut.",
    limit:
      "the maker's `depth` against the cavity (the member's depth, unless `cavity:` says otherwise) and the board before it. Actual sizes of lumber: American Softwood Lumber Standard PS 20.",
    fix: "take a shallower loudspeaker or another surface. Under an open attic write `cavity: open`; where the depth was measured write it under `cavity:`.",
  },
  "opening-meets-obstruction": {
    meaning:
      "the opening goes into something that is listed under `obstructions`, or comes nearer than it may",
    matters:
      "ducts, pipes, cables and lights behind the board are cut, crushed or overheated, or the clamps strike them.",
    limit:
      "the larger of the obstruction's own `keep` and the clamps' reach with `checks: { clear: ... }`. What starts `behind` the framing face counts only for hardware deeper than that and the board. All of it comes from the room file.",
    fix: "move the opening to the clear centre that the finding names, or have the obstruction moved, and measure it again.",
  },
  "opening-outside-surface": {
    meaning: "the flange or the opening reaches past the finished edge of its wall or ceiling",
    matters:
      "the flange meets the next wall's board, so that it cannot lie flat and the trim does not go on.",
    limit:
      "the outline between finished faces, which is smaller than the framing by the board on the walls beside it. At the edge itself passes.",
    fix: "look for a slip in the tapes first; then move the opening to the clear centre that the finding names.",
  },
  "openings-too-close": {
    meaning: "two openings are so near to each other that their flanges or their clamps meet",
    matters:
      "the strip of board between them breaks, the flanges lie on each other, or the clamps lock against each other.",
    limit:
      "flanges do not overlap; between the openings both clamps' reach and `checks: { clear: ... }` fit. Openings that overlap are an error.",
    fix: "move one of them to the clear centre that the finding names.",
  },
  "framing-unknown": {
    meaning: "nobody has said where the members are behind this opening",
    matters: "a joist in the hole is the most frequent mistake of all, and the dearest.",
    limit:
      "our own rule: unknown is never taken for clear. Past the last member of an `at:` list the framing is unknown too.",
    fix: "find the members (bare framing, a stud finder, a small test hole), measure their centres from a named wall and write them under `framing`.",
  },
  "framing-assumed": {
    meaning:
      "the places of members, straps or channels are worked out from a first mark and a spacing; nobody has measured them",
    matters: "layouts drift and joists are moved for pipes; the sheets print these members as ASSUMED.",
    limit: "our own rule: only centres given one by one, under `at:`, count as measured.",
    fix: "before anything is cut measure the members beside each opening, write the centres under `at:` and print again.",
  },
  "straps-unknown": {
    meaning:
      "strapping or resilient channel is given by its depth alone, so that nothing is checked against it",
    matters:
      "a strap that is cut lets the board sag beside the opening; a resilient channel that is cut or screwed through no longer keeps sound out.",
    limit: "our own rule: unknown is never taken for clear. Common practice, no source.",
    fix: "write where they stand: `strapping: { depth: ..., width: ..., from: ..., first: ..., spacing: ... }`, or `at: [...]` as found. Where somebody looks before each cut, accept the warning with that as the reason.",
  },
  "joint-through-opening": {
    meaning: "two sheets of board meet inside the opening or at its edge",
    matters:
      "the board is weak there: the cut edge crumbles, the tape comes off, and clamps pull two sheets apart unevenly.",
    limit: `any joint that the opening's edge reaches, by the sheets' size and first joint that the file gives. Common practice, no source. A best place keeps off joints where that costs less than \`checks: { joint: ... }\`, ${USUAL_JOINT_DEG} degrees where nothing is said (our own choice).`,
    fix: "move the opening to the centre that the finding names, which lies off every joint, or hang the sheets so that no joint falls there.",
  },
  "edge-given-as-centre": {
    meaning: "the first member is given by its centre, at a figure where its near edge usually is",
    matters:
      'framers strike a layout to the near edge: 15 1/4" is the edge of a member whose centre is at 16". Taken for the centre, every member is off by half its width.',
    limit: "a usual spacing less half the member's width (common practice, no source).",
    fix: "if the figure is to the edge, add `mark: near-edge`; if it is the centre, leave it: the note stays and does no harm.",
  },
  "board-out-of-clamp-range": {
    meaning: "the board is thinner or thicker than the loudspeaker's clamps hold",
    matters: "the clamps do not reach the board or do not close on it: nothing holds the loudspeaker.",
    limit:
      "`board_range` from the maker's data sheet, against the thickness of all layers together under `board:`.",
    fix: "check the thickness of board; then take another loudspeaker or the maker's longer clamps.",
  },
  "aim-undefined": {
    meaning:
      "the target is straight in front of the loudspeaker, so that no direction is better to turn it to",
    matters:
      "an arrow on the sheet would only mislead; the tilt turns the sound away whichever way it points.",
    limit: "less than 1 degree between the surface's normal and the line to the target; our own choice.",
    fix: "take a straight loudspeaker there, move the opening, or give another target under `aim:`.",
  },
  "aim-past-tilt": {
    meaning:
      "even turned toward its target the loudspeaker sends its sound past it: the target lies outside the coverage",
    matters:
      "high tones are lost at the seat first; turning a tilted loudspeaker the wrong way costs tens of degrees.",
    limit:
      "half of `coverage` from the maker's data sheet, the full angle between the points that are 6 dB down, against the angle between the axis and the line to the target.",
    fix: "move the opening so that the target is nearer to its axis, take more tilt or a wider coverage, or give a rectangular one another `turn`.",
  },
  "rated-assembly": {
    meaning: "the surface holds fire or sound back, and a hole in it undoes that",
    matters:
      "a rated ceiling or wall buys people the time to get out. This tool flags such a surface; it never certifies one.",
    limit:
      "International Residential Code R302.4.2, from memory: what goes through a rated membrane is listed for it or stands in a listed enclosure; no opening for a loudspeaker is as small as the boxes that the code lets off. The local code and the authority having jurisdiction prevail.",
    fix: "put a listed enclosure behind each opening and write `enclosure: true` for the surface, or use another surface.",
  },
  "needs-second-support": {
    meaning: "a heavy loudspeaker overhead is held by nothing but its clamps and the board",
    matters: "board sags, gets wet and lets go; what falls from a ceiling falls on people.",
    limit: `${SECOND_SUPPORT_FROM_KG} kg and more; our own choice: no clause demands a second support in a home, good practice does.`,
    fix: "tie it to a joist by its own wire or chain and write `second_support: true` for the surface.",
  },
  "channel-missing": {
    meaning: "the layout has a channel that no loudspeaker of the room is given",
    matters:
      "what is mixed for that place is heard from others, or not at all; cable is cheap before the board is up.",
    limit:
      "the ten loudspeaker systems of ITU-R BS.2051 (edition -2, July 2018). Low-frequency effects are not counted: they need no opening.",
    fix: "add the loudspeaker, or write under `layout` the system that is meant. If it stands free and needs no opening, accept the warning with that as the reason.",
  },
  "channel-twice": {
    meaning: "two loudspeakers are given the same channel",
    matters:
      "most often it is a slip, such as left for right, and then another channel has none; the labels on both cables would say the same.",
    limit: "our own rule: one loudspeaker a channel. Low-frequency effects are left out.",
    fix: "correct the channel of one of them. Where two share a channel on purpose, accept the warning with that as the reason.",
  },
  "channel-not-in-layout": {
    meaning: "the loudspeaker's channel is none of the layout's",
    matters: "the layout does not say where it belongs, so that its direction cannot be checked.",
    limit: "the ten loudspeaker systems of ITU-R BS.2051 (edition -2, July 2018).",
    fix: "correct the channel, or write under `layout` the system that is meant.",
  },
  "outside-window": {
    meaning: "seen from the reference seat the loudspeaker stands in another direction than its channel may",
    matters:
      "what is mixed to be heard from one place is heard from another; the ear notices most in front, and between left and right.",
    limit: `the ranges of ITU-R BS.2051 (edition -2, July 2018). Where that fixes one value the room file's \`checks: { tolerance: ... }\` is allowed either side, ${USUAL_TOLERANCE_DEG} degrees where nothing is said: that is our own choice. Azimuth counts to the left, and is not compared above ${AZIMUTH_COMPARED_TO_DEG} degrees of elevation (our own choice too).`,
    fix: "move the opening, or write `at: best`, and the nearest clear place to the standard's direction is found. Where the room does not allow better, accept the warning with the reason.",
  },
  "not-placed-yet": {
    meaning:
      "the file asks for the best position with `at: best`, and there is none, or it was not looked for because the room asks for too many among too much",
    matters: "nothing can be marked or cut for this loudspeaker; its cable labels are printed all the same.",
    limit:
      "clear means away from every member, obstruction, edge and other opening by what each asks for; a position counts if a tape can show it. Low-frequency effects have no direction in ITU-R BS.2051 to place them by. How much a run looks through is our own choice: hundreds of positions in a hall, fewer where hundreds of corners and obstructions stand among them.",
    fix: "take a smaller loudspeaker or another surface, hold another tape or none under `hold`, ask for less under `checks: { clear: ... }`, or give two tapes under `at`, such as `at: { left: 4' 6\", front: 6' }`.",
  },
  "pair-not-matched": {
    meaning: "the loudspeaker is not where its partner under `mirror` is mirrored to",
    matters: "a pair that is not alike on both sides is seen, and heard from the seat between them.",
    limit:
      "our own rule: overhead and on front and back walls the mirror image about the reference seat, on side walls as far from the front wall and as high; exact but for what marks on a tape round.",
    fix: "see what stands in the way on one side only, with `baymark place`; move it, or leave out `mirror` and let each have its own best position.",
  },
  "computed-not-frozen": {
    meaning: "the position was found while the file was read and stands in no file yet",
    matters:
      "whatever changes in the file may move it; paper that was printed before then shows another place than paper printed after.",
    limit: "our own rule: sheets of such positions are stamped COMPUTED, NOT FROZEN.",
    fix: "look at what `baymark place` prints; then let `baymark place --write` put the positions into the file, before anything is marked.",
  },
  "area-not-placed": {
    meaning: "an area under `areas` has no loudspeakers in the file yet",
    matters:
      "none of its openings is on any sheet: whoever works from this packet leaves the whole area without sound.",
    limit:
      "our own rule: loudspeakers that fill an area stand under `speakers`, each with its `area`, before they are printed.",
    fix: "look at what `baymark place` prints; then let `baymark place --write` put its loudspeakers into the file. To fill an area anew, take its loudspeakers out of the file first.",
  },
  "cable-too-thin": {
    meaning: "the cable of a run has so much resistance that more than is allowed is lost in it",
    matters:
      "the loudspeaker plays softer than its partners, its frequency response follows its impedance, and the wire takes power that was meant for it.",
    limit:
      "the room file's `cable: { loss: ... }`; where nothing is said, 5 % of the load's impedance (0.42 dB), the figure of the widely printed tables. Resistance: ASTM B258 for gauges, IEC 60228 class 5 maxima for cross-sections, copper's temperature coefficient of IEC 60028; the load is the model's `minimum_impedance`, else its `impedance`.",
    fix: "take a thicker cable, a shorter way, or four conductors with `wiring: doubled`; or allow more loss.",
  },
  "cable-without-way": {
    meaning: "everything that cable may lie in between the equipment and the loudspeaker is shut off",
    matters: "without a way there is neither length nor gauge, and on site somebody finds one by guess.",
    limit:
      "our own rule: cable goes up stud bays, across or along joists, up and down behind the face between ceilings of different height (past no ridge), with square turns, round obstructions with their `keep` distance, round `avoid` areas and round other openings.",
    fix: "correct the obstruction or the `avoid` area that shuts it off, or say how deep behind the face it starts (`behind`), since cable passes in front of what starts deep enough.",
  },
  "cables-not-looked-for": {
    meaning: "to find the ways of the cables would take longer than anybody waits, so none was looked for",
    matters: "without a way there is neither length nor gauge, and no hole in the framing is checked.",
    limit:
      "our own choice, by what there is to look at and never by the clock, so that a file has one answer on every machine: 500 loudspeakers in a hall with 250 obstructions are well within it.",
    fix: "give parts of the room files of their own, leave out obstructions that stand so deep behind the face that cable passes in front of them (or say so with `behind`), and look whether a list was copied too often. Without `equipment` nothing is said of cable at all.",
  },
  "centres-not-looked-for": {
    meaning:
      "for some openings that cannot stay where they are, the nearest clear centre was not looked for: with all others it would take longer than anybody waits",
    matters: "what is told of those openings holds; only the place to move them to is missing.",
    limit:
      "our own choice, by what there is to look at and never by the clock, so that a file has one answer on every machine: a hall of 400 loudspeakers, all of them on joists, is within it.",
    fix: "move the openings that have a clear centre told, then check again. Where hundreds stand on framing, look first whether the first mark of the framing is right.",
  },
  "bored-hole-too-large": {
    meaning: "the cables that pass a joist or a stud together need a larger hole than the code allows in it",
    matters: "a member that is bored too far carries less, and an inspector has it replaced.",
    limit:
      "International Residential Code, editions to 2021. Joists (R502.8.1, R802.7.1): a third of the depth, and 2 in of wood over, under and between holes. Studs (R602.6): 40 % of the width in walls that stand outside or carry, 60 % in others (`bearing: false`), the edge 5/8 in from the stud's. The hole is the one that the bundle fills to 53, 31 or 40 % (one, two or more cables; NEC Chapter 9, Table 1, from memory), up to the next 1/8 in. The local code and the authority having jurisdiction prevail.",
    fix: "part the bundle over several holes as the finding says, give the cable's measured diameter (`labels: { cable_diameter: ... }`), or lead it another way with `via` and `avoid`.",
  },
  "engineered-member-bored": {
    meaning: "the way passes through an I-joist, a truss, a laminated member, a beam or a header",
    matters: "such a member carries by its form; a hole in the wrong place can break it.",
    limit:
      "International Residential Code R502.8.2 and R802.7.2: no cut, notch or hole but by the maker's rules or an engineer's. This tool knows none of these and never calls such a hole allowed.",
    fix: "look the hole up in the maker's table and accept the warning with what it says as the reason, or lead the cable along the members with `via` and `avoid`.",
  },
  "accept-matches-nothing": {
    meaning: "an entry under `accept` speaks of a finding that does not stand, or that cannot be accepted",
    matters:
      "an acceptance left behind would hide the next finding of its kind; and an error is never accepted away.",
    limit: "our own rule: `accept` is for warnings, one reason each, and it leaves the level as it is.",
    fix: "delete the entry, or correct its `code` or `speaker`; for an error mend its cause.",
  },
};
