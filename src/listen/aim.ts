export interface Aim {
  readonly target: string;
  /** Degrees anticlockwise from v as seen facing the surface, 0 to 360; null when straight or undefined. */
  readonly arrowDeg: number | null;
  /** Angle between the acoustic axis and the line to the target. */
  readonly offAxisDeg: number;
  /** Where the arrow's line meets the next wall at the ceiling line, as a tape from that wall's nearest corner. */
  readonly sight: Sight | null;
  /** The arrow against the members: fits one arrow only. Null without an arrow or without known framing. */
  readonly fromRun: FromRun | null;
}

export interface Sight {
  readonly wall: string;
  /** Wall at the corner that the tape hooks on. */
  readonly from: string;
  readonly mm: number;
}

/** "From the joist's RIGHT end, 49 degrees toward the BACK wall." */
export interface FromRun {
  /** Wall (or floor, ceiling) that the member's end is toward. */
  readonly end: string;
  readonly degrees: number;
  readonly toward: string;
}
