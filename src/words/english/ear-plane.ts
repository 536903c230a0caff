/** Words on the drawings of directions and coverage: plans at ear height and side views. */
export const earPlane = {
  title: "Directions and coverage at ear height",
  ear: (height: string) => `ear ${height}`,
  azimuth: (degrees: string) => `az ${degrees}`,
  elevation: (degrees: string) => `el ${degrees}`,
  range: (from: string, to: string) => `${from} … ${to}`,
  sameEar: "Seats without a height: ears as high as the reference seat's.",
  outside: "OUTSIDE",
  plane: (height: string) => `ear plane ${height}`,
  columns: {
    speaker: "loudspeaker",
    azimuth: "azimuth",
    elevation: "elevation",
    allowed: "allowed",
    angle: "-6 dB angle",
    footprint: "coverage on the ear plane",
  },
  directions: {
    title: "Directions",
    figures: "Directions: figures",
    use: (seat: string) =>
      `Directions from the reference seat (${seat}), as one faces the front wall: azimuth 0° ahead, + to the LEFT; elevation + up.`,
    windows: "A dot inside its grey part of the ring: the azimuth that the layout allows.",
    rings: (layers: readonly (keyof typeof LAYERS)[]) =>
      `Rings from the outside inward: ${layers.map((layer) => LAYERS[layer]).join(", ")}.`,
    noLayout: "No layout is named, so nothing is said about what it allows.",
  },
  coverage: {
    title: { ceiling: "Coverage on the ear plane: overhead", wall: "Coverage on the ear plane: in walls" },
    use: (height: string) =>
      `Where the coverage of each loudspeaker ends on the level plane ${height} over the floor (the reference seat's ear). Its id is on the line.`,
    model:
      "A MODEL: the maker's -6 dB angle as a cone about the aimed axis, alike all round and at every frequency. No reflections; past the line there is less, not nothing. Walls hide what is behind them, soffits and furniture do not.",
    notStated: (ids: string) => `No coverage stated, or no axis known: ${ids}.`,
    closed: (long: string, short: string) => `${long} × ${short}`,
    open: "open",
    missed: "misses it",
  },
  side: {
    title: "Side view",
    figures: "Side view: figures",
    use: (seat: string) =>
      `The room cut from front to back through the reference seat (${seat}). Loudspeakers on this side of it stand where one sees them, square to the cut.`,
    dial: "Rays round the seat are turned into the cut, so their elevations are true. Grey: what the layout allows.",
    cut: "Lines with an id: where that loudspeaker's coverage ends IN THE CUT, not beside it.",
  },
  key: {
    direction: "direction",
    overhead: "coverage, overhead",
    wall: "coverage, in a wall",
    axis: "axis, to the plane",
    aimed: "axis",
    window: "allowed",
    earPlane: "ear plane",
    inCeiling: "overhead",
    inWall: "in a wall",
  },
};

const LAYERS = { upper: "upper layer", middle: "ear layer", lower: "lower layer" };
