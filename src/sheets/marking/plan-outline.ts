import type { Polygon } from "../../geometry/shape.js";
import { surfaceNamed } from "../../room/room.js";
import type { Order } from "../sheet.js";
import type { NamedEdge } from "./edge-names.js";
import { below } from "./floor-plan.js";

/** The room's outline looking down, on framing faces, and the names of its walls. */
export function planOutline({ job, words }: Order): {
  readonly outline: Polygon;
  readonly edges: readonly NamedEdge[];
} {
  const walls = job.room.walls.map((name) => surfaceNamed(job.room, name));
  const outline = walls.map(({ frame }) => below(frame.origin));
  const edges = walls.map(({ name }, index) => ({
    name: words.frame.wall(name),
    from: outline[index] ?? { u: 0, v: 0 },
    to: outline[(index + 1) % outline.length] ?? { u: 0, v: 0 },
  }));
  return { outline, edges };
}
