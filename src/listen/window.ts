import { EPSILON_DEG } from "../geometry/epsilon.js";
import type { Room } from "../room/room.js";
import { AZIMUTH_COMPARED_TO_DEG } from "../standards/house-limits.js";
import { type Channel, channelOf, type RangeDeg, systemNamed } from "../standards/loudspeaker-layouts.js";
import type { Heading } from "./direction.js";

export type Figure = "azimuth" | "elevation";

/** The directions from the reference seat that the layout allows a channel, its tolerance taken in. */
export interface Window {
  /** From the first anticlockwise to the second, both in (-180, 180]; all round as -180 to 180. */
  readonly azimuthDeg: RangeDeg;
  /** From low to high. */
  readonly elevationDeg: RangeDeg;
  /** What was added either side because the standard fixes one value; 0 where it gives a range itself. */
  readonly toleranceDeg: Readonly<Record<Figure, number>>;
}

/** The channel of the room's layout; null without a layout, or where the layout has none of that label. */
export function channelInLayout({ layout }: Pick<Room, "layout">, label: string): Channel | null {
  const system = layout === null ? null : systemNamed(layout);
  return system === null ? null : channelOf(system, label);
}

/** Null without a layout, for a channel that the layout does not have, and for low-frequency effects. */
export function windowOf(room: Pick<Room, "layout" | "checks">, label: string): Window | null {
  const channel = channelInLayout(room, label);
  if (channel === null || channel.lfe) return null;
  const { azimuthRangeDeg, elevationRangeDeg } = channel;
  const toleranceDeg = {
    azimuth: toleranceOn(azimuthRangeDeg, room.checks),
    elevation: toleranceOn(elevationRangeDeg, room.checks),
  };
  return {
    azimuthDeg: widenedRound(azimuthRangeDeg, toleranceDeg.azimuth),
    elevationDeg: widenedUp(elevationRangeDeg, toleranceDeg.elevation),
    toleranceDeg,
  };
}

const toleranceOn = ([low, high]: RangeDeg, { toleranceDeg }: Room["checks"]): number =>
  low === high ? toleranceDeg : 0;

const FULL_TURN_DEG = 360;

function widenedRound([from, to]: RangeDeg, byDeg: number): RangeDeg {
  if (to - from + 2 * byDeg >= FULL_TURN_DEG) return [-180, 180];
  return [inHalfTurns(from - byDeg), inHalfTurns(to + byDeg)];
}

/** The same azimuth in (-180, 180]. */
function inHalfTurns(deg: number): number {
  if (deg > 180) return deg - FULL_TURN_DEG;
  return deg <= -180 ? deg + FULL_TURN_DEG : deg;
}

const widenedUp = ([low, high]: RangeDeg, byDeg: number): RangeDeg => [
  Math.max(-90, low - byDeg),
  Math.min(90, high + byDeg),
];

/** Degrees anticlockwise from one azimuth to another, in [0, 360). */
function turnDeg(from: number, to: number): number {
  const turn = (to - from) % FULL_TURN_DEG;
  return turn < 0 ? turn + FULL_TURN_DEG : turn;
}

/** A figure of a direction that lies outside its range. */
export interface Breach {
  readonly figure: Figure;
  readonly isDeg: number;
  readonly nearestDeg: number;
  readonly byDeg: number;
}

/** What lies outside the window, azimuth first; none where the heading is inside. Exactly at a limit is inside. */
export function breachesOf(window: Window, heading: Heading): readonly Breach[] {
  return [azimuthBreach(window, heading), elevationBreach(window, heading)].flatMap((breach) =>
    breach === null ? [] : [breach],
  );
}

export function isInWindow(window: Window, heading: Heading): boolean {
  return breachesOf(window, heading).length === 0;
}

function azimuthBreach({ azimuthDeg: [from, to] }: Window, heading: Heading): Breach | null {
  const { azimuthDeg, elevationDeg } = heading;
  if (elevationDeg > AZIMUTH_COMPARED_TO_DEG || to - from >= FULL_TURN_DEG) return null;
  const after = turnDeg(to, azimuthDeg);
  const before = turnDeg(azimuthDeg, from);
  const isInside = turnDeg(from, azimuthDeg) <= turnDeg(from, to) || Math.min(after, before) <= EPSILON_DEG;
  if (isInside) return null;
  const nearestDeg = after < before ? to : from;
  return { figure: "azimuth", isDeg: azimuthDeg, nearestDeg, byDeg: Math.min(after, before) };
}

function elevationBreach({ elevationDeg: [low, high] }: Window, { elevationDeg }: Heading): Breach | null {
  const nearestDeg = Math.min(high, Math.max(low, elevationDeg));
  const byDeg = Math.abs(elevationDeg - nearestDeg);
  if (byDeg <= EPSILON_DEG) return null;
  return { figure: "elevation", isDeg: elevationDeg, nearestDeg, byDeg };
}
