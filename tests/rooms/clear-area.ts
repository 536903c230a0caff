import type { Region } from "../../src/geometry/clip.js";
import { EPSILON_MM } from "../../src/geometry/epsilon.js";
import type { Mounted } from "../../src/listen/mounted.js";
import { baysOf, clearInBay } from "../../src/place/clear-area.js";
import type { Fitting } from "../../src/place/fitting.js";
import { piecesOf } from "../../src/place/slide.js";
import type { Surface } from "../../src/room/room.js";

/** So fine that what it reaches over is less than what it leaves out. */
const FINE = { arcMm: 0.4 * EPSILON_MM };

/**
 * All centres at which the fitting may lie on the surface, every bay; nothing where the framing is unknown. Every point
 * of it passes the exact rule of `clearTest`.
 */
export function clearArea(surface: Surface, fitting: Fitting, neighbours: readonly Mounted[]): Region {
  return piecesOf(baysOf(surface, fitting)).flatMap((bay) =>
    clearInBay(bay, { surface, fitting, neighbours, ...FINE }),
  );
}
