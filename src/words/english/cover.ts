import type { Level } from "../../findings/finding.js";

const LEVELS: Readonly<Record<Level, string>> = { error: "ERROR", warning: "WARNING", note: "NOTE" };

/** Words of the cover; the cautions also stand beside the step that they belong to. */
export const cover = {
  title: "Cover",
  facts: {
    file: "Room file",
    fileWas: (name: string, digits: string) => `${name} (${digits})`,
    tapes: "Tapes in it hook on",
    faces: { framing: "framing faces", finish: "finished faces" },
    system: "Layout (ITU-R BS.2051)",
    call: "Does not fit? Stop, call",
  },
  stopped: (stopped: number, of: number) => `DO NOT CUT: ${stopped} of ${of} openings`,
  clear: (openings: number) => `${openings === 1 ? "1 opening" : `${openings} openings`} to cut`,
  count: {
    heading: "COUNT",
    where: "Where",
    openings: "Openings",
    ids: "Which",
    counted: "Counted, initials",
    room: "IN THE ROOM",
    unplaced: (ids: string) => `No position yet, on no sheet to cut by: ${ids}`,
  },
  /** Sheets of a trade; behind each stand the number where it begins and how many pages (p.) it has. */
  sheets: {
    heading: "SHEETS: the number where each begins, and its pages",
    drywall: (pages: number) => `DRYWALL CREW, drywall.pdf: ${pages} p.`,
    installer: (pages: number) => `INSTALLER, installer.pdf: ${pages} p.`,
    labels: (pages: number) => `LABEL STOCK, labels.pdf: ${pages} p.`,
  },
  findings: {
    heading: "FINDINGS STILL OPEN",
    none: "None.",
    accepted: (why: string) => `Accepted: ${why}`,
    /** How grave one is, and where in the room file. */
    at: (level: Level, line: number) => `${LEVELS[level]}, line ${line}`,
  },
  cautionsHeading: "CAUTIONS",
  cautions: {
    look: {
      word: "LOOK FIRST",
      line: "Cables, pipes and ducts hide behind the board: look before every cut.",
    },
    structure: {
      word: "NO STRUCTURE",
      line: "Never cut, notch or over-bore a joist, stud, plate or beam.",
    },
    engineered: { word: "TRUSS, I-JOIST", line: "Only by its maker's rules." },
    rated: {
      word: "FIRE, SOUND",
      line: "A fire-rated or sound-rated ceiling or wall needs a listed enclosure.",
    },
    power: { word: "POWER OFF", line: "Power off before you cut. Mains wiring is for licensed people." },
    amplifier: { word: "AMPLIFIER OFF", line: "Off and unplugged while you connect." },
    ladder: { word: "LADDER", line: "Face it, stand firm, never on the top step." },
    dust: { word: "EYES, DUST", line: "Goggles and mask: what you cut overhead falls on you." },
    oldPaint: {
      word: "OLD PAINT, PLASTER",
      line: "May hold lead or asbestos: have it tested before you cut.",
    },
    weight: { word: "HEAVY OVERHEAD", line: "A heavy unit needs a second support, tied to structure." },
    codes: {
      word: "LOCAL CODE",
      line: "Local codes and the authority having jurisdiction stand above these sheets.",
    },
  },
  print: {
    heading: "PRINT, THEN PROVE THE SCALE",
    steps: [
      "Print at 100 % (actual size). No fit to page, no shrink.",
      "On every sheet hold a tape to BOTH rulers, across and down: 100 mm and 4 in.",
      "More than 0.5 mm off: cut by the figures, not by the paper. `baymark ruler` prints the page that finds the fault.",
    ],
  },
  ways: {
    heading: "TWO WAYS OF WORKING: say which, opening by opening",
    bracket: {
      word: "BRACKET IN PLACE",
      line: "Rough-in: bracket by the bracket schedule, marker sheet fixed at the spot. Board: find it by the tapes and the count, cut inside the bracket and follow it.",
    },
    template: {
      word: "NO BRACKET",
      line: "Rough-in: marker sheet at the spot. Board: centre by the tapes, template held to the board, size checked with a tape, then cut.",
    },
  },
};
