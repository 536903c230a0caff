import type { ColourCode } from "../../standards/conductor-colours.js";

const COLOURS: Readonly<Record<ColourCode, string>> = {
  BK: "black",
  BN: "brown",
  RD: "red",
  OG: "orange",
  YE: "yellow",
  GN: "green",
  BU: "blue",
  VT: "violet",
  GY: "grey",
  WH: "white",
  PK: "pink",
  GD: "gold",
  TQ: "turquoise",
  SR: "silver",
};

/** Words on cable labels and terminal cards. */
export const labels = {
  /** Behind a length that was computed. */
  computed: (length: string) => `${length} (calc.)`,
  title: "Cable labels",
  rackEnd: "RACK END",
  speakerEnd: "SPEAKER END",
  rack: "RACK",
  amplifier: "AMP",
  gauge: "AWG",
  length: "LENGTH",
  test: {
    title: "Cable labels: test page",
    hold: "Print this page on plain paper first. Hold it against the label sheet, to the light: every outline lies on a label.",
    moved:
      "Outlines beside their labels: print at 100 % and measure both rulers before you use up a label sheet.",
    stock: (columns: number, rows: number, width: string, height: string) =>
      `Label stock: ${columns} × ${rows} labels of ${width} × ${height}`,
    assumed: "The room file names no label stock: this one is ASSUMED from the paper.",
    count: (runs: number, labels: number, sheets: number) =>
      `${runs} runs, ${labels} labels, ${sheets === 1 ? "1 label sheet" : `${sheets} label sheets`}. Print the label sheets from labels.pdf.`,
    start: (position: number) => `The first label printed is number ${position}, with the heavy outline.`,
    put: "Two labels a run, one at each end, about 2 ft (600 mm) in, so that trimming does not cut them off.",
    pageEdge: "Edge of the label sheet",
    leftOff: {
      route: "No room on these labels for: from and to.",
      cable: "No room on these labels for: from and to, gauge and conductors, length.",
      allButId: "No room on these labels for more than the id: write the rest by hand, or use larger labels.",
    },
  },
  wrap: {
    around: (least: string, most: string) =>
      `Wrap labels: the cable's outside diameter must be from ${least} to ${most}. It is not given: measure it.`,
    laps: (printed: string, around: string) =>
      `The printed part (${printed}) is longer than once around the cable (${around}): it laps over itself. The words stand in its first ${around}.`,
    shortTail: (tail: string, around: string) =>
      `The clear tail (${tail}) is shorter than once around the cable (${around}): it does not cover all of the print.`,
    noCable: (tail: string, printed: string) =>
      `The clear tail (${tail}) is shorter than the printed part (${printed}): on no cable does it cover all of the print.`,
  },
  refused: {
    heading: "NO LABELS ON THIS STOCK",
    tooSmall: (id: string) => `A label is too small for ${id} in letters of 2.5 mm. Use larger labels.`,
    flagTooSmall: (flag: string, id: string) =>
      `On this cable each flag is ${flag} long: too short for ${id} in letters of 2.5 mm. Use longer labels or wrap labels.`,
    flagNoDiameter:
      "Flag labels need the cable's outside diameter, which is not given: what the cable takes is left blank between the flags.",
    noPrintedPart: "Wrap labels need the height of their printed part, which is not given.",
  },
  card: {
    title: "Terminal cards",
    cut: "Cut the cards out and each in two along the broken line: the left one stays with the loudspeaker, the right one at the amplifier.",
    atSpeaker: "AT THE LOUDSPEAKER",
    atAmplifier: "AT THE AMPLIFIER: same conductor, same sign",
    plus: "PLUS",
    minus: "MINUS",
    conductor: "conductor",
    terminal: "terminal",
    kind: "Kind of terminal",
    strip: (length: string) => `Strip ${length}: this long`,
    stripNotGiven: "Strip",
    channel: "Amplifier channel",
    polarity: "Polarity checked",
    initials: "Initials",
  },
  colours: COLOURS,
  /** A conductor's colours by name. */
  colour: (codes: readonly ColourCode[]) => codes.map((code) => COLOURS[code]).join(" + "),
};
