/*
 * ITU-R BS.2051, loudspeaker positions of systems A to J. The figures are those of edition -2 (07/2018), as kept in
 * the data of the open reference renderer of ITU-R BS.2127; edition -3 (2022) could not be read. Where the data gives
 * no range the position is fixed: both ends of the range are the nominal value.
 */

/** Degrees; from the first anticlockwise to the second for azimuths, from low to high for elevations. */
export type RangeDeg = readonly [number, number];

/** One loudspeaker of a system. Azimuth is 0 in front and positive to the left, elevation positive upward. */
export interface Channel {
  readonly label: string;
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  readonly azimuthRangeDeg: RangeDeg;
  readonly elevationRangeDeg: RangeDeg;
  /** Low-frequency effects: its position is a placeholder, never one to cut or to compare. */
  readonly lfe: boolean;
}

export type SystemLetter = "A" | "B" | "C" | "D" | "E" | "F" | "G" | "H" | "I" | "J";

export interface System {
  readonly letter: SystemLetter;
  /** Loudspeakers in the upper, middle and lower layers: `4+7+0`. */
  readonly name: string;
  readonly channels: readonly Channel[];
}

interface Allowed {
  readonly azimuth?: RangeDeg;
  readonly elevation?: RangeDeg;
}

function single(label: string, azimuthDeg: number, elevationDeg: number, allowed: Allowed = {}): Channel {
  return {
    label,
    azimuthDeg,
    elevationDeg,
    azimuthRangeDeg: allowed.azimuth ?? [azimuthDeg, azimuthDeg],
    elevationRangeDeg: allowed.elevation ?? [elevationDeg, elevationDeg],
    lfe: isLfe(label),
  };
}

/** Whether a label is one of low-frequency effects: LFE1, LFE2. */
export function isLfe(label: string): boolean {
  return label.startsWith("LFE");
}

/** A left loudspeaker and its mirror image on the right: `M+030` and `M-030`. */
function pair(label: string, azimuthDeg: number, elevationDeg: number, allowed: Allowed = {}): Channel[] {
  const left = single(label, azimuthDeg, elevationDeg, allowed);
  const [from, to] = left.azimuthRangeDeg;
  const right: Channel = {
    ...left,
    label: label.replace("+", "-"),
    azimuthDeg: -azimuthDeg,
    azimuthRangeDeg: [-to, -from],
  };
  return [left, right];
}

const CENTRE = single("M+000", 0, 0);
const FRONT = pair("M+030", 30, 0);
const WIDE_FRONT = pair("M+030", 30, 0, { azimuth: [30, 45] });
const SIDES = pair("M+090", 90, 0, { azimuth: [85, 110] });
const REAR = pair("M+135", 135, 0, { azimuth: [120, 150] });
const SURROUND = pair("M+110", 110, 0, { azimuth: [100, 120] });
const RISING_SURROUND = pair("M+110", 110, 0, { azimuth: [100, 120], elevation: [0, 15] });
const UPPER_30 = pair("U+030", 30, 30, { azimuth: [30, 45], elevation: [30, 55] });
const UPPER_45 = pair("U+045", 45, 30, { azimuth: [30, 45], elevation: [30, 55] });
const UPPER_110 = pair("U+110", 110, 30, { azimuth: [100, 135], elevation: [30, 55] });
const UPPER_135 = pair("U+135", 135, 30, { azimuth: [100, 150], elevation: [30, 55] });
const LOWER_CENTRE = single("B+000", 0, -30, { elevation: [-30, -15] });
/** The data gives no position: the nominal one is a placeholder and every direction is allowed. */
const LFE_ANYWHERE = single("LFE1", 45, -30, { azimuth: [-180, 180], elevation: [-90, 90] });
const LFE_LEFT = single("LFE1", 45, -30, { azimuth: [30, 90], elevation: [-30, -15] });
const LFE_RIGHT = single("LFE2", -45, -30, { azimuth: [-90, -30], elevation: [-30, -15] });
/** At the edges of the picture, wherever these are: 15° is a placeholder. */
const SCREEN_EDGES = pair("M+SC", 15, 0, { azimuth: [5, 60] });

/** The ten systems, A to J. */
export const SYSTEMS: readonly System[] = [
  { letter: "A", name: "0+2+0", channels: FRONT },
  { letter: "B", name: "0+5+0", channels: [...FRONT, CENTRE, LFE_ANYWHERE, ...RISING_SURROUND] },
  { letter: "C", name: "2+5+0", channels: [...FRONT, CENTRE, LFE_ANYWHERE, ...RISING_SURROUND, ...UPPER_30] },
  {
    letter: "D",
    name: "4+5+0",
    channels: [...FRONT, CENTRE, LFE_ANYWHERE, ...SURROUND, ...UPPER_30, ...UPPER_110],
  },
  {
    letter: "E",
    name: "4+5+1",
    channels: [...FRONT, CENTRE, LFE_ANYWHERE, ...SURROUND, ...UPPER_30, ...UPPER_110, LOWER_CENTRE],
  },
  {
    letter: "F",
    name: "3+7+0",
    channels: [
      CENTRE,
      ...FRONT,
      ...pair("U+045", 45, 30, { azimuth: [30, 45], elevation: [30, 45] }),
      ...pair("M+090", 90, 0, { azimuth: [60, 150] }),
      ...pair("M+135", 135, 0, { azimuth: [60, 150] }),
      single("UH+180", 180, 45, { elevation: [45, 90] }),
      LFE_LEFT,
      LFE_RIGHT,
    ],
  },
  {
    letter: "G",
    name: "4+9+0",
    channels: [
      ...WIDE_FRONT,
      CENTRE,
      LFE_ANYWHERE,
      ...SIDES,
      ...REAR,
      ...UPPER_45,
      ...UPPER_135,
      ...SCREEN_EDGES,
    ],
  },
  {
    letter: "H",
    name: "9+10+3",
    channels: [
      ...pair("M+060", 60, 0, { azimuth: [45, 60], elevation: [0, 5] }),
      single("M+000", 0, 0, { elevation: [0, 5] }),
      LFE_LEFT,
      ...pair("M+135", 135, 0, { azimuth: [110, 135], elevation: [0, 15] }),
      ...pair("M+030", 30, 0, { azimuth: [22.5, 30], elevation: [0, 5] }),
      single("M+180", 180, 0, { elevation: [0, 15] }),
      LFE_RIGHT,
      ...pair("M+090", 90, 0, { elevation: [0, 15] }),
      ...pair("U+045", 45, 30, { azimuth: [45, 60], elevation: [30, 45] }),
      single("U+000", 0, 30, { elevation: [30, 45] }),
      single("T+000", 0, 90),
      ...pair("U+135", 135, 30, { azimuth: [110, 135], elevation: [30, 45] }),
      ...pair("U+090", 90, 30, { elevation: [30, 45] }),
      single("U+180", 180, 30, { elevation: [30, 45] }),
      LOWER_CENTRE,
      ...pair("B+045", 45, -30, { azimuth: [45, 60], elevation: [-30, -15] }),
    ],
  },
  { letter: "I", name: "0+7+0", channels: [...WIDE_FRONT, CENTRE, LFE_ANYWHERE, ...SIDES, ...REAR] },
  {
    letter: "J",
    name: "4+7+0",
    channels: [...WIDE_FRONT, CENTRE, LFE_ANYWHERE, ...SIDES, ...REAR, ...UPPER_45, ...UPPER_135],
  },
];

/** Every label that a system uses, once each. */
export const CHANNELS: readonly string[] = [
  ...new Set(SYSTEMS.flatMap((system) => system.channels.map((channel) => channel.label))),
];

/** The system of that upper+middle+lower name, or of that letter in either case; null where there is none. */
export function systemNamed(text: string): System | null {
  const wanted = text.trim().toUpperCase();
  return SYSTEMS.find((system) => system.name === wanted || system.letter === wanted) ?? null;
}

/** The loudspeaker of that label in the system; null where the system has none. */
export function channelOf(system: System, label: string): Channel | null {
  return system.channels.find((channel) => channel.label === label) ?? null;
}

/**
 * The direction that a label stands for whatever the system: the nominal one, which every system that has the label
 * gives alike. Null for labels that no system has, and for low-frequency effects.
 */
export function nominalOf(label: string): Pick<Channel, "azimuthDeg" | "elevationDeg"> | null {
  const channel = SYSTEMS.map((system) => channelOf(system, label)).find((found) => found !== null);
  return channel === undefined || channel === null || channel.lfe ? null : channel;
}
