import type { CablesChoice } from "./cables.js";
import type { RoomChoice } from "./room.js";

/*
 * Kinds of rooms that took a minute and more before what a run looks through had an end (src/effort.ts).
 */

const PLAIN: RoomChoice = {
  plan: { shape: "box", widthMm: 60_000, lengthMm: 60_000, corners: 24 },
  ceilings: { count: 0, corners: 4, shape: "round" },
  framing: {
    ...{ spacingMm: 600, run: "left-right", found: 0, blocking: 0, doubled: 0 },
    ...{ onWalls: false, onCeilings: false },
  },
  board: { sheets: "none", widthMm: 1200, lengthMm: 2400 },
  obstructions: { count: 0, pattern: "small ones no two in line", keepMm: 0, behind: false },
  loudspeakers: { count: 500, models: 1, stand: "in a grid", onCeilings: false },
  cables: { equipment: "none", upMm: 500, via: 0, avoid: 0 },
  areas: { count: 0, spacingMm: 8000, pattern: "square" },
  seats: 1,
};

const { plan, framing, obstructions, loudspeakers, areas } = PLAIN;
const CABLES: CablesChoice = { equipment: "in a corner", upMm: 500, via: 0, avoid: 0 };

export const WORST = {
  "500 best places in a room of 60 corners, each of 50 models of another size": {
    ...PLAIN,
    plan: { ...plan, shape: "round", corners: 60 },
    loudspeakers: { ...loudspeakers, stand: "best", models: 50 },
  },
  "30 ceilings of 20 corners, all of them under joists at 30 degrees": {
    ...PLAIN,
    ceilings: { count: 30, corners: 20, shape: "star" },
    framing: { ...framing, spacingMm: 150, run: "30 deg", onCeilings: true },
    loudspeakers: { ...loudspeakers, onCeilings: true },
  },
  "6000 joists 10 mm apart, 250 obstructions on a diagonal, 500 cables by a point of their own": {
    ...PLAIN,
    framing: { ...framing, spacingMm: 10 },
    obstructions: { ...obstructions, count: 250, pattern: "a diagonal" },
    cables: { ...CABLES, via: 1 },
  },
  "500 loudspeakers of 50 models in one spot": {
    ...PLAIN,
    loudspeakers: { ...loudspeakers, stand: "in one spot", models: 50 },
  },
  "250 boxes over each other, and 200 areas where no cable may lie": {
    ...PLAIN,
    obstructions: { ...obstructions, count: 250, pattern: "overlapping boxes" },
    cables: { ...CABLES, avoid: 200 },
  },
  "500 best pairs among 500 pieces of blocking, each cable by two points of its own": {
    ...PLAIN,
    plan: { ...plan, widthMm: 12_000, lengthMm: 40_000 },
    framing: { ...framing, spacingMm: 400, run: "front-back", blocking: 500, onWalls: true },
    board: { sheets: "long joints along the left", widthMm: 1200, lengthMm: 400 },
    loudspeakers: { ...loudspeakers, stand: "best in pairs", models: 50 },
    cables: { equipment: "beside a corner", upMm: 500, via: 2, avoid: 0 },
    seats: 50,
  },
  "four areas over each other": {
    ...PLAIN,
    loudspeakers: { ...loudspeakers, count: 100, stand: "best" },
    areas: { ...areas, count: 4, pattern: "hexagon" },
  },
} as const satisfies Record<string, RoomChoice>;
