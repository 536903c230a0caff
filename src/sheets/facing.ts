import { degrees } from "../geometry/vector.js";
import type { Surface } from "../room/room.js";
import type { FrameFacts, Order } from "./sheet.js";

/**
 * Where FRONT is as one faces a surface, for a page drawn in its (u, v): degrees clockwise from the page's top, or
 * away from the viewer, or behind him. The front wall is toward +y of the world.
 */
export function frontOnPage({ frame: { u, v, n } }: Surface): number | "away" | "behind" {
  if (Math.abs(n.y) > Math.hypot(u.y, v.y)) return n.y < 0 ? "away" : "behind";
  return (degrees(Math.atan2(u.y, v.y)) + 360) % 360;
}

/** What the frame of a page held to a surface says about how one looks and how it is held. */
export function facingFacts(order: Order, surface: Surface): Pick<FrameFacts, "view" | "hold" | "front"> {
  const { frame } = order.words;
  const overhead = surface.kind === "ceiling";
  return {
    view: overhead ? frame.lookingUp : frame.facingWall(surface.name),
    hold: overhead ? frame.holdOverhead : null,
    front: frontOnPage(surface),
  };
}
