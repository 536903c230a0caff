import type { Order } from "../sheet.js";
import { facesAt } from "../tapes.js";
import { clearPiece } from "./clear.js";
import { directPiece } from "./direct.js";
import type { Flag } from "./flags.js";
import { framingPiece, unknownPiece } from "./framing.js";
import { jointsPiece } from "./joints.js";
import { obstructionsPiece } from "./obstructions.js";
import { aimPiece, openingsPiece } from "./openings.js";
import type { Sketch } from "./sketch.js";
import { chainsOf, membersCaption } from "./surface-chains.js";
import { surfaceFlagsPiece } from "./surface-flags.js";
import type { SurfaceStage } from "./surface-stage.js";
import { voidsPiece } from "./voids.js";
import { zeroPiece } from "./zero-mark.js";

/** A surface as one faces it, with everything that is marked and measured on it. */
export function surfaceSketch(order: Order, at: SurfaceStage, flags: readonly Flag[]): Sketch {
  const outline = at.edges.map(({ from }) => from);
  const { surface, openings } = at;
  return {
    outline,
    edges: at.edges.map(({ along, from, to }) => ({ name: order.words.frame.wall(along), from, to })),
    chains: chainsOf(order, at),
    caption: membersCaption(order, at),
    inside: (view) => [
      clearPiece(order, openings, view),
      unknownPiece(order, surface, outline, view),
      framingPiece(order, surface, view),
      jointsPiece(surface, view),
      voidsPiece(order, surface, facesAt(at.stage), view),
      obstructionsPiece(order, surface, view),
      zeroPiece(order, at, view),
      directPiece(order, at, view),
      aimPiece(openings, view),
      openingsPiece(order, openings, flags, view),
      surfaceFlagsPiece(flags, view),
    ],
  };
}
