import { frame } from "./frame.js";

type Faces = "framing" | "finish";

const FACES: Readonly<Record<Faces, string>> = { framing: "bare framing", finish: "board on" };

/** Words on the strips that are taped to brackets and on the sheets that mark openings before board. */
export const strips = {
  aim: {
    title: (id: string) => `Aim strip ${id}`,
    titles: "Aim strips",
    cutOut: "Cut out, tape to the bracket, turn the loudspeaker until its arrow lies as this one.",
    hold: "PRINT DOWN, this edge to FRONT",
    holdWall: "PRINT TOWARD YOU, this edge UP",
    run: { joist: "joists", stud: "studs" },
    target: (target: string) => `AIM AT: ${target}`,
    fromRun: (kind: "joist" | "stud", end: string, toward: string) =>
      `from the ${kind}'s ${frame.wall(end)} end toward ${frame.wall(toward)}`,
    noRun: "Framing unknown: turn by the sight mark",
    sightAt: (wall: string, from: string, faces: Faces) =>
      `SIGHT MARK on ${frame.hook(wall)} at the ceiling line, from its corner at ${frame.wall(from)} (${FACES[faces]})`,
    sightOn: (edge: string, from: string, faces: Faces) =>
      `SIGHT MARK at ${frame.wall(edge)}, from its corner at ${frame.wall(from)} (${FACES[faces]})`,
    noSight: "No wall ahead to sight to",
    offAxis: (degrees: string) => `Leaves ${degrees} off axis there`,
    noArrow: "NO ARROW: the target stands square to it, so no way to turn it is better than another.",
  },
  marker: {
    title: (id: string) => `Marker ${id}`,
    here: "OPENING TO BE CUT HERE",
    keep: "Do not board over without cutting. Do not bury the cable.",
    notHere: "NO OPENING TO BE CUT HERE YET",
    cable: "CABLE through here",
    use: "Fix at the spot at rough-in, before board, with the cable through the ring.",
  },
};
