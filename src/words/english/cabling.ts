import type { MemberName } from "../../findings/finding.js";
import type { ConductorSize } from "../../standards/wire.js";
import type { WrittenAssumption, WrittenLeg } from "../way.js";
import { frame } from "./frame.js";

/** Words about cable: findings, the report, the cable schedule and the cable plan. */
export const cabling = {
  /** `AWG 14` or `2.5 mm²`. */
  size: (size: ConductorSize) => (size.kind === "gauge" ? `AWG ${size.gauge}` : `${size.areaMm2} mm²`),
  /** As the trade writes it: `AWG 14-2` or `2 × 2.5 mm²`. */
  cable: (size: ConductorSize, conductors: number) =>
    size.kind === "gauge" ? `AWG ${size.gauge}-${conductors}` : `${conductors} × ${size.areaMm2} mm²`,
  cables: (count: number) => (count === 1 ? "1 cable" : `${count} cables`),
  /** Behind the worst of several. */
  alike: (members: number) => (members === 1 ? "" : ` (${members} members alike)`),
  report: {
    title: "Cable",
    none: "no equipment is given, so no way is computed",
    columns: {
      speaker: "speaker",
      cut: "cut to",
      size: "size",
      loss: "loss",
      load: "of load",
      damping: "damping",
      bored: "bored",
      way: "way",
    },
    totals: (size: string, runs: number, length: string, spools: string) =>
      `${size}: ${runs === 1 ? "1 run" : `${runs} runs`}, ${length}; ${spools}`,
    spools: (count: number, length: string) =>
      count === 1 ? `1 spool of ${length}` : `${count} spools of ${length}`,
    tooLong: (speaker: string, length: string) => `${speaker}: ${length} is longer than any spool`,
    given: "given",
    unknown: "not known",
  },
  schedule: {
    title: "Cable schedule",
    use: "Use at ROUGH-IN: pull, label both ends, tick",
    lengths: (loop: string, rack: string, spare: string) =>
      `CUT TO is the way along the framing, ${loop} left at the loudspeaker, ${rack} left at the rack, and ${spare} on all of it.`,
    noEquipment: "No equipment is given, so no way is computed: write in what is pulled.",
    columns: {
      pulled: "Pulled",
      speaker: "To",
      amplifier: "Amplifier channel",
      cable: "Cable",
      cut: "Cut to",
      loss: "Loss, of load",
      bored: "Holes",
    },
    pull: {
      title: "What comes off which spool, in the order of pulling",
      spool: "Spool",
      of: "Of",
      runs: "Runs",
      left: "Left",
    },
    boring: {
      title: "Holes to bore",
      done: "Bored",
      members: "Through the middle of",
      bit: "Bit",
      cables: "Cables",
      limit: "Limit",
      ofMembers: (surface: string, kind: MemberName["kind"], numbers: readonly number[]) =>
        `${frame.surface(surface)}: ${MEMBERS[kind][numbers.length === 1 ? 0 : 1]} ${numbers.join(", ")}`,
      allowed: (most: string) => `at most ${most}`,
      tooLarge: (most: string) => `TOO LARGE: at most ${most}. Do not bore, see the findings`,
      byMaker: "DO NOT BORE but as its maker says",
      assumed: (diameters: string) =>
        `* For cable of ASSUMED diameter: ${diameters}. Measure the cable before you bore.`,
      nailPlate: "NAIL PLATES both sides (edge nearer than 1 1/4 in)",
      tie: "Steel TIE across the plate",
      source:
        "Joists IRC R502.8.1 and R802.7.1, studs R602.6, plates R602.6.1, nail plates NEC 300.4: editions to 2021. Studs count as bearing unless the room file says not. Your local code rules. 2 in between holes. Never in the same hole as mains cable.",
    },
  },
  plan: {
    title: "Cable plan",
    figures: "Cable plan: figures",
    use: "Ways of the cables, joists dashed, obstructions dotted. A ring is a loudspeaker, the square is the rack; cables along a wall run inside it.",
    rack: "RACK",
    inWall: "In walls cable runs up and down at the spots marked with a dot.",
  },
  /** What the room file leaves open, with what was taken for it. */
  assumed: (list: readonly WrittenAssumption[]) =>
    `ASSUMED, as the room file does not say: ${list.map(assumptionSaid).join("; ")}.`,
  /** The way from the equipment, leg by leg. */
  way: (legs: readonly WrittenLeg[]) => legs.map(legSaid).join("; "),
  bored: (count: number) => (count === 1 ? "1 hole" : `${count} holes`),
};

const MEMBERS: Readonly<Record<MemberName["kind"], readonly [one: string, many: string]>> = {
  joist: ["joist", "joists"],
  stud: ["stud", "studs"],
  "bottom-plate": ["bottom plate", "bottom plates"],
  "top-plate": ["top plate", "top plates"],
  "end-stud": ["end stud", "end studs"],
  blocking: ["block", "blocks"],
  beam: ["beam", "beams"],
  header: ["header", "headers"],
  rim: ["rim", "rims"],
  sill: ["sill", "sills"],
  "opening-stud": ["stud beside an opening", "studs beside an opening"],
  strap: ["strap", "straps"],
  channel: ["channel", "channels"],
};

const BETWEEN = { joist: "joists", stud: "studs" };

const DIRECTIONS: Readonly<Record<string, string>> = { ceiling: "up", floor: "down" };

function legSaid({
  surface,
  toward,
  length,
  crossed,
  between,
  isOver,
  unmeasured,
  step,
}: WrittenLeg): string {
  const parts = [
    ...(step === null ? [] : [`${step.isUp ? "up" : "down"} ${step.length} behind the face`]),
    `${frame.surface(surface)} ${DIRECTIONS[toward] ?? `toward ${frame.wall(toward)}`} ${length}`,
    ...(between === null ? [] : [`between ${BETWEEN[between.kind]} ${between.numbers.join(" and ")}`]),
    ...(crossed.length === 0 ? [] : [`through ${crossed.map(counted).join(" and ")}`]),
    ...(isOver ? ["over the joists"] : []),
    ...(unmeasured ? ["through framing that nobody has measured"] : []),
  ];
  return parts.join(", ");
}

const counted = ({ kind, count }: WrittenLeg["crossed"][number]): string =>
  `${count} ${MEMBERS[kind][count === 1 ? 0 : 1]}`;

function assumptionSaid({ what, figure }: WrittenAssumption): string {
  return {
    diameter: `cable ${figure} across, which the bits are chosen by`,
    loop: `${figure} left at the loudspeaker`,
    "rack-loop": `${figure} left at the rack`,
    spare: `${figure} spare`,
    gauges: `sizes at hand ${figure}`,
    "loss-limit": `at most ${figure} lost`,
    temperature: `copper at ${figure}`,
    "one-pair": `two conductors to ${figure}`,
    "nominal-impedance": `no less than the nominal impedance of ${figure}`,
    spools: `spools of ${figure}`,
  }[what];
}
