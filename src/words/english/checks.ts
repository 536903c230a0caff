/** Words of the check lists by visit, the sound-check sheet and the grille schedule. */
export const checks = {
  title: "Check lists",
  use: "One list for each visit: tick, write what differs, sign",
  columns: { done: "Done", what: "What", found: "Found, if not as drawn" },
  visits: {
    beforeBoard: {
      title: "1 Before the board",
      items: [
        "Joists and studs measured where openings come; what differs is written on the marking sheets",
        "Brackets or floor marks in place and counted against the schedule",
        "Every cable pulled, with its loop at both ends, tied back out of the cutter's reach",
        "A label on both ends of every cable, and a second one a foot further in",
        "Holes bored as listed; nail plates where the edge is nearer than 1 1/4 in",
        "Cables a foot from mains where they run along it, square where they cross, in no hole with it",
        "Marker sheets fixed at their spots",
        "Every bay photographed with its label in view",
        "Surfaces that are rated: enclosures in place and seen by whoever has authority",
      ],
    },
    afterBoard: {
      title: "2 After the board",
      items: [
        "Openings counted against the schedule; none buried",
        "Each opening measured across twice, and from both of its walls",
        "No joist, stud, plate, pipe or cable cut",
        "Cable ends found, labels readable, insulation whole",
        "Dust and board crumbs out of the openings",
      ],
    },
    trimOut: {
      title: "3 Trim-out",
      items: [
        "Each cable connected by its label and its terminal card, + to + at both ends",
        "No bare strand outside a terminal",
        "Tilted baffles turned to their aim strips, then locked",
        "Heavy units hung from their second support",
        "Clamps tight, flange flat on the board all round",
        "Grilles on after the paint is dry",
      ],
    },
    soundCheck: {
      title: "4 Sound check",
      items: [
        "Every channel plays from the loudspeaker that bears its name",
        "Polarity, distances, delays and levels written on the sound-check sheet",
        "Nothing rattles or buzzes on a slow sweep",
        "Sheets and photographs handed over, settings saved",
      ],
    },
  },
  signed: "Date, name, initials:",
  sound: {
    title: "Sound-check sheet",
    use: "Use at the SOUND CHECK, from the reference seat: write the measured figure beside each expected one",
    how: (seat: string, target: string) =>
      `Microphone at the ear of ${seat}. Delays align with the furthest loudspeaker; trims bring all to the softest at one voltage, by the model of the listening report; then set each to the level that you measure by, such as ${target}. A measured figure that is far off is a slip somewhere: find it before you correct it away.`,
    columns: {
      speaker: "Loudspeaker",
      polarity: "+ to +",
      distance: "Distance",
      delay: "Delay",
      trim: "Trim",
    },
    measured: (id: string) => `${id}: measured`,
    samples: (count: number) => `${count} samples`,
  },
  grilles: {
    title: "Grille schedule",
    use: "For the PAINTER: thin coats, dry before they go on",
    notes:
      "Take the cloth out before painting. Spray thin coats at an angle; blow the holes free. Never paint a loudspeaker through its grille.",
    columns: {
      count: "How many",
      size: "Size (flange)",
      where: "Where",
      ids: "Loudspeakers",
      colour: "Colour",
      painted: "Painted",
      fitted: "Fitted",
    },
  },
};
