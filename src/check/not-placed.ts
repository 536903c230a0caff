import type { Finding } from "../findings/finding.js";
import type { Speaker } from "../room/room.js";

/** A loudspeaker that asks for its position to be found. */
export function notPlaced({ id, surface, position, path }: Speaker): Finding[] {
  if (position.kind === "given") return [];
  return [
    {
      code: "not-placed-yet",
      level: "warning",
      figures: {},
      speaker: id,
      surface,
      path: [...path, "at"],
      fix: null,
      accepted: null,
    },
  ];
}
