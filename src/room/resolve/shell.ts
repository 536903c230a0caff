import { ceilingFrame, type Frame, wallFrame } from "../../geometry/frame.js";
import { type Vector, vector } from "../../geometry/vector.js";
import type { Faces } from "../room.js";
import type { RoomFile } from "../schema.js";

/** A wall as a plane: what a tape hooks on. */
export interface Wall {
  readonly name: string;
  readonly frame: Frame;
  readonly lengthMm: number;
  readonly boardMm: number;
}

/** What stands round the room, on framing faces; walls in order, clockwise as seen from above. */
export interface Shell {
  readonly walls: readonly Wall[];
  readonly ceiling: { readonly frame: Frame; readonly boardMm: number };
  readonly heightMm: number;
  readonly measuredTo: Faces;
}

const DOWN = vector(0, 0, -1);

/** A box from its sizes. Where the tapes hook on finished faces, the framing is a board further out on each side. */
export function boxShell({ room, board }: RoomFile): Shell {
  const isFinish = room.measured_to === "finish";
  const wallBoards = isFinish ? 2 * board.walls : 0;
  const widthMm = room.width + wallBoards;
  const lengthMm = room.length + wallBoards;
  const heightMm = room.height + (isFinish ? board.ceiling : 0);
  const corners = {
    backLeft: vector(0, 0, 0),
    frontLeft: vector(0, lengthMm, 0),
    frontRight: vector(widthMm, lengthMm, 0),
    backRight: vector(widthMm, 0, 0),
  };
  const wall = (name: string, leftEnd: Vector, rightEnd: Vector, wallLengthMm: number): Wall => ({
    name,
    frame: wallFrame(leftEnd, rightEnd),
    lengthMm: wallLengthMm,
    boardMm: board.walls,
  });
  return {
    walls: [
      wall("left", corners.backLeft, corners.frontLeft, lengthMm),
      wall("front", corners.frontLeft, corners.frontRight, widthMm),
      wall("right", corners.frontRight, corners.backRight, lengthMm),
      wall("back", corners.backRight, corners.backLeft, widthMm),
    ],
    ceiling: { frame: ceilingFrame(vector(widthMm, 0, heightMm), DOWN), boardMm: board.ceiling },
    heightMm,
    measuredTo: room.measured_to,
  };
}
