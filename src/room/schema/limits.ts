import type { Limits } from "./measures.js";

/*
 * Limits that keep a typing slip from becoming a wall. The room's sides, the speakers and the members are part of
 * the file's format; the others are our own choices, far outside anything that is built.
 */

export const ROOM_SIDE: Limits = { least: "0.5 m", most: "100 m" };
export const MOST_SPEAKERS = 500;
export const MOST_MEMBERS = 10_000;
/** Ducts, lights, beams: a house has some dozens. With these and the most loudspeakers an answer comes within seconds. */
export const MOST_OBSTRUCTIONS = 250;
/** Loudspeakers that a maker's list has; a room seldom holds five. */
export const MOST_MODELS = 50;
/** Corners of a room or of one of its ceilings: a round one may be drawn by so many. */
export const MOST_CORNERS = 60;
export const MOST_CEILINGS = 30;
/** Of all ceilings together: ten round ones, or thirty of twenty corners. */
export const MOST_CEILING_CORNERS = 600;
/** Of the board of one surface. Sheets of 1.2 by 2.4 m make 3600 over the largest ceiling; our own choice. */
export const MOST_JOINTS = 20_000;

/** From the walls, the floor or the ceiling: past the far wall is a finding, past any room is a slip. */
export const TAPE: Limits = { least: "0 mm", most: ROOM_SIDE.most };
export const BOARD: Limits = { least: "0 mm", most: "300 mm" };
export const MEMBER_SIDE: Limits = { least: "5 mm", most: "2 m" };
/** Further than a bay is wide, a member that was found is another one. */
export const MEMBER_SHIFT: Limits = { least: "-3 m", most: "3 m" };
export const SPACING: Limits = { least: "5 mm", most: ROOM_SIDE.most };
export const CAVITY: Limits = { least: "1 mm", most: ROOM_SIDE.most };
export const BUILD_UP: Limits = { least: "0 mm", most: "2 m" };
export const OPENING_SIDE: Limits = { least: "10 mm", most: "3 m" };
export const DEPTH: Limits = { least: "1 mm", most: "3 m" };
export const REACH: Limits = { least: "0 mm", most: "500 mm" };
export const OBSTRUCTION_SIDE: Limits = { least: "1 mm", most: ROOM_SIDE.most };
export const CABLE_LENGTH: Limits = { least: "10 mm", most: "1000 m" };
export const CABLE_DIAMETER: Limits = { least: "1 mm", most: "100 mm" };
export const PAPER_SIDE: Limits = { least: "5 mm", most: "2 m" };
/** Between 1 mm of a label sheet's margin and the sheet's own length. */
export const PAPER_TAPE: Limits = { least: "0 mm", most: "2 m" };
export const STRIP: Limits = { least: "1 mm", most: "100 mm" };
