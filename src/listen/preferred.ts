import { radians, type Vector, vector } from "../geometry/vector.js";
import type { Room } from "../room/room.js";
import { nominalOf } from "../standards/loudspeaker-layouts.js";
import type { Heading } from "./direction.js";
import { channelInLayout } from "./window.js";

/** The vector of length 1 that `headingOf` reads as these azimuth and elevation. */
export function toward({ azimuthDeg, elevationDeg }: Heading): Vector {
  const [azimuth, elevation] = [radians(azimuthDeg), radians(elevationDeg)];
  const level = Math.cos(elevation);
  return vector(-Math.sin(azimuth) * level, Math.cos(azimuth) * level, Math.sin(elevation));
}

/**
 * Where the standard would have a channel: the nominal direction of the room's layout, or the one that the label has
 * in every layout where the room names none. Null for low-frequency effects, which have no direction.
 */
export function preferredHeading(room: Pick<Room, "layout">, label: string): Heading | null {
  const channel = channelInLayout(room, label) ?? nominalOf(label);
  if (channel === null || ("lfe" in channel && channel.lfe)) return null;
  const { azimuthDeg, elevationDeg } = channel;
  return { azimuthDeg, elevationDeg };
}
